/**
 * May this input go into the calculation? Checks every field, also inside groups, lists, tables and maps, and names
 * all problems at once. Written figures ("49,1 cm") are read in the unit of the field. Keys that are not known are
 * refused with the nearest known one. A key whose value is null or undefined counts as not given.
 * Answer: a fresh object with only the known keys and plain numbers, or the refusals. Never throws for JSON or YAML data.
 */

import { nearestName, type Refusal, type Refused, refused, showable } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { checkNumber, checkText, shownGiven } from "./check-value.js";
import type { Field, ListField, MapField, NumbersField, TableField, TextsField } from "./sheet.js";

export interface Checked {
  readonly kind: "ok";
  readonly value: Record<string, unknown>;
}

/** Keys that a plain data object never needs and that could reach into the program. */
const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype"]);
/** Unknown keys named one by one in one object; past this they are only counted. */
const MAX_UNKNOWN_NAMED = 20;
const KEY_PATTERN = "[\\p{L}\\p{N}_. -]{1,64}";

export function checkInput(fields: readonly Field[], input: unknown): Checked | Refused {
  const refusals: Refusal[] = [];
  const value = checkObject(fields, input, "", say("sheet.check-input.the-input"), refusals);
  return refusals.length > 0 || value === undefined ? refused(refusals) : { kind: "ok", value };
}

type Put = Refusal[];

function checkObject(
  fields: readonly Field[],
  input: unknown,
  at: string,
  name: string,
  put: Put,
): Record<string, unknown> | undefined {
  if (!isPlainObject(input)) {
    const allowed = say("sheet.check-input.an-object-with-named-values");
    put.push({
      code: "not-an-object",
      at,
      given: shownGiven(input),
      allowed,
      message: say("sheet.check-input.must-be", { name, allowed }),
    });
    return undefined;
  }
  const known = fields.map((f) => f.key);
  checkKeys(input, known, at, name, put);
  const entries: [string, unknown][] = [];
  for (const field of fields) {
    const given = Object.hasOwn(input, field.key) ? input[field.key] : undefined;
    const path = at === "" ? field.key : `${at}.${field.key}`;
    if (given === undefined || given === null) {
      if (field.optional === true) continue;
      const allowed = wanted(field);
      const message = say("sheet.check-input.is-missing-wanted-is", { label: field.label, path, allowed });
      put.push({ code: "missing", at: path, given: null, allowed, message });
      continue;
    }
    const value = checkField(field, given, path, put);
    if (value !== undefined) entries.push([field.key, value]);
  }
  return Object.fromEntries(entries);
}

function checkField(field: Field, given: unknown, at: string, put: Put): unknown {
  switch (field.kind) {
    case "number":
      return checkNumber(field, given, at, put);
    case "text":
      return checkText(field, given, at, put);
    case "boolean":
      if (typeof given === "boolean") return given;
      return wrongType(field, given, at, put);
    case "group":
      return checkObject(field.fields, given, at, `${field.label} (${at})`, put);
    case "numbers":
      return checkItems(field, given, at, put, (item, path) => checkNumber(field, item, path, put));
    case "texts":
      return checkItems(field, given, at, put, (item, path) => checkText(field, item, path, put));
    case "list":
      return checkItems(field, given, at, put, (item, path) =>
        checkObject(field.of, item, path, `${field.label} (${path})`, put),
      );
    case "table":
      return checkItems(field, given, at, put, (item, path) => checkRow(field, item, path, put));
    case "map":
      return checkMap(field, given, at, put);
  }
}

function checkItems(
  field: NumbersField | TextsField | ListField | TableField,
  given: unknown,
  at: string,
  put: Put,
  check: (item: unknown, path: string) => unknown,
): unknown {
  if (!Array.isArray(given)) return wrongType(field, given, at, put);
  if (!rightLength(field, given.length, at, put)) return undefined;
  return Array.from(given, (item: unknown, i) => check(item, `${at}[${i}]`));
}

function rightLength(field: Counted & { readonly label: string }, length: number, at: string, put: Put): boolean {
  if (length >= field.minItems && length <= field.maxItems) return true;
  const many = length > field.maxItems;
  const allowed = countText(field);
  const message = say("sheet.check-input.has-allowed-are", {
    label: field.label,
    at,
    count: length,
    entries: length === 1 ? "entry" : "entries",
    allowed,
  });
  put.push({ code: many ? "too-many-items" : "too-few-items", at, given: length, allowed, message });
  return false;
}

interface Counted {
  readonly minItems: number;
  readonly maxItems: number;
}

function countText(field: Counted): string {
  return field.minItems === field.maxItems
    ? say("sheet.check-input.entries", { minItems: field.minItems })
    : say("sheet.check-input.to-entries", { minItems: field.minItems, maxItems: field.maxItems });
}

