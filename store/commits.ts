/**
 * Who is told of every change that is kept, whichever way it came in? At each commit the new rows of the history are
 * read and told, so that nothing that writes has to remember to tell. What keeps documents in memory is told at the commit
 * itself; others a moment later, so that a commit waits for nobody.
 */

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
  /** Something was committed. Gives what changed. */
  readonly committed: () => readonly Commit[];
  readonly close: () => void;
}

/**
 * @param newRows the rows of the history after this one, in order
 * @param failed takes what stood in the way of telling; the records themselves are not touched by it
 */
export function commitTeller(
  newRows: (afterSeq: number) => readonly (Commit & { readonly seq: number })[],
  lastSeq: number,
  failed: (cause: unknown) => void,
): CommitTeller {
  const listeners = new Set<CommitListener>();
  let read = lastSeq;
  let toTell: Commit[] = [];
  let closed = false;
  const tell = () => {
    const commits = toTell;
    toTell = [];
    if (closed) return;
    for (const listener of listeners) {
      try {
        listener(commits);
      } catch (cause) {
        failed(cause);
      }
    }
  };
  return {
    hear: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    committed: () => {
      const rows = newRows(read);
      read = rows.at(-1)?.seq ?? read;
      const commits = rows.map(({ kind, id, revision }) => ({ kind, id, revision }));
      if (commits.length > 0 && !closed) {
        if (toTell.length === 0) setImmediate(tell);
        toTell.push(...commits);
      }
      return commits;
    },
    close: () => {
      closed = true;
      listeners.clear();
    },
  };
}
