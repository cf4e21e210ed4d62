/**
 * How does what was looked at come in? All of it in one transaction, or nothing. What is new here comes with its whole
 * history; what goes on from here gets what is missing; anything else becomes one new revision, and what stood here before
 * stays in the history.
 */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { differenceOfTexts } from "@coldset/core/workshop";
import type { Kysely, Transaction } from "kysely";
import { type Author, beginChange } from "../begin-change.js";
import { keepPicture, newPhotoId } from "../photos.js";
import { storedDocument } from "../read-documents.js";
import { refusedAs } from "../refused-as.js";
import type { Tables } from "../tables.js";
import type { StoreRefused } from "../workshop.js";
import { writeDocument } from "../write-document.js";
import type { ChangeLine, HistoryLine } from "./archive-form.js";
import type { Incoming } from "./incoming.js";
import { type ImportChoices, type ImportPlan, planImport, type WorkedPlan } from "./plan-import.js";

export type Imported = { readonly kind: "imported"; readonly plan: ImportPlan } | StoreRefused;

class Stop extends Error {
  readonly refused: StoreRefused;
  constructor(refused: StoreRefused) {
    super(say("store.take-import.the-import-was-refused"));
    this.refused = refused;
  }
}

export async function takeImport(
  db: Kysely<Tables>,
  incoming: Incoming,
  choices: ImportChoices,
  author: Author,
): Promise<Imported> {
  try {
    return await db.transaction().execute(async (trx): Promise<Imported> => {
      // Looked at anew: since the preview somebody may have edited.
      const worked = await planImport(trx, incoming, choices);
      const refusals = [...worked.plan.refusals, ...worked.plan.undecided.map((d) => undecided(d, worked))];
      if (refusals.length > 0) throw new Stop(refusedAs(...refusals));
      const numbers = await bringChanges(trx, incoming, worked);
      const change = lazyChange(trx, incoming.label, author);
      const lines: Line[] = [];
      for (const d of worked.documents) lines.push(...(await bringDocument(trx, d, change, author)));
      await bringLines(trx, lines, numbers);
      await bringPhotos(trx, incoming, worked);
      await bringVersions(trx, worked);
      return { kind: "imported", plan: worked.plan };
    });
  } catch (cause) {
    // Thrown so that the transaction is rolled back.
    if (cause instanceof Stop) return cause.refused;
    throw cause;
  }
}

/** The number that a change of the archive has here. */
type Numbers = ReadonlyMap<number, number>;

/** From which revision on does the history of this document come in? 0: none of it. */
function historyFrom({ from, to }: WorkedPlan["documents"][number], mine: number): number {
  if (from.history.length === 0) return 0;
  if (to.change === "new") return 1;
  return to.change === "differs" && to.choice === "take-theirs" && to.histories === "theirs-goes-on" ? mine + 1 : 0;
}

async function bringChanges(trx: Transaction<Tables>, incoming: Incoming, worked: WorkedPlan): Promise<Numbers> {
  const numbers = new Map<number, number>();
  const wanted = new Set<number>();
  for (const d of worked.documents) {
    const { kind, id } = d.from;
    const mine = await trx
      .selectFrom("history")
      .select(["revision", "change"])
      .where("kind", "=", kind)
      .where("id", "=", id)
      .orderBy("revision")
      .execute();
    const first = historyFrom(d, mine.length);
    if (first === 0) continue;
    for (const line of d.from.history) {
      if (line.revision >= first) wanted.add(line.change);
      else numbers.set(line.change, mine[line.revision - 1]?.change ?? 0);
    }
  }
  const byNumber = new Map(incoming.changes.map((c) => [c.change, c]));
  // What is taken back has to be there too; the numbers run from old to new.
  for (const line of incoming.changes.toReversed()) {
    if (wanted.has(line.change) && line.takesBack !== null && !numbers.has(line.takesBack)) wanted.add(line.takesBack);
  }
  for (const number of [...wanted].sort((a, b) => a - b)) {
    const line = byNumber.get(number);
    if (line === undefined) throw new Error(`change ${number} is not in the archive`);
    numbers.set(number, await bringChange(trx, line, byNumber, numbers));
  }
  return numbers;
}

async function bringChange(
  trx: Transaction<Tables>,
  line: ChangeLine,
  byNumber: ReadonlyMap<number, ChangeLine>,
  numbers: Map<number, number>,
): Promise<number> {
  let takesBack: number | null = null;
  if (line.takesBack !== null) {
    takesBack = numbers.get(line.takesBack) ?? 0;
    const turned = await trx
      .selectFrom("changes")
      .select("change")
      .where("takes_back", "=", takesBack)
      .executeTakeFirst();
    const again = byNumber.get(line.takesBack);
    // Here it was taken back in another way already: this one gets a line of its own to lean on.
    if (turned !== undefined && again !== undefined) takesBack = await bringChange(trx, again, byNumber, numbers);
  }
  const row = await trx
    .insertInto("changes")
    .values({ what: line.what, takes_back: takesBack, words: line.words, who: line.who, at: line.at })
    .returning("change")
    .executeTakeFirstOrThrow();
  return row.change;
}

