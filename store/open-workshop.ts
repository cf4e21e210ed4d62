/**
 * Can the workshop in this folder be opened? Makes folder and database where there are none. Refuses, and touches
 * nothing, where the database is of another program or a newer version, and where another process holds the folder.
 */
import fs from "node:fs";
import path from "node:path";
import type { Refusal } from "@coldset/core/quantity";
import { Kysely } from "kysely";
import { databaseHeader } from "./database-header.js";
import { editDocument } from "./edit-document.js";
import { lockFolder } from "./folder-lock.js";
import { headerRefusal, migrate } from "./migrate.js";
import { putText } from "./put-text.js";
import { allDocuments, documentHistory, listDocuments, storedDocument } from "./read-documents.js";
import { openConnection, type SqliteConnection } from "./sqlite-connection.js";
import { storageRefusal } from "./storage-refusal.js";
import type { Tables } from "./tables.js";
import type { StoreRefused, Workshop } from "./workshop.js";

const DATABASE_FILE = "workshop.sqlite";
const WRITER_WAIT_MS = 5_000;

export type OpenedWorkshop = { readonly kind: "open"; readonly workshop: Workshop } | StoreRefused;

export interface OpenOptions {
  /** The clock. */
  readonly now?: () => Date;
  /** The most pages of 4096 bytes that the database may take; left out: as much as the disk has. */
  readonly mostPages?: number;
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
  for (const level of missing.reverse()) fs.mkdirSync(level);
  if (missing.length === 0 && !fs.statSync(folder).isDirectory()) fs.mkdirSync(folder);
}

export async function openWorkshop(folder: string, options: OpenOptions = {}): Promise<OpenedWorkshop> {
  const now = options.now ?? (() => new Date());
  const file = path.join(folder, DATABASE_FILE);
  let release: (() => void) | undefined;
  let connection: SqliteConnection | undefined;
  const giveUp = (refusal: Refusal): StoreRefused => {
    connection?.close();
    release?.();
    return { kind: "refused", refusals: [refusal] };
  };
  try {
    makeFolder(folder);
    const foreign = headerRefusal(databaseHeader(file), file);
    if (foreign !== undefined) return giveUp(foreign);
    // SQLite would open a file that may only be read, and fail at the first edit.
    if (fs.existsSync(file)) fs.closeSync(fs.openSync(file, "r+"));
    const lock = await lockFolder(folder, now);
    if (lock.kind === "refused") return giveUp(lock.refusal);
    release = lock.release;
    connection = openConnection(file, WRITER_WAIT_MS);
    const refusal = migrate(connection, file);
    if (refusal !== undefined) return giveUp(refusal);
    if (options.mostPages !== undefined) connection.rows(`PRAGMA max_page_count = ${Math.trunc(options.mostPages)}`);
  } catch (cause) {
    const refusal = storageRefusal(cause, folder);
    if (refusal !== undefined) return giveUp(refusal);
    connection?.close();
    release?.();
    throw cause;
  }
  return { kind: "open", workshop: workshopOn(folder, file, connection, release, now) };
}

function workshopOn(
  folder: string,
  file: string,
  connection: SqliteConnection,
  release: () => void,
  now: () => Date,
): Workshop {
  const db = new Kysely<Tables>({ dialect: connection.dialect() });
  const at = () => now().toISOString();
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
    listDocuments: () => listDocuments(db),
    allDocuments: () => allDocuments(db),
    getDocument: (kind, id) => storedDocument(db, kind, id),
    putText: (text, label) => orRefused(putText(db, text, label, at())),
    edit: (kind, id, path, value, expectedRevision) =>
      orRefused(editDocument(db, { kind, id, path, value, expectedRevision, at: at() })),
    exportText: async (kind, id) => (await storedDocument(db, kind, id))?.text,
    history: (kind, id) => documentHistory(db, kind, id),
    close: () => {
      closing ??= close();
      return closing;
    },
  };
}
