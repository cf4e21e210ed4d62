/**
 * How does everything in a workshop become one archive? Read at one moment, so that documents, histories and photos
 * belong together; written as a stream, so that many photos need no memory.
 */

import { Readable } from "node:stream";
import { deflateRawSync } from "node:zlib";
import { say } from "@coldset/core/texts";
import { loadText, namedByBuild } from "@coldset/core/workshop";
import { Zip, ZipDeflate, ZipPassThrough } from "fflate";
import type { Kysely, Transaction } from "kysely";
import { allPhotos, type PhotoLine, pictureBytes, sha256Of } from "../photos.js";
import type { Tables } from "../tables.js";
import type { StoredDocument, StoreRefused } from "../workshop.js";
import {
  ARCHIVE_FORMAT,
  ARCHIVE_VERSION,
  CHANGES,
  type ChangeLine,
  fileNamer,
  type HistoryLine,
  LIMITS,
  MANIFEST,
  type Manifest,
  PHOTOS,
  type PhotoRow,
  VERSIONS,
  type VersionLine,
} from "./archive-form.js";

export interface ArchiveMade {
  readonly kind: "archive";
  /** Fails while it is read where a picture cannot be read any more. */
  readonly stream: Readable;
  readonly documents: number;
  readonly photos: number;
  readonly versions: number;
}

interface TextFile {
  readonly file: string;
  readonly text: Buffer;
  readonly at: string;
}

interface Snapshot {
  readonly manifest: Omit<Manifest, "files">;
  readonly texts: readonly TextFile[];
  readonly pictures: readonly (PhotoRow & { readonly sizeBytes: number })[];
  readonly counts: Pick<ArchiveMade, "documents" | "photos" | "versions">;
}

export async function makeArchive(
  db: Kysely<Tables>,
  build: string | undefined,
  made: string,
): Promise<ArchiveMade | StoreRefused> {
  const taken = await db.transaction().execute((trx) => snapshot(trx, build, made));
  if ("kind" in taken) return taken;
  const files: Manifest["files"] = [
    ...taken.texts.map(({ file, text }) => ({ file, bytes: text.length, sha256: sha256Of(text) })),
    ...taken.pictures.map(({ file, sizeBytes, sha256 }) => ({ file, bytes: sizeBytes, sha256 })),
  ];
  const manifest = jsonBytes({ ...taken.manifest, files });
  const tooMuch = tooLarge(files, manifest.length);
  if (tooMuch !== undefined) return tooMuch;
  const texts = [{ file: MANIFEST, text: manifest, at: made }, ...taken.texts];
  const stream = Readable.from(zipped(db, texts, taken.pictures), { objectMode: false });
  return { kind: "archive", stream, ...taken.counts };
}

/** File by file; what has been handed on need not be remembered. */
async function* zipped(
  db: Kysely<Tables>,
  texts: readonly TextFile[],
  pictures: Snapshot["pictures"],
): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const zip = new Zip((cause, chunk) => {
    if (cause !== null) throw cause;
    ready.push(chunk);
  });
  const add = (entry: ZipPassThrough | ZipDeflate, bytes: Uint8Array, at: string) => {
    Object.assign(entry, { mtime: new Date(at), os: UNIX, attrs: PLAIN_FILE << 16 });
    zip.add(entry);
    entry.push(bytes, true);
    return ready.splice(0);
  };
  for (const { file, text, at } of texts)
    yield* add(compresses(text) ? new ZipDeflate(file) : new ZipPassThrough(file), text, at);
  for (const { file, sha256, at } of pictures) {
    const picture = await pictureBytes(db, sha256);
    if (picture === undefined || sha256Of(picture.bytes) !== sha256)
      throw new Error(`the picture ${sha256} is damaged`);
    yield* add(new ZipPassThrough(file), picture.bytes, at);
  }
  zip.end();
  yield* ready.splice(0);
}

/** "Version made by" and file mode of a plain file that its owner may write (PKWARE APPNOTE 4.4.2 and 4.4.15). */
const UNIX = 3;
const PLAIN_FILE = 0o100_644;

/** A text that packs too well would look like a trap to whoever reads the archive. */
function compresses(text: Buffer): boolean {
  if (text.length < LIMITS.ratioFromBytes) return true;
  return text.length / deflateRawSync(text, { level: 6 }).length < LIMITS.ratio / 2;
}

