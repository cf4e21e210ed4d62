/** How is one change of a document kept? The new text and its line in the history, inside the caller's transaction. */
import type { EditPath } from "@coldset/core/workshop";
import type { Transaction } from "kysely";
import type { Tables } from "./tables.js";
import type { StoredDocument } from "./workshop.js";

export interface Change {
  readonly kind: string;
  readonly id: string;
  readonly label: string;
  readonly path: EditPath | null;
  readonly after: string;
  readonly at: string;
  /** The change that this is a part of. */
  readonly change: number;
}

/** Gives the revision that this change made. `before` must have been read in the same transaction. */
export async function writeDocument(
  trx: Transaction<Tables>,
  before: StoredDocument | undefined,
  change: Change,
): Promise<number> {
  const { kind, id, label, after, at } = change;
  const revision = (before?.revision ?? 0) + 1;
  if (before === undefined) {
    await trx.insertInto("documents").values({ kind, id, label, text: after, revision, updated_at: at }).execute();
  } else {
    await trx
      .updateTable("documents")
      .set({ label, text: after, revision, updated_at: at })
      .where("kind", "=", kind)
      .where("id", "=", id)
      .execute();
  }
  await trx
    .insertInto("history")
    .values({
      kind,
      id,
      revision,
      path: change.path === null ? null : JSON.stringify(change.path),
      before: before?.text ?? null,
      after,
      at,
      change: change.change,
    })
    .execute();
  return revision;
}
