/** How does a table of parts come in? The demo's bin as rows and columns, its cells changed, with slips in the whole text. */
import { loadText } from "@coldset/core/workshop";
import fc from "fast-check";
import { QUAYSIDE } from "../place.js";
import { HOSTILE_KEYS, LIKELY } from "./mangled-text.js";
import { ODD_NUMBERS, oddText, type Slip, slip, slipped } from "./odd-text.js";

export interface PartTable {
  /** Parts of the demo's bin, counted round. */
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

function demoParts(): readonly Row[] {
  const loaded = loadText(QUAYSIDE, "quayside.yaml");
  if (loaded.kind === "refused") throw new Error("the demo cannot be read");
  const bin = loaded.docs.find((d) => d.doc.kind === "bin")?.plain as { readonly parts: readonly Row[] };
  return bin.parts.map(({ ports, ...own }) => ({ ...own, ...(ports as Row) }));
}

const PARTS = demoParts();
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
  const parts = [...new Set(t.rows.map((n) => n % PARTS.length))].map((n) => PARTS[n] ?? {});
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
