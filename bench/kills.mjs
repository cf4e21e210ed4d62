/**
 * Does anything get lost when the program is killed many times in the middle of its work?
 *   npm run bench -- kills --kills 200 --seed 1
 */
import { parseArgs } from "node:util";
import { runKills } from "../store/kill-harness.mjs";

const { values } = parseArgs({
  options: { kills: { type: "string", default: "200" }, seed: { type: "string", default: "1" } },
});
const [kills, seed] = [Number(values.kills), Number(values.seed)];
if (!Number.isInteger(kills) || kills < 1 || !Number.isInteger(seed)) {
  process.stderr.write("--kills takes a whole number from 1, --seed a whole number.\n");
  process.exit(2);
}
const say = (/** @type {string} */ line) => process.stdout.write(`${line}\n`);
const from = performance.now();
const tally = await runKills({ kills, seed, say });
const ms = [...tally.workMs].sort((a, b) => a - b);
const at = (/** @type {number} */ share) => Math.round(ms[Math.min(ms.length - 1, Math.floor(share * ms.length))] ?? 0);
say(`${tally.kills} kills in ${Math.round((performance.now() - from) / 1000)} s, seed ${seed}.`);
say(`Killed ${at(0)} to ${at(1)} ms into the work, half of them before ${at(0.5)} ms.`);
say(
  `${tally.edits} edits were said to be kept; ${tally.imports} imports and ${tally.exports} exports stood afterwards, each whole.`,
);
say(tally.problems.length === 0 ? "Nothing lost, nothing half done, nothing damaged." : tally.problems.join("\n"));
process.exitCode = tally.problems.length === 0 ? 0 : 1;
