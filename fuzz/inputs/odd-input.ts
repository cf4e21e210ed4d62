/**
 * How does the input of a sheet go wrong? From its start values, by small steps: figures moved inside and just outside their
 * limits, written with units, odd figures and words, keys of the language, lists too long. Steps are JSON; what JSON cannot
 * say (NaN, an endless loop) is named by a word and made here.
 */
import { type AnySheet, type Field, startInput } from "@coldset/core/sheet";
import fc from "fast-check";
import { HOSTILE_KEYS } from "./mangled-text.js";
import { ODD_NUMBERS, oddText } from "./odd-text.js";

export interface InputStep {
  readonly does:
    | "inside"
    | "near"
    | "edge"
    | "written"
    | "odd"
    | "json"
    | "special"
    | "out"
    | "key"
    | "copy"
    | "choice";
  /** Which figure or word, counted round. */
  readonly at: number;
  readonly part: number;
  readonly with: unknown;
}

const SPECIAL: Readonly<Record<string, () => unknown>> = {
  NaN: () => Number.NaN,
  Infinity: () => Number.POSITIVE_INFINITY,
  minus: () => Number.NEGATIVE_INFINITY,
  zero: () => -0,
  huge: () => 1.7976931348623157e308,
  tiny: () => 5e-324,
  undefined: () => undefined,
  bigint: () => 12n,
  symbol: () => Symbol("x"),
  function: () => () => 1,
  date: () => new Date(0),
  boxed: () => Object(442),
  hole: () => new Array(3),
  getter: () => Object.defineProperty({}, "x", { enumerable: true, get: () => 1 }),
  nothing: () => Object.create(null),
  map: () => new Map([["x", 1]]),
};

const place = { at: fc.nat(300), part: fc.double({ min: 0, max: 1, noNaN: true }) };
const does = (...words: InputStep["does"][]) => fc.constantFrom(...words);
const mild: fc.Arbitrary<InputStep> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ ...place, does: does("near"), with: fc.constantFrom(0.9, 0.99, 1, 1.01, 1.1) }) },
  { weight: 3, arbitrary: fc.record({ ...place, does: does("inside", "inside", "edge"), with: fc.constant(null) }) },
  { weight: 2, arbitrary: fc.record({ ...place, does: does("written", "choice"), with: fc.nat(3) }) },
  { weight: 1, arbitrary: fc.record({ ...place, does: does("out", "copy"), with: fc.nat(3) }) },
);
const wild: fc.Arbitrary<InputStep> = fc.oneof(
  fc.record({ ...place, does: does("odd"), with: fc.oneof(fc.constantFrom(...ODD_NUMBERS), oddText) }),
  fc.record({ ...place, does: does("json"), with: fc.jsonValue({ maxDepth: 3 }) }),
  fc.record({ ...place, does: does("special"), with: fc.constantFrom(...Object.keys(SPECIAL)) }),
  fc.record({ ...place, does: does("key"), with: fc.oneof(fc.constantFrom(...HOSTILE_KEYS), oddText) }),
  fc.record({ ...place, does: does("copy"), with: fc.constantFrom(60, 400) }),
);

export const inputSteps: fc.Arbitrary<readonly InputStep[]> = fc.oneof(
  { weight: 6, arbitrary: fc.array(mild, { minLength: 1, maxLength: 5 }) },
  { weight: 2, arbitrary: fc.array(wild, { minLength: 1, maxLength: 2 }) },
  { weight: 1, arbitrary: fc.array(fc.oneof(mild, wild), { minLength: 1, maxLength: 6 }) },
);

type Limits = { readonly min: number; readonly max: number; readonly unit: string; readonly integer?: boolean };
interface Spot {
  readonly holder: Record<string, unknown>;
  readonly key: string;
  readonly limits?: Limits;
  readonly words?: readonly string[];
  readonly list?: boolean;
}

/** Every figure, word and list of the input, with what its field says of it. */
function spots(fields: readonly Field[], input: unknown): Spot[] {
  // An earlier step may have put anything here.
  if (typeof input !== "object" || input === null) return [];
  const holder = input as Record<string, unknown>;
  return fields.flatMap((field) => spotsOf(field, holder));
}

