import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromBaseUnit, toBaseUnit } from "./convert-quantity.js";
import { DIMENSIONS, type NumberDimension } from "./dimension.js";
import { inchFraction } from "./inch-fraction.js";
import { readQuantity } from "./read-quantity.js";
import { UNREADABLE_CODES } from "./reading.js";
import { UNITS } from "./unit-table.js";
import { writeQuantity } from "./write-quantity.js";

const seed = 19590701;
const someUnit = fc.constantFrom(...UNITS);
const someValue = fc.double({ min: -1e5, max: 1e5, noNaN: true });

function readBack(text: string, dimension: NumberDimension): number {
  const reading = readQuantity(text, dimension);
  if (reading.kind === "unreadable") throw new Error(`${text}: ${reading.reason}`);
  return reading.value;
}

describe("units", () => {
  test("there and back gives the same within two last bits", () => {
    fc.assert(
      fc.property(someUnit, someValue, ({ dimension, name }, value) => {
        const back = fromBaseUnit(toBaseUnit(value, dimension, name), dimension, name);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(Math.abs(value) * 5e-16 + 1e-300);
      }),
      { seed, numRuns: 1000 },
    );
  });

  test("twice the figure, twice the value", () => {
    fc.assert(
      fc.property(someUnit, fc.integer({ min: 1, max: 300 }), ({ dimension, name }, n) => {
        expect(readBack(`${2 * n} ${name}`, dimension)).toBe(2 * readBack(`${n} ${name}`, dimension));
      }),
      { seed, numRuns: 1000 },
    );
  });

  test("reading agrees with plain multiplication by the factor (second route)", () => {
    fc.assert(
      fc.property(someUnit, fc.integer({ min: 0, max: 600 }), (unit, n) => {
        const plain = (n * Number(unit.factor.num)) / Number(unit.factor.den);
        const read = readBack(`${n} ${unit.name}`, unit.dimension);
        expect(Math.abs(read - plain)).toBeLessThanOrEqual(Math.abs(plain) * 1e-15);
      }),
      { seed, numRuns: 1000 },
    );
  });
});

describe("what was written can be read", () => {
  const shown = fc.constantFrom<NumberDimension>(
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
    "ratio",
    "percent",
  );

  test("with enough decimals the value comes back; written again it is the same text", () => {
    fc.assert(
      fc.property(
        shown,
        someValue,
        fc.constantFrom<"metric" | "inch">("metric", "inch"),
        (dimension, value, system) => {
          const text = writeQuantity(value, dimension, system);
          const back = readBack(text, dimension);
          const scale = system === "inch" ? 26 : 1; // a figure of 0 decimals in the largest shown unit, in2: 0.001 x 645
          expect(Math.abs(back - value)).toBeLessThanOrEqual(0.5 * scale + 1e-9);
          const fine = readBack(writeQuantity(value, dimension, system, { decimals: 12 }), dimension);
          expect(Math.abs(fine - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
          if (dimension !== "mass") expect(writeQuantity(back, dimension, system)).toBe(text);
        },
      ),
      { seed, numRuns: 1000 },
    );
  });

  test("the same with a half-width", () => {
    fc.assert(
      fc.property(someValue, fc.double({ min: 0, max: 50, noNaN: true }), (value, plusMinus) => {
        const reading = readQuantity(writeQuantity(value, "length", "metric", { plusMinus, decimals: 6 }), "length");
        if (reading.kind === "unreadable") throw new Error(reading.reason);
        expect(reading.value).toBeCloseTo(value, 5);
        expect(reading.plusMinus).toBeCloseTo(plusMinus, 5);
      }),
      { seed, numRuns: 500 },
    );
  });

  test("fractions of an inch come back as the mark itself, at most half a mark away", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3000, max: 3000, noNaN: true }),
        fc.constantFrom(2, 4, 8, 16, 32, 64),
        (mm, parts) => {
          const mark = inchFraction(mm, parts);
          expect(Math.abs(mark.offMm)).toBeLessThanOrEqual(25.4 / parts / 2 + 1e-9);
          expect(readBack(`${mark.text} in`, "length")).toBe(mark.markMm);
        },
      ),
      { seed, numRuns: 1000 },
    );
  });

  test("decimal comma and decimal point read alike, unless the comma is refused as ambiguous", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99999 }), fc.integer({ min: 0, max: 9999 }), (whole, part) => {
        const comma = readQuantity(`${whole},${part} mm`, "length");
        const point = readQuantity(`${whole}.${part} mm`, "length");
        if (comma.kind === "unreadable") {
          expect(comma.code).toBe("ambiguous-thousands");
          expect(String(part)).toHaveLength(3);
          return;
        }
        expect(point).toMatchObject({ kind: "read", value: comma.value });
      }),
      { seed, numRuns: 1000 },
    );
  });
});

describe("nothing written makes it throw", () => {
  const pieces = [
    "1",
    "12",
    "052",
    ",",
    ".",
    " ",
    "/",
    "-",
    "−",
    "±",
    "'",
    '"',
    "°",
    "mm",
    "in",
    "ft",
    "lb",
    "M",
    "x",
    "×",
    "tpi",
    "½",
    "€",
    "%",
    "e9",
    "\u202f",
    "LH",
    "kg",
    "Nm",
    "h",
  ];
  const likely = fc.array(fc.constantFrom(...pieces), { maxLength: 12 }).map((list) => list.join(""));
  const nearly = fc
    .tuple(fc.constantFrom("1", "1 052", "25,4", "1 1/8", "−3", "1,052", "5. "), likely)
    .map((t) => t.join(""));
  const anything = fc.oneof(nearly, fc.string({ unit: "binary", maxLength: 80 }), fc.string({ maxLength: 80 }), likely);

  test("3000 texts, each as every sort: a finite value or a refusal with a known code and three ways", () => {
    let read = 0;
    fc.assert(
      fc.property(anything, (text) => {
        for (const dimension of DIMENSIONS) {
          const reading = readQuantity(text, dimension);
          if (reading.kind === "read") {
            read += 1;
            expect(Number.isFinite(reading.value)).toBe(true);
            expect(Math.abs(reading.value)).toBeLessThanOrEqual(1e9);
            continue;
          }
          expect(UNREADABLE_CODES).toContain(reading.code);
          expect(reading.ways).toHaveLength(3);
          expect(() => JSON.stringify(reading)).not.toThrow();
        }
      }),
      { seed, numRuns: 3000 },
    );
    // The made texts must reach the reading branch too, or this test proves little.
    expect(read).toBeGreaterThan(500);
  });

  test("any number: itself, or a refusal", () => {
    fc.assert(
      fc.property(fc.double(), (n) => {
        const reading = readQuantity(n, "length");
        if (reading.kind === "read") expect(reading.value).toBe(n === 0 ? 0 : n);
        else expect(Number.isFinite(n) && Math.abs(n) <= 1e9).toBe(false);
      }),
      { seed, numRuns: 1000 },
    );
  });
});
