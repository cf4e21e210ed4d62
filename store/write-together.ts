/**
 * How do changes that come in at the same moment share one way to the disk? They are made one after the other in one
 * transaction, and none of them is said to be kept before that is on the disk. Where one of them fails, or the disk does,
 * nothing of it was kept, and each is made anew by itself.
 */
import { setImmediate as othersIn } from "node:timers/promises";
import type { Kysely, Transaction } from "kysely";
import type { Tables } from "./tables.js";

/** So many at most, and no more after so long, that nobody waits long for the others of the same transaction. */
const MOST_TOGETHER = 32;
const LONGEST_TOGETHER_MS = 15;

export interface WriteTogether {
  /** `work` may be called a second time, after all that it did was undone. */
  readonly write: <T>(work: (trx: Transaction<Tables>) => Promise<T>) => Promise<T>;
  /** Done when nothing is waiting any more. */
  readonly written: () => Promise<void>;
}

interface Job {
  readonly work: (trx: Transaction<Tables>) => Promise<unknown>;
  readonly done: (value: unknown) => void;
  readonly failed: (cause: unknown) => void;
}

export function writeTogether(db: Kysely<Tables>): WriteTogether {
  const waiting: Job[] = [];
  let going: Promise<void> | undefined;
  const go = async () => {
    while (waiting.length > 0) {
      // Requests that have arrived with this one come to their edit first.
      await othersIn();
      const jobs: Job[] = [];
      const results = waiting.length > 1 ? await allAtOnce(db, waiting, jobs) : undefined;
      if (results !== undefined) for (const [i, job] of jobs.entries()) job.done(results[i]);
      else for (const job of jobs.length > 0 ? jobs : waiting.splice(0, 1)) await byItself(db, job);
    }
    going = undefined;
  };
  return {
    write: <T>(work: (trx: Transaction<Tables>) => Promise<T>) =>
      new Promise<T>((resolve, reject) => {
        // What comes out is what this very work gave.
        waiting.push({ work, done: (value) => resolve(value as T), failed: reject });
        going ??= go();
      }),
    written: async () => going,
  };
}

/** Moves those that it takes from `waiting` to `jobs`. undefined: it did not work out together, and nothing was written. */
async function allAtOnce(db: Kysely<Tables>, waiting: Job[], jobs: Job[]): Promise<readonly unknown[] | undefined> {
  try {
    return await db.transaction().execute(async (trx) => {
      const results: unknown[] = [];
      const began = performance.now();
      while (jobs.length < MOST_TOGETHER && performance.now() - began < LONGEST_TOGETHER_MS) {
        const job = waiting.shift();
        if (job === undefined) break;
        jobs.push(job);
        results.push(await job.work(trx));
      }
      return results;
    });
  } catch {
    // Whose fault it was shows when each is made by itself; that one is told, the others are kept.
    return undefined;
  }
}

async function byItself(db: Kysely<Tables>, { work, done, failed }: Job): Promise<void> {
  try {
    done(await db.transaction().execute(work));
  } catch (cause) {
    failed(cause);
  }
}
