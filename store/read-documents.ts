/** Which documents are in the workshop, and what has happened to one of them? */
import type { DocumentName, EditPath } from "@coldset/core/workshop";
import type { Kysely } from "kysely";
import type { Tables } from "./tables.js";
import type { DocumentLine, HistoryEntry, StoredDocument } from "./workshop.js";

const LINE = ["kind", "id", "label", "revision", "updated_at as updatedAt"] as const;

export async function listDocuments(db: Kysely<Tables>): Promise<readonly DocumentLine[]> {
  return db.selectFrom("documents").select(LINE).orderBy("kind").orderBy("id").execute();
}

export async function allDocuments(db: Kysely<Tables>): Promise<readonly StoredDocument[]> {
  return db.selectFrom("documents").select(LINE).select("text").orderBy("kind").orderBy("id").execute();
}

export async function storedDocument(
  db: Kysely<Tables>,
  kind: string,
  id: string,
): Promise<StoredDocument | undefined> {
  return db
    .selectFrom("documents")
    .select(LINE)
    .select("text")
    .where("kind", "=", kind)
    .where("id", "=", id)
    .executeTakeFirst();
}

/** Those that are there, as they stood at one moment; in no order. */
export async function documentsNamed(
  db: Kysely<Tables>,
  names: readonly DocumentName[],
): Promise<readonly StoredDocument[]> {
  return db
    .selectFrom("documents")
    .select(LINE)
    .select("text")
    .where((eb) => eb.or(names.map(({ kind, id }) => eb.and({ kind, id }))))
    .execute();
}

export async function documentHistory(db: Kysely<Tables>, kind: string, id: string): Promise<readonly HistoryEntry[]> {
  const rows = await db
    .selectFrom("history")
    .select(["revision", "path", "before", "after", "at"])
    .where("kind", "=", kind)
    .where("id", "=", id)
    .orderBy("seq")
    .execute();
  return rows.map((row) => ({ ...row, path: row.path === null ? null : pathOf(row.path) }));
}

export function pathOf(json: string): EditPath {
  const path: unknown = JSON.parse(json);
  if (!Array.isArray(path)) throw new Error("a path in the history is no list");
  return path.map((step) => (typeof step === "number" ? step : String(step)));
}
