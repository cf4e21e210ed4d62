/** How does the answer of a sheet stand on a terminal, for a person? Every figure with its unit and band. */

import { sourceWords } from "@coldset/core/data";
import type { Answered, Band } from "@coldset/core/quantity";
import type { AnySheet } from "@coldset/core/sheet";
import { say } from "@coldset/core/texts";
import type { Page, Span } from "../screen/page.js";
import { standingPage } from "./standing.js";

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/_mm2$/, "mm²"],
  [/_Nmm$/, "Nmm"],
  [/_Nm$/, "Nm"],
  [/_mm$|Mm$/, "mm"],
  [/_deg$|Deg$/, "°"],
  [/_rad$/, "rad"],
  [/_MPa$/, "MPa"],
  [/_[Nn]$/, "N"],
  [/_W$/, "W"],
  [/_kg$/, "kg"],
  [/_g$/, "g"],
  [/_m_s$/, "m/s"],
  [/_km_h$/, "km/h"],
  [/_m$/, "m"],
  [/_h$/, "h"],
  [/_s$/, "s"],
  [/_days?$/, "days"],
  [/_percent$|_pct$/, "%"],
];

/** Groups whose figures have no unit, whatever the measurement they are filed under is measured in. */
const BARE_GROUPS = new Set(["normalised_residuals", "redundancy_numbers"]);
/** More rows of one list than this are counted on the screen; --json has them all. */
const MOST_ROWS = 60;
const MOST_COLUMNS = 8;

export function answerPage(sheet: AnySheet, answer: Answered<unknown>, page: Page): Page {
  page.text([["strong", sheet.id], "–", sheet.question]).blank();
  const means = [...new Set(Object.values(answer.bands).map((b) => b.means))];
  const told: Told = { bands: answer.bands, alike: means.length === 1 };
  valuePage("", "", answer.value, told, page, 2);
  if (means.length === 1) page.blank().text(say("cli.answer-page.is", { means: means[0] }), 2, 2);
  for (const c of answer.cautions) page.blank().text([["open", say("cli.answer-page.caution")], c.message], 0, 2);
  if (answer.sources.length > 0) {
    page.blank().text([["strong", say("cli.answer-page.sources")]]);
    page.list(answer.sources.map((id) => sourceWords(id)));
  }
  return standingPage(page);
}

