/**
 * How do changes that come in at the same moment share one way to the disk? They are made one after the other in one
 * transaction, and none of them is said to be kept before that is on the disk. Where one of them fails, or the disk does,
 * nothing of it was kept, and each is made anew by itself.
 */
import { setImmediate as othersIn } from "node:timers/promises";
import type { Kysely, Transaction } from "kysely";
import type { Tables } from "./tables.js";

/** So many at most, that nobody waits long for the others of the same transaction. */
const MOST_TOGETHER = 32;

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
      const jobs = waiting.splice(0, MOST_TOGETHER);
      const results = jobs.length > 1 ? await allAtOnce(db, jobs) : undefined;
      if (results === undefined) for (const job of jobs) await byItself(db, job);
      else for (const [i, job] of jobs.entries()) job.done(results[i]);
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

/** undefined: it did not work out together, and nothing was written. */
async function allAtOnce(db: Kysely<Tables>, jobs: readonly Job[]): Promise<readonly unknown[] | undefined> {
  try {
    return await db.transaction().execute(async (trx) => {
      const results: unknown[] = [];
      for (const { work } of jobs) results.push(await work(trx));
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
