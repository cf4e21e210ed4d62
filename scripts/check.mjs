/** What does `npm run check` do? Format, lint, types, borders and papers; no tests, nothing is changed. */
import { readyOrExit } from "./setup.mjs";

await readyOrExit({ out: process.stdout, build: false });
const { runChecks } = await import("./checks.mjs");
const results = await runChecks();
const failed = results.filter((result) => !result.ok).length;
process.stdout.write(`${results.length - failed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 && results.length > 0 ? 0 : 1;
