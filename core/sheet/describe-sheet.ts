/** What does a sheet ask for and give? As a plain object, for programs and for the web form. */
import type { Field, SheetFace } from "./sheet.js";
import { startValue } from "./start-input.js";

export interface DescribedField {
  readonly key: string;
  readonly label: string;
  readonly kind: Field["kind"];
  readonly optional: boolean;
  readonly help?: string;
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
  readonly integer?: boolean;
  readonly oneOf?: readonly string[];
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly columns?: readonly {
    readonly label: string;
    readonly unit: string;
    readonly min: number;
    readonly max: number;
  }[];
  /** Fields inside a group, of each entry of a list, or (one) of each entry of a map. */
  readonly fields?: readonly DescribedField[];
  readonly start: unknown;
}

export interface DescribedSheet {
  readonly id: string;
  readonly question: string;
  readonly notes: string;
  readonly inputs: readonly DescribedField[];
  readonly gives: readonly { readonly key: string; readonly means: string }[];
}

export function describeSheet(sheet: SheetFace): DescribedSheet {
  const { id, question, notes, fields, gives } = sheet;
  return { id, question, notes, inputs: fields.map(describeField), gives: gives.map((g) => ({ ...g })) };
}

function describeField(field: Field): DescribedField {
  const { kind, key, label, optional = false, help } = field;
  const head = { key, label, kind, optional, ...(help === undefined ? {} : { help }) };
  const start = startValue(field);
  switch (field.kind) {
    case "number":
    case "numbers": {
      const { unit, min, max, integer = false } = field;
      const size = field.kind === "numbers" ? { minItems: field.minItems, maxItems: field.maxItems } : {};
      return { ...head, unit, min, max, integer, ...size, start };
    }
    case "text":
    case "texts": {
      const { maxLength, oneOf } = field;
      const size = field.kind === "texts" ? { minItems: field.minItems, maxItems: field.maxItems } : {};
      return { ...head, ...(oneOf === undefined ? {} : { oneOf: [...oneOf] }), maxLength, ...size, start };
    }
    case "boolean":
      return { ...head, start };
    case "group":
      return { ...head, fields: field.fields.map(describeField), start };
    case "list":
    case "map": {
      const { minItems, maxItems } = field;
      const inner: readonly Field[] = field.kind === "list" ? field.of : [field.of];
      return { ...head, minItems, maxItems, fields: inner.map(describeField), start };
    }
    case "table": {
      const { minItems, maxItems } = field;
      return { ...head, minItems, maxItems, columns: field.columns.map((c) => ({ ...c })), start };
    }
  }
}
