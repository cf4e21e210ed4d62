#!/usr/bin/env node
/** The command `coldset`. Builds itself where that is still to do (told on the error stream), then runs. */
import { readyOrExit } from "../../scripts/setup.mjs";

await readyOrExit({ out: process.stderr });
const { main } = await import("../dist/main.js");
process.exitCode = await main(process.argv.slice(2));
