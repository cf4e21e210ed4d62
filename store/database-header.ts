/**
 * Whose database is this file, and of which version? Read from the first 100 bytes, without opening it as a database:
 * opening one may already write to it, and a file of somebody else is not to be touched.
 * Offsets 60 (user version) and 68 (application id), big-endian: SQLite, "Database File Format", section 1.3.
 */

import fs from "node:fs";
import { say } from "@coldset/core/texts";

/** "Cold" in ASCII. */
export const APPLICATION_ID = 0x43_6f_6c_64;

const HEADER_BYTES = 100;
const MAGIC = say("store.database-header.sqlite-format-3");

export type DatabaseHeader =
  | { readonly kind: "none" }
  | { readonly kind: "no-database" }
  | { readonly kind: "database"; readonly applicationId: number; readonly userVersion: number };

/** @throws the file system's error where the file is there but cannot be read. */
export function databaseHeader(file: string): DatabaseHeader {
  let handle: number;
  try {
    handle = fs.openSync(file, "r");
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === "ENOENT") return { kind: "none" };
    throw cause;
  }
  try {
    const bytes = Buffer.alloc(HEADER_BYTES);
    const read = fs.readSync(handle, bytes, 0, HEADER_BYTES, 0);
    if (read === 0) return { kind: "none" };
    if (read < HEADER_BYTES || bytes.toString("latin1", 0, MAGIC.length) !== MAGIC) return { kind: "no-database" };
    return { kind: "database", userVersion: bytes.readUInt32BE(60), applicationId: bytes.readUInt32BE(68) };
  } finally {
    fs.closeSync(handle);
  }
}
