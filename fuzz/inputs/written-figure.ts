/**
 * How do people write a figure, and how do they miswrite it? Figures with their units as a builder writes them, together
 * with what they mean; the same with a slip; and text that is none.
 */
import fc from "fast-check";
import { oddNumber, oddText, slip, slipped } from "./odd-text.js";
import { factorOf, unitNames } from "./plain-reading.js";

export const DIMENSIONS = [
  "length",
  "area",
  "angle",
  "mass",
  "torque",
  "force",
  "stress",
  "time",
  "speed",
  "power",
  "money",
  "count",
  "ratio",
  "percent",
] as const;

export interface Figure {
  readonly text: string;
  readonly want: (typeof DIMENSIONS)[number];
  /** Unit of a bare figure; "" is the base unit. */
  readonly bareUnit: string;
  /** Unit of the answer; "" is the base unit. */
  readonly into: string;
  /** What the writer meant, in the base unit; null where that is not known. */
  readonly means: number | null;
}

const digits = (most: number) => fc.nat(10 ** most - 1).map(String);

/** A number as people write it, and its value. Never one that could be read in two ways. */
const number: fc.Arbitrary<{ readonly text: string; readonly value: number }> = fc.oneof(
  { weight: 4, arbitrary: fc.nat(9999).map((n) => ({ text: String(n), value: n })) },
  {
    weight: 5,
    arbitrary: fc
      .tuple(fc.nat(99_999), fc.constantFrom(".", ","), digits(4), fc.boolean())
      .filter(([, sign, part]) => sign === "." || part.length !== 3)
      .map(([whole, sign, part]) => ({ text: `${whole}${sign}${part}`, value: Number(`${whole}.${part}`) })),
  },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.nat(40), fc.constantFrom([1, 2], [1, 4], [3, 4], [1, 8], [5, 8], [7, 16], [31, 64]), fc.nat(2))
      .map(([whole, [over = 1, under = 1], way]) => ({
        text: whole === 0 ? `${over}/${under}` : `${whole}${way === 1 ? "-" : " "}${over}/${under}`,
        value: whole + over / under,
      })),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.integer({ min: 1, max: 999 }), fc.nat(999))
      .map(([a, b]) => ({ text: `${a} ${String(b).padStart(3, "0")}`, value: a * 1000 + b })),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: -3, max: 3 }))
      .map(([a, b]) => ({ text: `${a}e${b}`, value: Number(`${a}e${b}`) })),
  },
);

const want = fc.constantFrom(...DIMENSIONS);
const WHOLE = new Set(["count"]);

/** Units that can stand for the base unit, by dimension; "" where none is named. */
const unitFor = (dimension: string) =>
  fc.constantFrom("", ...unitNames(dimension).filter((n) => /^[A-Za-z/2]+$/.test(n)));

const written: fc.Arbitrary<Figure> = want.chain((dimension) =>
  fc
    .record({
      figure: WHOLE.has(dimension) ? fc.nat(9999).map((n) => ({ text: String(n), value: n })) : number,
      unit: fc.constantFrom("", ...unitNames(dimension)),
      sign: fc.constantFrom("", "", "", "-", "\u2212", "+"),
      space: fc.constantFrom("", " ", "\u00a0", "\u202f"),
      bareUnit: fc.oneof({ weight: 3, arbitrary: fc.constant("") }, { weight: 1, arbitrary: unitFor(dimension) }),
      into: fc.oneof({ weight: 3, arbitrary: fc.constant("") }, { weight: 1, arbitrary: unitFor(dimension) }),
    })
    .map(({ figure, unit, sign, space, bareUnit, into }) => {
      // A letter directly behind e3 or a fraction's digit is still plain; a unit that starts with a digit does not exist.
      const one = factorOf(dimension, unit === "" ? bareUnit : unit) ?? 1;
      return {
        text: `${sign}${figure.text}${unit === "" ? "" : space}${unit}`,
        want: dimension,
        bareUnit,
        into,
        means: (sign === "-" || sign === "\u2212" ? -1 : 1) * figure.value * one,
      };
    }),
);

/** Several parts, as in 31 lb 4 oz, and a half-width behind ±. */
const parts: fc.Arbitrary<Figure> = fc
  .tuple(
    fc.constantFrom<readonly [Figure["want"], string, string]>(
      ["length", "ft", "in"],
      ["length", "'", '"'],
      ["length", "m", "cm"],
      ["angle", "°", "'"],
      ["mass", "lb", "oz"],
      ["mass", "st", "lb"],
      ["mass", "kg", "g"],
      ["time", "h", "min"],
      ["time", "day", "h"],
    ),
    fc.nat(60),
    fc.nat(70),
    fc.option(number, { nil: undefined }),
    fc.constantFrom("", " "),
  )
  .map(([[dimension, big, small], a, b, half, space]) => ({
    text: `${a}${space}${big}${space}${b}${space}${small}${half === undefined ? "" : ` ± ${half.text} ${small}`}`,
    want: dimension,
    bareUnit: "",
    into: "",
    means: null,
  }));

const spread: fc.Arbitrary<Figure> = fc
  .tuple(written, number, fc.constantFrom(" ± ", "±", " +/- ", " +- "))
  .map(([f, half, sign]) => ({ ...f, text: `${f.text}${sign}${half.text}`, means: null }));

const slipping: fc.Arbitrary<Figure> = fc
  .tuple(fc.oneof(written, parts, spread), fc.array(slip, { minLength: 1, maxLength: 2 }))
  .map(([f, slips]) => ({ ...f, text: slipped(f.text, slips), means: null }));

const none: fc.Arbitrary<Figure> = fc
  .tuple(
    want,
    fc.oneof(
      oddText,
      oddNumber,
      fc.tuple(oddNumber, oddText).map((t) => t.join("")),
    ),
  )
  .map(([dimension, text]) => ({ text, want: dimension, bareUnit: "", into: "", means: null }));

/** A unit of another sort, or no unit at all, behind a good number. */
const otherUnit: fc.Arbitrary<Figure> = fc
  .tuple(
    want,
    number,
    want.chain((d) => fc.constantFrom("", ...unitNames(d))),
    oddText,
  )
  .map(([dimension, n, unit, rubbish]) => ({
    text: `${n.text} ${unit}${rubbish.length % 3 === 0 ? rubbish : ""}`,
    want: dimension,
    bareUnit: "",
    into: "",
    means: null,
  }));

export const figure: fc.Arbitrary<Figure> = fc.oneof(
  { weight: 4, arbitrary: written },
  { weight: 2, arbitrary: parts },
  { weight: 1, arbitrary: spread },
  { weight: 4, arbitrary: slipping },
  { weight: 2, arbitrary: otherUnit },
  { weight: 2, arbitrary: none },
);
