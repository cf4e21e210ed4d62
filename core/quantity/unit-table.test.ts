import { describe, expect, test } from "vitest";
import { quantitySources } from "../data/sources-quantity.js";
import { fromBaseUnit, gramsFromKg, toBaseUnit } from "./convert-quantity.js";
import { DIMENSIONS, type NumberDimension, WAYS_TO_WRITE } from "./dimension.js";
import { readQuantity } from "./read-quantity.js";
import { findUnit, UNITS, unitAtStart } from "./unit-table.js";

describe("factors against the definitions", () => {
  // Exact by definition: international yard and pound agreement 1959 (from memory); minute, hour, degree: SI brochure.
  test.each<[NumberDimension, string, number]>([
    ["length", "in", 25.4],
    ["length", "ft", 304.8],
    ["length", "yd", 914.4],
    ["length", "mi", 1609344],
    ["mass", "lb", 0.45359237],
    ["mass", "oz", 0.028349523125], // 0.45359237 / 16 by hand
    ["mass", "st", 6.35029318], // 0.45359237 x 14 by hand
    ["force", "lbf", 4.4482216152605], // 0.45359237 x 9.80665 by hand
    ["force", "kgf", 9.80665], // standard gravity, 1901
    ["torque", "lbf ft", 1.3558179483314003], // 4.4482216152605 x 0.3048 = 1.3558179483314004 by hand
    ["area", "in2", 645.16], // 25.4 x 25.4
    ["speed", "mph", 0.44704], // 1609.344 / 3600
    ["time", "day", 24],
    ["angle", "arcmin", 1 / 60],
  ])("one of %s %s is %d in the base unit", (dimension, unit, factor) => {
    expect(toBaseUnit(1, dimension, unit)).toBe(factor);
  });

  // Printed to seven digits in NIST SP 811 (2008), appendix B.8; values from memory. Half the last digit.
  test.each<[NumberDimension, string, number, number]>([
    ["force", "lbf", 4.448222, 5e-7],
    ["torque", "lbf ft", 1.355818, 5e-7],
    ["torque", "lbf in", 0.1129848, 5e-8],
    ["stress", "psi", 0.006894757, 5e-10],
    ["mass", "oz", 0.02834952, 5e-9],
    ["torque", "kgf m", 9.80665, 5e-6],
    ["angle", "arcsec", 1 / 3600, 1e-12],
  ])("table value of %s %s", (dimension, unit, factor, half) => {
    expect(Math.abs(toBaseUnit(1, dimension, unit) - factor)).toBeLessThanOrEqual(half);
  });

  test("a half turn is pi radians (outside: Math.PI)", () => {
    expect(toBaseUnit(Math.PI, "angle", "rad")).toBeCloseTo(180, 12);
  });
});

test("every factor cites a source that is listed, and every listed source has its title", () => {
  const ids = new Set(quantitySources.map((s) => s.id));
  expect(ids.size).toBe(quantitySources.length);
  for (const unit of UNITS) expect(ids, unit.name).toContain(unit.source);
});

test("no spelling stands for two units of one dimension", () => {
  for (const dimension of DIMENSIONS) {
    const spellings = UNITS.filter((u) => u.dimension === dimension).flatMap((u) => [u.name, ...u.also]);
    expect(new Set(spellings).size, dimension).toBe(spellings.length);
  }
});

test("there and back in every unit", () => {
  for (const { dimension, name } of UNITS) {
    for (const value of [1, 0.3, 442, -17.25, 0]) {
      const back = fromBaseUnit(toBaseUnit(value, dimension, name), dimension, name);
      expect(Math.abs(back - value), `${value} ${name}`).toBeLessThanOrEqual(Math.abs(value) * 4e-16);
    }
  }
});

test("grams for the scales: 2.1 kg is 2100 g", () => {
  expect(gramsFromKg(2.1)).toBe(2100);
});

test("capitals do not matter where only one unit can be meant", () => {
  expect(findUnit("KG", "mass")?.name).toBe("kg");
  expect(findUnit("nm", "torque")?.name).toBe("Nm");
  expect(findUnit("apples", "mass")).toBeUndefined();
});

test("the longest spelling wins, and a unit does not end inside a word", () => {
  expect(unitAtStart("lbf ft", "force")?.unit.name).toBe("lbf ft");
  expect(unitAtStart("min", "length")?.unit.name).toBe("min");
  expect(unitAtStart("mmm", "length")).toBeUndefined();
  expect(unitAtStart("'", "length")?.unit.name).toBe("ft");
  expect(unitAtStart("'", "angle")?.unit.name).toBe("arcmin");
});

test("unknown units in calling code and values that are not finite throw", () => {
  expect(() => toBaseUnit(1, "length", "parsec")).toThrow(RangeError);
  expect(() => fromBaseUnit(Number.NaN, "length", "mm")).toThrow(RangeError);
});

test("each of the three ways shown with a refusal can be read", () => {
  for (const dimension of DIMENSIONS) {
    for (const way of WAYS_TO_WRITE[dimension]) {
      expect(readQuantity(way, dimension).kind, `${dimension}: ${way}`).toBe("read");
    }
  }
});
