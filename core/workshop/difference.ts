/**
 * What has changed between two texts of one document, so that a person can read it? Value by value, old and new; entries
 * of lists are matched by their id and not by their place, so that one part put in at the front is one part added. Where
 * no value differs it says whether comments did, or only the layout.
 * Bounds: `most` values and as many comments are named, the rest is counted.
 */
import { Lexer, parseDocument } from "yaml";
import type { EditPath } from "./edit.js";
import { entryName, isPlainRecord, ownValue, sameValue } from "./same-value.js";
import { placeWords, writtenValue } from "./written-value.js";

export interface ValueDifference {
  readonly kind: "changed" | "added" | "taken-out" | "re-ordered";
  /** "measured.top_tube_cc", "parts q24, cost". */
  readonly place: string;
  /** As written, cut to a line; null where nothing stood or stands there. */
  readonly was: string | null;
  readonly now: string | null;
}

export interface Difference {
  readonly kind: "same" | "layout" | "comments" | "values" | "new" | "gone" | "unreadable";
  readonly values: readonly ValueDifference[];
  /** Values that differ and are not named. */
  readonly more: number;
  readonly commentsOut: readonly string[];
  readonly commentsIn: readonly string[];
}

const MOST = 40;
const COMMENT_LETTERS = 120;
const NOTHING = { values: [], more: 0, commentsOut: [], commentsIn: [] } as const;

/** What a text is known to say already, so that it need not be read once more. */
export type KnownPlain = (text: string) => { readonly plain: unknown } | undefined;
const nothingKnown: KnownPlain = () => undefined;

/** @param before,after null where the document was or is not there */
export function differenceOfTexts(
  before: string | null,
  after: string | null,
  most = MOST,
  known: KnownPlain = nothingKnown,
): Difference {
  if (before === after) return { kind: "same", ...NOTHING };
  if (before === null) return { kind: "new", ...NOTHING };
  if (after === null) return { kind: "gone", ...NOTHING };
  const was = known(before) ?? plainOf(before);
  const now = known(after) ?? plainOf(after);
  if (was === undefined || now === undefined) return { kind: "unreadable", ...NOTHING };
  const all = differenceOfPlain(was.plain, now.plain);
  const { out, into } = commentDifference(before, after);
  const comments = out.length + into.length > 0;
  return {
    kind: all.length > 0 ? "values" : comments ? "comments" : "layout",
    values: all.slice(0, most),
    more: Math.max(0, all.length - most),
    commentsOut: out.slice(0, most),
    commentsIn: into.slice(0, most),
  };
}

export function differenceOfPlain(before: unknown, after: unknown): readonly ValueDifference[] {
  return between(before, after, []);
}

/** Do two texts say the same, whatever their comments and layout? */
export function saySame(a: string, b: string): boolean {
  const [one, other] = [plainOf(a), plainOf(b)];
  return one !== undefined && other !== undefined && sameValue(one.plain, other.plain);
}

type Where = readonly (string | number | { readonly entry: string })[];

function between(was: unknown, now: unknown, where: Where): readonly ValueDifference[] {
  if (sameValue(was, now)) return [];
  if (isPlainRecord(was) && isPlainRecord(now)) {
    const keys = [...new Set([...Object.keys(was), ...Object.keys(now)])];
    return keys.flatMap((key) => between(ownValue(was, key), ownValue(now, key), [...where, key]));
  }
  if (Array.isArray(was) && Array.isArray(now)) return betweenLists(was, now, where);
  return [one(was, now, where)];
}

function one(was: unknown, now: unknown, where: Where): ValueDifference {
  const place = said(where);
  if (was === undefined) return { kind: "added", place, was: null, now: writtenValue(now) };
  if (now === undefined) return { kind: "taken-out", place, was: writtenValue(was), now: null };
  return { kind: "changed", place, was: writtenValue(was), now: writtenValue(now) };
}

function betweenLists(was: readonly unknown[], now: readonly unknown[], where: Where): readonly ValueDifference[] {
  const [wasByName, nowByName] = [byName(was), byName(now)];
  if (wasByName === undefined || nowByName === undefined) {
    const records = [...was, ...now].every(isPlainRecord);
    // Plain figures and words are told as the whole list; groups of keys one by one.
    if (!records) return [one(was, now, where)];
    const length = Math.max(was.length, now.length);
    return Array.from({ length }, (_, i) => between(was[i], now[i], [...where, i])).flat();
  }
  const names = [...new Set([...wasByName.keys(), ...nowByName.keys()])];
  const found = names.flatMap((entry) => between(wasByName.get(entry), nowByName.get(entry), [...where, { entry }]));
  const kept = [...wasByName.keys()].filter((name) => nowByName.has(name));
  const order = [...nowByName.keys()].filter((name) => wasByName.has(name));
  return sameValue(kept, order) ? found : [...found, { kind: "re-ordered", place: said(where), was: null, now: null }];
}

