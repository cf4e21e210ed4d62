/** What wants to come in, whether it stood in an archive or in a plain file? Checked, and nothing of it kept yet. */
import { documentsIn } from "../put-text.js";
import type { MediaType } from "../sniff-picture.js";
import type { ImportSource, StoreRefused } from "../workshop.js";
import type { ChangeLine, HistoryLine, PhotoRow, VersionLine } from "./archive-form.js";

export interface IncomingDocument {
  readonly kind: string;
  readonly id: string;
  readonly label: string;
  readonly text: string;
  readonly updatedAt: string;
  /** Oldest first, the last one with `text`; empty where only the text came. */
  readonly history: readonly HistoryLine[];
}

export interface IncomingPicture {
  readonly mediaType: MediaType;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly bytes: Uint8Array;
}

export interface Incoming {
  readonly kind: "incoming";
  /** Name of the file. */
  readonly label: string;
  readonly documents: readonly IncomingDocument[];
  readonly changes: readonly ChangeLine[];
  readonly versions: readonly VersionLine[];
  readonly photos: readonly PhotoRow[];
  /** The picture of this file of the archive, read and checked anew. */
  readonly picture: (row: PhotoRow) => Promise<IncomingPicture | StoreRefused>;
  readonly close: () => void;
}

/** A text of one or more documents. */
export function incomingText(
  { text, label, documentLabel = label }: Extract<ImportSource, { readonly text: string }>,
  at: string,
): Incoming | StoreRefused {
  const loaded = documentsIn(text, documentLabel);
  if (loaded.kind === "refused") return loaded;
  return {
    kind: "incoming",
    label,
    documents: loaded.docs.map(({ doc, text: own }) => ({
      kind: doc.kind,
      id: doc.id,
      label: documentLabel,
      text: own,
      updatedAt: at,
      history: [],
    })),
    changes: [],
    versions: [],
    photos: [],
    picture: () => Promise.reject(new Error("a text holds no picture")),
    close: () => {},
  };
}
