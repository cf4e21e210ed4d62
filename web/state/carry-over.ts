/**
 * What becomes of entries that an older page left waiting? It kept one list for each build, under one name. They are put
 * on the shelf once, in their order, behind what lies there already; a list goes only when all of it is on the shelf.
 */
import type { EditPath } from "@coldset/core/workshop";
import { type EntryShelf, isPath } from "./entry-shelf.js";
import type { Keep } from "./kept.js";

const OLD = "waiting.";

interface OldEntry {
  readonly kind: string;
  readonly id: string;
  readonly path: EditPath;
  readonly value?: unknown;
  readonly before?: unknown;
  readonly words: string;
}

export interface CarryTools {
  readonly clock: () => number;
}

/** Entries of one list are in the order made; which of two lists came first was not kept, so they go by name. */
export function carryOver(keep: Keep, shelf: EntryShelf, { clock }: CarryTools): void {
  for (const name of [...keep.names(OLD)].sort()) {
    const text = keep.get(name);
    const entries = text === undefined ? undefined : readOld(text);
    // Not written by a page of ours, or by half: left where it is.
    if (entries === undefined) continue;
    const there = new Set(shelf.all().map((e) => e.editId));
    const build = name.slice(OLD.length);
    const ids = entries.map((_, i) => `old-${hashOf(`${name} ${text ?? ""}`)}-${i}`);
    const all = entries.every(({ kind, id, path, value, before, words }, i) => {
      const editId = ids[i] ?? "";
      // A window that was closed half way through, or a second one that begins at the same time, has put it there.
      if (there.has(editId)) return true;
      const entry = { build, kind, id, path, value, before, words, editId, changedAt: clock() };
      return shelf.put({ ...entry, key: shelf.freshKey() });
    });
    if (all) keep.set(name, undefined);
    else for (const e of shelf.all()) if (ids.includes(e.editId) && !there.has(e.editId)) shelf.remove(e.key);
  }
}

function readOld(text: string): readonly OldEntry[] | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return Array.isArray(value) && value.every(isOld) ? value : undefined;
  } catch {
    return undefined;
  }
}

const isOld = (v: unknown): v is OldEntry =>
  v !== null &&
  typeof v === "object" &&
  "kind" in v &&
  typeof v.kind === "string" &&
  "id" in v &&
  typeof v.id === "string" &&
  "words" in v &&
  typeof v.words === "string" &&
  "path" in v &&
  isPath(v.path);

/** Tells two lists apart (FNV-1a, 32 bits, twice): the same list gives the same ids, so nothing of it is made twice. */
function hashOf(text: string): string {
  const once = (start: number) => {
    let h = start;
    for (let i = 0; i < text.length; i += 1) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
    return (h >>> 0).toString(16).padStart(8, "0");
  };
  return once(0x811c9dc5) + once(0x9dc5811c);
}
