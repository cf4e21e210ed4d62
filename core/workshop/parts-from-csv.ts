/**
 * Which parts does this table list? CSV with a heading: id, kind, condition, and what else is known: mass, cost, qty, note,
 * lies, delivery_days, and the names of interfaces as in the documents (steerer_od, bsd …). Comma, semicolon or tab; text
 * in quotes; with or without a byte order mark. Values are written as everywhere (28,6 · 1 1/8" · 584-47 · ?); an empty cell
 * is "not known". Every bad row is told with row and column, and then nothing is taken. Bounds: 2 MB, 5000 rows, 100 columns.
 */

import Papa from "papaparse";
import { parseDocument } from "yaml";
import { nearestName, type Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { scalarOf } from "./edit.js";
import { oddNumbers } from "./odd-numbers.js";
import { type PartKind, PORTS, partSchema } from "./part.js";
import { issueRefusals } from "./read-plain.js";
import { TEXT_LIMIT } from "./text-bounds.js";

/** A part as it stands in a bin's text: what was written, in the keys of the documents. */
export interface WrittenPart {
  readonly id: string;
  readonly kind: PartKind;
  readonly [key: string]: unknown;
}

export type PartsFromCsv =
  | { readonly kind: "parts"; readonly parts: readonly WrittenPart[] }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] };

const ROW_LIMIT = 5000;
const COLUMN_LIMIT = 100;
const MOST_TOLD = 200;
const SEPARATORS = [",", ";", "\t"] as const;
const OWN = ["id", "kind", "condition", "mass", "cost", "qty", "delivery_days", "note", "lies"] as const;
const MUST = ["id", "kind", "condition"] as const;
/** Kept as the text that it is, never read as a figure. */
const WORDS: ReadonlySet<string> = new Set(["id", "kind", "condition", "note", "lies"]);
/** Plain numbers without a unit in the documents; a decimal comma is read here as everywhere. */
const PLAIN_NUMBERS: ReadonlySet<string> = new Set(["cost", "qty", "delivery_days"]);

export function partsFromCsv(text: string, file: string): PartsFromCsv {
  const no = (code: string, at: string, given: unknown, allowed: string, message: string): Refusal => ({
    code,
    at: at === "" ? file : `${file}, ${at}`,
    given,
    allowed,
    message: `${at === "" ? file : `${file}, ${at}`}: ${message}`,
  });
  const one = (...args: Parameters<typeof no>): PartsFromCsv => ({ kind: "refused", refusals: [no(...args)] });
  if (text.length > TEXT_LIMIT) {
    const size = `${(text.length / 1e6).toFixed(1)} MB`;
    return one(
      "file-too-large",
      "",
      size,
      say("workshop.load.mb-at-most", { textLimit: TEXT_LIMIT / 1e6 }),
      say("workshop.parts-from-csv.the-table-is", { size }),
    );
  }
  const bare = text.replace(/^\uFEFF/, "");
  const read = Papa.parse<string[]>(bare, { delimiter: separatorOf(bare), skipEmptyLines: "greedy" });
  const torn = read.errors.filter((e) => e.type === "Quotes");
  if (torn.length > 0) {
    return {
      kind: "refused",
      refusals: torn.slice(0, MOST_TOLD).map((e) => {
        const at = say("workshop.parts-from-csv.row", { row: (e.row ?? 0) + 1 });
        return no(
          "csv-quotes",
          at,
          null,
          say("workshop.parts-from-csv.quotes-in-pairs"),
          say("workshop.parts-from-csv.a-quote-is-opened-and-not"),
        );
      }),
    };
  }
  const [heading, ...rows] = read.data;
  if (heading === undefined || rows.length === 0) {
    return one(
      "csv-empty",
      "",
      say("workshop.parts-from-csv.no-row"),
      say("workshop.parts-from-csv.a-heading-and-one-row-a"),
      say("workshop.parts-from-csv.there-is-no-part-in-the"),
    );
  }
  if (rows.length > ROW_LIMIT || heading.length > COLUMN_LIMIT) {
    const given = say("workshop.parts-from-csv.rows-columns", { rowsCount: rows.length, headingCount: heading.length });
    const allowed = say("workshop.parts-from-csv.rows-and-columns-at-most", {
      rowLimit: ROW_LIMIT,
      columnLimit: COLUMN_LIMIT,
    });
    return one("csv-too-large", "", given, allowed, say("workshop.parts-from-csv.the-table-has", { given, allowed }));
  }
  const columns = heading.map((name) => name.trim());
  const refusals = headingRefusals(columns, no);
  if (refusals.length > 0) return { kind: "refused", refusals };
  const parts: WrittenPart[] = [];
  const seen = new Map<string, number>();
  for (const [i, cells] of rows.entries()) {
    if (refusals.length >= MOST_TOLD) break;
    const row = i + 2;
    const at = (column: string) => say("workshop.parts-from-csv.row-column", { row, column });
    if (cells.length > columns.length) {
      const given = say("workshop.parts-from-csv.cells", { cellsCount: cells.length });
      refusals.push(
        no(
          "csv-row",
          say("workshop.parts-from-csv.row", { row }),
          given,
          say("workshop.parts-from-csv.cells-2", { columnsCount: columns.length }),
          say("workshop.parts-from-csv.there-are-in-the-heading-put", { given, columnsCount: columns.length }),
        ),
      );
      continue;
    }
    const part = writtenPart(columns, cells);
    const twice = seen.get(part.id);
    if (part.id !== "" && twice !== undefined)
      refusals.push(
        no(
          "twice",
          at("id"),
          part.id,
          say("workshop.parts-from-csv.each-id-once"),
          say("workshop.parts-from-csv.stands-in-row-too", { part: part.id, twice }),
        ),
      );
    seen.set(part.id, row);
    const bad = partRefusals(part, columns, at, no);
    if (bad.length > 0) refusals.push(...bad);
    else parts.push(part);
  }
  return refusals.length > 0 ? { kind: "refused", refusals } : { kind: "parts", parts };
}

