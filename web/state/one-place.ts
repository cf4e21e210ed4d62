/** Which entries are about one place, and is a choice still the one that was shown? */
import type { StoredPlain } from "./api.js";
import type { Entry, NewEntry } from "./entry-shelf.js";
import { samePlace, valueAt } from "./place.js";
import type { Conflict } from "./queue-types.js";
import { same } from "./three-way.js";

export const docKey = (d: { readonly kind: string; readonly id: string }) => `${d.kind}/${d.id}`;

/** Two rows may stand at one number one after the other: the same place is the same row of it, too. */
export const ofOnePlace = (a: NewEntry, b: NewEntry): boolean =>
  docKey(a) === docKey(b) && same(a.path, b.path) && same(a.rows, b.rows);

/** What the person wrote last into the place of this entry. */
export function lastWord(entry: Entry, waiting: readonly Entry[]): unknown {
  return (waiting.filter((e) => ofOnePlace(e, entry)).at(-1) ?? entry).value;
}

export const sameChoice = (a: Conflict, b: Conflict): boolean =>
  a.entry.editId === b.entry.editId && a.gone === b.gone && same(a.mine, b.mine) && same(a.theirs, b.theirs);

/** Its other side says what was shown, as far as these documents tell. */
export function stillStands({ entry, theirs, gone }: Conflict, docs: readonly StoredPlain[]): boolean {
  const doc = docs.find((d) => docKey(d) === docKey(entry));
  if (doc === undefined) return true;
  const path = samePlace(doc.plain, entry.path, entry.rows);
  return gone ? path === undefined : path !== undefined && same(valueAt(doc.plain, path), theirs);
}
