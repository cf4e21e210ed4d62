/**
 * Does this call end? A call that computes without end is cut off by the machine itself: a promise or a timer could not,
 * since nothing else runs meanwhile. What waits without end is cut off by a timer.
 */
import vm from "node:vm";

export class Hang extends Error {}

const SCRIPT = new vm.Script("globalThis[Symbol.for('coldset.fuzz')]()");
const SLOT = Symbol.for("coldset.fuzz");

/** Runs `call`; throws Hang where it neither answers nor throws within `mostMs`. */
export async function guarded<R>(call: () => R | Promise<R>, mostMs: number): Promise<R> {
  let result: R | Promise<R> | undefined;
  (globalThis as Record<symbol, unknown>)[SLOT] = () => {
    result = call();
  };
  try {
    SCRIPT.runInThisContext({ timeout: mostMs });
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === "ERR_SCRIPT_EXECUTION_TIMEOUT") throw hang(mostMs);
    throw cause;
  }
  if (!(result instanceof Promise)) return result as R;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(hang(mostMs)), mostMs);
  });
  try {
    return await Promise.race([result, late]);
  } finally {
    clearTimeout(timer);
  }
}

const hang = (mostMs: number) => new Hang(`no answer within ${mostMs} ms`);
