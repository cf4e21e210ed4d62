/**
 * Which text does nobody expect? Signs from many keyboards and from none: direction marks, half pairs, digits of other
 * scripts, signs that take no room, line ends of other systems; and numbers that are none.
 */
import fc from "fast-check";

/** Named by what they are; all of them came into programs through copying, sorting and speaking aloud. */
export const ODD_SIGNS: readonly string[] = [
  "\0",
  "\u0001",
  "\u001b",
  "\u007f",
  "\u0085",
  "\t",
  "\n",
  "\r\n",
  "\r",
  "\v",
  "\f",
  "\u00a0",
  "\u00ad",
  "\u061c",
  "\u200b",
  "\u200d",
  "\u200e",
  "\u200f",
  "\u2028",
  "\u2029",
  "\u202a",
  "\u202e",
  "\u2066",
  "\u2069",
  "\u2009",
  "\u202f",
  "\u3000",
  "\ufeff",
  "\ufffd",
  "\uffff",
  "\ud800",
  "\udfff",
  "\ue000",
  "\u{e0041}",
  "\u0301",
  "\u20e3",
  "٣",
  "۴",
  "५",
  "１",
  "９",
  "．",
  "，",
  "²",
  "³",
  "½",
  "⅓",
  "⅞",
  "Ⅻ",
  "①",
  "𝟙",
  "−",
  "–",
  "—",
  "‐",
  "+",
  "±",
  "×",
  "x",
  "х",
  "⁄",
  "∕",
  "·",
  "•",
  "°",
  "º",
  "′",
  "″",
  "”",
  "’",
  "µ",
  "μ",
  "Å",
  "K",
  "Ω",
  "ß",
  "İ",
  "ı",
  "ﬀ",
  "€",
  "£",
  "$",
  "%",
  "‰",
  "∞",
  "漢",
  "🚲",
  "👩‍🔧",
];

export const oddSign: fc.Arbitrary<string> = fc.constantFrom(...ODD_SIGNS);

/**
 * Any sign of Unicode, half pairs left out. By its number: fast-check's own unit of the same name makes a table of all of
 * them first, which takes longer than a thousand inputs.
 */
export const anySign: fc.Arbitrary<string> = fc
  .oneof(fc.integer({ min: 0, max: 0xd7ff }), fc.integer({ min: 0xe000, max: 0x10ffff }))
  .map((code) => String.fromCodePoint(code));

/** A short text of anything at all. */
export const oddText: fc.Arbitrary<string> = fc.string({
  unit: fc.oneof(
    { weight: 4, arbitrary: fc.string({ minLength: 1, maxLength: 1 }) },
    { weight: 2, arbitrary: oddSign },
    { weight: 1, arbitrary: anySign },
  ),
  maxLength: 24,
});

/** Words that look like a number, or that some language takes for one. */
export const ODD_NUMBERS: readonly string[] = [
  "0",
  "-0",
  "+0",
  "00",
  "007",
  "0x10",
  "0b11",
  "0o17",
  "010",
  "1e3",
  "1E3",
  "1e+2",
  "1e-2",
  "1e99",
  "1e308",
  "1e309",
  "-1e309",
  "1e-400",
  "1e999999999",
  "5e-324",
  "1.7976931348623157e308",
  "NaN",
  "nan",
  ".nan",
  "Infinity",
  "-Infinity",
  ".inf",
  "-.inf",
  "inf",
  "null",
  "true",
  "false",
  "~",
  "?",
  "",
  ".",
  ",",
  "-",
  "+",
  "1.",
  "1,",
  ".5",
  ",5",
  "1,5",
  "25,4",
  "1,052",
  "1.052",
  "1 052",
  "1'052",
  "1_000",
  "1,052.5",
  "1.052,5",
  "1,0,5",
  "1..5",
  "1,,5",
  "1.5.2",
  "1/8",
  "1/0",
  "0/0",
  "1 1/8",
  "1-1/8",
  "1 9/8",
  "9007199254740993",
  "0.1",
  "0.30000000000000004",
  "123456789012345678901234567890",
  "190:20:30",
  "2026-02-30",
  "1:2",
  "--1",
  "- 1",
  "(1)",
  "1)",
  "12 mm 3",
  "3 to 4",
  "3-4",
  "±1",
  "442 ± 0.3",
  "442 ± -0.3",
  "442 ±",
];

export const oddNumber: fc.Arbitrary<string> = fc.constantFrom(...ODD_NUMBERS);

/** One small slip in a text: a sign put in, left out, doubled, swapped with its neighbour, or the text cut off. */
export interface Slip {
  readonly at: number;
  readonly does: "put" | "drop" | "double" | "swap" | "cut" | "case";
  readonly sign: string;
}

export const slip: fc.Arbitrary<Slip> = fc.record({
  at: fc.nat(200),
  does: fc.constantFrom("put", "put", "drop", "double", "swap", "cut", "case"),
  sign: fc.oneof(oddSign, fc.string({ minLength: 1, maxLength: 1 }), oddNumber),
});

export function slipped(text: string, slips: readonly Slip[]): string {
  return slips.reduce((t, { at, does, sign }) => {
    const i = t.length === 0 ? 0 : at % (t.length + 1);
    const c = t.charAt(i);
    if (does === "put") return t.slice(0, i) + sign + t.slice(i);
    if (does === "drop") return t.slice(0, i) + t.slice(i + 1);
    if (does === "double") return t.slice(0, i) + c + t.slice(i);
    if (does === "swap") return t.slice(0, i) + t.charAt(i + 1) + c + t.slice(i + 2);
    if (does === "cut") return t.slice(0, i);
    return t.slice(0, i) + (c === c.toLowerCase() ? c.toUpperCase() : c.toLowerCase()) + t.slice(i + 1);
  }, text);
}
