/**
 * Does core stay the same from call to call? The compiler already knows no console, timer, file or screen there; what is
 * left of the language itself is chance and the clock.
 */
import fs from "node:fs";
import path from "node:path";
import { ROOT } from "./setup.mjs";

const BARRED = [/\bMath\s*\.\s*random\b/, /\bDate\s*\.\s*now\b/, /\bnew\s+Date\s*\(\s*\)/, /\bDate\s*\(\s*\)/];

/**
 * @param {string} root
 * @param {string} folder
 * @returns {string[]}
 */
function sources(root, folder) {
  return fs.readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const place = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return entry.name === "dist" || entry.name === "node_modules" ? [] : sources(root, place);
    return entry.name.endsWith(".ts") && !entry.name.endsWith(".test.ts") ? [place] : [];
  });
}

/** @param {string} text the source with its comments blanked, so that line numbers stay */
const withoutComments = (text) =>
  text.replace(/\/\*[\s\S]*?\*\//g, (comment) => comment.replace(/[^\n]/g, " ")).replace(/(^|\s)\/\/.*$/gm, "$1");

/**
 * @param {{ root?: string }} [options]
 * @returns {{ files: number, problems: string[] }}
 */
export function checkPurity({ root = ROOT } = {}) {
  const files = sources(root, "core");
  /** @type {string[]} */
  const problems = files.length === 0 ? ["purity: no source found in core, so nothing was checked"] : [];
  for (const file of files) {
    const lines = withoutComments(fs.readFileSync(path.join(root, file), "utf8")).split("\n");
    lines.forEach((line, index) => {
      const hit = BARRED.find((pattern) => pattern.test(line));
      if (hit) problems.push(`purity: ${file}:${index + 1}: core may not ask chance or the clock: ${line.trim()}`);
    });
  }
  return { files: files.length, problems };
}