async function snapshot(
  trx: Transaction<Tables>,
  build: string | undefined,
  made: string,
): Promise<Snapshot | StoreRefused> {
  const all = await trx
    .selectFrom("documents")
    .select(["kind", "id", "label", "text", "revision", "updated_at as updatedAt"])
    .orderBy("kind")
    .orderBy("id")
    .execute();
  const chosen = build === undefined ? all : documentsOfBuild(all, build);
  if (chosen === undefined) return noBuild(build ?? "");
  const key = ({ kind, id }: { readonly kind: string; readonly id: string }) => `${kind} ${id}`;
  const inside = new Set(chosen.map(key));

  const histories = new Map<string, HistoryLine[]>();
  for (const document of chosen) histories.set(key(document), await historyOf(trx, document));
  const lines = [...histories.values()].flat();
  const numbers = new Set(lines.map((line) => line.change));
  const changes = (await changesOf(trx)).filter((c) => numbers.has(c.change));
  // Numbered anew from 1, so that the same workshop gives the same archive on every machine.
  const anew = new Map(changes.map((c, i) => [c.change, i + 1]));
  const orders = new Map(
    lines
      .map((line) => line.order)
      .sort((a, b) => a - b)
      .map((seq, i) => [seq, i + 1]),
  );
  const photos = (await allPhotos(trx)).filter((p) => inside.has(key(p)));
  const versions = (await versionsOf(trx)).filter((v) => build === undefined || v.build === build);

  const name = fileNamer();
  const documents: Manifest["documents"][number][] = [];
  const texts: TextFile[] = [];
  const folders = new Map<string, string>();
  for (const { kind, id, label, text, revision, updatedAt } of chosen) {
    const stem = name(kind, id);
    folders.set(key({ kind, id }), stem);
    const file = `documents/${stem}.yaml`;
    const history = `history/${stem}.jsonl`;
    documents.push({ kind, id, label, revision, updatedAt, file, history });
    texts.push({ file, text: Buffer.from(text), at: updatedAt });
    const own = (histories.get(key({ kind, id })) ?? []).map((line) => ({
      ...line,
      change: anew.get(line.change) ?? 0,
      order: orders.get(line.order) ?? 0,
    }));
    texts.push({ file: history, text: jsonLines(own), at: updatedAt });
  }
  const last =
    chosen
      .map((d) => d.updatedAt)
      .sort()
      .at(-1) ?? made;
  const changeLines = changes.map((c) => ({
    ...c,
    change: anew.get(c.change) ?? 0,
    takesBack: c.takesBack === null ? null : (anew.get(c.takesBack) ?? null),
  }));
  texts.push({ file: CHANGES, text: jsonLines(changeLines), at: last });
  texts.push({
    file: VERSIONS,
    text: jsonLines(versions.map((v) => ({ ...v, documents: v.documents.filter((d) => inside.has(key(d))) }))),
    at: last,
  });
  const rows = photos.map((p) => ({ row: photoRow(p, folders.get(key(p)) ?? ""), sizeBytes: p.sizeBytes }));
  // Two photos with the same bytes: the picture stands under the first one's name.
  const firsts = new Map<string, PhotoRow & { readonly sizeBytes: number }>();
  for (const { row, sizeBytes } of rows) if (!firsts.has(row.sha256)) firsts.set(row.sha256, { ...row, sizeBytes });
  const shown = rows.map(({ row }) => ({ ...row, file: firsts.get(row.sha256)?.file ?? row.file }));
  texts.push({ file: PHOTOS, text: jsonLines(shown), at: last });
  return {
    manifest: { format: ARCHIVE_FORMAT, version: ARCHIVE_VERSION, made, build: build ?? null, documents },
    texts,
    pictures: [...firsts.values()],
    counts: { documents: documents.length, photos: photos.length, versions: versions.length },
  };
}

async function historyOf(trx: Transaction<Tables>, { kind, id, text }: StoredDocument) {
  const rows = await trx
    .selectFrom("history")
    .select(["seq", "revision", "change", "path", "before", "after", "at"])
    .where("kind", "=", kind)
    .where("id", "=", id)
    .orderBy("revision")
    .execute();
  let before: string | null = null;
  const lines = rows.map((row) => {
    if (row.before !== before) throw new Error(`the history of ${kind} ${id} does not hang together`);
    before = row.after;
    const path = row.path === null ? null : (JSON.parse(row.path) as (string | number)[]);
    return { revision: row.revision, change: row.change, order: row.seq, path, text: row.after, at: row.at };
  });
  if (before !== text) throw new Error(`the history of ${kind} ${id} does not end with its text`);
  return lines;
}

