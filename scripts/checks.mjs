/** The checks besides the tests: each has a name, and gives its problems as lines. None of them changes a file. */
import { spawn } from "node:child_process";
import path from "node:path";
import { checkBorders } from "./borders.mjs";
import { checkDocs } from "./docs.mjs";
import { checkNotices } from "./notices.mjs";
import { checkPurity } from "./purity.mjs";
import { lastLines, ROOT } from "./setup.mjs";
import { checkTexts } from "./texts.mjs";

/** @typedef {{ name: string, ok: boolean, text: string, tookMs: number }} CheckResult */

/**
 * @param {string[]} args a program of node_modules and its arguments
 * @returns {Promise<string[]>} its output, where it failed
 */
function program([file = "", ...args]) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [path.join(ROOT, "node_modules", file), ...args], {
      cwd: ROOT,
      stdio: ["ignore", "pipe", "pipe"],
    });
    let output = "";
    child.stdout.on("data", (chunk) => {
      output += chunk;
    });
    child.stderr.on("data", (chunk) => {
      output += chunk;
    });
    child.once("error", reject);
    child.once("close", (code) => resolve(code === 0 ? [] : [output.trim() || `${file} ended with ${code}`]));
  });
}

const TSC = "typescript/bin/tsc";
/** The packages alone, each with only what its place allows: a core that needs a screen fails here. */
const packageTypes = () => program([TSC, "-b"]);
/** Every file once more, tests and scripts with it. */
const allTypes = () => program([TSC, "-p", "tsconfig.check.json"]);
const BIOME = [
  "@biomejs/biome/bin/biome",
  "check",
  "--error-on-warnings",
  "--max-diagnostics=80",
  "--colors=off",
  "--reporter=concise",
  ".",
];

/** @type {readonly { name: string, run: () => Promise<string[]> }[]} */
export const CHECKS = [
  { name: "types of the packages", run: packageTypes },
  { name: "types of every file", run: allTypes },
  { name: "format and lint", run: () => program(BIOME) },
  { name: "borders", run: async () => (await checkBorders()).problems },
  { name: "purity of core", run: async () => checkPurity().problems },
  { name: "texts in one table", run: async () => checkTexts().problems },
  { name: "papers", run: async () => checkDocs().problems },
  { name: "notices of others' work", run: async () => checkNotices().problems },
];

/**
 * Runs all checks one after the other and prints each as it ends.
 * @param {{ out?: import("./setup.mjs").Out }} [options]
 * @returns {Promise<CheckResult[]>}
 */
export async function runChecks({ out = process.stdout } = {}) {
  /** @type {CheckResult[]} */
  const results = [];
  for (const { name, run } of CHECKS) {
    const started = Date.now();
    const beat = setInterval(() => out.write(`  ${name}: still at it\n`), 5_000);
    /** @type {string[]} */
    let problems;
    try {
      problems = await run();
    } catch (error) {
      problems = [`${name} could not run: ${error instanceof Error ? error.message : error}`];
    } finally {
      clearInterval(beat);
    }
    const result = { name, ok: problems.length === 0, text: problems.join("\n"), tookMs: Date.now() - started };
    results.push(result);
    out.write(`${result.ok ? "ok    " : "FAILED"} ${name} (${(result.tookMs / 1000).toFixed(1)} s)\n`);
    if (!result.ok) out.write(`${lastLines(result.text, 120)}\n`);
  }
  return results;
}