function spotsOf(field: Field, input: Record<string, unknown>): Spot[] {
  const value = input[field.key];
  const here = { holder: input, key: field.key };
  const items = Array.isArray(value) ? (value as unknown as Record<string, unknown>) : {};
  const each = (of: (key: string) => Spot[]) => Object.keys(items).flatMap(of);
  if (value === undefined) return field.kind === "number" ? [{ ...here, limits: field }] : [];
  switch (field.kind) {
    case "number":
      return [{ ...here, limits: field }];
    case "boolean":
      return [here];
    case "text":
      return [{ ...here, ...(field.oneOf === undefined ? {} : { words: field.oneOf }) }];
    case "group":
      return spots(field.fields, value);
    case "numbers":
      return [{ ...here, list: true }, ...each((key) => [{ holder: items, key, limits: field }])];
    case "texts":
      return [{ ...here, list: true }];
    case "list":
      return [{ ...here, list: true }, ...each((key) => spots(field.of, items[key]))];
    case "table":
      return [
        { ...here, list: true },
        ...each((key) => {
          const row = items[key];
          if (typeof row !== "object" || row === null) return [];
          return field.columns.map((column, i) => ({
            holder: row as Record<string, unknown>,
            key: String(i),
            limits: column,
          }));
        }),
      ];
    case "map":
      return [
        here,
        ...(typeof value !== "object" || value === null ? [] : Object.keys(value)).flatMap((key) =>
          spots([{ ...field.of, key }], value),
        ),
      ];
  }
}

/** Units that a figure of this field may be written in, by the text that stands behind it; each means the same figure. */
const WRITTEN: Readonly<Record<string, readonly string[]>> = {
  mm: ["mm", " mm", " millimetres"],
  deg: ["°", " deg", " degrees"],
  N: [" N", "N"],
  kg: [" kg", "kg"],
  h: [" h", " hours"],
  MPa: [" MPa", " N/mm2"],
};

export function oddInput(sheet: AnySheet, steps: readonly InputStep[]): Record<string, unknown> {
  const input = startInput(sheet);
  for (const step of steps) {
    const all = spots(sheet.fields, input);
    const spot = all[step.at % Math.max(1, all.length)];
    if (spot !== undefined) apply(input, spot, step);
  }
  return input;
}

function apply(input: Record<string, unknown>, spot: Spot, { does, part, with: what }: InputStep): void {
  const { holder, key, limits, words, list } = spot;
  const value = holder[key];
  const set = (fresh: unknown) => {
    holder[key] = fresh;
  };
  const fitIn = (v: number) => {
    if (limits === undefined) return;
    const inside = Math.min(limits.max, Math.max(limits.min, v));
    set(limits.integer === true ? Math.round(inside) : Number(inside.toPrecision(6)));
  };
  switch (does) {
    case "near":
      if (typeof value === "number") fitIn(value * Number(what));
      return;
    case "inside":
      if (limits !== undefined) fitIn(limits.min + part * (limits.max - limits.min));
      return;
    case "edge":
      if (limits !== undefined)
        set(part < 0.4 ? limits.min : part < 0.8 ? limits.max : part < 0.9 ? limits.min - 1e-9 : limits.max * 2 + 1);
      return;
    case "written": {
      const units = limits === undefined ? undefined : WRITTEN[limits.unit];
      if (typeof value === "number" && !/e/.test(String(value)))
        set(
          `${
            units !== undefined && Number(what) > 0
              ? String(value)
                  .replace(".", ",")
                  .replace(/^(\d{1,3}),(\d{3})$/, "$1.$2")
              : value
          }${units?.[Number(what) % units.length] ?? ""}`,
        );
      return;
    }
    case "choice":
      if (words !== undefined) set(words[Number(what) % words.length]);
      else if (typeof value === "boolean") set(!value);
      return;
    case "out":
      delete holder[key];
      return;
    case "copy":
      if (list === true && Array.isArray(value) && value.length > 0)
        set([
          ...value,
          ...Array.from({ length: Number(what) + 1 }, (_, i) => structuredClone(value[i % value.length])),
        ]);
      return;
    case "key":
      Object.defineProperty(part < 0.5 ? holder : input, String(what), {
        value: 1,
        enumerable: true,
        configurable: true,
        writable: true,
      });
      return;
    case "special":
      set(SPECIAL[String(what)]?.());
      return;
    case "odd":
    case "json":
      set(what);
      return;
  }
}
