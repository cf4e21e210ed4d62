/** What can be done with the records of a workshop? */
import type { Refusal } from "@coldset/core/quantity";
import type { DocumentName, EditPath } from "@coldset/core/workshop";
import type { ImportChoices, ImportPlan } from "./archive/plan-import.js";
import type { Imported } from "./archive/take-import.js";
import type { ArchiveMade } from "./archive/write-archive.js";
import type { ZipSource } from "./archive/zip-entries.js";
import type { CommitListener } from "./commits.js";
import type { WorkshopHistory } from "./history-types.js";
import type { NewPhoto, PhotoChanged, PhotoKept, PhotoLine, PictureBytes } from "./photos.js";
import type { ReadText } from "./read-texts.js";

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
  /** `repeated`: this edit had arrived before; the document may have moved on since. */
  | { readonly kind: "edited"; readonly revision: number; readonly text: string; readonly repeated?: true }
  /** Somebody else changed it meanwhile; this is how it stands now. */
  | { readonly kind: "conflict"; readonly revision: number; readonly text: string }
  | StoreRefused;

export interface Workshop extends WorkshopHistory {
  readonly folder: string;
  /** Made by chance with the records: no other workshop has it. */
  readonly name: string;
  /** Tells a second opener of the folder at which address this one answers. */
  readonly sayWhere: (url: string) => void;
  /** All documents in order of kind and id, without their texts. */
  readonly listDocuments: () => Promise<readonly DocumentLine[]>;
  /** All documents with their texts, as they stood at one moment. */
  readonly allDocuments: () => Promise<readonly StoredDocument[]>;
  readonly getDocument: (kind: string, id: string) => Promise<StoredDocument | undefined>;
  /** Those of these names that are there, as they stood at one moment; in no order. */
  readonly documentsNamed: (names: readonly DocumentName[]) => Promise<readonly StoredDocument[]>;
  /** What a document says, read once as long as its text stands. */
  readonly readText: (stored: StoredDocument) => ReadText;
  /** Takes in a text of one or more documents: all of them, or none. */
  readonly putText: (text: string, label: string, what?: "put" | "import") => Promise<Put>;
  /** Changes one value where it stands; `undefined` takes it out. */
  readonly edit: (
    kind: string,
    id: string,
    path: EditPath,
    value: unknown,
    /** Given: refuse as a conflict where the document has another revision by now. */
    expectedRevision?: number,
    /** Given: the edit is made once, however often it arrives under this id. */
    editId?: string,
    /** true: it puts back what stood there before, and is kept as an undo where that is so. */
    takesBack?: boolean,
  ) => Promise<Edited>;
  /** The text as it was put in, byte for byte where nobody edited it. */
  readonly exportText: (kind: string, id: string) => Promise<string | undefined>;
  /** Every change, oldest first. */
  readonly history: (kind: string, id: string) => Promise<readonly HistoryEntry[]>;
  readonly photos: WorkshopPhotos;
  readonly archive: WorkshopArchive;
  /** Tells of every change that is kept, whichever way it came in. Gives the way to stop listening. */
  readonly hearCommits: (listener: CommitListener) => () => void;
  readonly close: () => Promise<void>;
}

export interface WorkshopPhotos {
  /** Those of one document, oldest first, those taken away too. */
  readonly of: (kind: string, id: string) => Promise<readonly PhotoLine[]>;
  readonly one: (photo: string) => Promise<PhotoLine | undefined>;
  readonly bytes: (sha256: string) => Promise<PictureBytes | undefined>;
  readonly add: (photo: NewPhoto) => Promise<PhotoKept>;
  /** `takenAway` false puts it back. */
  readonly change: (
    photo: string,
    change: { readonly caption?: string; readonly takenAway?: boolean },
  ) => Promise<PhotoChanged>;
}

/** What wants to come in: an archive, or the text of one or more documents. */
export type ImportSource =
  | { readonly archive: ZipSource; readonly label: string }
  | {
      readonly text: string;
      readonly label: string;
      /** The file name that the documents keep in the records, where it is not the label. */
      readonly documentLabel?: string;
    };

export interface WorkshopArchive {
  /** Everything, or one build with what it names, as one zip. */
  readonly make: (build?: string) => Promise<ArchiveMade | StoreRefused>;
  /** What would come in; nothing is changed. */
  readonly preview: (source: ImportSource, choices?: ImportChoices) => Promise<ImportPlan | StoreRefused>;
  /** All of it, or nothing. */
  readonly take: (source: ImportSource, choices?: ImportChoices) => Promise<Imported>;
}
