/**
 * How does a document go wrong on its way? Lines of a demo left out, doubled, swapped, their figures changed to odd ones,
 * keys of the language itself, tags, anchors and aliases put in. A recipe of small steps on a part of a demo, so that
 * most results still are documents.
 */
import fc from "fast-check";
import { DEMOS, type Demo } from "../place.js";
import { oddNumber, oddSign, oddText } from "./odd-text.js";

export interface Step {
  readonly does: string;
  /** Which line, counted round. */
  readonly at: number;
  readonly to: number;
  readonly with: string;
}

/** Each demo whole, and then its documents one by one. Kept inputs name their text by its place in this list. */
const PLACES = DEMOS.flatMap((demo) =>
  [demo.text, ...demo.text.split(/^(?=---$)/m)].map((text, i) => ({ demo, text, whole: i === 0 })),
);
export const BASES: readonly string[] = PLACES.map((p) => p.text);
const placeOf = (base: number) => {
  const found = PLACES[base % PLACES.length];
  if (found === undefined) throw new Error("there is no demo");
  return found;
};
/** Is this a whole demo? One that is reckoned or written costs a hundred times what a single document does. */
export const isWhole = (base: number): boolean => placeOf(base).whole;
/** The whole demos, by their place in BASES. */
export const WHOLES: readonly number[] = PLACES.flatMap((p, i) => (p.whole ? [i] : []));
export const demoOf = (base: number): Demo => placeOf(base).demo;
/** The long ones: read more seldom, since each reading takes as long as ten of the others. */
export const LONG = BASES.flatMap((text, i) => (text.length > 5000 ? [i] : []));
export const SHORT = BASES.flatMap((text, i) => (text.length > 5000 ? [] : [i]));

export interface Mangled {
  /** Index into BASES. */
  readonly base: number;
  readonly steps: readonly Step[];
  /** Line ends and the mark at the beginning. */
  readonly dress: "" | "crlf" | "bom" | "cr" | "no-end" | "blank-end";
}

/** Figures that a builder could have meant, in every way of writing. */
export const LIKELY: readonly string[] = [
  "0",
  "1",
  "2",
  "13.5",
  "35",
  "90",
  "135",
  "135.4",
  "442",
  "491",
  "1052",
  "-5",
  "71.2",
  '"442 mm"',
  '"44,2 cm"',
  "442 ± 0.3",
  "17 3/8 in",
  "'1 1/8\"'",
  "49.1 cm",
  "71°30'",
  "?",
  '"?"',
  "~",
  "null",
  "[]",
  "{}",
  "true",
  "no",
  "q1",
  "622-35",
  "584-47",
  "1.37x24",
  "M10x1",
  "plain_steel",
  "unknown",
  "2026-02-29",
  "2026-04-30",
  "450 g",
  "31 lb 4 oz",
  "1 h 30 min",
  "5 %",
  "text with: a colon",
  "'it''s'",
  '"\\u202e"',
  "|",
  ">-",
  "é",
  "# nothing",
];

export const HOSTILE_KEYS: readonly string[] = [
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "hasOwnProperty",
  "valueOf",
  "length",
  "then",
  "toJSON",
  "<<",
  "?",
  "",
  " ",
  "kind",
  "version",
  "id",
  "0",
  "-1",
  "measured",
  "null",
  "true",
  "1e3",
  "a b",
  "Chainstay",
  "chain_stay",
  "chaìnstay",
];

export const HOSTILE_VALUES: readonly string[] = [
  "text with: a colon",
  "|",
  ">-",
  "&a 1",
  "*a",
  "&a [*a]",
  "!!binary aGk=",
  "!!js/function 'x'",
  "!!set {a, b}",
  "!!omap [a: 1]",
  "!!timestamp 2001-12-14",
  "!!float .inf",
  "!!int 0x1F",
  "!!null ''",
  "!!str 442",
  "!<tag:x> 1",
  "!foo bar",
  "<<: *a",
  "{<<: {a: 1}}",
  "@at",
  "`tick`",
  "%x",
  "- - - 1",
  "? a\n: b",
  "[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]",
  `${"[".repeat(450)}`,
  `${"{a: ".repeat(60)}1`,
  "{__proto__: {x: 1}}",
  "{constructor: {prototype: {x: 1}}}",
  "'",
  '"',
  "\\",
  "...",
  "---",
  "--- 1",
  "%YAML 1.1",
  "%TAG ! x",
  `"${"x".repeat(3000)}"`,
  `${"9".repeat(400)}`,
  `${"1 ".repeat(500)}`,
  "0o17",
  "1_000",
  "190:20:30",
  "12e03",
  "+.INF",
  "-.Inf",
];

const likely = fc.oneof(
  fc.constantFrom(...LIKELY),
  fc.integer({ min: -50, max: 1500 }).map(String),
  fc.double({ min: 0, max: 900, noNaN: true }).map((v) => v.toFixed(1)),
);

const step = (does: string, what: fc.Arbitrary<string>): fc.Arbitrary<Step> =>
  fc.record({ does: fc.constant(does), at: fc.nat(400), to: fc.nat(400), with: what });