/** The one change for all that comes in without a history of its own; begun when it is needed. */
function lazyChange(trx: Transaction<Tables>, label: string, author: Author): () => Promise<number> {
  let number: Promise<number> | undefined;
  return () => {
    number ??= beginChange(trx, { what: "import", words: label }, author);
    return number;
  };
}

/** A line of a history that is still to come in, with the text before it. */
interface Line {
  readonly kind: string;
  readonly id: string;
  readonly before: string | null;
  readonly line: HistoryLine;
}

/** Gives the lines of its history that are still to come in. */
async function bringDocument(
  trx: Transaction<Tables>,
  planned: WorkedPlan["documents"][number],
  change: () => Promise<number>,
  author: Author,
): Promise<readonly Line[]> {
  const { from, to, text } = planned;
  if (to.change === "same" || to.choice === "keep-mine") return [];
  const { kind, newId: id } = to;
  const mine = await storedDocument(trx, kind, id);
  if (mine?.text === text) return [];
  const { label } = from;
  const first = historyFrom(planned, mine?.revision ?? 0);
  if (first === 0) {
    await writeDocument(trx, mine, { kind, id, label, path: null, after: text, at: author.at, change: await change() });
    return [];
  }
  const row = { label, text, revision: from.history.length, updated_at: from.updatedAt };
  if (mine === undefined)
    await trx
      .insertInto("documents")
      .values({ kind, id, ...row })
      .execute();
  else await trx.updateTable("documents").set(row).where("kind", "=", kind).where("id", "=", id).execute();
  return from.history.slice(first - 1).map((line, i, lines) => ({
    kind,
    id,
    before: i === 0 ? (mine?.text ?? null) : (lines[i - 1]?.text ?? null),
    line,
  }));
}

/** In the order in which they came about, over all documents: that is how a change is taken back row by row. */
async function bringLines(trx: Transaction<Tables>, lines: readonly Line[], numbers: Numbers): Promise<void> {
  for (const { kind, id, before, line } of [...lines].sort((a, b) => a.line.order - b.line.order)) {
    const change = numbers.get(line.change);
    if (change === undefined) throw new Error(`change ${line.change} was not brought in`);
    const path = line.path === null ? null : JSON.stringify(line.path);
    const { revision, text: after, at } = line;
    await trx.insertInto("history").values({ kind, id, revision, path, before, after, at, change }).execute();
  }
}

async function bringPhotos(trx: Transaction<Tables>, incoming: Incoming, worked: WorkedPlan): Promise<void> {
  for (const { row, kind, id, freshId } of worked.photos) {
    const picture = await incoming.picture(row);
    if ("kind" in picture) throw new Stop(picture);
    await keepPicture(trx, row.sha256, picture);
    const { place, caption, sha256, at, takenAwayAt } = row;
    const photo = freshId ? newPhotoId() : row.photo;
    await trx
      .insertInto("photos")
      .values({ photo, kind, id, place, caption, sha256, at, taken_away_at: takenAwayAt })
      .execute();
  }
}

async function bringVersions(trx: Transaction<Tables>, worked: WorkedPlan): Promise<void> {
  for (const { build, name, nameKey, who, at, documents } of worked.versions) {
    const { version } = await trx
      .insertInto("versions")
      .values({ build, name, name_key: nameKey, who, at })
      .returning("version")
      .executeTakeFirstOrThrow();
    await trx
      .insertInto("version_documents")
      .values(documents.map((d) => ({ ...d, version })))
      .execute();
  }
}

function undecided(d: { readonly kind: string; readonly id: string }, worked: WorkedPlan): Refusal {
  const name = `${d.kind} ${d.id}`;
  const found = worked.documents.find(({ to }) => to.kind === d.kind && to.id === d.id);
  const values = found?.to.difference ?? differenceOfTexts(null, null);
  const count = values.values.length + values.more;
  return {
    code: "import-differs",
    at: name,
    given: count,
    allowed: say("workshop.bin-with-parts.keep-mine-take-theirs-or-as"),
    message: say("store.take-import.is-here-and-differs-choose-keep", {
      name,
      count: count > 0 ? ` in ${count} ${count === 1 ? "value" : "values"}` : "",
    }),
  };
}
