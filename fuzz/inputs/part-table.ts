/** How does a table of parts come in? A demo's bin as rows and columns, its cells changed, with slips in the whole text. */
import { loadText } from "@coldset/core/workshop";
import fc from "fast-check";
import { DEMOS } from "../place.js";
import { HOSTILE_KEYS, LIKELY } from "./mangled-text.js";
import { ODD_NUMBERS, oddText, type Slip, slip, slipped } from "./odd-text.js";

export interface PartTable {
  /** Which demo, counted round. */
  readonly demo?: number;
  /** Parts of its bin, counted round. */
  readonly rows: readonly number[];
  readonly separator: "," | ";" | "\t";
  readonly decimalComma: boolean;
  readonly changes: readonly { readonly row: number; readonly column: number; readonly to: string }[];
  /** A further column of this name. */
  readonly column: string;
  readonly ends: "\n" | "\r\n" | "\r";
  readonly slips: readonly Slip[];
}

type Row = Readonly<Record<string, unknown>>;

function demoParts(text: string, id: string): readonly Row[] {
  const loaded = loadText(text, `${id}.yaml`);
  if (loaded.kind === "refused") throw new Error("the demo cannot be read");
  const bin = loaded.docs.find((d) => d.doc.kind === "bin")?.plain as { readonly parts: readonly Row[] };
  // A table has no column for a part of the donor's own, and one column for both the kind of part and that of a brake.
  return bin.parts.map(({ ports, own: _own, ...part }) => ({ ...(ports as Row), ...part }));
}

const PARTS = DEMOS.map(({ text, id }) => demoParts(text, id));
const cell = fc.oneof(
  { weight: 2, arbitrary: fc.constantFrom(...LIKELY, "yes", "no", "[11, 13, 15]", "{300: 64}", "A", "B", '"quoted"') },
  {
    weight: 1,
    arbitrary: fc.oneof(
      fc.constantFrom(...ODD_NUMBERS),
      fc.constantFrom("[0x1F]", "[1e3]", "[&a 1, *a]", "{__proto__: 1}", "[[[[[["),
      oddText,
    ),
  },
);
const change = fc.record({ row: fc.nat(20), column: fc.nat(40), to: cell });

export const partTable: fc.Arbitrary<PartTable> = fc.record({
  demo: fc.nat(DEMOS.length - 1),
  rows: fc.array(fc.nat(60), { minLength: 1, maxLength: 6 }),
  separator: fc.constantFrom(",", ",", ";", "\t"),
  decimalComma: fc.constantFrom(false, false, false, false, false, true),
  changes: fc.oneof(
    { weight: 3, arbitrary: fc.constant([]) },
    { weight: 2, arbitrary: fc.array(change, { minLength: 1, maxLength: 2 }) },
  ),
  column: fc.oneof(
    { weight: 9, arbitrary: fc.constant("") },
    { weight: 1, arbitrary: fc.oneof(fc.constantFrom(...HOSTILE_KEYS, "note", "rake", "steerer_od"), oddText) },
  ),
  ends: fc.constantFrom("\n", "\n", "\n", "\r\n", "\r"),
  slips: fc.oneof(
    { weight: 9, arbitrary: fc.constant([]) },
    { weight: 1, arbitrary: fc.array(slip, { minLength: 1, maxLength: 2 }) },
  ),
});

/** Heading and cells as they are meant, before they become text. */
export function cellsOf(t: PartTable): {
  readonly heading: readonly string[];
  readonly rows: readonly (readonly string[])[];
} {
  const all = PARTS[(t.demo ?? 0) % PARTS.length] ?? [];
  const parts = [...new Set(t.rows.map((n) => n % all.length))].map((n) => all[n] ?? {});
  const keys = [...new Set(parts.flatMap((p) => Object.keys(p)))];
  const written = (value: unknown): string => {
    if (value === undefined) return "";
    if (typeof value === "number")
      return t.decimalComma ? String(value).replace(/^(\d+)\.(\d{1,2})$/, "$1,$2") : String(value);
    return typeof value === "object" ? JSON.stringify(value) : String(value);
  };
  const rows = parts.map((p) => keys.map((key) => written(p[key])));
  for (const c of t.changes) {
    const row = rows[c.row % rows.length];
    if (row !== undefined) row[c.column % row.length] = c.to;
  }
  return t.column === ""
    ? { heading: keys, rows }
    : { heading: [...keys, t.column], rows: rows.map((r) => [...r, ""]) };
}

/** RFC 4180: a field with a separator, a quote or a line end stands in quotes, a quote in it twice. */
export function tableText(t: PartTable): string {
  const field = (text: string) =>
    /[",;\t\r\n]/.test(text) || text !== text.trim() ? `"${text.replaceAll('"', '""')}"` : text;
  const { heading, rows } = cellsOf(t);
  const text = [heading, ...rows].map((row) => row.map(field).join(t.separator)).join(t.ends) + t.ends;
  return slipped(text, t.slips);
}

/** A table of very many rows: each a part of the demo under an id of its own. */
export interface LongTable {
  readonly demo: number;
  readonly count: number;
  readonly fault: "none" | "last" | "word" | "figure" | "same-id" | "short-row" | "long-row" | "quote" | "column";
}

export const longTable: fc.Arbitrary<LongTable> = fc.record({
  demo: fc.nat(DEMOS.length - 1),
  count: fc.oneof(fc.integer({ min: 500, max: 20_000 }), fc.constantFrom(1000, 2000, 5000)),
  fault: fc.constantFrom(
    "none",
    "none",
    "last",
    "word",
    "figure",
    "same-id",
    "short-row",
    "long-row",
    "quote",
    "column",
  ),
});

export function longTableText({ demo, count, fault }: LongTable): string {
  const kinds = (PARTS[demo % PARTS.length] ?? []).map((p) => String(p.kind));
  const names =
    fault === "column" ? ["id", "kind", "condition", "mass", "nothing"] : ["id", "kind", "condition", "mass"];
  const rows = Array.from({ length: count }, (_, i) => {
    const here = fault === "last" ? (i === count - 1 ? "word" : "none") : fault;
    const id = here === "same-id" ? "x" : `x${i}`;
    const row = [id, kinds[i % kinds.length] ?? "", here === "word" ? "shiny" : "B", here === "figure" ? "-5" : "120"];
    if (here === "column" || here === "long-row") row.push("1");
    if (here === "short-row") row.pop();
    return `${row.join(",")}${here === "quote" ? '"' : ""}`;
  });
  return `${[names.join(","), ...rows].join("\n")}\n`;
}
