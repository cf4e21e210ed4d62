/**
 * Can the workshop in this folder be opened? Makes folder and database where there are none. Refuses, and touches
 * nothing, where the database is of another program or a newer version, and where another process holds the folder.
 */
import fs from "node:fs";
import path from "node:path";
import type { Refusal } from "@coldset/core/quantity";
import { Kysely } from "kysely";
import { z } from "zod";
import { workshopArchive } from "./archive/workshop-archive.js";
import { commitTeller } from "./commits.js";
import { copyBeforeMigration } from "./copy-before-migration.js";
import { databaseHeader } from "./database-header.js";
import { editDocument } from "./edit-document.js";
import { type FolderNote, lockFolder } from "./folder-lock.js";
import { closeToOthers, PRIVATE_FOLDER, privacyRefusal } from "./keep-private.js";
import { keptRows } from "./kept-rows.js";
import { headerRefusal, migrate } from "./migrate.js";
import { NEWEST_VERSION } from "./migrations/all-migrations.js";
import { listVersions, nameVersion } from "./named-versions.js";
import { addPhoto, changePhoto, photoLine, photosOf, pictureBytes } from "./photos.js";
import { putText } from "./put-text.js";
import { allDocuments, documentHistory, listDocuments } from "./read-documents.js";
import { readTexts } from "./read-texts.js";
import { restoreDocument, restoreVersion, versionDifference } from "./restore.js";
import { openConnection, type SqliteConnection } from "./sqlite-connection.js";
import { storageRefusal } from "./storage-refusal.js";
import type { Tables } from "./tables.js";
import { toldHistory } from "./told-history.js";
import { turnChange } from "./turn-change.js";
import type { StoreRefused, Workshop } from "./workshop.js";
import { writeTogether } from "./write-together.js";

const DATABASE_FILE = "workshop.sqlite";
const WRITER_WAIT_MS = 5_000;

export type OpenedWorkshop =
  | {
      readonly kind: "open";
      readonly workshop: Workshop;
      /** The copy that was made before the records were brought to the newest form; undefined where they were so. */
      readonly copy?: string;
    }
  | StoreRefused;

export interface OpenOptions {
  /** The clock. */
  readonly now?: () => Date;
  /** The most pages of 4096 bytes that the database may take; left out: as much as the disk has. */
  readonly mostPages?: number;
  /** Through which door changes come, as the history shows it: "the page". */
  readonly who?: string;
}

/**
 * Makes the folder and those above it, one level at a time: asked to make several at once, Node goes round for ever
 * where the system says "no such folder" of a place whose parent is there (as in /proc).
 */
function makeFolder(folder: string): void {
  const missing: string[] = [];
  for (let here = path.resolve(folder); !fs.existsSync(here); here = path.dirname(here)) {
    if (path.dirname(here) === here) break;
    missing.push(here);
  }
  for (const level of missing.reverse()) fs.mkdirSync(level, PRIVATE_FOLDER);
  if (missing.length === 0 && !fs.statSync(folder).isDirectory()) fs.mkdirSync(folder);
}

export async function openWorkshop(folder: string, options: OpenOptions = {}): Promise<OpenedWorkshop> {
  const now = options.now ?? (() => new Date());
  const file = path.join(folder, DATABASE_FILE);
  let release: (() => void) | undefined;
  let connection: SqliteConnection | undefined;
  let note: FolderNote = () => {};
  let copy: string | undefined;
  const giveUp = (refusal: Refusal): StoreRefused => {
    connection?.close();
    release?.();
    return { kind: "refused", refusals: [refusal] };
  };
  try {
    makeFolder(folder);
    const open = privacyRefusal(folder, file);
    if (open !== undefined) return giveUp(open);
    const foreign = headerRefusal(databaseHeader(file), file);
    if (foreign !== undefined) return giveUp(foreign);
    // SQLite would open a file that may only be read, and fail at the first edit.
    if (fs.existsSync(file)) fs.closeSync(fs.openSync(file, "r+"));
    const lock = await lockFolder(folder, now);
    if (lock.kind === "refused") return giveUp(lock.refusal);
    release = lock.release;
    note = lock.note;
    connection = openConnection(file, WRITER_WAIT_MS);
    const version = connection.pragmaNumber("user_version");
    if (version > 0 && version < NEWEST_VERSION) {
      const copied = copyBeforeMigration(connection, folder, version, now());
      if (copied.kind === "refused") return giveUp(copied.refusal);
      copy = copied.file;
    }
    const refusal = migrate(connection, file);
    if (refusal !== undefined) return giveUp(refusal);
    closeToOthers(folder);
    if (options.mostPages !== undefined) connection.rows(`PRAGMA max_page_count = ${Math.trunc(options.mostPages)}`);
  } catch (cause) {
    const refusal = storageRefusal(cause, folder);
    if (refusal !== undefined) return giveUp(refusal);
    connection?.close();
    release?.();
    throw cause;
  }
  const workshop = workshopOn(folder, file, connection, { release, note }, { now, who: options.who ?? null });
  return { kind: "open", workshop, ...(copy === undefined ? {} : { copy }) };
}

