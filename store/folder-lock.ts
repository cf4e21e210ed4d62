/**
 * Is another process at work in this folder, and which? One process holds one folder. The hold is a lock of the system
 * on `workshop.lock` (through SQLite, which knows how on each system), so it ends with the process, however that ends:
 * nothing is left to heal after a crash. A note beside it says who holds; it is written only while holding, and a note
 * left over from a crash means nothing.
 */
import fs from "node:fs";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import type { Refusal } from "@coldset/core/quantity";
import { openConnection } from "./sqlite-connection.js";

const LOCK_FILE = "workshop.lock";
const NOTE_FILE = "workshop.holder.json";
const WAIT_MS = 200;
const SQLITE_BUSY = 5;

export type FolderLock =
  | { readonly kind: "held"; readonly release: () => void }
  | { readonly kind: "refused"; readonly refusal: Refusal };

/** @throws errors of the file system, for storageRefusal to put into words */
export async function lockFolder(folder: string, now: () => Date): Promise<FolderLock> {
  const note = path.join(folder, NOTE_FILE);
  const connection = openConnection(path.join(folder, LOCK_FILE), WAIT_MS);
  try {
    connection.exec("PRAGMA journal_mode = MEMORY");
    connection.exec("BEGIN IMMEDIATE");
  } catch (cause) {
    connection.close();
    if (!isBusy(cause)) throw cause;
    return { kind: "refused", refusal: inUse(folder, await readNote(note)) };
  }
  const letGo = () => {
    connection.exec("ROLLBACK");
    connection.close();
  };
  try {
    fs.writeFileSync(note, JSON.stringify({ pid: process.pid, since: now().toISOString() }));
  } catch (cause) {
    letGo();
    throw cause;
  }
  return {
    kind: "held",
    release: () => {
      fs.rmSync(note, { force: true });
      letGo();
    },
  };
}

function isBusy(cause: unknown): boolean {
  const raw = cause instanceof Error ? (cause as Error & { readonly rawCode?: unknown }).rawCode : undefined;
  return typeof raw === "number" && (raw & 0xff) === SQLITE_BUSY;
}

interface Holder {
  readonly pid: number;
  readonly since: string;
}

/** The holder writes its note a moment after it takes the lock: look a few times. */
async function readNote(file: string): Promise<Holder | undefined> {
  for (let look = 0; look < 5; look += 1) {
    const holder = parseNote(file);
    if (holder !== undefined) return holder;
    await pause(20);
  }
  return undefined;
}

function parseNote(file: string): Holder | undefined {
  try {
    const note: unknown = JSON.parse(fs.readFileSync(file, "utf8"));
    if (note === null || typeof note !== "object" || !("pid" in note) || !("since" in note)) return undefined;
    const { pid, since } = note;
    return typeof pid === "number" && typeof since === "string" ? { pid, since: since.slice(0, 40) } : undefined;
  } catch {
    // No note, or half of one: the lock itself has already said that somebody is there.
    return undefined;
  }
}

function inUse(folder: string, holder: Holder | undefined): Refusal {
  const who = holder === undefined ? "another process" : `process ${holder.pid}, since ${holder.since}`;
  return {
    code: "store-in-use",
    at: folder,
    given: holder === undefined ? null : { pid: holder.pid, since: holder.since },
    allowed: "one process at a time",
    message: `The workshop in ${folder} is open in ${who}. Close that one first, or name another folder.`,
  };
}
