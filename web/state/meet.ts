/** An entry is to go out, and the document stands like this now. What becomes of it? */
import type { EditPath } from "@coldset/core/workshop";
import type { StoredPlain } from "./api.js";
import type { Entry } from "./entry-shelf.js";
import { samePlace, valueAt } from "./place.js";
import { same, threeWay } from "./three-way.js";

export type Meeting =
  /** The place still says what the person saw. */
  | { readonly kind: "send" }
  /** It stands elsewhere now, because rows were put in or taken out before it. */
  | { readonly kind: "moved"; readonly path: EditPath }
  /** Somebody changed another part of the same value: both hold together. */
  | { readonly kind: "merged"; readonly value: unknown; readonly before: unknown }
  /** Somebody wrote the same. */
  | { readonly kind: "there" }
  | { readonly kind: "conflict"; readonly theirs: unknown; readonly gone: boolean };

export function meet(entry: Entry, now: StoredPlain): Meeting {
  const path = samePlace(now.plain, entry.path, entry.rows);
  if (path === undefined) return { kind: "conflict", theirs: undefined, gone: true };
  if (JSON.stringify(path) !== JSON.stringify(entry.path)) return { kind: "moved", path };
  const theirs = valueAt(now.plain, path);
  if (same(theirs, entry.before)) return { kind: "send" };
  const both = threeWay(entry.before, entry.value, theirs);
  if (both.kind === "conflict") return { kind: "conflict", theirs, gone: false };
  return same(both.value, theirs) ? { kind: "there" } : { kind: "merged", value: both.value, before: theirs };
}
