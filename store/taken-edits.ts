/** Has this edit arrived before? Asked and noted inside the transaction that makes it. */
import { say } from "@coldset/core/texts";
import type { Kysely, Transaction } from "kysely";
import type { Tables } from "./tables.js";
import type { Edited } from "./workshop.js";

export interface EditName {
  readonly editId: string | undefined;
  readonly kind: string;
  readonly id: string;
}

/** What became of it then; the document may have moved on since. */
export async function takenBefore(db: Kysely<Tables>, { editId, kind, id }: EditName): Promise<Edited | undefined> {
  if (editId === undefined) return undefined;
  const taken = await db.selectFrom("taken_edits").selectAll().where("edit_id", "=", editId).executeTakeFirst();
  if (taken === undefined) return undefined;
  if (taken.kind !== kind || taken.id !== id) {
    const message = say("store.taken-edits.an-edit-of-another-document-has", { kind: taken.kind, taken: taken.id });
    return {
      kind: "refused",
      refusals: [
        {
          code: "edit-id-taken",
          at: "editId",
          given: editId,
          allowed: say("store.taken-turns.an-id-of-its-own"),
          message,
        },
      ],
    };
  }
  const row = await db
    .selectFrom("history")
    .select("after")
    .where("kind", "=", kind)
    .where("id", "=", id)
    .where("revision", "=", taken.revision)
    .executeTakeFirstOrThrow();
  return { kind: "edited", revision: taken.revision, text: row.after, repeated: true };
}

export async function noteTaken(
  trx: Transaction<Tables>,
  { editId, kind, id }: EditName,
  made: { readonly revision: number; readonly at: string },
): Promise<void> {
  if (editId === undefined) return;
  await trx
    .insertInto("taken_edits")
    .values({ edit_id: editId, kind, id, revision: made.revision, at: made.at })
    .execute();
}
