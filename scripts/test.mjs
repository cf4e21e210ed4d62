/**
 * What does `npm test` do? Everything, from a bare clone: sets up, brings in the programs that the tests need, checks,
 * and runs all tests, those in a browser last. Ends with one line: N passed, N failed.
 * With arguments (`npm test -- core/plan`) only the tests under these paths are run.
 */
import { spawn } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { ROOT, readyOrExit, SetupFailure } from "./setup.mjs";

const { problems } = await readyOrExit({ out: process.stdout });
const { ensureSystemPackages } = await import("./system-packages.mjs");
const { runChecks } = await import("./checks.mjs");
const { count } = await import("./count.mjs");

const started = Date.now();
try {
  await ensureSystemPackages();
} catch (error) {
  if (!(error instanceof SetupFailure)) throw error;
  // A test that cannot run has not passed, wherever this is.
  process.stdout.write(`${error.message}\n0 passed, 1 failed\n`);
  process.exit(1);
}

/**
 * Runs the test runner as a group of its own, so that no worker outlives it, however busy.
 * @param {string[]} args
 * @returns {Promise<number>} its exit code
 */
function runGroup(args) {
  const ownGroup = process.platform !== "win32";
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      cwd: ROOT,
      stdio: ["ignore", "inherit", "inherit"],
      detached: ownGroup,
    });
    /** @param {NodeJS.Signals} signal */
    const endGroup = (signal) => {
      if (child.pid === undefined) return;
      try {
        process.kill(ownGroup ? -child.pid : child.pid, signal);
      } catch (error) {
        if (/** @type {NodeJS.ErrnoException} */ (error).code !== "ESRCH") throw error;
      }
    };
    const interrupted = () => {
      endGroup("SIGKILL");
      process.stdout.write("Interrupted.\n");
      process.exit(130);
    };
    process.once("SIGINT", interrupted);
    process.once("SIGTERM", interrupted);
    child.once("error", reject);
    child.once("exit", (code) => {
      process.removeListener("SIGINT", interrupted);
      process.removeListener("SIGTERM", interrupted);
      endGroup("SIGKILL");
      resolve(code ?? 1);
    });
  });
}

/**
 * @param {string} what
 * @param {string[]} args
 */
async function tests(what, args) {
  const reportFile = path.join(ROOT, ".setup", `tests-${what}.json`);
  fs.rmSync(reportFile, { force: true });
  const program = path.join(ROOT, "node_modules", "vitest", "vitest.mjs");
  const reporters = [
    "--reporter=default",
    "--reporter=./scripts/test-reporter.mjs",
    "--reporter=json",
    `--outputFile.json=${reportFile}`,
  ];
  const exitCode = await runGroup([program, "run", "--no-color", ...reporters, ...args]);
  const report = fs.existsSync(reportFile) ? JSON.parse(fs.readFileSync(reportFile, "utf8")) : undefined;
  return count(report, exitCode, what);
}

const paths = process.argv.slice(2);
/** @type {import("./count.mjs").Counted[]} */
const counted = [
  {
    passed: problems.length === 0 ? 1 : 0,
    failed: problems.length,
    skipped: [],
    notes: problems.map((what) => `build: ${what}`),
  },
];
if (paths.length > 0) {
  counted.push(await tests("chosen", paths));
} else {
  const checks = await runChecks();
  const failed = checks.filter((check) => !check.ok);
  counted.push({
    passed: checks.length - failed.length,
    failed: failed.length,
    skipped: [],
    notes: failed.map((check) => `check: ${check.name}`),
  });
  counted.push(await tests("units", ["--project=pure", "--project=rest", "--maxWorkers=100%"]));
  // The set-up above has just built this page; no file of tests needs to build it once more.
  process.env.COLDSET_BUILT_PAGE ??= path.join(ROOT, "web", "dist", "site");
  counted.push(await tests("browser", ["--project=browser", "--maxWorkers=2"]));
}

for (const name of counted.flatMap((part) => part.skipped)) process.stdout.write(`not run: ${name}\n`);
for (const note of counted.flatMap((part) => part.notes)) process.stdout.write(`FAILED ${note}\n`);
const passed = counted.reduce((sum, part) => sum + part.passed, 0);
const failed = counted.reduce((sum, part) => sum + part.failed, 0);
process.stdout.write(`Took ${Math.round((Date.now() - started) / 1000)} s.\n${passed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
