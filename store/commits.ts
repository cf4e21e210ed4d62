/**
 * Who is told of every change that is kept, whichever way it came in? After each commit the new rows of the history are
 * read and told, so that nothing that writes has to remember to tell.
 */
import type { Kysely } from "kysely";
import type { Tables } from "./tables.js";

/** A document has this revision now. */
export interface Commit {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
}

export type CommitListener = (commits: readonly Commit[]) => void;

export interface CommitTeller {
  /** Gives the way to stop listening. What was kept just before it begins may be told, too. */
  readonly hear: (listener: CommitListener) => () => void;
  /** Something was committed. */
  readonly committed: () => void;
  readonly close: () => void;
}

/** @param failed takes what stood in the way of telling; the records themselves are not touched by it */
export function commitTeller(db: Kysely<Tables>, lastSeq: number, failed: (cause: unknown) => void): CommitTeller {
  const listeners = new Set<CommitListener>();
  let told = lastSeq;
  let reading = false;
  let again = false;
  let closed = false;
  const read = async () => {
    do {
      again = false;
      const rows = await db
        .selectFrom("history")
        .select(["seq", "kind", "id", "revision"])
        .where("seq", ">", told)
        .orderBy("seq")
        .execute();
      const last = rows.at(-1);
      if (last === undefined) continue;
      told = last.seq;
      const commits = rows.map(({ kind, id, revision }) => ({ kind, id, revision }));
      for (const listener of listeners) listener(commits);
    } while (again && !closed);
  };
  const readSoon = () => {
    if (reading) return;
    reading = true;
    void read()
      .catch((cause: unknown) => {
        if (!closed) failed(cause);
      })
      .finally(() => {
        reading = false;
        // Committed just as the reading ended.
        if (again && !closed) readSoon();
      });
  };
  return {
    hear: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    committed: () => {
      if (closed) return;
      again = true;
      readSoon();
    },
    close: () => {
      closed = true;
      listeners.clear();
    },
  };
}