interface Told {
  readonly bands: Readonly<Record<string, Band>>;
  /** All bands mean the same, which is then said once. */
  readonly alike: boolean;
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isFlat = (value: unknown): boolean => typeof value !== "object" || value === null;

/** Plain figures stand in a table; a group or list inside comes under its own name, two columns in. */
function valuePage(path: string, name: string, value: unknown, told: Told, page: Page, indent: number): void {
  if (Array.isArray(value)) {
    listPage(path, name, value, told, page, indent);
    return;
  }
  if (!isObject(value)) {
    page.table([[keyWords(name), scalar(value, unitOf(path), told.bands[path]), bandText(told, path, value)]], {
      indent,
    });
    return;
  }
  const inner = name === "" ? indent : indent + 2;
  if (name !== "") page.blank().text([["strong", `${keyWords(name)}:`]], indent);
  let rows: (readonly Span[])[] = [];
  let afterGroup = false;
  const flush = () => {
    if (afterGroup && rows.length > 0) page.blank();
    page.table(rows, { indent: inner });
    rows = [];
  };
  for (const [key, entry] of Object.entries(value)) {
    if (entry === undefined) continue;
    const at = path === "" ? key : `${path}.${key}`;
    if (isFlat(entry))
      rows.push([
        typeof entry === "boolean" ? key.replaceAll("_", " ") : keyWords(key),
        scalar(entry, unitOf(at), told.bands[at]),
        bandText(told, at, entry),
      ]);
    else if (Array.isArray(entry) && entry.length <= MOST_ROWS && entry.every(isFlat))
      rows.push([keyWords(key), flatList(entry, at)]);
    else {
      flush();
      valuePage(at, key, entry, told, page, inner);
      afterGroup = true;
    }
  }
  flush();
}

function flatList(list: readonly unknown[], at: string): string {
  const unit = unitOf(at);
  const shown = list.map((v) => scalar(v, "")).join(", ");
  return list.length === 0 ? say("cli.answer-page.none") : unit === "" ? shown : `${shown} ${unit}`;
}

function listPage(path: string, name: string, list: readonly unknown[], told: Told, page: Page, indent: number): void {
  page.blank().text([["strong", `${keyWords(name)}:`]], indent);
  const shown = list.slice(0, MOST_ROWS);
  const keys = [...new Set(shown.flatMap((v) => (isObject(v) ? Object.keys(v) : [])))];
  const flat = shown.every((v) => isObject(v) && Object.values(v).every(isFlat));
  if (list.length === 0) page.text(say("cli.answer-page.none"), indent + 2);
  else if (flat && keys.length <= MOST_COLUMNS) {
    const rows = shown.map((v) =>
      keys.map((key) => (isObject(v) && v[key] !== undefined ? cell(v[key], unitOf(`${path}.${key}`)) : "")),
    );
    page.table(rows, { indent: indent + 2, heads: keys.map(headWords) });
  } else if (shown.every((v) => Array.isArray(v) && v.every(isFlat)))
    page.table(
      shown.map((v) => (Array.isArray(v) ? v.map((n) => scalar(n, "")) : [])),
      { indent: indent + 2 },
    );
  else if (shown.every(isFlat)) page.text(flatList(shown, path), indent + 2);
  else for (const [i, v] of shown.entries()) valuePage(`${path}[${i}]`, `${i + 1}`, v, told, page, indent + 2);
  if (list.length > MOST_ROWS)
    page.text(say("cli.answer-page.and-more-json-gives-them-all", { listCount: list.length - MOST_ROWS }), indent + 2);
}

function unitOf(path: string): string {
  const steps = path.split(/[.[\]]+/).filter((s) => s !== "");
  if (steps.some((step) => BARE_GROUPS.has(step))) return "";
  // Where the last step is no unit-bearing key (a name, a number), the group above it carries the unit.
  for (const step of steps.reverse()) {
    const unit = UNITS.find(([ending]) => ending.test(step))?.[1];
    if (unit !== undefined) return unit;
  }
  return "";
}

/** The name of a measurement, given as a value. */
const MEASURE_NAME = /^[a-z]+(?:_[a-z]+)*_(?:mm|deg)(?:#\d+)?$/;

/** "stem_length_mm" as "stem length": the unit stands behind the number. */
function keyWords(key: string): string {
  if (!/^[a-z]\w*$/.test(key)) return key;
  const bare = key.replace(/_(mm2|Nmm|Nm|mm|deg|rad|MPa|N|n|W|kg|g|m_s|km_h|m|h|s|days?|percent|pct)$/, "");
  return bare.replaceAll("_", " ").replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
}

/** The head of a column carries its unit. */
function headWords(key: string): string {
  const unit = unitOf(key);
  return unit === "" ? keyWords(key) : `${keyWords(key)}, ${unit}`;
}

/** A number in a column whose head has the unit. */
function cell(value: unknown, unit: string): string {
  return typeof value === "number" ? fine(value, unit).replace("-", "−") : scalar(value, "");
}

/** Lengths to a hundredth of a mm and angles to a hundredth of a degree at most, or to a tenth of their band: no finer than a shop reads. */
function fine(value: number, unit: string, band?: Band): string {
  if (unit === "N" && Math.abs(value) >= 100) return value.toFixed(0);
  if (unit !== "mm" && unit !== "°") return round(value);
  if (Math.abs(value) >= 1e7) return round(value);
  const half = band === undefined ? 0 : (band.high - band.low) / 2;
  const digits = half >= 0.5 ? 1 : 2;
  return String(Number(value.toFixed(digits)));
}

function scalar(value: unknown, unit: string, band?: Band): string {
  if (typeof value === "number") {
    const text = fine(value, unit, band).replace("-", "−");
    return unit === "" ? text : unit === "°" ? `${text}°` : `${text} ${unit}`;
  }
  if (typeof value === "boolean") return value ? say("cli.answer-page.yes") : say("cli.answer-page.no");
  if (value === null) return say("cli.answer-page.not-known");
  const text = String(value);
  return MEASURE_NAME.test(text) ? keyWords(text) : text.replace(/(^|[\s(])-(?=\d)/g, "$1−");
}

/** Enough digits to work by; full precision is in --json. */
function round(value: number): string {
  const size = Math.abs(value);
  if (Number.isInteger(value) && size < 1e9) return String(value);
  if (size >= 1e7 || size < 1e-4) return value.toExponential(4);
  return String(size >= 1 ? Number(value.toFixed(size >= 100 ? 2 : 3)) : Number(value.toPrecision(3)));
}

function bandText({ bands, alike }: Told, path: string, value: unknown): string {
  const band = bands[path];
  if (band === undefined || typeof value !== "number") return "";
  const half = (band.high - band.low) / 2;
  const even = Math.abs((band.high + band.low) / 2 - value) <= 0.02 * half;
  const unit = unitOf(path);
  const shown = even
    ? `± ${half >= 0.5 ? fine(half, unit, band) : round(Number(half.toPrecision(2)))}`
    : say("cli.answer-page.to", { low: fine(band.low, unit, band), high: fine(band.high, unit, band) });
  return `${shown.replaceAll("-", "−")}${alike ? "" : ` (${band.means})`}`;
}
