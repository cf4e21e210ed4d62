/**
 * Does this edit only take back what was entered last in this place? The page puts an old value back at once and says so
 * when it saves; then it is kept as an undo, so that it can be put back and no second undo brings the new value again.
 * Figures that were saved while somebody was still typing are several changes of one place: all of them are taken back.
 */
import { saySame } from "@coldset/core/workshop";
import type { Transaction } from "kysely";
import type { Author } from "./begin-change.js";
import { changesOf } from "./build-changes.js";
import type { Edit } from "./edit-document.js";
import type { ReadTexts } from "./read-texts.js";
import type { Tables } from "./tables.js";
import { turnRows } from "./turn-change.js";
import { type Pile, undoStacks } from "./undo-stacks.js";
import type { StoredDocument } from "./workshop.js";

/** Nobody types longer in one place; beyond that it is kept as an edit. */
const MOST = 50;

/** True: done. False: it is an edit like any other, and nothing was written. */
export async function editTakenBack(
  trx: Transaction<Tables>,
  texts: ReadTexts,
  edit: Edit,
  stored: StoredDocument,
  wanted: string,
  author: Author,
): Promise<boolean> {
  const piles = await pilesBackTo(trx, edit, stored, wanted);
  for (const pile of piles) {
    const turned = await turnRows(trx, texts, "undo", pile, author);
    // The texts were just seen to stand as the changes left them.
    if (turned.kind === "refused") throw new Error(`an edit could not be taken back: ${turned.refusals[0]?.message}`);
  }
  return piles.length > 0;
}

async function pilesBackTo(
  trx: Transaction<Tables>,
  { kind, id, path }: Edit,
  stored: StoredDocument,
  wanted: string,
): Promise<readonly Pile[]> {
  const { undo } = undoStacks(await changesOf(trx, [{ kind, id }]));
  const piles: Pile[] = [];
  let text = stored.text;
  for (const pile of undo.toReversed().slice(0, MOST)) {
    const rows = await trx
      .selectFrom("history")
      .select(["path", "before", "after"])
      .where("change", "=", pile.turn)
      .execute();
    const [row] = rows;
    const goesOn = row !== undefined && rows.length === 1 && row.after === text && row.path === JSON.stringify(path);
    if (!goesOn || row.before === null) return [];
    piles.push(pile);
    text = row.before;
    if (saySame(text, wanted)) return piles;
  }
  return [];
}
