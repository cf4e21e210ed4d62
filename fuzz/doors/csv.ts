/** What comes of any table of parts? The parts that stand in it, each cell as written, or refusals with row and column. */
import { partSchema, partsFromCsv } from "@coldset/core/workshop";
import fc from "fast-check";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { oddText } from "../inputs/odd-text.js";
import {
  cellsOf,
  type LongTable,
  longTable,
  longTableText,
  type PartTable,
  partTable,
  tableText,
} from "../inputs/part-table.js";
import { describedRefusals } from "../inputs/refusal-faults.js";
import { firstDifference, unwrittenNumber } from "../inputs/same-figures.js";

interface CsvInput {
  readonly table: PartTable | LongTable | string;
}

const rough = fc.oneof(
  fc.array(oddText, { maxLength: 20 }).map((t) => t.join(",")),
  fc.string({ maxLength: 200 }),
  fc
    .tuple(fc.constantFrom("id,kind,condition\n", "\ufeffid;kind;condition\r\n", "id\tkind\tcondition\n"), oddText)
    .map((t) => t.join("")),
  fc.tuple(fc.constantFrom('"', ",", "\n", '""', ";", "\t"), fc.nat(5000)).map(([sign, n]) => sign.repeat(n)),
);
/** Tables of thousands of rows are dear: one in five hundred. */
const inputs: fc.Arbitrary<CsvInput> = fc.oneof<fc.WeightedArbitrary<CsvInput>[]>(
  { weight: 449, arbitrary: partTable.map((table) => ({ table })) },
  { weight: 50, arbitrary: rough.map((table) => ({ table })) },
  { weight: 1, arbitrary: longTable.map((table) => ({ table })) },
);

function put({ table }: CsvInput): Went {
  const text = typeof table === "string" ? table : "fault" in table ? longTableText(table) : tableText(table);
  const read = partsFromCsv(text, "parts.csv");
  if (read.kind === "refused") {
    describedRefusals(read.refusals);
    return refusedAs(read.refusals[0]?.code ?? "");
  }
  for (const part of read.parts) {
    const typed = partSchema.safeParse(part);
    mustHold(typed.success, () => `${part.id} was taken and is no part`);
    const difference = firstDifference(part, typed.data);
    mustHold(difference === undefined, () => `${part.id}: ${difference}`);
  }
  // A decimal comma is a decimal sign here: 12,5 stands for 12.5.
  const unwritten = unwrittenNumber(`${text} ${text.replace(/(\d),(\d)/g, "$1.$2")}`, read.parts);
  mustHold(unwritten === undefined, () => `${unwritten} stands nowhere in the table`);
  if (typeof table !== "string" && "slips" in table && table.slips.length === 0) nothingMissing(table, read.parts);
  if (typeof table !== "string" && "fault" in table) {
    mustHold(read.parts.length === table.count, () => `${table.count} rows became ${read.parts.length} parts`);
    return accepted("many parts");
  }
  return accepted(`${read.parts.length} parts`);
}

/** Every cell that was filled is in a part: under its own name, or among its interfaces. */
function nothingMissing(table: PartTable, parts: readonly Readonly<Record<string, unknown>>[]): void {
  const { heading, rows } = cellsOf(table);
  mustHold(parts.length === rows.length, () => `${rows.length} rows became ${parts.length} parts`);
  for (const [i, row] of rows.entries()) {
    const part = parts[i] ?? {};
    const ports = part.ports as Readonly<Record<string, unknown>>;
    for (const [k, cell] of row.entries()) {
      const key = heading[k]?.trim() ?? "";
      const value = Object.hasOwn(part, key) ? part[key] : Object.hasOwn(ports, key) ? ports[key] : undefined;
      mustHold(
        (cell.trim() === "") === (value === undefined),
        () => `${key} ${JSON.stringify(cell)} became ${JSON.stringify(value)}`,
      );
      if (typeof value === "string")
        mustHold(value === cell.trim(), () => `${JSON.stringify(cell)} became ${JSON.stringify(value)}`);
      if (typeof value === "number")
        mustHold(Number(cell.trim().replace(",", ".")) === value, () => `${JSON.stringify(cell)} became ${value}`);
    }
  }
}

export const csv: Door<CsvInput> = {
  name: "csv",
  holds:
    "a table becomes the parts that stand in it, no cell lost or read as something else, or refusals with row and column",
  inputs,
  put,
};