function checkRow(field: TableField, row: unknown, at: string, put: Put): unknown {
  const width = field.columns.length;
  if (!Array.isArray(row) || row.length !== width) {
    const allowed = say("sheet.check-input.numbers", { width, columns: field.columns.map((c) => c.label).join(", ") });
    const message = say("sheet.check-input.a-row-of-must-be", { label: field.label, at, allowed });
    put.push({ code: "wrong-type", at, given: shownGiven(row), allowed, message });
    return undefined;
  }
  return field.columns.map((column, i) => checkNumber(column, row[i], `${at}[${i}]`, put));
}

function checkMap(field: MapField, given: unknown, at: string, put: Put): unknown {
  if (!isPlainObject(given)) return wrongType(field, given, at, put);
  const keys = Reflect.ownKeys(given).map(String);
  if (!rightLength(field, keys.length, at, put)) return undefined;
  const whole = new RegExp(`^(?:${field.keyPattern ?? KEY_PATTERN})$`, "u");
  const entries: [string, unknown][] = [];
  for (const key of keys) {
    const path = `${at}.${showable(key)}`;
    if (FORBIDDEN_KEYS.has(key) || !whole.test(key)) {
      const allowed =
        field.keyPattern === undefined
          ? say("sheet.check-input.names-of-letters-digits-and-spaces")
          : say("sheet.check-input.the-names-listed-in-the-notes");
      const message = say("sheet.check-input.cannot-have-an-entry-of-this", { label: field.label, path });
      put.push({
        code: FORBIDDEN_KEYS.has(key) ? "forbidden-key" : "bad-key",
        at: path,
        given: shownGiven(key),
        allowed,
        message,
      });
      continue;
    }
    entries.push([key, checkField(field.of, given[key], path, put)]);
  }
  return Object.fromEntries(entries);
}

function checkKeys(input: object, known: readonly string[], at: string, name: string, put: Put): void {
  const unknown = Reflect.ownKeys(input)
    .map(String)
    .filter((k) => !known.includes(k));
  for (const key of unknown.slice(0, MAX_UNKNOWN_NAMED)) {
    const shown = String(shownGiven(key));
    const path = at === "" ? shown : `${at}.${shown}`;
    const allowed = known.join(", ");
    if (FORBIDDEN_KEYS.has(key)) {
      const message = say("sheet.check-input.may-not-have-a-key", { name, shown });
      put.push({ code: "forbidden-key", at: path, given: shown, allowed, message });
      continue;
    }
    const near = nearestName(key, known);
    const hint =
      near === undefined
        ? say("sheet.check-input.known-are", { allowed })
        : say("sheet.check-input.did-you-mean", { near });
    put.push({
      code: "unknown-key",
      at: path,
      given: shown,
      allowed,
      message: say("sheet.check-input.has-no-key", { name, shown, hint }),
    });
  }
  if (unknown.length > MAX_UNKNOWN_NAMED) {
    const more = unknown.length - MAX_UNKNOWN_NAMED;
    const message = say("sheet.check-input.has-more-unknown-keys", { name, more });
    put.push({ code: "unknown-key", at, given: more, allowed: known.join(", "), message });
  }
}

function wrongType(field: Field, given: unknown, at: string, put: Put): undefined {
  const allowed = wanted(field);
  const message = say("sheet.check-input.must-be-2", { label: field.label, at, allowed });
  put.push({ code: "wrong-type", at, given: shownGiven(given), allowed, message });
  return undefined;
}

/** What a field takes, in a few words. */
function wanted(field: Field): string {
  switch (field.kind) {
    case "number":
      return say("sheet.check-input.a-number");
    case "text":
      return field.oneOf === undefined ? "text" : say("sheet.check-value.one-of", { oneOf: field.oneOf.join(", ") });
    case "boolean":
      return say("sheet.check-input.true-or-false");
    case "group":
      return say("sheet.check-input.an-object-with", { fields: field.fields.map((f) => f.key).join(", ") });
    case "map":
      return say("sheet.check-input.an-object-with-2", { field: countText(field) });
    case "numbers":
      return say("sheet.check-input.a-list-of-each-a-number", { field: countText(field) });
    case "texts":
      return say("sheet.check-input.a-list-of-each-a-text", { field: countText(field) });
    case "list":
      return say("sheet.check-input.a-list-of-each-an-object", { field: countText(field) });
    case "table":
      return say("sheet.check-input.a-list-of-each-a-row", {
        field: countText(field),
        columnsCount: field.columns.length,
      });
  }
}

function isPlainObject(value: unknown): value is Record<string, unknown> {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return false;
  const proto: unknown = Object.getPrototypeOf(value);
  return proto === Object.prototype || proto === null || Object.getPrototypeOf(proto) === null;
}
