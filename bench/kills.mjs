/**
 * Does anything get lost when the program is killed many times in the middle of its work?
 *   npm run bench -- kills --count 200 --seed 1
 */
import { parseArgs } from "node:util";
import { runKills } from "../store/kill-harness.mjs";

const { values } = parseArgs({
  args: process.argv.slice(2).filter((word) => word !== "--"),
  options: { count: { type: "string", default: "200" }, seed: { type: "string", default: "1" } },
});
const [kills, seed] = [Number(values.count), Number(values.seed)];
if (!Number.isInteger(kills) || kills < 1 || !Number.isInteger(seed)) {
  process.stderr.write("--count takes a whole number from 1, --seed a whole number.\n");
  process.exit(2);
}
const say = (/** @type {string} */ line) => process.stdout.write(`${line}\n`);
const from = performance.now();
// Ctrl-C: no more kills, but the table of those so far.
let stopped = false;
process.once("SIGINT", () => {
  stopped = true;
});
const tally = await runKills({ kills, seed, say, enough: () => stopped });
const ms = [...tally.killedMs].sort((a, b) => a - b);
const at = (/** @type {number} */ share) => Math.round(ms[Math.min(ms.length - 1, Math.floor(share * ms.length))] ?? 0);
const columns = ["kills", "acknowledged", "caught", "lost", "damaged"];
const row = (/** @type {string} */ name, /** @type {readonly (string | number)[]} */ cells) =>
  say(name.padEnd(30) + cells.map((cell, i) => String(cell).padStart((columns[i]?.length ?? 0) + 3)).join(""));
row("killed while writing", columns);
const lines = [...tally.lines.values()].sort((a, b) => a.door.localeCompare(b.door));
const cells = (/** @type {(typeof lines)[number]} */ l) => [l.kills, l.acknowledged, l.caught, l.lost, l.damaged];
for (const line of lines) row(`${line.door}: ${line.name}`, cells(line));
const sums = lines.map(cells).reduce((sum, of) => sum.map((n, i) => n + (of[i] ?? 0)), [0, 0, 0, 0, 0]);
row("all", sums);
say(`${tally.kills} kills in ${Math.round((performance.now() - from) / 1000)} s, seed ${seed}.`);
say(`Killed ${at(0)} to ${at(1)} ms into the work, half of them before ${at(0.5)} ms.`);
say(`The next one had the folder after ${Math.round(tally.slowestOpeningMs)} ms at most.`);
say(tally.problems.length === 0 ? "Nothing lost, nothing half done, nothing damaged." : tally.problems.join("\n"));
process.exitCode = tally.problems.length === 0 ? 0 : 1;
