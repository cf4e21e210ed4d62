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
import { say } from "@coldset/core/texts";
import { openConnection } from "./sqlite-connection.js";

const LOCK_FILE = "workshop.lock";
const NOTE_FILE = "workshop.holder.json";
const WAIT_MS = 200;
const SQLITE_BUSY = 5;

/** Writes down at which address the holder answers. */
export type FolderNote = (url: string) => void;

export type FolderLock =
  | { readonly kind: "held"; readonly release: () => void; readonly note: FolderNote }
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
  const since = now().toISOString();
  const write = (more: object) => fs.writeFileSync(note, JSON.stringify({ pid: process.pid, since, ...more }));
  try {
    write({});
  } catch (cause) {
    letGo();
    throw cause;
  }
  return {
    kind: "held",
    note: (url) => write({ url }),
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
  /** Where its page is, if it serves one. */
  readonly url?: string;
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
    if (typeof pid !== "number" || typeof since !== "string" || !isAlive(pid)) return undefined;
    const url = "url" in note && typeof note.url === "string" && LOCAL.test(note.url) ? note.url : undefined;
    return { pid, since: since.slice(0, 40), ...(url === undefined ? {} : { url }) };
  } catch {
    // No note, or half of one: the lock itself has already said that somebody is there.
    return undefined;
  }
}

const LOCAL = /^http:\/\/127\.0\.0\.1:\d{1,5}\/$/;

/** A note left over from a crash may still lie there in the moment before the new holder writes its own. */
function isAlive(pid: number): boolean {
  if (!Number.isSafeInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (cause) {
    // EPERM: it runs, as somebody else.
    return (cause as NodeJS.ErrnoException).code === "EPERM";
  }
}

function inUse(folder: string, holder: Holder | undefined): Refusal {
  const goOn =
    holder?.url === undefined
      ? say("store.folder-lock.close-that-one-first-ctrl-c")
      : say("store.folder-lock.go-on-there");
  return {
    code: "store-in-use",
    at: folder,
    given: holder === undefined ? null : { ...holder },
    allowed: say("store.folder-lock.one-process-at-a-time"),
    message: say("store.folder-lock.the-workshop-in-is-open-in", { folder, who: whoHolds(holder), goOn }),
  };
}

/** In words; a program finds pid, time and address in `given`. */
function whoHolds(holder: Holder | undefined): string {
  if (holder === undefined) return say("store.folder-lock.another-process");
  const { pid, url } = holder;
  const since = localMinute(holder.since);
  if (since === undefined) return say("store.folder-lock.another-coldset-process", { pid });
  return url === undefined
    ? say("store.folder-lock.another-coldset-process-since", { pid, since })
    : say("store.folder-lock.coldset-serve-process-since", { pid, since, url });
}

/** By the clock of this machine, "2026-05-02 19:04"; a note that anybody may write need not hold a time. */
function localMinute(at: string): string | undefined {
  const day = new Date(at);
  // The Swedish way of writing a date is year, month, day.
  return Number.isNaN(day.getTime())
    ? undefined
    : day.toLocaleString("sv-SE", { dateStyle: "short", timeStyle: "short" });
}
