/**
 * The process in which one door is tried: `fuzz/run.mjs` starts it for each, from a bundle of the sources, and reads one
 * line of JSON after each batch. It ends itself where it hangs (watchdog.ts); the runner then goes on behind that input.
 */
import { DOORS } from "./doors.js";
import { inputsOfBatch, runDoor } from "./run-door.js";

const [name, count, seed, from, show] = process.argv.slice(2);
const door = DOORS.find((d) => d.name === name);
if (door === undefined) {
  process.stdout.write(`${JSON.stringify({ doors: DOORS.map((d) => d.name) })}\n`);
} else if (show === "show") {
  const at = Number(from);
  const input = inputsOfBatch(door as never, Number(seed), Math.floor(at / 100))[at % 100];
  process.stdout.write(`${JSON.stringify(input)}\n`);
} else {
  await runDoor(door, {
    count: Number(count),
    seed: Number(seed),
    from: Number(from),
    timed: true,
    told: (report) => process.stdout.write(`${JSON.stringify({ ...report, ways: [...report.ways] })}\n`),
  });
  process.exit(0);
}
