/**
 * What would come in, and what stands in its way? For each document: new here, the same here, or different, and then how;
 * for those that differ somebody has to choose. Nothing is written.
 */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { type Difference, differenceOfTexts, editText, loadText, NAMED_BY_BUILD } from "@coldset/core/workshop";
import type { Kysely, Transaction } from "kysely";
import { PHOTOS_OF_ONE_DOCUMENT, photoLine, photosOf } from "../photos.js";
import { storedDocument } from "../read-documents.js";
import type { Tables } from "../tables.js";
import type { PhotoRow, VersionLine } from "./archive-form.js";
import type { Incoming, IncomingDocument } from "./incoming.js";

/** What to do with a document that is here and differs. */
export type ImportChoice = "keep-mine" | "take-theirs" | "as-new";

export interface ImportChoices {
  readonly forAll?: ImportChoice | undefined;
  /** By "kind id"; goes before `forAll`. */
  readonly byDocument?: Readonly<Record<string, ImportChoice>> | undefined;
  /** Put behind the id of what comes in as new. */
  readonly suffix?: string | undefined;
}

export interface PlannedDocument {
  readonly kind: string;
  readonly id: string;
  readonly change: "new" | "same" | "differs";
  /** From what is here to what would come in. */
  readonly difference: Difference;
  /** Of one that differs: which of the two histories contains the other? */
  readonly histories: "theirs-goes-on" | "mine-goes-on" | "apart" | "only-text";
  readonly choice: ImportChoice | null;
  /** The id that it would get; its own, except as new. */
  readonly newId: string;
}

export interface ImportPlan {
  readonly kind: "plan";
  readonly label: string;
  readonly documents: readonly PlannedDocument[];
  readonly photos: { readonly fresh: number; readonly there: number };
  readonly versions: {
    readonly fresh: number;
    readonly there: number;
    /** Names of those that cannot be kept, since a text that they name is not taken in. */
    readonly left: readonly string[];
  };
  /** Documents that differ and for which nothing was chosen. */
  readonly undecided: readonly { readonly kind: string; readonly id: string }[];
  /** What stands in the way whatever is chosen. */
  readonly refusals: readonly Refusal[];
}

export interface WorkedPlan {
  readonly plan: ImportPlan;
  readonly documents: readonly {
    readonly from: IncomingDocument;
    readonly to: PlannedDocument;
    readonly text: string;
  }[];
  readonly photos: readonly {
    readonly row: PhotoRow;
    readonly kind: string;
    readonly id: string;
    readonly freshId: boolean;
  }[];
  readonly versions: readonly VersionLine[];
}

type Reader = Kysely<Tables> | Transaction<Tables>;
const key = (d: { readonly kind: string; readonly id: string }) => `${d.kind} ${d.id}`;

export async function planImport(db: Reader, incoming: Incoming, choices: ImportChoices): Promise<WorkedPlan> {
  const refusals: Refusal[] = [];
  const looked = [];
  for (const from of incoming.documents) looked.push({ from, to: await plannedDocument(db, from, choices) });
  const renamed = new Map(looked.filter(({ to }) => to.newId !== to.id).map(({ to }) => [key(to), to.newId] as const));
  const documents: WorkedPlan["documents"][number][] = [];
  for (const { from, to } of looked) {
    if (to.choice !== "as-new") {
      documents.push({ from, to, text: from.text });
      continue;
    }
    const text = renamedText(from, renamed);
    if (typeof text !== "string") refusals.push(...text);
    else {
      const there = await storedDocument(db, to.kind, to.newId);
      if (there !== undefined && there.text !== text) refusals.push(nameTaken(to, there.kind));
      documents.push({ from, to, text });
    }
  }
  const photos = await plannedPhotos(db, incoming, documents, refusals);
  const versions = await plannedVersions(db, incoming, documents);
  const undecided = looked.filter(({ to }) => to.change === "differs" && to.choice === null).map(({ to }) => to);
  const fresh = photos.filter((p) => !p.there);
  return {
    plan: {
      kind: "plan",
      label: incoming.label,
      documents: looked.map(({ to }) => to),
      photos: { fresh: fresh.length, there: photos.length - fresh.length },
      versions: { fresh: versions.fresh.length, there: versions.there, left: versions.left },
      undecided: undecided.map(({ kind, id }) => ({ kind, id })),
      refusals,
    },
    documents,
    photos: fresh,
    versions: versions.fresh,
  };
}

async function plannedDocument(db: Reader, from: IncomingDocument, choices: ImportChoices): Promise<PlannedDocument> {
  const { kind, id } = from;
  const mine = await storedDocument(db, kind, id);
  const difference = differenceOfTexts(mine?.text ?? null, from.text);
  const plain = { kind, id, difference, newId: id, choice: null, histories: "only-text" } as const;
  if (mine === undefined) return { ...plain, change: "new" };
  if (mine.text === from.text) return { ...plain, change: "same" };
  const choice = choices.byDocument?.[key(from)] ?? choices.forAll ?? null;
  const newId = choice === "as-new" ? `${id}${choices.suffix ?? ""}` : id;
  return { ...plain, change: "differs", choice, newId, histories: await howRelated(db, from) };
}

