/**
 * How does a build, or one document, come back to how it was? As a new change that can itself be taken back: the texts of
 * then are written as new revisions, and nothing that came after is lost from the history.
 */
import { say } from "@coldset/core/texts";
import { differenceOfTexts } from "@coldset/core/workshop";
import type { Kysely, Transaction } from "kysely";
import { type Author, beginChange } from "./begin-change.js";
import { buildNow, changesOf } from "./build-changes.js";
import { NOW_NAME, type Restored, type VersionDifference, type WrittenDocument } from "./history-types.js";
import { nameKey, noVersion, type VersionText, versionTexts } from "./named-versions.js";
import { storedDocument } from "./read-documents.js";
import type { ReadTexts } from "./read-texts.js";
import { notFound, refusedAs } from "./refused-as.js";
import type { Tables } from "./tables.js";
import { readable } from "./turn-change.js";
import type { StoredDocument, StoreRefused } from "./workshop.js";
import { writeDocument } from "./write-document.js";

export async function restoreVersion(
  db: Kysely<Tables>,
  texts: ReadTexts,
  { build, name, seen }: { readonly build: string; readonly name: string; readonly seen: number | undefined },
  author: Author,
): Promise<Restored> {
  return db.transaction().execute(async (trx): Promise<Restored> => {
    const now = await buildNow(trx, texts, build);
    if (now.kind === "refused") return now;
    const newest = (await changesOf(trx, now.documents)).at(-1)?.change ?? 0;
    if (seen !== undefined && seen !== newest) return { kind: "moved-on", newest };
    const wanted = await versionTexts(trx, build, name);
    if (wanted === undefined) return refusedAs(noVersion(build, name));
    return writeTexts(trx, texts, wanted, name.trim(), author);
  });
}

export interface RestoreDocument {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  readonly expectedRevision: number | undefined;
}

export async function restoreDocument(
  db: Kysely<Tables>,
  texts: ReadTexts,
  { kind, id, revision, expectedRevision }: RestoreDocument,
  author: Author,
): Promise<Restored | { readonly kind: "conflict"; readonly revision: number; readonly text: string }> {
  return db.transaction().execute(async (trx) => {
    const stored = await storedDocument(trx, kind, id);
    if (stored === undefined) return refusedAs(notFound(kind, id));
    if (expectedRevision !== undefined && expectedRevision !== stored.revision)
      return { kind: "conflict", revision: stored.revision, text: stored.text } as const;
    const row = await trx
      .selectFrom("history")
      .select("after as text")
      .where("kind", "=", kind)
      .where("id", "=", id)
      .where("revision", "=", revision)
      .executeTakeFirst();
    if (row === undefined) {
      return refusedAs({
        code: "no-such-revision",
        at: `${kind} ${id}`,
        given: revision,
        allowed: say("store.restore.a-revision-from-1-to", { revision: stored.revision }),
        message: say("store.restore.has-no-revision-it-has-1", { kind, id, revision, revision2: stored.revision }),
      });
    }
    return writeTexts(trx, texts, [{ kind, id, text: row.text }], say("store.restore.revision", { revision }), author);
  });
}

async function writeTexts(
  trx: Transaction<Tables>,
  texts: ReadTexts,
  wanted: readonly VersionText[],
  words: string,
  author: Author,
): Promise<Restored> {
  const differing: { readonly stored: StoredDocument; readonly text: string }[] = [];
  for (const { kind, id, text } of wanted) {
    const stored = await storedDocument(trx, kind, id);
    if (stored === undefined) throw new Error(`${kind} ${id} has a history and is not there`);
    if (stored.text !== text) differing.push({ stored, text });
  }
  const refusals = differing.flatMap(({ stored, text }) => readable(texts, stored, text));
  if (refusals.length > 0) return { kind: "refused", refusals };
  if (differing.length === 0) return { kind: "restored", change: null, documents: [] };
  const change = await beginChange(trx, { what: "restore", words }, author);
  const documents: WrittenDocument[] = [];
  for (const { stored, text } of differing) {
    const { kind, id, label } = stored;
    const written = { kind, id, label, path: null, after: text, at: author.at, change };
    const revision = await writeDocument(trx, stored, written);
    documents.push({ kind, id, revision, difference: differenceOfTexts(stored.text, text, undefined, texts.known) });
  }
  return { kind: "restored", change, documents };
}

export async function versionDifference(
  db: Kysely<Tables>,
  texts: ReadTexts,
  build: string,
  from: string,
  to: string,
): Promise<VersionDifference> {
  const now = await buildNow(db, texts, build);
  if (now.kind === "refused") return now;
  const side = async (name: string): Promise<readonly VersionText[] | StoreRefused> =>
    nameKey(name) === NOW_NAME
      ? now.documents
      : ((await versionTexts(db, build, name)) ?? refusedAs(noVersion(build, name)));
  const [before, after] = [await side(from), await side(to)];
  const refusals = [before, after].flatMap((s) => ("kind" in s ? s.refusals : []));
  if ("kind" in before || "kind" in after) return { kind: "refused", refusals };
  const key = (d: { readonly kind: string; readonly id: string }) => `${d.kind} ${d.id}`;
  const [was, is] = [new Map(before.map((d) => [key(d), d])), new Map(after.map((d) => [key(d), d]))];
  const all = [...new Map([...was, ...is]).values()];
  const documents = all.flatMap((d) => {
    const { kind, id } = d;
    const difference = differenceOfTexts(was.get(key(d))?.text ?? null, is.get(key(d))?.text ?? null);
    return difference.kind === "same" ? [] : [{ kind, id, difference }];
  });
  const newest = (await changesOf(db, now.documents)).at(-1)?.change ?? 0;
  return { kind: "difference", from, to, documents, newest };
}
