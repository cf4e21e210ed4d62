/**
 * How is one value of a stored document changed? Read, changed and written in one transaction that begins as a writer,
 * so that no second change can come between. What cannot be read afterwards is refused, and nothing changes.
 */
import type { Refusal } from "@coldset/core/quantity";
import { type EditPath, editText, TEXT_LIMIT } from "@coldset/core/workshop";
import type { Kysely } from "kysely";
import { storedDocument } from "./read-documents.js";
import type { Tables } from "./tables.js";
import { textRefusal } from "./text-refusal.js";
import type { Edited, StoreRefused } from "./workshop.js";
import { writeDocument } from "./write-document.js";

export interface Edit {
  readonly kind: string;
  readonly id: string;
  readonly path: EditPath;
  readonly value: unknown;
  readonly expectedRevision: number | undefined;
  readonly at: string;
}

export async function editDocument(db: Kysely<Tables>, edit: Edit): Promise<Edited> {
  const { kind, id, path, at } = edit;
  return db.transaction().execute(async (trx): Promise<Edited> => {
    const before = await storedDocument(trx, kind, id);
    if (before === undefined) return refusedAs(notFound(kind, id));
    if (edit.expectedRevision !== undefined && edit.expectedRevision !== before.revision) {
      return { kind: "conflict", revision: before.revision, text: before.text };
    }
    const changed = changedText(before.text, edit);
    if (typeof changed !== "string") return changed;
    if (changed === before.text) return { kind: "edited", revision: before.revision, text: before.text };
    const revision = await writeDocument(trx, before, { kind, id, label: before.label, path, after: changed, at });
    return { kind: "edited", revision, text: changed };
  });
}

function changedText(text: string, { kind, id, path, value }: Edit): string | StoreRefused {
  const at = placeText(path);
  let result: ReturnType<typeof editText>;
  try {
    result = editText(text, path, value);
  } catch (cause) {
    // The text library throws where the place is not there or is written through an alias.
    if (!(cause instanceof Error)) throw cause;
    return refusedAs({
      code: "no-such-place",
      at,
      given: at,
      allowed: "a place of this document",
      message: `${kind} ${id}: ${at} cannot be changed where it stands (${cause.message}). Change the text of the file.`,
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
      allowed: "the kind and id it has",
      message: `${kind} ${id} keeps its kind and id; other documents name it by them. Put in a document of the new name.`,
    });
  }
  if (result.text.length > TEXT_LIMIT) {
    return refusedAs({
      code: "file-too-large",
      at,
      given: result.text.length,
      allowed: `${TEXT_LIMIT} characters at most`,
      message: `${kind} ${id} would grow past ${TEXT_LIMIT / 1e6} MB.`,
    });
  }
  const unfit = textRefusal(result.text, `${kind} ${id}`);
  return unfit === undefined ? result.text : refusedAs(unfit);
}

const refusedAs = (...refusals: readonly Refusal[]): StoreRefused => ({ kind: "refused", refusals });

function placeText(path: readonly PropertyKey[]): string {
  return path
    .map((step, i) => (typeof step === "number" ? `[${step}]` : i === 0 ? String(step) : `.${String(step)}`))
    .join("");
}

function notFound(kind: string, id: string): Refusal {
  const name = `${kind} ${id}`.slice(0, 80);
  return {
    code: "not-found",
    at: name,
    given: name,
    allowed: "a document of this workshop",
    message: `There is no ${name} in this workshop.`,
  };
}
