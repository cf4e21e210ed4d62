/**
 * What stands in an archive, and how large may it be? One zip of plain files: a text for each document, its history as
 * JSON lines, photos as pictures, and a manifest that names every file with its SHA-256. docs/methods/keeping.md says it
 * for people.
 */
import { say } from "@coldset/core/texts";
import { z } from "zod";

export const ARCHIVE_FORMAT = "coldset-archive";
export const ARCHIVE_VERSION = 1;

export const MANIFEST = "manifest.json";
export const CHANGES = "changes.jsonl";
export const VERSIONS = "versions.jsonl";
export const PHOTOS = "photos.jsonl";

/** Bounds of what is read. All of what the program writes itself lies inside them, or it says so when it writes. */
export const LIMITS = {
  archiveBytes: 2_000_000_000,
  entries: 10_000,
  /** All files together, unpacked. */
  totalBytes: 4_000_000_000,
  manifestBytes: 32_000_000,
  /** One text file, unpacked. */
  textBytes: 256_000_000,
  /** Documents, histories and lists together: these are held in memory. */
  allTextBytes: 512_000_000,
  /** Unpacked to packed; asked of files above `ratioFromBytes`. What is denser is written unpacked. */
  ratio: 200,
  ratioFromBytes: 1_000_000,
} as const;

const stamp = z.iso.datetime({ error: say("store.archive-form.a-day-and-time-as-2026") });
const kind = z.string().regex(/^[a-z_]{1,40}$/);
const id = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$/);
const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const revision = z.int().min(1).max(10_000_000);
const fileName = z.string().min(1).max(200);
const words = z.string().max(2000).nullable();

export const manifestSchema = z.strictObject({
  format: z.literal(ARCHIVE_FORMAT),
  version: z.literal(ARCHIVE_VERSION),
  made: stamp,
  /** The one build that it was made for, with what that names; null: everything. */
  build: id.nullable(),
  documents: z.array(
    z.strictObject({
      kind,
      id,
      label: z.string().min(1).max(300),
      revision,
      updatedAt: stamp,
      file: fileName,
      history: fileName,
    }),
  ),
  files: z.array(z.strictObject({ file: fileName, bytes: z.int().min(0), sha256 })),
});
export type Manifest = z.output<typeof manifestSchema>;

/** One line of a document's history, oldest first. `before` is left out: it is the `text` of the line above. */
export const historyLineSchema = z.strictObject({
  revision,
  change: z.int().min(1),
  /** Its place among the lines of all histories of this archive. */
  order: z.int().min(1),
  path: z.array(z.union([z.string(), z.number()])).nullable(),
  text: z.string(),
  at: stamp,
});
export type HistoryLine = z.output<typeof historyLineSchema>;

/** What somebody did at once; lines of the histories name it by its number. */
export const changeLineSchema = z.strictObject({
  change: z.int().min(1),
  what: z.enum(["edit", "put", "import", "undo", "redo", "restore"]),
  takesBack: z.int().min(1).nullable(),
  words,
  who: words,
  at: stamp,
});
export type ChangeLine = z.output<typeof changeLineSchema>;

export const versionLineSchema = z.strictObject({
  build: id,
  name: z.string().min(1).max(300),
  nameKey: z.string().min(1).max(300),
  who: words,
  at: stamp,
  documents: z.array(z.strictObject({ kind, id, revision })).max(1000),
});
export type VersionLine = z.output<typeof versionLineSchema>;

export const photoRowSchema = z.strictObject({
  photo: z.string().regex(/^[0-9a-f]{20}$/),
  kind,
  id,
  place: z.string().nullable(),
  caption: z.string(),
  file: fileName,
  sha256,
  at: stamp,
  takenAwayAt: stamp.nullable(),
});
export type PhotoRow = z.output<typeof photoRowSchema>;

/** Names that Windows keeps for devices, with any ending. */
const DEVICES = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/** A name for this document's files that every system can write, also where it does not tell capitals apart. */
export function fileNamer(): (kind: string, id: string) => string {
  const used = new Set<string>();
  return (of, name) => {
    const stem = DEVICES.test(name) ? `${name}-` : name;
    for (let n = 1; ; n += 1) {
      const candidate = n === 1 ? stem : `${stem}~${n}`;
      const key = `${of}/${candidate}`.toLowerCase();
      if (used.has(key)) continue;
      used.add(key);
      return `${of}/${candidate}`;
    }
  };
}
