/** How do the documents stand with what waits laid over what the records have, and what has changed between two states? */
import { say } from "@coldset/core/texts";
import { type AnyDoc, editPlain, type PlainRefusal, readPlain, withValue } from "@coldset/core/workshop";
import type { StoredPlain } from "./api.js";
import type { Entry } from "./entry-shelf.js";
import { samePlace } from "./place.js";
import { same } from "./three-way.js";

export interface OpenDoc extends StoredPlain {
  readonly doc: AnyDoc;
}

export interface ReadDocs {
  readonly docs: readonly OpenDoc[];
  readonly problems: readonly string[];
}

const keyOf = (d: { readonly kind: string; readonly id: string }) => `${d.kind}/${d.id}`;

/** @param old documents read before: one that says the same is not read again */
export function readDocs(stored: readonly StoredPlain[], old: readonly OpenDoc[]): ReadDocs {
  const docs: OpenDoc[] = [];
  const problems: string[] = [];
  const before = new Map(old.map((d) => [keyOf(d), d]));
  for (const s of stored) {
    const was = before.get(keyOf(s));
    if (was !== undefined && JSON.stringify(was.plain) === JSON.stringify(s.plain)) {
      docs.push({ ...was, revision: s.revision });
      continue;
    }
    const one = readPlain(s.plain);
    if (one.kind === "read") docs.push({ ...s, doc: one.doc });
    else problems.push(...one.refusals.map((r) => `${s.kind} ${s.id}: ${refusalText(r)}`));
  }
  return { docs, problems };
}

/** Entries that wait are laid over what the records have, so that the page shows what the person meant. */
export function withWaiting(docs: readonly OpenDoc[], waiting: readonly Entry[]): readonly OpenDoc[] {
  return docs.map((doc) => {
    const entries = waiting.filter((e) => keyOf(e) === keyOf(doc));
    return entries.length === 0 ? doc : (allAtOnce(doc, entries) ?? oneByOne(doc, entries));
  });
}

/** Read once for all of them: after a long time without the server many entries wait. */
function allAtOnce(doc: OpenDoc, entries: readonly Entry[]): OpenDoc | undefined {
  let { plain } = doc;
  for (const e of entries) {
    const path = samePlace(plain, e.path, e.rows);
    if (path !== undefined) plain = withValue(plain, path, e.value);
  }
  const read = readPlain(plain);
  return read.kind === "read" ? { ...doc, plain, doc: read.doc } : undefined;
}

/** One of them cannot be read on what the records have now: the others are shown all the same. */
function oneByOne(doc: OpenDoc, entries: readonly Entry[]): OpenDoc {
  let out = doc;
  for (const e of entries) {
    const path = samePlace(out.plain, e.path, e.rows);
    if (path === undefined) continue;
    const edited = editPlain(out.plain, path, e.value);
    if (edited.kind === "read") out = { ...out, plain: edited.plain, doc: edited.doc };
  }
  return out;
}

export interface ChangedPlace {
  readonly kind: string;
  readonly id: string;
  readonly path: readonly (string | number)[];
  readonly was: unknown;
  readonly now: unknown;
}

/** The places at which documents differ, each as deep as it can be named; whole rows where lists grew or shrank. */
export function changedPlaces(before: readonly StoredPlain[], now: readonly StoredPlain[]): readonly ChangedPlace[] {
  const old = new Map(before.map((d) => [keyOf(d), d]));
  return now.flatMap((doc) => {
    const was = old.get(keyOf(doc));
    return was === undefined
      ? []
      : differences(was.plain, doc.plain).map((d) => ({ kind: doc.kind, id: doc.id, ...d }));
  });
}

type Difference = Pick<ChangedPlace, "path" | "was" | "now">;

function differences(was: unknown, now: unknown, path: readonly (string | number)[] = []): readonly Difference[] {
  if (same(was, now)) return [];
  const keys = keysOfBoth(was, now);
  if (keys === undefined) return [{ path, was, now }];
  return keys.flatMap((key) => differences(at(was, key), at(now, key), [...path, key]));
}

function keysOfBoth(a: unknown, b: unknown): readonly (string | number)[] | undefined {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length ? a.map((_, i) => i) : undefined;
  if (isRecord(a) && isRecord(b)) return [...new Set([...Object.keys(a), ...Object.keys(b)])];
  return undefined;
}

const isRecord = (v: unknown): v is Readonly<Record<string, unknown>> =>
  v !== null && typeof v === "object" && !Array.isArray(v);
const at = (v: unknown, key: string | number): unknown => (v as Readonly<Record<string | number, unknown>>)[key];

/** "measured.top_tube_cc" as somebody reads it: "top tube cc". The last name says most. */
export function placeName(path: readonly (string | number)[]): string {
  const names = path.filter((step) => typeof step === "string");
  return (names.at(-1) ?? say("web.laid.a-row")).replaceAll("_", " ");
}

export function refusalText(r: PlainRefusal): string {
  const path = r.path.map(String).join(".");
  return path === "" || r.message.startsWith(path) ? r.message : `${path}: ${r.message}`;
}
