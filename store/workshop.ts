/** What can be done with the records of a workshop? */
import type { Refusal } from "@coldset/core/quantity";
import type { EditPath } from "@coldset/core/workshop";

/** A document without its text. */
export interface DocumentLine {
  readonly kind: string;
  readonly id: string;
  /** Name of the file it came in. */
  readonly label: string;
  /** 1 at first, one more with each change. */
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly updatedAt: string;
}

export interface StoredDocument extends DocumentLine {
  /** As written, comments and all. */
  readonly text: string;
}

export interface HistoryEntry {
  /** The revision that this change made. */
  readonly revision: number;
  /** The place that was changed; null where the whole text was put in. */
  readonly path: EditPath | null;
  /** null where the document was new. */
  readonly before: string | null;
  readonly after: string;
  readonly at: string;
}

export interface StoreRefused {
  readonly kind: "refused";
  readonly refusals: readonly Refusal[];
}

export interface PutDocument {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  /** "same": the text was already there, word for word, and keeps its revision. */
  readonly change: "new" | "changed" | "same";
}

export type Put = { readonly kind: "put"; readonly documents: readonly PutDocument[] } | StoreRefused;

export type Edited =
  | { readonly kind: "edited"; readonly revision: number; readonly text: string }
  /** Somebody else changed it meanwhile; this is how it stands now. */
  | { readonly kind: "conflict"; readonly revision: number; readonly text: string }
  | StoreRefused;

export interface Workshop {
  readonly folder: string;
  /** All documents in order of kind and id, without their texts. */
  readonly listDocuments: () => Promise<readonly DocumentLine[]>;
  /** All documents with their texts, as they stood at one moment. */
  readonly allDocuments: () => Promise<readonly StoredDocument[]>;
  readonly getDocument: (kind: string, id: string) => Promise<StoredDocument | undefined>;
  /** Takes in a text of one or more documents: all of them, or none. */
  readonly putText: (text: string, label: string) => Promise<Put>;
  /** Changes one value where it stands; `undefined` takes it out. */
  readonly edit: (
    kind: string,
    id: string,
    path: EditPath,
    value: unknown,
    /** Given: refuse as a conflict where the document has another revision by now. */
    expectedRevision?: number,
  ) => Promise<Edited>;
  /** The text as it was put in, byte for byte where nobody edited it. */
  readonly exportText: (kind: string, id: string) => Promise<string | undefined>;
  /** Every change, oldest first. */
  readonly history: (kind: string, id: string) => Promise<readonly HistoryEntry[]>;
  readonly close: () => Promise<void>;
}