function workshopOn(
  folder: string,
  file: string,
  connection: SqliteConnection,
  { release, note }: { readonly release: () => void; readonly note: FolderNote },
  { now, who }: { readonly now: () => Date; readonly who: string | null },
): Workshop {
  const db = new Kysely<Tables>({ dialect: connection.dialect() });
  const newRows = (seq: number) => rowsAfter(connection, seq);
  const commits = commitTeller(newRows, newestSeq(connection), (cause) => process.emitWarning(String(cause)));
  const at = () => now().toISOString();
  const author = () => ({ who, at: at() });
  const texts = readTexts();
  const rows = keptRows(db);
  connection.onCommit(() => {
    try {
      rows.committed(commits.committed());
    } catch (cause) {
      // It is kept; a failure here must not be taken for one of the commit.
      rows.forget();
      process.emitWarning(String(cause));
    }
  });
  const told = toldHistory(db, texts);
  const together = writeTogether(db);
  const orRefused = async <T>(work: Promise<T>): Promise<T | StoreRefused> => {
    try {
      return await work;
    } catch (cause) {
      const refusal = storageRefusal(cause, file);
      if (refusal === undefined) throw cause;
      return { kind: "refused", refusals: [refusal] };
    }
  };
  let closing: Promise<void> | undefined;
  const close = async () => {
    await together.written();
    commits.close();
    try {
      // Leaves all records in the one file; the log beside it is then empty.
      connection.rows("PRAGMA wal_checkpoint(TRUNCATE)");
    } catch (cause) {
      // Something else is at the file, or the disk is full. The log stays beside it and is read at the next opening.
      if (!(cause instanceof Error && "rawCode" in cause)) throw cause;
    } finally {
      await db.destroy();
      connection.close();
      release();
    }
  };
  return {
    folder,
    name: workshopName(connection),
    sayWhere: (url) => note(url),
    listDocuments: () => listDocuments(db),
    allDocuments: () => allDocuments(db),
    getDocument: rows.one,
    documentsNamed: rows.named,
    readText: texts.read,
    putText: (text, label, what = "put") => orRefused(putText(db, text, label, author(), what)),
    edit: (kind, id, path, value, expectedRevision, editId, takesBack) =>
      orRefused(
        editDocument(
          { db, together, texts, rows },
          { kind, id, path, value, expectedRevision, editId, takesBack },
          author(),
        ),
      ),
    exportText: async (kind, id) => (await rows.one(kind, id))?.text,
    history: (kind, id) => documentHistory(db, kind, id),
    buildHistory: (build, page = {}) => told(build, page),
    undo: (build, choice = {}) => orRefused(turnChange(db, texts, { build, what: "undo", ...choice }, author())),
    redo: (build, choice = {}) => orRefused(turnChange(db, texts, { build, what: "redo", ...choice }, author())),
    versions: (build) => listVersions(db, texts, build),
    nameVersion: (build, name) => orRefused(nameVersion(db, texts, build, name, author())),
    versionDifference: (build, from, to) => versionDifference(db, texts, build, from, to),
    restoreVersion: (build, name, seen) => orRefused(restoreVersion(db, texts, { build, name, seen }, author())),
    restoreDocument: (kind, id, revision, expectedRevision) =>
      orRefused(restoreDocument(db, texts, { kind, id, revision, expectedRevision }, author())),
    photos: {
      of: (kind, id) => photosOf(db, { kind, id }),
      one: (photo) => photoLine(db, photo),
      bytes: (sha256) => pictureBytes(db, sha256),
      add: (photo) => orRefused(addPhoto(db, photo, at())),
      change: (photo, change) => orRefused(changePhoto(db, photo, change, at())),
    },
    archive: workshopArchive(db, { author, orRefused }),
    hearCommits: commits.hear,
    close: () => {
      closing ??= close();
      return closing;
    },
  };
}

const historyRow = z.object({ seq: z.int(), kind: z.string(), id: z.string(), revision: z.int() });

function rowsAfter(connection: SqliteConnection, seq: number) {
  return connection
    .rows(`SELECT seq, kind, id, revision FROM history WHERE seq > ${Math.trunc(seq)} ORDER BY seq`)
    .map((row) => historyRow.parse(row));
}

/** The last row of the history when the workshop was opened. */
function newestSeq(connection: SqliteConnection): number {
  const [row] = connection.rows("SELECT COALESCE(MAX(seq), 0) AS seq FROM history");
  if (row === null || typeof row !== "object" || !("seq" in row) || typeof row.seq !== "number")
    throw new Error("the history has no last row");
  return row.seq;
}

function workshopName(connection: SqliteConnection): string {
  const [row] = connection.rows("SELECT name FROM this_workshop");
  if (row === null || typeof row !== "object" || !("name" in row) || typeof row.name !== "string")
    throw new Error("the workshop has no name");
  return row.name;
}