/** The entries by what they are called, or undefined where one has no name or two have the same. */
function byName(list: readonly unknown[]): ReadonlyMap<string, unknown> | undefined {
  const found = new Map<string, unknown>();
  for (const item of list) {
    const name = entryName(item);
    if (name === undefined || found.has(name)) return undefined;
    found.set(name, item);
  }
  return found;
}

/** An entry by its own name; the others as their keys stand. */
function said(where: Where): string {
  let plain: unknown = {};
  for (const step of where.toReversed()) {
    if (typeof step === "object") plain = [{ ...(isPlainRecord(plain) ? plain : {}), id: step.entry }];
    else if (typeof step === "number") plain = Array.from({ length: step + 1 }, (_, i) => (i === step ? plain : null));
    else plain = { [step]: plain };
  }
  const path: EditPath = where.map((step) => (typeof step === "object" ? 0 : step));
  return placeWords(path, plain);
}

/** The text after one change is the text before the next, so the last few are remembered; nobody changes their data. */
const LATELY = 8;
const lately = new Map<string, { readonly plain: unknown } | undefined>();

function plainOf(text: string): { readonly plain: unknown } | undefined {
  const known = lately.get(text);
  if (known !== undefined || lately.has(text)) return known;
  const found = readPlainOf(text);
  const [oldest] = lately.keys();
  if (lately.size >= LATELY && oldest !== undefined) lately.delete(oldest);
  lately.set(text, found);
  return found;
}

function readPlainOf(text: string): { readonly plain: unknown } | undefined {
  const document = parseDocument(text, { logLevel: "error", uniqueKeys: false });
  if (document.errors.length > 0) return undefined;
  try {
    return { plain: document.toJS({ maxAliasCount: 50 }) };
  } catch {
    // More uses of an alias than are followed: then nothing is said about its values.
    return undefined;
  }
}

/**
 * Letters that neither begin nor end a comment, a quoted text or a text of several lines, wherever they stand in a line.
 */
const PLAIN_LINE = /^[\w .,:+°±/(){}[\]-]*$/;

/** Do the texts differ in one line only, and is there nothing in it that has to do with comments? */
function differInOnePlainLine(before: string, after: string): boolean {
  const most = Math.min(before.length, after.length);
  let from = 0;
  while (from < most && before.charCodeAt(from) === after.charCodeAt(from)) from += 1;
  let back = 0;
  while (
    back < most - from &&
    before.charCodeAt(before.length - 1 - back) === after.charCodeAt(after.length - 1 - back)
  )
    back += 1;
  const begin = before.lastIndexOf("\n", from - 1) + 1;
  const lineOf = (text: string): string => {
    const end = text.indexOf("\n", text.length - back);
    return text.slice(begin, end < 0 ? text.length : end);
  };
  const [was, now] = [lineOf(before), lineOf(after)];
  const indent = (line: string) => line.length - line.trimStart().length;
  return (
    PLAIN_LINE.test(was) &&
    PLAIN_LINE.test(now) &&
    indent(was) === indent(now) &&
    was.trim() !== "" &&
    now.trim() !== ""
  );
}

function commentDifference(before: string, after: string): { readonly out: string[]; readonly into: string[] } {
  if (differInOnePlainLine(before, after)) return { out: [], into: [] };
  const was = commentsOf(before);
  const now = commentsOf(after);
  const without = (list: readonly string[], others: readonly string[]) => {
    const left = [...others];
    return list.filter((comment) => {
      const at = left.indexOf(comment);
      if (at >= 0) left.splice(at, 1);
      return at < 0;
    });
  };
  return { out: without(was, now), into: without(now, was) };
}

/** Before a scalar the lexer puts this sign; a text that begins with # is then no comment. */
const SCALAR_FOLLOWS = "\x1f";

function commentsOf(text: string): readonly string[] {
  const found: string[] = [];
  let last = "";
  for (const token of new Lexer().lex(text)) {
    if (token.startsWith("#") && last !== SCALAR_FOLLOWS) found.push(token.slice(1).trim().slice(0, COMMENT_LETTERS));
    last = token;
  }
  return found;
}