/**
 * Is this text clearly a table of parts, whatever its file is called? Its first line then names the columns that every such
 * table has. No document of ours begins so: its first line is a key with a colon, a bracket or a divider.
 */
export function isTableOfParts(text: string): boolean {
  const bare = text.slice(0, 20_000).replace(/^\uFEFF/, "");
  const read = Papa.parse<string[]>(bare, { delimiter: separatorOf(bare), skipEmptyLines: "greedy", preview: 1 });
  const columns = (read.data[0] ?? []).map((name) => name.trim());
  return MUST.filter((name) => columns.includes(name)).length >= 2;
}

type No = (code: string, at: string, given: unknown, allowed: string, message: string) => Refusal;

/** The separator that stands most often in the heading, outside quotes. */
function separatorOf(text: string): string {
  const heading = (/^[^\r\n]*/.exec(text.trimStart())?.[0] ?? "").replace(/"[^"]*"/g, "");
  const counts = SEPARATORS.map((s) => heading.split(s).length - 1);
  return SEPARATORS[counts.indexOf(Math.max(...counts))] ?? ",";
}

const PORT_NAMES = [...new Set(Object.values(PORTS).flatMap((ports) => Object.keys(ports)))];

function headingRefusals(columns: readonly string[], no: No): Refusal[] {
  const known: readonly string[] = [...OWN, ...PORT_NAMES];
  const refusals: Refusal[] = [];
  for (const name of MUST) {
    if (!columns.includes(name))
      refusals.push(
        no(
          "csv-column",
          say("workshop.parts-from-csv.row-1"),
          columns.join(", ").slice(0, 200),
          say("workshop.parts-from-csv.a-column", { name }),
          say("workshop.parts-from-csv.there-is-no-column", { name }),
        ),
      );
  }
  for (const [i, name] of columns.entries()) {
    const at = say("workshop.parts-from-csv.row-1-column", { column: i + 1 });
    if (columns.indexOf(name) < i)
      refusals.push(
        no(
          "csv-column",
          at,
          name,
          say("workshop.parts-from-csv.each-column-once"),
          say("workshop.parts-from-csv.the-column-stands-twice", { name }),
        ),
      );
    else if (!known.includes(name)) {
      const near = nearestName(name, known);
      const hint = near === undefined ? "" : say("workshop.parts-from-csv.did-you-mean", { near });
      refusals.push(
        no(
          "csv-column",
          at,
          name.slice(0, 60),
          say("workshop.parts-from-csv.or-the-name-of-an-interface", { own: OWN.join(", ") }),
          say("workshop.parts-from-csv.the-column-is-not-known", { name: JSON.stringify(name.slice(0, 60)), hint }),
        ),
      );
    }
  }
  return refusals;
}

