/**
 * How is one value of a stored document changed? Read, changed and written in one transaction that begins as a writer,
 * so that no second change can come between. What cannot be read afterwards is refused, and nothing changes.
 */
import { say } from "@coldset/core/texts";
import { beyondBounds, type EditPath, type EditResult } from "@coldset/core/workshop";
import type { Kysely } from "kysely";
import { type Author, beginChange } from "./begin-change.js";
import { editTakenBack } from "./edit-taken-back.js";
import type { KeptRows } from "./kept-rows.js";
import { storedDocument } from "./read-documents.js";
import type { ReadTexts } from "./read-texts.js";
import { notFound, refusedAs } from "./refused-as.js";
import type { Tables } from "./tables.js";
import { noteTaken, takenBefore } from "./taken-edits.js";
import { textRefusal } from "./text-refusal.js";
import type { Edited, StoredDocument, StoreRefused } from "./workshop.js";
import { writeDocument } from "./write-document.js";
import type { WriteTogether } from "./write-together.js";

export interface Edit {
  readonly kind: string;
  readonly id: string;
  readonly path: EditPath;
  readonly value: unknown;
  readonly expectedRevision: number | undefined;
  /** Given: made once, however often it arrives under this id. */
  readonly editId: string | undefined;
  /** It puts back what stood there before: kept as an undo where that is so. */
  readonly takesBack: boolean | undefined;
}

/** What an edit is made with. */
export interface EditRoom {
  readonly db: Kysely<Tables>;
  readonly together: WriteTogether;
  readonly texts: ReadTexts;
  readonly rows: KeptRows;
}

export async function editDocument(
  { db, together, texts, rows }: EditRoom,
  edit: Edit,
  author: Author,
): Promise<Edited> {
  const { kind, id, path } = edit;
  const early = await conflictAlready(db, rows, edit);
  if (early !== undefined) return early;
  return together.write(async (trx): Promise<Edited> => {
    const taken = await takenBefore(trx, edit);
    if (taken !== undefined) return taken;
    const before = await storedDocument(trx, kind, id);
    if (before === undefined) return refusedAs(notFound(kind, id));
    if (edit.expectedRevision !== undefined && edit.expectedRevision !== before.revision) {
      return { kind: "conflict", revision: before.revision, text: before.text };
    }
    const changed = changedText(texts, before, edit);
    if (typeof changed !== "string") return changed;
    if (changed === before.text) {
      await noteTaken(trx, edit, { revision: before.revision, at: author.at });
      return { kind: "edited", revision: before.revision, text: before.text };
    }
    if (edit.takesBack === true && (await editTakenBack(trx, texts, edit, before, changed, author))) {
      const now = await storedDocument(trx, kind, id);
      if (now === undefined) throw new Error(`${kind} ${id} was there a moment ago`);
      await noteTaken(trx, edit, { revision: now.revision, at: author.at });
      return { kind: "edited", revision: now.revision, text: now.text };
    }
    const change = await beginChange(trx, { what: "edit" }, author);
    const written = { kind, id, label: before.label, path, after: changed, at: author.at, change };
    const revision = await writeDocument(trx, before, written);
    await noteTaken(trx, edit, { revision, at: author.at });
    return { kind: "edited", revision, text: changed };
  });
}

/** What meets somebody else's change that is kept already need not wait for its turn to write, only to be told so. */
async function conflictAlready(db: Kysely<Tables>, rows: KeptRows, edit: Edit): Promise<Edited | undefined> {
  if (edit.expectedRevision === undefined) return undefined;
  const now = await rows.one(edit.kind, edit.id);
  if (now === undefined || now.revision === edit.expectedRevision) return undefined;
  // One that was made already is no conflict with itself.
  return (await takenBefore(db, edit)) ?? { kind: "conflict", revision: now.revision, text: now.text };
}

function changedText(texts: ReadTexts, before: StoredDocument, { kind, id, path, value }: Edit): string | StoreRefused {
  const at = placeText(path);
  let result: EditResult;
  try {
    result = texts.edit(before, path, value);
  } catch (cause) {
    // The text library throws where the place is not there or is written through an alias.
    if (!(cause instanceof Error)) throw cause;
    return refusedAs({
      code: "no-such-place",
      at,
      given: at,
      allowed: say("store.edit-document.a-place-of-this-document"),
      message: say("store.edit-document.cannot-be-changed-where-it-stands", { kind, id, at, cause: cause.message }),
    });
  }
  if (result.kind === "refused") {
    return refusedAs(
      ...result.refusals.map(({ code, path: place, given, allowed, message }) => {
        const where = placeText(place);
        return { code, at: where, given, allowed, message: where === "" ? message : `${where}: ${message}` };
      }),
    );
  }
  if (result.doc.kind !== kind || result.doc.id !== id) {
    return refusedAs({
      code: "renames",
      at,
      given: value ?? null,
      allowed: say("store.edit-document.the-kind-and-id-it-has"),
      message: say("store.edit-document.keeps-its-kind-and-id-other", { kind, id }),
    });
  }
  const beyond = beyondBounds(result.text, `${kind} ${id}`);
  if (beyond !== undefined) return refusedAs(beyond);
  const unfit = textRefusal(result.text, `${kind} ${id}`);
  return unfit === undefined ? result.text : refusedAs(unfit);
}

function placeText(path: readonly PropertyKey[]): string {
  return path
    .map((step, i) => (typeof step === "number" ? `[${step}]` : i === 0 ? String(step) : `.${String(step)}`))
    .join("");
}
