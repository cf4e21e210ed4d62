/**
 * What does a text do that is long by one thing said again and again? Tens of thousands of keys, anchors, brackets, faults
 * or comments, a bin with thousands of parts, and texts of just the length that is allowed. A recipe of a few words: the
 * text itself is made when it is put in.
 */
import { TEXT_LIMIT } from "@coldset/core/workshop";
import fc from "fast-check";
import { DEMOS } from "../place.js";

export interface Large {
  /** Which text, again and again; `#` in it becomes a number of its own each time. */
  readonly of: string;
  readonly times: number;
  readonly head: string;
  readonly tail: string;
  /** Filled with a comment to this many letters more than the limit; null: as it is. */
  readonly past: number | null;
}

export interface LargeBin {
  readonly demo: number;
  readonly parts: number;
  /** Each part has one, the last one alone, or none. */
  readonly fault: "none" | "last" | "word" | "figure" | "key" | "indent" | "same-id";
}

const HEADED = "kind: rider\nversion: 1\nid: x1\n";

const REPEATED: readonly (readonly [head: string, of: string, tail: string])[] = [
  ["", "a: b\n", ""],
  ["", "k#: 1\n", ""],
  [HEADED, "k#: 1\n", ""],
  [HEADED, "note: x\n", ""],
  ["", "? a\n", ""],
  ["", "? k#\n: 1\n", ""],
  ["", "%a\n", ""],
  ["", "%TAG !t# x\n", "---\n1\n"],
  ["", "# x\n", ""],
  [HEADED, "# x\n", ""],
  ["", "! ", ""],
  ["a: ", "!!x ", "1"],
  ["", "] ", ""],
  ["", "} ", ""],
  ["", '"" ', ""],
  ["", "'' ", ""],
  ["", '"', ""],
  ["", "&a ", ""],
  ["", "&a#\n", "1"],
  ["", "- ", ""],
  ["", "- 1\n", ""],
  ["", "- - 1\n", ""],
  ["", "- &a# 1\n", ""],
  ["- &a 1\n", "- *a\n", ""],
  ["", "- *a\n", ""],
  ["a: [", "1, ", "]"],
  ["a: [", "1, ", ""],
  ["a: [", ",", "]"],
  ["a: {", "k#: 1, ", "}"],
  ["a: {", "k: 1, ", ""],
  ["", "[", ""],
  ["", "[],", ""],
  ["a: [", "{}, ", "]"],
  ["", "[]\n", ""],
  ["", ": ", ""],
  ["", "a: ", "1"],
  ["", "\t", "a: 1"],
  ["", "\n", "a: 1"],
  ["", "\r", "a: 1"],
  ["", " \n", "a: 1"],
  ["", "a ", ""],
  ["a: ", "x", ""],
  ['a: "', "\\n", '"'],
  ['a: "', "\\q", '"'],
  ["a: |\n", " x\n", ""],
  ["a: >\n", " x\n\n", ""],
  ["a: |\n", "x", "\n"],
  ["", "|\n", ""],
  ["", "---\n", ""],
  ["", "...\n", ""],
  ["", "--- 1\n", ""],
  ["", "<<: {a: 1}\n", ""],
  ["a: &a {x: 1}\n", "b#: {<<: *a}\n", ""],
  ["", "@", ""],
  ["", "` ", ""],
  ["", "\u00a0", ""],
  ["", "\ufeff", "a: 1"],
  ["", "漢: 1\n", ""],
  ["", "a: 0x1F\n", ""],
  ["", "k#: 0x1F\n", ""],
  ["", "k#: 010\n", ""],
  ["a: [", "0x1F, ", "]"],
  ["kind: rider\nversion: 1\nid: ", "x", "\n"],
];

export const largeText: fc.Arbitrary<Large> = fc
  .tuple(
    fc.constantFrom(...REPEATED),
    fc.oneof(fc.integer({ min: 10_000, max: 100_000 }), fc.constantFrom(10_000, 49_999, 99_999, 100_000)),
    fc.oneof({ weight: 5, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: fc.constantFrom(-1, 0, 1) }),
  )
  .map(([[head, of, tail], times, past]) => ({ head, of, tail, times, past }));

export const largeBin: fc.Arbitrary<LargeBin> = fc.record({
  demo: fc.nat(DEMOS.length - 1),
  parts: fc.oneof(fc.integer({ min: 500, max: 8000 }), fc.constantFrom(1000, 2000, 5000)),
  fault: fc.constantFrom("none", "none", "last", "word", "figure", "key", "indent", "same-id"),
});

export function textOfLarge({ of, times, head, tail, past }: Large): string {
  const step = of.replaceAll("#", "");
  const most = Math.min(times, Math.floor((TEXT_LIMIT * 1.05) / Math.max(1, step.length)));
  const body = of.includes("#")
    ? Array.from({ length: most }, (_, i) => of.replaceAll("#", String(i))).join("")
    : of.repeat(most);
  const text = `${head}${body}${tail}`;
  if (past === null) return text;
  const room = TEXT_LIMIT + past - text.length - 3;
  return room < 0 ? text : `${text}\n# ${"x".repeat(room)}`;
}

const BINS = DEMOS.map(({ text }) => {
  const [, after = ""] = text.split(/^kind: bin$/m);
  const [bin = ""] = after.split(/^---$/m);
  const lines = bin.split("\n");
  const first = lines.findIndex((line) => /^ {2}- \{ id: /.test(line));
  return {
    head: `kind: bin${lines.slice(0, first).join("\n")}\n`,
    parts: lines.filter((l) => /^ {2}- \{ id: /.test(l)),
  };
});

export function textOfBin({ demo, parts: count, fault }: LargeBin): string {
  const { head, parts } = BINS[demo % BINS.length] ?? { head: "", parts: [] };
  const rows = Array.from({ length: count }, (_, i) => {
    const own = fault === "same-id" ? "x" : `x${i}`;
    const row = (parts[i % parts.length] ?? "").replace(/\{ id: [\w-]+/, `{ id: ${own}`);
    const here = fault === "last" ? (i === count - 1 ? "word" : "none") : fault;
    if (here === "word") return row.replace(/condition: \w+/, "condition: shiny");
    if (here === "figure") return row.replace(/mass: [\d"?]+/, "mass: -5");
    if (here === "key") return row.replace("{ id", "{ nothing: 1, id");
    return here === "indent" ? ` ${" ".repeat(i % 3)}${row}` : row;
  });
  return `${head}${rows.join("\n")}\n`;
}