/** Steps after which the text most often still is a document. */
export const mild: fc.Arbitrary<Step> = fc.oneof(
  { weight: 6, arbitrary: step("nudge", fc.constantFrom("1.01", "0.98", "1.2", "0.5", "2", "0", "-1", "10")) },
  { weight: 2, arbitrary: step("value", likely) },
  {
    weight: 2,
    arbitrary: step("comment", fc.constantFrom("measured twice", "caliper slips", "Ø?", "漢字 🚲", "a: b", "- x")),
  },
  { weight: 1, arbitrary: step("blank", fc.constantFrom("", "  ", "# own line", "   # indented: line")) },
  { weight: 1, arbitrary: step("quote", fc.constant("")) },
  { weight: 1, arbitrary: step("swap-same", fc.constant("")) },
  { weight: 1, arbitrary: step("drop-figure", fc.constant("")) },
);

export const wild: fc.Arbitrary<Step> = fc.oneof(
  step("drop", fc.constant("")),
  step("double", fc.constant("")),
  step("swap", fc.constant("")),
  step("value", fc.oneof(oddNumber, fc.constantFrom(...HOSTILE_VALUES), oddText)),
  step("key", fc.oneof(fc.constantFrom(...HOSTILE_KEYS), oddText)),
  step(
    "insert",
    fc.oneof(
      fc.constantFrom(...HOSTILE_VALUES),
      oddText,
      fc.constantFrom(...HOSTILE_KEYS).map((k) => `${k}: 1`),
    ),
  ),
  step("sign", oddSign),
  step("indent", fc.constantFrom(" ", "\t", "      ", "")),
  step("anchor", fc.constantFrom("a", "b", "a b")),
  step("alias", fc.constantFrom("a", "b")),
  step("cut", fc.constant("")),
);

export const mangled: fc.Arbitrary<Mangled> = fc.record({
  base: fc.oneof(
    { weight: 1, arbitrary: fc.constantFrom(...LONG) },
    { weight: 15, arbitrary: fc.constantFrom(...SHORT) },
  ),
  steps: fc.oneof(
    { weight: 7, arbitrary: fc.array(mild, { minLength: 1, maxLength: 4 }) },
    { weight: 2, arbitrary: fc.array(wild, { minLength: 1, maxLength: 2 }) },
    { weight: 2, arbitrary: fc.array(fc.oneof(mild, mild, wild), { minLength: 1, maxLength: 6 }) },
  ),
  dress: fc.constantFrom("", "", "", "", "", "", "", "", "crlf", "bom", "cr", "no-end", "blank-end"),
});

const FIGURE = /-?\d+(?:\.\d+)?/g;
const VALUE = /^(\s*(?:- )?[A-Za-z_"][\w" ]*:\s+)(.*?)(\s+#.*)?$/;

export function mangledText({ base, steps, dress }: Mangled): string {
  const lines = placeOf(base).text.split("\n");
  for (const s of steps) apply(lines, s);
  const text = lines.join("\n");
  if (dress === "crlf") return text.replaceAll("\n", "\r\n");
  if (dress === "cr") return text.replaceAll("\n", "\r");
  if (dress === "bom") return `\ufeff${text}`;
  if (dress === "no-end") return text.trimEnd();
  return dress === "blank-end" ? `${text}\n\n# the end\n\n` : text;
}

function apply(lines: string[], { does, at, to, with: what }: Step): void {
  const i = lines.length === 0 ? 0 : at % lines.length;
  const j = lines.length === 0 ? 0 : to % lines.length;
  const line = lines[i] ?? "";
  const set = (text: string) => lines.splice(i, 1, text);
  const setValue = (text: string) =>
    set(line.replace(VALUE, (_all, key: string, _v, note = "") => `${key}${text}${note}`));
  switch (does) {
    case "nudge": {
      const figures = [...line.matchAll(FIGURE)];
      const hit = figures[to % Math.max(1, figures.length)];
      if (hit === undefined || /version/.test(line)) return;
      const fresh = String(Number((Number(hit[0]) * Number(what)).toFixed(2)));
      set(line.slice(0, hit.index) + fresh + line.slice(hit.index + hit[0].length));
      return;
    }
    case "value":
      setValue(what);
      return;
    case "comment":
      set(`${line} # ${what}`);
      return;
    case "blank":
    case "insert":
      lines.splice(i, 0, what);
      return;
    case "quote":
      set(line.replace(VALUE, (_all, key: string, v: string, note = "") => `${key}${JSON.stringify(v)}${note}`));
      return;
    case "swap-same": {
      const next = lines[i + 1] ?? "";
      if (/^ +\w+: \S/.test(line) && /^ *(?=\w)/.exec(line)?.[0] === /^ *(?=\w)/.exec(next)?.[0])
        lines.splice(i, 2, next, line);
      return;
    }
    case "drop-figure":
      if (/^\s+[a-z_]+: [\d.]+$/.test(line)) lines.splice(i, 1);
      return;
    case "drop":
      lines.splice(i, 1);
      return;
    case "double":
      lines.splice(j, 0, line);
      return;
    case "swap":
      lines[i] = lines[j] ?? "";
      lines[j] = line;
      return;
    case "key":
      set(line.replace(/^(\s*(?:- )?)[^:#]+(?=:)/, (_all, lead: string) => `${lead}${what}`));
      return;
    case "sign":
      set(line.slice(0, to % (line.length + 1)) + what + line.slice(to % (line.length + 1)));
      return;
    case "indent":
      set(`${what}${line.trimStart()}`);
      return;
    case "anchor":
      set(line.replace(VALUE, (_all, key: string, v: string, note = "") => `${key}&${what} ${v}${note}`));
      return;
    case "alias":
      setValue(`*${what}`);
      return;
    case "cut":
      set(line.slice(0, to % (line.length + 1)));
      lines.splice(i + 1);
      return;
  }
}
