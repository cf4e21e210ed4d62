/**
 * Where do entries wait, so that no closed window loses one and two windows never spoil each other's? Each entry lies
 * under a name of its own in the browser's storage. A window writes only names that it made, so nothing is ever read,
 * changed and written back by two at once. The names sort in the order in which the entries were made.
 */
import type { EditPath } from "@coldset/core/workshop";
import type { Keep } from "./kept.js";

export interface Entry {
  /** Name on the shelf; sorts in the order made. */
  readonly key: string;
  /** One for each meaning of the entry: the server takes an id once, however often it arrives. */
  readonly editId: string;
  /** Build on whose page it was made. */
  readonly build: string;
  /** Name of the workshop that it was made for; left out where that was not known yet. */
  readonly workshop?: string;
  readonly kind: string;
  readonly id: string;
  readonly path: EditPath;
  readonly value: unknown;
  /** What the person saw there before. */
  readonly before: unknown;
  /** What the row of a list said by which it is found again, for each number in the path. */
  readonly rows?: readonly unknown[];
  /** What the person sees it as: "top tube". */
  readonly words: string;
  /** It puts back what stood there before: the records keep it as an undo. */
  readonly takesBack?: boolean;
  /** When it was last written on, ms since 1970. */
  readonly changedAt: number;
  /** It went out on this revision, and no answer came back yet. */
  readonly triedOn?: number;
  /** The records would not take it, for these reasons. Its text stays here until the person has seen to it. */
  readonly refused?: readonly string[];
}

export type NewEntry = Omit<Entry, "key" | "editId" | "changedAt">;

const NAME = "entry.";
/** More than a long weekend away from the server; the browser's storage takes some 5 MB. */
export const MOST_ENTRIES = 5000;

export interface EntryShelf {
  /** In the order made. Refused ones are among them. */
  readonly all: () => readonly Entry[];
  readonly get: (key: string) => Entry | undefined;
  /** False where the browser could not keep it: it then lives in this window only. */
  readonly put: (entry: Entry) => boolean;
  readonly remove: (key: string) => void;
  /** Was it made by this window? */
  readonly isOwn: (key: string) => boolean;
  /** A key that sorts behind every other. */
  readonly freshKey: () => string;
  /** How many are in this window only. */
  readonly unkept: () => number;
}

export function entryShelf(keep: Keep, clock: () => number, random: () => string): EntryShelf {
  const windowName = random();
  let stamp = 0;
  let count = 0;
  /** Entries that the storage would not take. */
  const here = new Map<string, Entry>();
  /** What each text on the shelf says, so that an edit does not read all others anew. */
  const read = new Map<string, { readonly text: string; readonly entry: Entry | undefined }>();
  const kept = (key: string): Entry | undefined => {
    const text = keep.get(NAME + key);
    if (text === undefined) return undefined;
    const known = read.get(key);
    if (known?.text === text) return known.entry;
    const entry = parsed(text, key);
    read.set(key, { text, entry });
    return entry;
  };
  const all = () => {
    const found = new Map<string, Entry>();
    for (const name of keep.names(NAME)) {
      const entry = kept(name.slice(NAME.length));
      if (entry !== undefined) found.set(entry.key, entry);
    }
    for (const [key, entry] of here) found.set(key, entry);
    return [...found.values()].sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  };
  return {
    all,
    get: (key) => here.get(key) ?? kept(key),
    put: (entry) => {
      const isNew = kept(entry.key) === undefined;
      const room = !isNew || keep.names(NAME).length < MOST_ENTRIES;
      if (room && keep.set(NAME + entry.key, JSON.stringify(entry))) {
        here.delete(entry.key);
        return true;
      }
      here.set(entry.key, entry);
      return false;
    },
    remove: (key) => {
      here.delete(key);
      read.delete(key);
      keep.set(NAME + key, undefined);
    },
    isOwn: (key) => key.endsWith(`-${windowName}`),
    freshKey: () => {
      // A clock that was set back must not put a later entry before an earlier one.
      const last = all().at(-1)?.key;
      const lastStamp = last === undefined ? 0 : Number(last.slice(0, STAMP_DIGITS));
      stamp = Math.max(stamp, clock(), lastStamp);
      count += 1;
      const key = () => `${String(stamp).padStart(STAMP_DIGITS, "0")}-${String(count).padStart(7, "0")}-${windowName}`;
      // Another window may have counted further within the same stamp.
      if (last !== undefined && key() <= last) stamp = lastStamp + 1;
      return key();
    },
    unkept: () => here.size,
  };
}

const STAMP_DIGITS = 14;
/** What freshKey makes. A key of another form would not sort by time. */
const KEY_FORM = /^\d{14}-\d{7}-/;

function parsed(text: string, key: string): Entry | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return isEntry(value) && value.key === key ? value : undefined;
  } catch {
    // Not written by us, or by half: left where it is, and not sent.
    return undefined;
  }
}

export const isPath = (v: unknown): v is EditPath =>
  Array.isArray(v) && v.every((step) => typeof step === "string" || typeof step === "number");

const isEntry = (v: unknown): v is Entry =>
  v !== null &&
  typeof v === "object" &&
  ["key", "editId", "build", "kind", "id", "words"].every(
    (k) => typeof (v as Record<string, unknown>)[k] === "string",
  ) &&
  KEY_FORM.test((v as { readonly key: string }).key) &&
  "path" in v &&
  isPath(v.path) &&
  "changedAt" in v &&
  typeof v.changedAt === "number" &&
  (!("workshop" in v) || typeof v.workshop === "string") &&
  (!("triedOn" in v) || Number.isInteger(v.triedOn)) &&
  (!("refused" in v) || (Array.isArray(v.refused) && v.refused.every((why) => typeof why === "string")));
