/**
 * Where is the way back, before old records are brought to a newer form? A whole copy of the database, made by SQLite
 * itself, checked, written through to the disk and only then given its name. Where none can be made nothing is brought
 * forward. Copies are never taken away by the program.
 */

import fs from "node:fs";
import path from "node:path";
import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { PRIVATE_FOLDER } from "./keep-private.js";
import { openConnection, type SqliteConnection } from "./sqlite-connection.js";
import { storageRefusal } from "./storage-refusal.js";

export const COPIES_FOLDER = "copies";
const MOST_OF_ONE_DAY = 1000;

export type Copied =
  | { readonly kind: "copied"; readonly file: string }
  | { readonly kind: "refused"; readonly refusal: Refusal };

export function copyBeforeMigration(connection: SqliteConnection, folder: string, version: number, now: Date): Copied {
  const copies = path.join(folder, COPIES_FOLDER);
  const day = now.toISOString().slice(0, "2026-01-01".length);
  const part = path.join(copies, `records-version-${version}-${day}.sqlite.${process.pid}.part`);
  try {
    if (!fs.existsSync(copies)) fs.mkdirSync(copies, PRIVATE_FOLDER);
    const file = freeName(copies, `records-version-${version}-${day}`);
    clearBrokenOff(copies);
    connection.copyInto(part);
    checkCopy(part, connection, version);
    sync(part, "r+");
    fs.renameSync(part, file);
    syncFolder(copies);
    syncFolder(folder);
    return { kind: "copied", file };
  } catch (cause) {
    const why = storageRefusal(cause, copies);
    if (why === undefined && !(cause instanceof CopyDiffers)) throw cause;
    if (fs.existsSync(part)) fs.rmSync(part);
    return {
      kind: "refused",
      refusal: noCopy(copies, version, why?.message ?? say("store.copy-before-migration.the-copy-did-not-read-back")),
    };
  }
}

/** Left over from a copy that was broken off: this process holds the folder, so nobody is writing it. */
function clearBrokenOff(copies: string): void {
  for (const name of fs.readdirSync(copies))
    if (/\.\d+\.part(-journal)?$/.test(name)) fs.rmSync(path.join(copies, name), { force: true });
}

class CopyDiffers extends Error {}

/** A copy that does not open, or holds fewer rows, is none. */
function checkCopy(file: string, from: SqliteConnection, version: number): void {
  const copy = openConnection(file, 100);
  try {
    const sound = JSON.stringify(copy.rows("PRAGMA integrity_check")) === JSON.stringify([{ integrity_check: "ok" }]);
    const whole = sound && copy.pragmaNumber("user_version") === version;
    const counted = (c: SqliteConnection) =>
      JSON.stringify(
        [
          "SELECT count(*) AS n, sum(length(text)) AS letters FROM documents",
          "SELECT count(*) AS n, sum(length(after)) AS letters FROM history",
        ].map(c.rows),
      );
    if (!whole || counted(copy) !== counted(from)) throw new CopyDiffers("the copy differs");
  } finally {
    copy.close();
  }
}

function freeName(copies: string, stem: string): string {
  for (let n = 1; n <= MOST_OF_ONE_DAY; n += 1) {
    const file = path.join(copies, `${stem}${n === 1 ? "" : `-${n}`}.sqlite`);
    if (!fs.existsSync(file)) return file;
  }
  throw new Error(`more than ${MOST_OF_ONE_DAY} copies of one day in ${copies}`);
}

export function sync(file: string, flags: "r" | "r+"): void {
  const handle = fs.openSync(file, flags);
  try {
    fs.fsyncSync(handle);
  } finally {
    fs.closeSync(handle);
  }
}

/** So that a new name outlives a power cut. Windows opens no folder and keeps names by itself. */
export function syncFolder(folder: string): void {
  if (process.platform !== "win32") sync(folder, "r");
}

function noCopy(copies: string, version: number, why: string): Refusal {
  return {
    code: "store-no-copy",
    at: copies,
    given: say("store.copy-before-migration.records-of-version", { version }),
    allowed: say("store.copy-before-migration.a-copy-before-anything-is-changed"),
    message: say("store.copy-before-migration.the-records-are-of-version-and", { version, copies, why }),
  };
}
