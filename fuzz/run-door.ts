/**
 * What does this door do with so many inputs of this seed? Input i is made from the seed and i alone, in batches, so any
 * single one can be made again. A failing one is made smaller first; a slow one is asked again before it is called slow,
 * since a busy machine makes everything slow.
 */
import fc from "fast-check";
import type { AnyDoor, Door, Went } from "./door.js";
import { guarded, Hang } from "./guard.js";
import { watchdog } from "./watchdog.js";

const BATCH = 100;
/** Nobody waits longer for an answer. */
export const MOST_MS = 1_000;
/** Past this it is no longer slow, it hangs. */
const HANG_MS = 20_000;
/** For what a guard cannot cut off: the process ends. */
const DEAD_MS = 60_000;
const MOST_FAILURES = 20;
const SHRINK_MS = 20_000;

export interface Failure {
  readonly index: number;
  readonly why: string;
  /** As JSON, made smaller as far as that went. */
  readonly input: string;
  /** Equal for failures of one kind; only the first of a kind is made smaller. */
  readonly like: string;
}

export interface DoorReport {
  readonly door: string;
  readonly seed: number;
  readonly inputs: number;
  readonly accepted: number;
  readonly refused: number;
  /** Work of this process for all of it, the making of the inputs and the judging included. */
  readonly cpuMs: number;
  readonly slowestMs: number;
  readonly slowestIndex: number;
  /** "accepted length", "refused unknown-unit" ... and how often. */
  readonly ways: ReadonlyMap<string, number>;
  readonly failures: readonly Failure[];
}

export interface RunOptions {
  readonly count: number;
  readonly seed: number;
  readonly from?: number;
  /** Tests do not time anything; only a hang is a failure there. */
  readonly timed?: boolean;
  /** After each batch, and after each failure. */
  readonly told?: (so: DoorReport) => void;
}

/** A seed of its own for each batch. Multipliers of a common 32-bit mixing step; any odd ones would do. */
export function batchSeed(seed: number, batch: number): number {
  let h = (seed ^ Math.imul(batch + 1, 0x9e3779b1)) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) | 0;
}

export function inputsOfBatch<T>(door: Door<T>, seed: number, batch: number): T[] {
  return fc.sample(door.inputs, { seed: batchSeed(seed, batch), numRuns: BATCH });
}

export async function runDoor(anyDoor: AnyDoor, options: RunOptions): Promise<DoorReport> {
  const door = anyDoor as unknown as Door<unknown>;
  const { count, seed, from = 0, timed = false } = options;
  const report = {
    door: door.name,
    seed,
    inputs: 0,
    accepted: 0,
    refused: 0,
    cpuMs: 0,
    slowestMs: 0,
    slowestIndex: -1,
    ways: new Map<string, number>(),
    failures: [] as Failure[],
  };
  const dog = watchdog(door.name, seed, DEAD_MS);
  await door.open?.();
  const began = process.cpuUsage();
  try {
    for (let batch = Math.floor(from / BATCH); batch * BATCH < count; batch++) {
      const inputs = inputsOfBatch(door, seed, batch);
      for (let k = 0; k < BATCH; k++) {
        const index = batch * BATCH + k;
        if (index < from || index >= count) continue;
        if (report.failures.length >= MOST_FAILURES) break;
        const input = inputs[k];
        dog.at(index);
        const stop = stopwatch();
        try {
          const went = await guarded(() => door.put(input), HANG_MS);
          report[went.went] += 1;
          const way = `${went.went} ${went.how}`.trim();
          report.ways.set(way, (report.ways.get(way) ?? 0) + 1);
          let took = stop();
          if (timed && took > MOST_MS) took = Math.min(took, await quickest(door, input));
          if (took > report.slowestMs) Object.assign(report, { slowestMs: took, slowestIndex: index });
          if (timed && took > MOST_MS) throw new Hang(`answered after ${Math.round(took)} ms, also when asked again`);
        } catch (cause) {
          dog.at(-1);
          const known = report.failures.some((f) => f.like === likeness(cause));
          const shown = known ? asIs(input, cause) : await smaller(door, seed, batch, k, input, cause);
          report.failures.push({ index, like: likeness(cause), ...shown });
          options.told?.(report);
        }
        report.inputs += 1;
      }
      const used = process.cpuUsage(began);
      report.cpuMs = (used.user + used.system) / 1000;
      options.told?.(report);
    }
  } finally {
    dog.at(-1);
    await door.shut?.();
    await dog.end();
  }
  return report;
}

/**
 * What an input took, ms: by the clock, or by the processor where that is less, since on a busy machine the clock also
 * counts the work of others. What waits without working is caught by HANG_MS.
 */
function stopwatch(): () => number {
  const began = performance.now();
  const used = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(used);
    return Math.min(performance.now() - began, (user + system) / 1000);
  };
}

async function quickest(door: Door<unknown>, input: unknown): Promise<number> {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 3; i++) {
    const stop = stopwatch();
    await guarded<Went>(() => door.put(input), HANG_MS);
    best = Math.min(best, stop());
  }
  return best;
}

async function smaller(
  door: Door<unknown>,
  seed: number,
  batch: number,
  k: number,
  input: unknown,
  cause: unknown,
): Promise<{ readonly why: string; readonly input: string }> {
  const first = asIs(input, cause);
  // A hang is shown as it is: each smaller try could hang as well.
  if (cause instanceof Hang) return first;
  const details = await fc.check(
    fc.asyncProperty(door.inputs, async (tried) => {
      await guarded<Went>(() => door.put(tried), HANG_MS);
    }),
    { seed: batchSeed(seed, batch), path: String(k), numRuns: k + 1, interruptAfterTimeLimit: SHRINK_MS },
  );
  const found = details.counterexample?.[0];
  return found === undefined ? first : { why: whyOf(details.errorInstance), input: JSON.stringify(found) };
}

const asIs = (input: unknown, cause: unknown) => ({ why: whyOf(cause), input: JSON.stringify(input) });

/** The words of a failure without its figures and what was quoted. */
const likeness = (cause: unknown) =>
  whyOf(cause)
    .replace(/"(?:[^"\\]|\\.)*"|-?[\d.]+/g, "")
    .slice(0, 50);

function whyOf(cause: unknown): string {
  if (!(cause instanceof Error)) return String(cause);
  const place = /\n\s+at .*/.exec(cause.stack ?? "")?.[0]?.trim() ?? "";
  return `${cause.constructor.name}: ${cause.message}`.slice(0, 600) + (place === "" ? "" : ` (${place})`);
}
