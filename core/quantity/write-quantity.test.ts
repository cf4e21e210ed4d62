import { describe, expect, test } from "vitest";
import { inchFraction } from "./inch-fraction.js";
import { fixed, writeQuantity } from "./write-quantity.js";

describe("metric", () => {
  test("usual decimals, a true minus sign, no minus before a zero", () => {
    expect(writeQuantity(442, "length")).toBe("442.0 mm");
    expect(writeQuantity(-3.25, "length")).toBe("\u22123.3 mm");
    expect(writeQuantity(-0.01, "length")).toBe("0.0 mm");
    expect(writeQuantity(71.5, "angle")).toBe("71.5°");
    expect(writeQuantity(0.45, "mass")).toBe("450 g");
    expect(writeQuantity(0.9996, "mass")).toBe("1.00 kg");
    expect(writeQuantity(14.06136347, "mass")).toBe("14.06 kg");
    expect(writeQuantity(12, "torque")).toBe("12.0 Nm");
    expect(writeQuantity(12.5, "money")).toBe("12.50");
    expect(writeQuantity(12.5, "money", "metric", { unit: "EUR" })).toBe("12.50 EUR");
    expect(writeQuantity(32, "count")).toBe("32");
    expect(writeQuantity(1052, "length", "metric", { decimals: 0 })).toBe("1052 mm");
    expect(writeQuantity(8, "percent")).toBe("8.0 %");
  });

  test("half-width with the same decimals", () => {
    expect(writeQuantity(442, "length", "metric", { plusMinus: 0.3 })).toBe("442.0 ± 0.3 mm");
    expect(writeQuantity(71.5, "angle", "metric", { plusMinus: 0.3 })).toBe("71.5 ± 0.3°");
  });
});

describe("inch", () => {
  test("decimals or fractions of the rule", () => {
    expect(writeQuantity(28.575, "length", "inch")).toBe("1.125 in");
    expect(writeQuantity(28.575, "length", "inch", { inchFractions: 16 })).toBe("1 1/8 in");
    expect(writeQuantity(0, "length", "inch", { inchFractions: 16 })).toBe("0 in");
    expect(writeQuantity(-12.7, "length", "inch", { inchFractions: 16 })).toBe("\u22121/2 in");
    expect(writeQuantity(442, "length", "inch", { inchFractions: 16, plusMinus: 1.5875 })).toBe("17 3/8 ± 1/16 in");
  });

  test("other sorts", () => {
    expect(writeQuantity(14.06136347, "mass", "inch")).toBe("31.00 lb");
    expect(writeQuantity(12.202361534982604, "torque", "inch")).toBe("9.0 lbf ft");
    expect(writeQuantity(71.5, "angle", "inch")).toBe("71.5°");
  });
});

test("values that are not finite, and units that do not exist, are our fault and throw", () => {
  expect(() => writeQuantity(Number.NaN, "length")).toThrow(RangeError);
  expect(() => writeQuantity(1, "length", "metric", { plusMinus: Number.POSITIVE_INFINITY })).toThrow(RangeError);
  expect(() => writeQuantity(1, "length", "metric", { unit: "kg" })).toThrow(RangeError);
  expect(fixed(-0.04, 1)).toBe("0.0");
});

describe("marks of an inch rule (1 in = 25.4 mm, by hand)", () => {
  test("442 mm lies nearest to 17 3/8 in = 441.325 mm, 0.675 past it", () => {
    // 442 / 25.4 = 17.4016 in = 278.43 sixteenths -> 278 = 17 6/16
    const mark = inchFraction(442);
    expect(mark.text).toBe("17 3/8");
    expect(mark.markMm).toBe(441.325);
    expect(mark.offMm).toBeCloseTo(0.675, 10);
  });

  test("rounding up over a whole inch, and exact halves away from zero", () => {
    expect(inchFraction(25.39).text).toBe("1");
    expect(inchFraction(0.79375).text).toBe("1/16"); // exactly 1/32 in
    expect(inchFraction(-0.79375).text).toBe("\u22121/16");
    expect(inchFraction(0.79).text).toBe("0");
    expect(inchFraction(25.4 / 64, 64).text).toBe("1/64");
  });

  test("rules that do not exist are refused by throwing", () => {
    expect(() => inchFraction(1, 10)).toThrow(RangeError);
    expect(() => inchFraction(Number.NaN)).toThrow(RangeError);
  });
});