function writtenPart(columns: readonly string[], cells: readonly string[]): WrittenPart {
  const own: Record<string, unknown> = {};
  const ports: Record<string, unknown> = {};
  for (const [i, name] of columns.entries()) {
    const cell = (cells[i] ?? "").trim();
    if (cell === "") continue;
    if ((OWN as readonly string[]).includes(name)) own[name] = ownValue(name, cell);
    else ports[name] = portValue(cell);
  }
  return { ...own, id: String(own.id ?? ""), kind: String(own.kind ?? "") as PartKind, ports };
}

function ownValue(name: string, cell: string): unknown {
  if (WORDS.has(name)) return cell;
  // "12,5" is twelve and a half; "1,250" could be either and is left to be refused.
  const comma = PLAIN_NUMBERS.has(name) ? /^(\d+),(\d{1,2})$/.exec(cell) : null;
  return scalarOf(comma === null ? cell : `${comma[1]}.${comma[2]}`);
}

function portValue(cell: string): unknown {
  if (/^(yes|true)$/i.test(cell)) return true;
  if (/^(no|false)$/i.test(cell)) return false;
  if (/^[[{]/.test(cell)) {
    // A list or a profile, as it stands in the documents: [11, 13, 15], {300: 64}.
    try {
      const document = parseDocument(cell);
      // What would be read as another figure than it looks is left as it was written, and refused as such.
      if (document.errors.length > 0 || oddNumbers(document, () => "").length > 0) return cell;
      return document.toJS({ maxAliasCount: 0 });
    } catch (cause) {
      if (!(cause instanceof Error)) throw cause;
      return cell;
    }
  }
  return scalarOf(cell);
}

function partRefusals(
  part: WrittenPart,
  columns: readonly string[],
  at: (column: string) => string,
  no: No,
): Refusal[] {
  const read = partSchema.safeParse(part);
  if (read.success) return [];
  return read.error.issues.flatMap((issue): Refusal[] => {
    const path = issue.path.map(String);
    const place = path[0] === "ports" ? (path[1] ?? "ports") : (path[0] ?? "");
    const keys = "keys" in issue && Array.isArray(issue.keys) ? issue.keys.map(String) : undefined;
    const names = keys ?? [place];
    return names.map((name) => {
      const holder = (part.ports as Record<string, unknown>)[name] ?? part[name];
      const given = holder === undefined ? null : holder;
      if (
        keys !== undefined ||
        (columns.includes(name) &&
          name in (PORTS[part.kind] ?? {}) === false &&
          !(OWN as readonly string[]).includes(name))
      ) {
        const allowed = Object.keys(PORTS[part.kind] ?? {}).join(", ");
        return no(
          "csv-not-of-this-kind",
          at(name),
          given,
          allowed,
          say("workshop.parts-from-csv.a-has-no-leave-the-cell", { kind: part.kind, name, allowed }),
        );
      }
      const [told] = issueRefusals(issue, part);
      const message =
        given === null ? say("workshop.parts-from-csv.is-missing", { name }) : (told?.message ?? issue.message);
      const allowed = allowedWords(name, told?.allowed ?? issue.message);
      return no(given === null ? "missing" : "unreadable", at(name), given, allowed, message);
    });
  });
}

function allowedWords(name: string, message: string): string {
  if (name === "kind") return Object.keys(PORTS).join(", ");
  if (name === "condition") return say("workshop.parts-from-csv.a-b-or-c");
  if (name === "id") return say("workshop.parts-from-csv.1-to-40-letters-digits-or");
  return message;
}