function changesOf(trx: Transaction<Tables>): Promise<ChangeLine[]> {
  return trx
    .selectFrom("changes")
    .select(["change", "what", "takes_back as takesBack", "words", "who", "at"])
    .orderBy("change")
    .execute();
}

async function versionsOf(trx: Transaction<Tables>): Promise<VersionLine[]> {
  const rows = await trx
    .selectFrom("versions")
    .select(["version", "build", "name", "name_key as nameKey", "who", "at"])
    .orderBy("at")
    .orderBy("build")
    .orderBy("name_key")
    .execute();
  const documents = await trx
    .selectFrom("version_documents")
    .select(["version", "kind", "id", "revision"])
    .orderBy("kind")
    .orderBy("id")
    .execute();
  return rows.map(({ version, ...row }) => ({
    ...row,
    documents: documents.filter((d) => d.version === version).map(({ kind, id, revision }) => ({ kind, id, revision })),
  }));
}

/** The build and what it names; undefined where there is no such build. A build that cannot be read goes alone. */
function documentsOfBuild(all: readonly StoredDocument[], build: string): readonly StoredDocument[] | undefined {
  const row = all.find((d) => d.kind === "build" && d.id === build);
  if (row === undefined) return undefined;
  const loaded = loadText(row.text, row.label);
  const doc = loaded.kind === "loaded" ? loaded.docs[0]?.doc : undefined;
  const named = doc?.kind === "build" ? namedByBuild(doc) : [];
  return all.filter((d) => d === row || named.some((n) => n.kind === d.kind && n.id === d.id));
}

const ENDINGS = { "image/jpeg": "jpg", "image/png": "png", "image/webp": "webp" } as const;

function photoRow(p: PhotoLine, folder: string): PhotoRow {
  const { photo, kind, id, place, caption, sha256, at, takenAwayAt } = p;
  const file = `photos/${folder}/${photo}.${ENDINGS[p.mediaType]}`;
  return { photo, kind, id, place, caption, file, sha256, at, takenAwayAt };
}

const jsonBytes = (value: unknown) => Buffer.from(`${JSON.stringify(value, undefined, 1)}\n`);
const jsonLines = (lines: readonly object[]) => Buffer.from(lines.map((line) => `${JSON.stringify(line)}\n`).join(""));

function tooLarge(files: Manifest["files"], manifestBytes: number): StoreRefused | undefined {
  const texts = files.filter((f) => !f.file.startsWith("photos/"));
  const sum = (list: Manifest["files"]) => list.reduce((n, f) => n + f.bytes, 0);
  const over =
    files.length + 1 > LIMITS.entries ||
    manifestBytes > LIMITS.manifestBytes ||
    texts.some((f) => f.bytes > LIMITS.textBytes) ||
    sum(texts) > LIMITS.allTextBytes ||
    sum(files) > LIMITS.archiveBytes;
  if (!over) return undefined;
  const given = say("store.write-archive.files-mb", { filesCount: files.length, files: Math.ceil(sum(files) / 1e6) });
  const allowed = say("store.write-archive.files-mb-of-which-mb-of", {
    entries: LIMITS.entries,
    archiveBytes: LIMITS.archiveBytes / 1e6,
    allTextBytes: LIMITS.allTextBytes / 1e6,
  });
  return {
    kind: "refused",
    refusals: [
      {
        code: "archive-too-large",
        at: "workshop",
        given,
        allowed,
        message: say("store.write-archive.the-archive-would-hold-it-would", { given, allowed }),
      },
    ],
  };
}

function noBuild(build: string): StoreRefused {
  const given = build.slice(0, 60);
  const message = say("store.write-archive.there-is-no-build-in-this", { given });
  return {
    kind: "refused",
    refusals: [
      {
        code: "not-found",
        at: say("store.write-archive.build", { given }),
        given,
        allowed: say("store.write-archive.a-build-of-this-workshop"),
        message,
      },
    ],
  };
}
