/**
 * What happened to a build, newest first, with old and new of each change? A page at a time; texts are compared only for
 * the changes of the page, and a difference once found is kept, since history does not change.
 */
import { type Difference, differenceOfTexts } from "@coldset/core/workshop";
import type { Kysely } from "kysely";
import { buildNow, changesOf } from "./build-changes.js";
import type { BuildHistory, ChangedDocument, HistoryPage } from "./history-types.js";
import { pathOf } from "./read-documents.js";
import type { ReadTexts } from "./read-texts.js";
import type { Tables } from "./tables.js";
import { undoStacks } from "./undo-stacks.js";
import type { StoreRefused } from "./workshop.js";

const PAGE = 30;
const MOST_PAGE = 100;
const KEPT = 2000;
/** Values named for one document of one change; the rest is counted. */
const MOST_VALUES = 12;

export type ToldHistory = (build: string, page: HistoryPage) => Promise<BuildHistory | StoreRefused>;

export function toldHistory(db: Kysely<Tables>, texts: ReadTexts): ToldHistory {
  const kept = new Map<number, Difference>();
  /** Texts are fetched and compared only for what is not known yet. */
  const differencesOf = async (seqs: readonly number[]): Promise<(seq: number) => Difference> => {
    const found = new Map<number, Difference>();
    for (const seq of seqs) {
      const known = kept.get(seq);
      if (known !== undefined) found.set(seq, known);
    }
    const unknown = seqs.filter((seq) => !found.has(seq));
    if (kept.size + unknown.length > KEPT) kept.clear();
    for (const { seq, before, after } of await textsOf(db, unknown)) {
      const difference = differenceOfTexts(before, after, MOST_VALUES, texts.known);
      found.set(seq, difference);
      kept.set(seq, difference);
    }
    return (seq) => {
      const difference = found.get(seq);
      if (difference === undefined) throw new Error(`row ${seq} of the history was there a moment ago`);
      return difference;
    };
  };
  return async (build, { before = Number.MAX_SAFE_INTEGER, limit = PAGE }) => {
    const now = await buildNow(db, texts, build);
    if (now.kind === "refused") return now;
    const lines = await changesOf(db, now.documents);
    const stacks = undoStacks(lines);
    const size = Math.min(MOST_PAGE, Math.max(1, Math.trunc(limit)));
    const wanted = lines.filter((l) => l.change < before).toReversed();
    const page = wanted.slice(0, size);
    const rows = await rowsOf(
      db,
      page.map((l) => l.change),
    );
    const found = await differencesOf(rows.map((r) => r.seq));
    const documents = new Map<number, ChangedDocument[]>();
    for (const row of rows) {
      const { kind, id, revision, change } = row;
      const path = row.path === null ? null : pathOf(row.path);
      const list = documents.get(change) ?? [];
      documents.set(change, [...list, { kind, id, revision, path, difference: found(row.seq) }]);
    }
    const standing = new Set(stacks.undo.map((p) => p.of));
    return {
      kind: "history",
      build,
      newest: lines.at(-1)?.change ?? 0,
      undo: stacks.undo.at(-1)?.of ?? null,
      redo: stacks.redo.at(-1)?.of ?? null,
      changes: page.map(({ change, what, words, who, at, replaces }) => {
        const turns = what === "undo" || what === "redo";
        const stands = turns || !replaces || standing.has(change);
        return {
          change,
          what,
          words,
          who,
          at,
          of: stacks.origin.get(change) ?? null,
          state: stands ? "stands" : "taken-back",
          canTakeBack: !turns && standing.has(change),
          documents: documents.get(change) ?? [],
        };
      }),
      older: wanted.length > size ? (page.at(-1)?.change ?? null) : null,
    };
  };
}

async function rowsOf(db: Kysely<Tables>, changes: readonly number[]) {
  if (changes.length === 0) return [];
  return db
    .selectFrom("history")
    .select(["seq", "change", "kind", "id", "revision", "path"])
    .where("change", "in", [...changes])
    .orderBy("seq")
    .execute();
}

async function textsOf(db: Kysely<Tables>, seqs: readonly number[]) {
  if (seqs.length === 0) return [];
  return db
    .selectFrom("history")
    .select(["seq", "before", "after"])
    .where("seq", "in", [...seqs])
    .execute();
}
