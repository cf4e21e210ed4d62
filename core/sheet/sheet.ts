/**
 * What is a sheet? One calculation that a builder asks for, with one description from which the web form, the
 * command and the HTTP call are made. Inputs come in under the names of docs/methods/sheets.md; every number has unit, range
 * and a start value.
 */
import type { Answer } from "../quantity/index.js";

/** Units a sheet's number may have. "count" and "ratio" have none; "named" hangs on another field, as in `survey`. */
export type SheetUnit =
  | "mm"
  | "deg"
  | "h"
  | "day"
  | "N"
  | "MPa"
  | "percent"
  | "count"
  | "ratio"
  | "mm2"
  | "kg"
  | "Nm"
  | "named"
  | "m"
  | "m2"
  | "m/s"
  | "m/s2"
  | "rad"
  | "1/min"
  | "s"
  | "min"
  | "g"
  | "W"
  | "J"
  | "degC"
  | "kg m2"
  | "kg/m3"
  | "Nmm"
  | "N/mm"
  | "1/h"
  | "money";

interface FieldBase {
  /** Key in the input object, unit in the name. */
  readonly key: string;
  /** Short label in workshop words. */
  readonly label: string;
  /** How it is measured or what it means, one sentence. */
  readonly help?: string;
  /** True: may be left out. */
  readonly optional?: boolean;
  /** True: an optional field that the form leaves empty at the start (an either-or of which the other is filled). */
  readonly leftOutAtStart?: boolean;
}

export interface NumberField extends FieldBase {
  readonly kind: "number";
  readonly unit: SheetUnit;
  /** Inclusive limits; outside them the input is refused. */
  readonly min: number;
  readonly max: number;
  readonly integer?: boolean;
  /** Start value of the form; also the worked example. */
  readonly start: number;
}

export interface NumbersField extends FieldBase {
  readonly kind: "numbers";
  readonly unit: SheetUnit;
  readonly min: number;
  readonly max: number;
  readonly integer?: boolean;
  /** Least and most entries. */
  readonly minItems: number;
  readonly maxItems: number;
  readonly start: readonly number[];
}

export interface TextField extends FieldBase {
  readonly kind: "text";
  /** Allowed words, where the set is closed. */
  readonly oneOf?: readonly string[];
  readonly maxLength: number;
  readonly start: string;
}

export interface GroupField extends FieldBase {
  readonly kind: "group";
  readonly fields: readonly Field[];
}

export interface ListField extends FieldBase {
  readonly kind: "list";
  readonly of: readonly Field[];
  readonly minItems: number;
  readonly maxItems: number;
  readonly start: readonly Readonly<Record<string, unknown>>[];
}

/** Yes or no. */
export interface BooleanField extends FieldBase {
  readonly kind: "boolean";
  readonly start: boolean;
}

/** A list of words, such as the fixed directions of a support. */
export interface TextsField extends FieldBase {
  readonly kind: "texts";
  readonly oneOf?: readonly string[];
  readonly maxLength: number;
  readonly minItems: number;
  readonly maxItems: number;
  readonly start: readonly string[];
}

/** Rows of numbers with fixed columns, such as the stations of a stay: distance, outer diameter, wall. */
export interface TableField extends FieldBase {
  readonly kind: "table";
  readonly columns: readonly {
    readonly label: string;
    readonly unit: SheetUnit;
    readonly min: number;
    readonly max: number;
  }[];
  readonly minItems: number;
  readonly maxItems: number;
  readonly start: readonly (readonly number[])[];
}

/** An object with free keys, all of the same kind: nodes by name, sprockets by chainring. */
export interface MapField extends FieldBase {
  readonly kind: "map";
  /** What stands under each key; its own `key` and `label` say what that is. */
  readonly of: Field;
  /** What the keys must look like, as a regular expression for the whole key; letters, digits, _ - by default. */
  readonly keyPattern?: string;
  readonly minItems: number;
  readonly maxItems: number;
  readonly start: Readonly<Record<string, unknown>>;
}

export type Field =
  | NumberField
  | NumbersField
  | TextField
  | GroupField
  | ListField
  | BooleanField
  | TextsField
  | TableField
  | MapField;

export interface Sheet<In = unknown, Out = unknown> {
  /** As in docs/methods/sheets.md: "side-view". */
  readonly id: string;
  /** The builder's question, ending in "?". */
  readonly question: string;
  /** Conventions and limits in a few sentences. */
  readonly notes: string;
  readonly fields: readonly Field[];
  /** Keys of the answer's value with unit and meaning, for --describe. */
  readonly gives: readonly { readonly key: string; readonly means: string }[];
  /** Called only with input that passed `checkInput(fields, input)`. Says further refusals as a value. */
  readonly run: (input: In) => Answer<Out>;
}

/** Any sheet, for lists of sheets of different kinds. Run one with `runSheet`, which checks the input first. */
export type AnySheet = Sheet<never, unknown>;

/** What describes a sheet without running it. */
export type SheetFace = Pick<AnySheet, "id" | "question" | "notes" | "fields" | "gives">;
