/**
 * What is a sheet? One calculation that a builder asks for, with one description from which the web form, the
 * command and the HTTP call are made. Inputs come in under the names of the contract; every number has unit, range
 * and a start value.
 */
import type { Answer } from "../quantity/index.js";

/** Units a sheet's number may have. "count" and "ratio" have none. */
export type SheetUnit = "mm" | "deg" | "h" | "day" | "N" | "MPa" | "percent" | "count" | "ratio" | "mm2" | "kg" | "Nm";

interface FieldBase {
  /** Key in the input object, unit in the name. */
  readonly key: string;
  /** Short label in workshop words. */
  readonly label: string;
  /** How it is measured or what it means, one sentence. */
  readonly help?: string;
  /** True: may be left out. */
  readonly optional?: boolean;
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

export type Field = NumberField | NumbersField | TextField | GroupField | ListField;

export interface Sheet<In = unknown, Out = unknown> {
  /** As in the contract: "side-view". */
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
