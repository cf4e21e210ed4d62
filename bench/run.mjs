/**
 * How long does it take, compared with something else in the same run? Runs bench/*.bench.mjs on the built program.
 *   npm run bench                 all
 *   npm run bench -- search       those whose name holds "search"
 *   npm run bench -- kills --count N --seed S                     kills the program in its work and looks for what is lost
 *   npm run bench -- load --users N --seconds N --seed S          many people at once, beside a bare server, nothing lost
 *   npm run bench -- fuzz --door NAME|all --count N --seed S      tries every door with odd inputs instead (fuzz/run.mjs)
 */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { ROOT, readyOrExit } from "../scripts/setup.mjs";

/** @typedef {{ name: string, run: () => unknown }} Case */
/** @typedef {{ question: string, cases: () => readonly Case[] | Promise<readonly Case[]> }} BenchFile */

await readyOrExit({ out: process.stdout });
if (process.argv[2] === "fuzz") {
  process.argv.splice(2, 1);
  await import("../fuzz/run.mjs");
  process.exit();
}
if (process.argv[2] === "kills") {
  process.argv.splice(2, 1);
  await import("./kills.mjs");
  process.exit();
}
if (process.argv[2] === "load") {
  process.argv.splice(2, 1);
  await import("./load.mjs");
  process.exit();
}
const { Bench } = await import("tinybench");

/** @param {number} ms */
function time(ms) {
  if (ms >= 1000) return `${(ms / 1000).toFixed(2)} s`;
  return ms >= 1 ? `${ms.toFixed(2)} ms` : `${(ms * 1000).toFixed(1)} us`;
}

const here = path.join(ROOT, "bench");
const wanted = process.argv.slice(2);
const files = fs
  .readdirSync(here)
  .filter((name) => name.endsWith(".bench.mjs"))
  .filter((name) => wanted.length === 0 || wanted.some((word) => name.includes(word)))
  .sort();
if (files.length === 0) {
  process.stderr.write(
    `No file bench/*.bench.mjs${wanted.length > 0 ? ` with ${wanted.join(" or ")} in its name` : ""}.\n`,
  );
  process.exitCode = 1;
}

process.stdout.write(`Node ${process.versions.node}, ${process.platform} ${process.arch}, ${os.cpus().length} cores\n`);
for (const file of files) {
  /** @type {BenchFile} */
  const { question, cases } = await import(pathToFileURL(path.join(here, file)).href);
  const bench = new Bench({ time: 1000, warmupTime: 200, throws: true });
  for (const { name, run } of await cases()) bench.add(name, run);
  await bench.run();
  process.stdout.write(`\n${question} (${file})\n`);
  /** @type {number | undefined} the first case is the yardstick */
  let yardstick;
  for (const task of bench.tasks) {
    const result = task.result;
    if (!("latency" in result)) throw new Error(`${file}: ${task.name} gave no result`);
    const { p50, p99, samplesCount } = result.latency;
    yardstick ??= p50;
    const ratio = yardstick / p50;
    process.stdout.write(
      `  ${task.name.padEnd(40)} median ${time(p50).padStart(10)}  p99 ${time(p99).padStart(10)}  n ${samplesCount}  ${ratio.toFixed(2)} x the first\n`,
    );
  }
}
