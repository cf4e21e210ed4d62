/**
 * What does `npm start` do? Sets everything up where that is still to do, then serves the workshop, as `coldset serve`
 * with the same arguments. Ctrl-C ends it cleanly.
 */
import { ROOT, readyOrExit } from "./setup.mjs";

/** After a signal the server has this long to close its records, then the process ends anyway. */
const CLOSING_MS = 5_000;
/** The same signal may arrive a second time this much later. */
const ECHO_MS = 250;

const { problems } = await readyOrExit({ out: process.stdout });
if (problems.includes("page")) process.exit(1);
const { pathToFileURL } = await import("node:url");
const { join } = await import("node:path");

let asked = false;
for (const signal of ["SIGINT", "SIGTERM"]) {
  process.on(signal, () => {
    asked = true;
    setTimeout(() => process.exit(0), CLOSING_MS).unref();
  });
}
const { main } = await import(pathToFileURL(join(ROOT, "cli", "dist", "main.js")).href);
process.exitCode = await main(["serve", ...process.argv.slice(2)]);
// npm hands on a Ctrl-C that the terminal has sent us already; the second one must not meet a process half gone.
if (asked) await new Promise((resolve) => setTimeout(resolve, ECHO_MS));
