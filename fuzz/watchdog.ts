/**
 * Is this process still getting on? A second thread looks at a counter. Where it has stood still for too long (a loop
 * behind an `await`, which guard.ts cannot cut off), it says at which input, and ends the process: a hang must be seen.
 */
import { Worker } from "node:worker_threads";

const BODY = `
const { workerData } = require("node:worker_threads");
const { writeSync } = require("node:fs");
const cell = new BigInt64Array(workerData.shared);
let last = -1n, since = Date.now();
setInterval(() => {
  const now = Atomics.load(cell, 0);
  if (now !== last) { last = now; since = Date.now(); return; }
  if (now < 0n || Date.now() - since < workerData.mostMs) return;
  writeSync(2, "HANG door " + workerData.door + " seed " + workerData.seed + " input " + now + "\\n");
  process.kill(process.pid, "SIGKILL");
}, 250);
`;

export interface Watchdog {
  /** The input that is being worked on; -1: none, wait as long as it takes. */
  readonly at: (index: number) => void;
  readonly end: () => Promise<void>;
}

export function watchdog(door: string, seed: number, mostMs: number): Watchdog {
  const shared = new SharedArrayBuffer(8);
  const cell = new BigInt64Array(shared);
  Atomics.store(cell, 0, -1n);
  const worker = new Worker(BODY, { eval: true, workerData: { shared, door, seed, mostMs } });
  worker.unref();
  return {
    at: (index) => void Atomics.store(cell, 0, BigInt(index)),
    end: async () => {
      await worker.terminate();
    },
  };
}
