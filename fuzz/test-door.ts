/**
 * For tests: a thousand inputs of a fixed seed, and every input that failed once. Nothing is timed here, but a hang is
 * seen: guard.ts cuts it off, or watchdog.ts ends the process with the number of the input.
 */
import { describe, expect, it } from "vitest";
import type { AnyDoor, Door } from "./door.js";
import { guarded } from "./guard.js";
import { keptInputs } from "./kept.js";
import { runDoor } from "./run-door.js";

/** The day on which the first door was tried. */
const SEED = 20261129;

export interface TestOptions {
  readonly count?: number;
  /** The least share that must be accepted: a generator whose inputs all fail at the first gate tests nothing. */
  readonly accepted: number;
  /** Ways that must occur. */
  readonly ways?: readonly string[];
}

export function testDoor(anyDoor: AnyDoor, { count = 1000, accepted, ways = [] }: TestOptions): void {
  const door = anyDoor as unknown as Door<unknown>;
  describe(`the door of ${door.name}`, () => {
    it(`${door.holds} (${count} inputs)`, async () => {
      const report = await runDoor(anyDoor, { count, seed: SEED });
      expect(report.failures).toEqual([]);
      expect(report.inputs).toBe(count);
      expect(report.accepted / count).toBeGreaterThanOrEqual(accepted);
      expect([...report.ways.keys()]).toEqual(expect.arrayContaining([...ways]));
    }, 300_000);
    const kept = keptInputs(door.name);
    if (kept.length > 0) {
      it.each(kept.map((k) => [k.file, k] as const))("what failed once holds: %s", async (_file, { input }) => {
        await door.open?.();
        try {
          await guarded(() => door.put(input), 10_000);
        } finally {
          await door.shut?.();
        }
      });
    }
  });
}