async function howRelated(db: Reader, from: IncomingDocument): Promise<PlannedDocument["histories"]> {
  if (from.history.length === 0) return "only-text";
  const mine = await textsOf(db, from);
  const shared = Math.min(mine.length, from.history.length);
  for (let i = 0; i < shared; i += 1) if (mine[i] !== from.history[i]?.text) return "apart";
  return mine.length < from.history.length ? "theirs-goes-on" : "mine-goes-on";
}

/** All texts that a document here has had, oldest first. */
async function textsOf(db: Reader, d: { readonly kind: string; readonly id: string }): Promise<readonly string[]> {
  const rows = await db
    .selectFrom("history")
    .select("after")
    .where("kind", "=", d.kind)
    .where("id", "=", d.id)
    .orderBy("revision")
    .execute();
  return rows.map((row) => row.after);
}

/** The text under its new id; where it is a build, what comes in under a new id too is named by that. */
function renamedText(from: IncomingDocument, renamed: ReadonlyMap<string, string>): string | readonly Refusal[] {
  const edits: [string, string][] = [["id", renamed.get(key(from)) ?? from.id]];
  const loaded = loadText(from.text, from.label);
  const doc = loaded.kind === "loaded" ? loaded.docs[0]?.doc : undefined;
  if (doc?.kind === "build") {
    for (const named of NAMED_BY_BUILD) {
      const other = doc[named] === undefined ? undefined : renamed.get(`${named} ${doc[named]}`);
      if (other !== undefined) edits.push([named, other]);
    }
  }
  let { text } = from;
  for (const [place, value] of edits) {
    const edited = editText(text, [place], value);
    if (edited.kind === "refused") {
      return edited.refusals.map(({ code, given, allowed, message }) => ({
        code,
        at: `${key(from)} ${place}`,
        given,
        allowed,
        message: say("store.plan-import.cannot-come-in-as", { from: key(from), value, message }),
      }));
    }
    text = edited.text;
  }
  return text;
}

async function plannedPhotos(
  db: Reader,
  incoming: Incoming,
  documents: WorkedPlan["documents"],
  refusals: Refusal[],
): Promise<readonly (WorkedPlan["photos"][number] & { readonly there: boolean })[]> {
  const targets = new Map(documents.map(({ to }) => [key(to), to]));
  const planned: (WorkedPlan["photos"][number] & { readonly there: boolean })[] = [];
  for (const [of, to] of targets) {
    const rows = incoming.photos.filter((p) => key(p) === of);
    if (rows.length === 0) continue;
    const { kind, newId: id } = to;
    const mine = await photosOf(db, { kind, id });
    let shown = mine.filter((p) => p.takenAwayAt === null).length;
    for (const row of rows) {
      const twin = mine.some(
        (p) => p.photo === row.photo || (p.sha256 === row.sha256 && p.place === row.place && p.takenAwayAt === null),
      );
      const used = to.newId !== to.id || (!twin && (await photoLine(db, row.photo)) !== undefined);
      planned.push({ row, kind, id, freshId: used, there: twin });
      if (!twin && row.takenAwayAt === null) shown += 1;
    }
    if (shown > PHOTOS_OF_ONE_DOCUMENT) refusals.push(tooManyPhotos(kind, id, shown));
  }
  return planned;
}

/** A version is kept where every text that it names is here afterwards. */
async function plannedVersions(db: Reader, incoming: Incoming, documents: WorkedPlan["documents"]) {
  const byKey = new Map(documents.map((d) => [key(d.to), d]));
  const fresh: VersionLine[] = [];
  const left: string[] = [];
  let there = 0;
  for (const version of incoming.versions) {
    const known = await db
      .selectFrom("versions")
      .select("version")
      .where("build", "=", version.build)
      .where("name_key", "=", version.nameKey)
      .executeTakeFirst();
    if (known !== undefined) {
      there += 1;
      continue;
    }
    const named: VersionLine["documents"] = [];
    for (const { kind, id, revision } of version.documents) {
      const d = byKey.get(`${kind} ${id}`);
      const text = d?.from.history[revision - 1]?.text;
      if (d === undefined || text === undefined || d.to.choice === "as-new") break;
      const comes = d.to.change === "new" || (d.to.histories === "theirs-goes-on" && d.to.choice === "take-theirs");
      const at = comes ? revision : (await textsOf(db, { kind, id })).lastIndexOf(text) + 1;
      if (at < 1) break;
      named.push({ kind, id, revision: at });
    }
    const whole = named.length === version.documents.length && named.length > 0;
    if (whole) fresh.push({ ...version, documents: named });
    else left.push(version.name);
  }
  return { fresh, there, left };
}

function nameTaken(to: PlannedDocument, kind: string): Refusal {
  const given = `${kind} ${to.newId}`;
  const message = say("store.plan-import.cannot-come-in-as-there-is", { kind, to: to.id, newId: to.newId, given });
  return {
    code: "import-name-taken",
    at: key(to),
    given,
    allowed: say("store.plan-import.an-id-that-is-free"),
    message,
  };
}

function tooManyPhotos(kind: string, id: string, given: number): Refusal {
  const allowed = say("store.photos.photos-of-one-document", { photosOfOneDocument: PHOTOS_OF_ONE_DOCUMENT });
  const message = say("store.plan-import.would-have-photos-are-the-most", { kind, id, given, allowed });
  return { code: "too-many-photos", at: `${kind} ${id}`, given, allowed, message };
}
