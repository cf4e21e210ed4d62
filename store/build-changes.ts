/** Which documents belong to a build now, and which changes were there of them? Without their texts. */
import { type DocumentName, namedByBuild } from "@coldset/core/workshop";
import type { Kysely } from "kysely";
import type { WhatChange } from "./history-types.js";
import { documentsNamed, storedDocument } from "./read-documents.js";
import type { ReadTexts } from "./read-texts.js";
import { notFound, refusedAs } from "./refused-as.js";
import type { Tables } from "./tables.js";
import type { ChangeLine } from "./undo-stacks.js";
import type { StoredDocument, StoreRefused } from "./workshop.js";

export interface BuildNow {
  readonly kind: "build";
  /** The build first. A document that is named and not there is left out. */
  readonly documents: readonly StoredDocument[];
}

export async function buildNow(db: Kysely<Tables>, texts: ReadTexts, build: string): Promise<BuildNow | StoreRefused> {
  const row = await storedDocument(db, "build", build);
  if (row === undefined) return refusedAs(notFound("build", build));
  const read = texts.read(row);
  if (read.kind === "refused") return read;
  const { doc } = read.loaded;
  if (doc.kind !== "build") throw new Error(`the document build ${build} reads as ${doc.kind}`);
  const names = namedByBuild(doc).slice(1);
  const there = names.length === 0 ? [] : await documentsNamed(db, names);
  const others = names.flatMap(({ kind, id }) => there.filter((d) => d.kind === kind && d.id === id));
  return { kind: "build", documents: [row, ...others] };
}

export interface BuildChange extends ChangeLine {
  readonly words: string | null;
  readonly who: string | null;
  readonly at: string;
}

/** Oldest first. */
export async function changesOf(
  db: Kysely<Tables>,
  documents: readonly DocumentName[],
): Promise<readonly BuildChange[]> {
  const rows = await db
    .selectFrom("history")
    .innerJoin("changes", "changes.change", "history.change")
    .select(["changes.change", "changes.what", "changes.takes_back", "changes.words", "changes.who", "changes.at"])
    // The first revision of a document is the one with nothing before it.
    .select((eb) => eb.fn.max("history.revision").as("revision"))
    .where((eb) => eb.or(documents.map(({ kind, id }) => eb.and({ "history.kind": kind, "history.id": id }))))
    .groupBy("changes.change")
    .orderBy("changes.change")
    .execute();
  return rows.map((r) => ({
    change: r.change,
    what: r.what as WhatChange,
    takesBack: r.takes_back,
    replaces: r.revision > 1,
    words: r.words,
    who: r.who,
    at: r.at,
  }));
}
