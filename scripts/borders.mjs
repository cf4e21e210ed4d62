/**
 * Do all imports run the allowed way? Runs dependency-cruiser with .dependency-cruiser.cjs and checks that it really
 * looked: a set-up that sees no modules would report no violations either.
 */
import { execFile } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { ROOT } from "./setup.mjs";

const FOLDERS = ["core", "drawing", "store", "server", "web", "cli"];
const SKIPPED = new Set(["node_modules", "dist"]);

/**
 * @param {string} root
 * @param {string} folder
 * @returns {string[]}
 */
function sources(root, folder) {
  if (!fs.existsSync(path.join(root, folder))) return [];
  return fs.readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const place = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return SKIPPED.has(entry.name) ? [] : sources(root, place);
    return /\.tsx?$/.test(entry.name) && !entry.name.endsWith(".d.ts") ? [place] : [];
  });
}

/**
 * @param {{ root?: string }} [options] root: the folder with the six packages; the rules are always ours
 * @returns {Promise<{ modules: number, problems: string[] }>}
 */
export async function checkBorders({ root = ROOT } = {}) {
  const expected = FOLDERS.flatMap((folder) => sources(root, folder));
  if (expected.length === 0) return { modules: 0, problems: ["borders: no modules found, so nothing was checked"] };
  const folders = FOLDERS.filter((folder) => expected.some((file) => file.startsWith(`${folder}/`)));
  const result = await cruise(root, folders);
  if (result === undefined) return { modules: 0, problems: ["borders: dependency-cruiser gave no report"] };

  const seen = new Set(result.modules.map((module) => module.source));
  const unseen = expected.filter((file) => !seen.has(file));
  const problems = unseen.map((file) => `borders: ${file} was not looked at`);
  for (const violation of result.summary.violations) {
    problems.push(`borders: ${violation.from} -> ${violation.to} (${violation.rule.name})`);
  }
  return { modules: expected.length - unseen.length, problems };
}

/**
 * @param {string} root
 * @param {string[]} folders
 * @returns {Promise<{ modules: { source: string }[], summary: { violations: { from: string, to: string, rule: { name: string } }[] } } | undefined>}
 */
function cruise(root, folders) {
  const program = path.join(ROOT, "node_modules", "dependency-cruiser", "bin", "dependency-cruise.mjs");
  const config = path.join(ROOT, ".dependency-cruiser.cjs");
  return new Promise((resolve, reject) => {
    execFile(
      process.execPath,
      [program, "--config", config, "--output-type", "json", ...folders],
      { cwd: root, maxBuffer: 1 << 28 },
      (error, stdout, stderr) => {
        if (stdout.trimStart().startsWith("{")) resolve(JSON.parse(stdout));
        else if (error) reject(new Error(`dependency-cruiser failed: ${stderr || error.message}`));
        else resolve(undefined);
      },
    );
  });
}
