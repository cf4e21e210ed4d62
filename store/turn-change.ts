/**
 * How is a change taken back, or put back? All its rows are turned round in one transaction, or none: where a text stands
 * as the change left it the text before comes back to the letter, else only its values do (core: take-back). That is a new
 * change with rows of its own, so nothing is lost and a redo is the same thing once more.
 */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { differenceOfTexts, takenOut } from "@coldset/core/workshop";
import type { Kysely, Transaction } from "kysely";
import { type Author, beginChange } from "./begin-change.js";
import { buildNow, changesOf } from "./build-changes.js";
import type { Turned, WrittenDocument } from "./history-types.js";
import { pathOf, storedDocument } from "./read-documents.js";
import type { ReadTexts } from "./read-texts.js";
import { refusedAs } from "./refused-as.js";
import type { Tables } from "./tables.js";
import { noteTurned, turnedBefore } from "./taken-turns.js";
import { type Pile, undoStacks } from "./undo-stacks.js";
import type { StoredDocument, StoreRefused } from "./workshop.js";
import { writeDocument } from "./write-document.js";

export interface Turn {
  readonly build: string;
  readonly what: "undo" | "redo";
  /** The change to take back; left out: the newest one. */
  readonly change?: number | undefined;
  /** Number of the newest change that the person had seen. */
  readonly seen?: number | undefined;
  /** Given: it is done once, however often it arrives under this id. */
  readonly turnId?: string | undefined;
}

export async function turnChange(db: Kysely<Tables>, texts: ReadTexts, turn: Turn, author: Author): Promise<Turned> {
  return db.transaction().execute(async (trx): Promise<Turned> => {
    const before = await turnedBefore(trx, turn);
    if (before !== undefined) return before;
    const now = await buildNow(trx, texts, turn.build);
    if (now.kind === "refused") return now;
    const lines = await changesOf(trx, now.documents);
    const newest = lines.at(-1)?.change ?? 0;
    if (turn.seen !== undefined && turn.seen !== newest) return { kind: "moved-on", newest };
    const stacks = undoStacks(lines);
    const pile = stacks[turn.what];
    const wanted = turn.change;
    const origin = wanted === undefined ? undefined : (stacks.origin.get(wanted) ?? wanted);
    const chosen = wanted === undefined ? pile.at(-1) : pile.find((p) => p.of === origin);
    if (chosen === undefined)
      return refusedAs(
        nothingToTurn(
          turn,
          lines.some((l) => l.change === wanted),
        ),
      );
    const turned = await turnRows(trx, texts, turn.what, chosen, author);
    if (turned.kind === "refused") return turned;
    await noteTurned(trx, turn, { change: turned.change, of: chosen.of, at: author.at });
    return { ...turned, what: turn.what, of: chosen.of };
  });
}

interface TurnedRows {
  readonly kind: "turned";
  readonly change: number;
  readonly documents: readonly WrittenDocument[];
}

/** Inside the caller's transaction, so that nothing is written where it is refused. */
export async function turnRows(
  trx: Transaction<Tables>,
  texts: ReadTexts,
  what: "undo" | "redo",
  pile: Pile,
  author: Author,
): Promise<TurnedRows | StoreRefused> {
  const rows = await trx
    .selectFrom("history")
    .select(["kind", "id", "path", "before", "after"])
    .where("change", "=", pile.turn)
    .orderBy("seq", "desc")
    .execute();
  const turned = new Map<string, { readonly stored: StoredDocument; text: string; path: string | null }>();
  const refusals: Refusal[] = [];
  for (const row of rows) {
    // What was put in here for the first time stays: there is nothing before it to go back to.
    if (row.before === null) continue;
    const key = `${row.kind} ${row.id}`;
    const known = turned.get(key);
    const stored = known?.stored ?? (await storedDocument(trx, row.kind, row.id));
    if (stored === undefined) throw new Error(`${key} has a history and is not there`);
    const out = takenOut(known?.text ?? stored.text, row.before, row.after, texts.known);
    if (out.kind === "text") turned.set(key, { stored, text: out.text, path: known === undefined ? row.path : null });
    else refusals.push(...out.reasons.map((r) => blocked(what, key, r)));
  }
  for (const { stored, text } of turned.values()) refusals.push(...readable(texts, stored, text));
  if (refusals.length > 0) return { kind: "refused", refusals };
  const change = await beginChange(trx, { what, takesBack: pile.turn }, author);
  const documents: WrittenDocument[] = [];
  for (const { stored, text, path } of turned.values()) {
    const { kind, id, label } = stored;
    const at = { kind, id, label, path: path === null ? null : pathOf(path), after: text, at: author.at, change };
    const revision = await writeDocument(trx, stored, at);
    documents.push({ kind, id, revision, difference: differenceOfTexts(stored.text, text, undefined, texts.known) });
  }
  return { kind: "turned", change, documents };
}

/** A text of long ago may not be readable for this program any more. */
export function readable(texts: ReadTexts, stored: StoredDocument, text: string): readonly Refusal[] {
  const read = texts.read({ ...stored, text });
  return read.kind === "refused" ? read.refusals : [];
}

function blocked(
  what: "undo" | "redo",
  key: string,
  reason: { readonly code: string; readonly place: string; readonly message: string },
): Refusal {
  return {
    code: reason.code,
    at: reason.place === "" ? key : `${key}, ${reason.place}`,
    given: null,
    allowed: say("store.turn-change.a-value-that-stands-as-the"),
    message: say("store.turn-change.this-cannot-be", {
      what: what === "undo" ? say("store.turn-change.taken-back") : say("store.turn-change.put-back"),
      key,
      reason: reason.message,
    }),
  };
}

function nothingToTurn({ build, what, change }: Turn, isThere: boolean): Refusal {
  const undo = what === "undo";
  if (change !== undefined) {
    return {
      code: isThere ? "already-taken-back" : "no-such-change",
      at: say("store.turn-change.change", { change }),
      given: change,
      allowed: say("store.turn-change.a-change-of-this-build-that"),
      message: isThere
        ? say("store.turn-change.change-cannot-be-taken-back-it", { change })
        : say("store.turn-change.there-is-no-change-in-the", { change, build }),
    };
  }
  return {
    code: undo ? "nothing-to-take-back" : "nothing-to-put-back",
    at: say("store.turn-change.build", { build }),
    given: null,
    allowed: undo
      ? say("store.turn-change.a-build-that-was-changed")
      : say("store.turn-change.a-change-that-was-taken-back"),
    message: undo
      ? say("store.turn-change.there-is-nothing-to-take-back", { build })
      : say("store.turn-change.there-is-nothing-to-put-back"),
  };
}
