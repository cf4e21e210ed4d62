/**
 * With which input does the form of a sheet open? The start values as one input object: the worked example.
 * Optional fields that start empty ("", no entries) or are marked `leftOutAtStart` are left out.
 */
import type { Field, SheetFace } from "./sheet.js";

export function startInput(sheet: Pick<SheetFace, "fields">): Record<string, unknown> {
  return startOf(sheet.fields);
}

function startOf(fields: readonly Field[]): Record<string, unknown> {
  return Object.fromEntries(fields.filter(stands).map((f) => [f.key, startValue(f)]));
}

function stands(field: Field): boolean {
  if (field.optional !== true) return true;
  if (field.leftOutAtStart === true) return false;
  if (field.kind === "text") return field.start !== "";
  if (field.kind === "map") return Object.keys(field.start).length > 0;
  return field.kind === "number" || field.kind === "boolean" || field.kind === "group" || field.start.length > 0;
}

/** The start value of one field, as a copy that may be changed. */
export function startValue(field: Field): unknown {
  return field.kind === "group" ? startOf(field.fields) : structuredCopy(field.start);
}

function structuredCopy(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(structuredCopy);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, structuredCopy(v)]));
}
