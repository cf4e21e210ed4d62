/**
 * Which inputs does a sheet take, as a JSON Schema (2020-12)? For programs that call it.
 * Numbers only by default; with `writtenNumbers` the schema also lets text such as "49,1 cm" pass, which the check of
 * the sheet then reads.
 */
import type { Field, SheetFace, SheetUnit } from "./sheet.js";
import { SHEET_UNITS } from "./sheet-unit.js";
import { startValue } from "./start-input.js";

export type JsonSchema = { readonly [key: string]: unknown };

export interface SchemaOptions {
  readonly writtenNumbers?: boolean;
}

export function sheetJsonSchema(sheet: SheetFace, options: SchemaOptions = {}): JsonSchema {
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    title: sheet.question,
    description: sheet.notes,
    ...objectOf(sheet.fields, options),
  };
}

function objectOf(fields: readonly Field[], options: SchemaOptions): JsonSchema {
  return {
    type: "object",
    additionalProperties: false,
    properties: Object.fromEntries(fields.map((f) => [f.key, fieldSchema(f, options)])),
    required: fields.filter((f) => f.optional !== true).map((f) => f.key),
  };
}

function fieldSchema(field: Field, options: SchemaOptions): JsonSchema {
  const head = {
    title: field.label,
    ...(field.help === undefined ? {} : { description: field.help }),
    default: startValue(field),
  };
  switch (field.kind) {
    case "number":
      return { ...head, ...numberOf(field, options) };
    case "numbers":
      return { ...head, ...arrayOf(field, numberOf(field, options)) };
    case "text":
      return { ...head, ...textOf(field) };
    case "texts":
      return { ...head, ...arrayOf(field, textOf(field)) };
    case "boolean":
      return { ...head, type: "boolean" };
    case "group":
      return { ...head, ...objectOf(field.fields, options) };
    case "list":
      return { ...head, ...arrayOf(field, objectOf(field.of, options)) };
    case "table":
      return {
        ...head,
        ...arrayOf(field, {
          type: "array",
          prefixItems: field.columns.map((c) => ({ title: c.label, ...numberOf(c, options) })),
          minItems: field.columns.length,
          maxItems: field.columns.length,
        }),
      };
    case "map":
      return {
        ...head,
        type: "object",
        additionalProperties: fieldSchema(field.of, options),
        ...(field.keyPattern === undefined ? {} : { propertyNames: { pattern: `^(?:${field.keyPattern})$` } }),
        minProperties: field.minItems,
        maxProperties: field.maxItems,
      };
  }
}

interface NumberRule {
  readonly unit: SheetUnit;
  readonly min: number;
  readonly max: number;
  readonly integer?: boolean;
}

function numberOf(rule: NumberRule, options: SchemaOptions): JsonSchema {
  const plain = rule.integer === true ? "integer" : "number";
  const shown = SHEET_UNITS[rule.unit].shown;
  // "minimum" speaks to numbers and "maxLength" to text; each leaves the other kind alone.
  const type = options.writtenNumbers === true ? { type: [plain, "string"], maxLength: 64 } : { type: plain };
  return { ...type, minimum: rule.min, maximum: rule.max, ...(shown === "" ? {} : { "x-unit": rule.unit }) };
}

function textOf(rule: {
  readonly oneOf?: readonly string[];
  readonly maxLength: number;
  readonly optional?: boolean;
}): JsonSchema {
  if (rule.oneOf !== undefined) return { type: "string", enum: [...rule.oneOf] };
  return { type: "string", ...(rule.optional === true ? {} : { minLength: 1 }), maxLength: rule.maxLength };
}

function arrayOf(size: { readonly minItems: number; readonly maxItems: number }, items: JsonSchema): JsonSchema {
  return { type: "array", items, minItems: size.minItems, maxItems: size.maxItems };
}
