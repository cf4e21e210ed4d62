/** How does the queue of entries stand, what can a person decide in it, and what does it need from its surroundings? */
import type { Loaded, SaveAnswer, StoredPlain } from "./api.js";
import type { Entry, EntryShelf } from "./entry-shelf.js";

export interface Conflict {
  readonly entry: Entry;
  /** What the person wrote last into this place; the same as in the entry, or in a later one. */
  readonly mine: unknown;
  readonly theirs: unknown;
  /** The row of the list that was edited is not there any more, so that nothing can be put back into it. */
  readonly gone: boolean;
}

export type Trouble = { readonly kind: "unreachable" } | { readonly kind: "failed"; readonly reference: string };

export interface QueueState {
  /** Not yet in the records, in the order made. */
  readonly waiting: readonly Entry[];
  readonly sending: boolean;
  readonly trouble?: Trouble;
  /** At most one for each document, the oldest. */
  readonly conflicts: readonly Conflict[];
  /** Entries the server would not take. Their text is kept here. */
  readonly notSaved: readonly Entry[];
  /** Entries that were made for another workshop than the one that answers here now. They stay until that one is back. */
  readonly apart: readonly Entry[];
  /** How many live in this window only, because the browser would not keep them. */
  readonly unkept: number;
  readonly lastSaved?: Entry;
}

export const EMPTY_QUEUE: QueueState = {
  waiting: [],
  sending: false,
  conflicts: [],
  notSaved: [],
  apart: [],
  unkept: 0,
};

/** A value instead of a word: both as one reading. */
export type Choice = "mine" | "theirs" | { readonly value: unknown };

export interface QueueTools {
  readonly shelf: EntryShelf;
  /** The workshop that answers here, as far as this window knows. */
  readonly workshop: () => string | undefined;
  readonly send: (entry: Entry, revision: number) => Promise<SaveAnswer>;
  /** The document as the server has it now. */
  readonly load: (kind: string, id: string) => Promise<Loaded<StoredPlain>>;
  /** The document as this browser last saw it. */
  readonly known: (kind: string, id: string) => Promise<StoredPlain | undefined>;
  /** The document stands like this in the records now. Ends when the browser has kept it. */
  readonly learned: (doc: StoredPlain) => Promise<void>;
  /** Runs it while no other window of this browser does the same. */
  readonly alone: (run: () => Promise<void>) => Promise<void>;
  readonly changed: (state: QueueState) => void;
  readonly later: (run: () => void, ms: number) => void;
  readonly clock: () => number;
  readonly freshId: () => string;
}
