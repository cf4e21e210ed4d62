import { describe, expect, test } from "vitest";
import type { Dimension, NumberDimension } from "./dimension.js";
import { readQuantity } from "./read-quantity.js";

function readValue(text: string | number, want: NumberDimension, options = {}): number {
  const reading = readQuantity(text, want, options);
  if (reading.kind === "unreadable") throw new Error(`${text}: ${reading.code} ${reading.reason}`);
  return reading.value;
}

describe("lengths as people write them", () => {
  // 1 in = 25.4 mm exactly (yard-and-pound-1959, from memory); all products by hand.
  test.each<[string, number]>([
    ['1 1/8"', 28.575],
    ["1-1/8 in", 28.575],
    ["1–1/8 in", 28.575], // en dash
    ["1⅛ in", 28.575],
    ["1 ⅛ ″", 28.575],
    ["⅛ in", 3.175],
    ["½ in", 12.7],
    ["¼”", 6.35],
    ["9/16 in", 14.2875],
    ["1⁄2 in", 12.7], // fraction slash
    ["19 in", 482.6],
    ["19 inches", 482.6],
    ["25,4 mm", 25.4],
    ["25.4mm", 25.4],
    ["25,4", 25.4],
    ["1,05", 1.05],
    ["0,125 mm", 0.125], // a leading zero cannot stand before thousands
    ["1052,125 mm", 1052.125], // four digits before the comma: no grouping
    [".5 mm", 0.5],
    ["49,1 cm", 491],
    ["1.25 m", 1250],
    ["1 m 25 cm", 1250],
    ["5'11\"", 1803.4], // 71 x 25.4
    ["5′11″", 1803.4],
    ["5 ft 11 in", 1803.4],
    ["5'11", 1803.4],
    ["5' 11 1/2\"", 1816.1], // 71.5 x 25.4
    ["1 052 mm", 1052],
    ["1\u2009052 mm", 1052], // thin space
    ["1\u202f052", 1052], // narrow no-break space
    ["1\u00a0052,5 mm", 1052.5],
    ["1 052 300 mm", 1052300],
    ["1,052.5 mm", 1052.5],
    ["1.052,5 mm", 1052.5],
    ["1.052 mm", 1.052], // a dot alone is always the decimal sign
    ["\u22123 mm", -3],
    ["- 3 mm", -3],
    ["+3 mm", 3],
    ["-5'11\"", -1803.4],
    ["1e3 mm", 1000],
    ["  442 mm\n", 442],
    ["Ø 27.2 mm", 27.2],
    ["⌀27,2", 27.2],
    ["４４２ mm", 442], // full-width digits
    ["0", 0],
    ["-0", 0],
  ])("%s", (text, mm) => {
    expect(readValue(text, "length")).toBe(mm);
  });

  test("the unit is kept as written", () => {
    expect(readQuantity("49,1 CM", "length")).toEqual({
      kind: "read",
      dimension: "length",
      value: 491,
      written: "49,1 CM",
      unit: "CM",
    });
    expect(readQuantity("31 lb 4 oz", "mass")).toMatchObject({ unit: "lb oz" });
    expect(readQuantity("442", "length")).toMatchObject({ unit: "" });
  });

  test("a minus zero comes out as plain zero", () => {
    expect(Object.is(readValue("-0", "length"), 0)).toBe(true);
    expect(Object.is(readValue(-0, "length"), 0)).toBe(true);
  });
});

describe("other figures", () => {
  test.each<[string, NumberDimension, number]>([
    ["71.5°", "angle", 71.5],
    ["71,5 deg", "angle", 71.5],
    ["71°30'", "angle", 71.5],
    ["71° 30′ 36″", "angle", 71.51], // 30/60 + 36/3600
    ["-4.5°", "angle", -4.5],
    ["12 Nm", "torque", 12],
    ["12 N·m", "torque", 12],
    ["12 nm", "torque", 12],
    ["9 lbf ft", "torque", 12.202361534982604], // 9 x 1.3558179483314004 = 12.2023615349826036
    ["9 ft-lb", "torque", 12.202361534982604],
    ["450 g", "mass", 0.45],
    ["2.1kg", "mass", 2.1],
    ["31 lb", "mass", 14.06136347], // 31 x 0.45359237
    ["31 lb 4 oz", "mass", 14.1747615625], // 31.25 x 0.45359237
    ["11 st 4 lb", "mass", 71.66759446], // 158 x 0.45359237
    ["1.5 h", "time", 1.5],
    ["1 h 30 min", "time", 1.5],
    ["90 min", "time", 1.5],
    ["2 days", "time", 48],
    ["18 km/h", "speed", 5],
    ["350 N/mm²", "stress", 350],
    ["4,5 bar", "stress", 0.45],
    ["€12,50", "money", 12.5],
    ["- £ 3", "money", -3],
    ["12.50 EUR", "money", 12.5],
    ["32 T", "count", 32],
    ["1 052", "count", 1052],
    ["1/2", "ratio", 0.5],
    ["8 %", "percent", 8],
  ])("%s as %s", (text, dimension, value) => {
    expect(readValue(text, dimension)).toBe(value);
  });

  test("a bare number has the unit of the caller; the answer can be asked for in a unit", () => {
    expect(readValue("17", "length", { bareUnit: "in" })).toBe(431.8);
    expect(readValue(17, "length", { bareUnit: "in" })).toBe(431.8);
    expect(readValue("49,1 cm", "length", { bareUnit: "in" })).toBe(491);
    expect(readValue("48 h", "time", { bareUnit: "day", into: "day" })).toBe(2);
    expect(readValue("3", "time", { bareUnit: "day", into: "day" })).toBe(3);
  });

  test("a unit that does not exist in the calling code is our fault and throws", () => {
    expect(() => readQuantity("1", "length", { bareUnit: "kg" })).toThrow(Error);
  });

  test("numbers pass through to the last bit", () => {
    for (const n of [0.1, 0.1 + 0.2, 442, -3.7, 1e-9, 1e9]) expect(readValue(n, "length")).toBe(n);
  });
});

describe("± behind a figure", () => {
  test.each<[string, number, number, string]>([
    ["442 ± 0.3", 442, 0.3, ""],
    ["442±0,3 mm", 442, 0.3, "mm"],
    ["44.2 cm ± 0.1", 442, 1, "cm"],
    ["442 mm ± 1/16 in", 442, 1.5875, "mm"],
    ["442 +/- 1", 442, 1, ""],
    ["5'11\" ± 1/4 in", 1803.4, 6.35, "' \""],
  ])("%s", (text, value, plusMinus, unit) => {
    const reading = readQuantity(text, "length");
    expect(reading).toMatchObject({ kind: "read", value, plusMinus });
    // Where only the half-width has a unit, both have it.
    if (unit !== "" && text.endsWith(unit)) expect(reading).toMatchObject({ unit });
  });

  test("no half-width, no key", () => {
    expect(Object.keys(readQuantity("442", "length"))).not.toContain("plusMinus");
  });

  test.each(["442 ± -1", "442 ± 1 ± 1", "5'11\" ± 1"])("%s is refused", (text) => {
    expect(readQuantity(text, "length")).toMatchObject({ kind: "unreadable", code: "bad-plus-minus" });
  });

  test("a half-width of another sort is refused", () => {
    expect(readQuantity("442 ± 5 %", "length")).toMatchObject({ code: "wrong-dimension" });
  });
});

describe("refusals", () => {
  test.each<[string | number, Dimension, string]>([
    ["", "length", "empty"],
    ["   ", "length", "empty"],
    ["NaN", "length", "not-a-number"],
    ["Infinity", "length", "not-a-number"],
    ["-", "length", "not-a-number"],
    ["mm", "length", "not-a-number"],
    ["5.", "length", "not-a-number"],
    [Number.NaN, "length", "not-a-number"],
    [Number.POSITIVE_INFINITY, "angle", "not-a-number"],
    ["12 apples", "count", "unknown-unit"],
    ["12 apples", "length", "unknown-unit"],
    ["12 mmm", "length", "unknown-unit"],
    ["12 Nm", "length", "wrong-dimension"],
    ["9 lb ft", "mass", "wrong-dimension"],
    ["71.5°", "length", "wrong-dimension"],
    ["5 %", "ratio", "wrong-dimension"],
    ["1.2.3", "length", "two-decimal-signs"],
    ["1,2,3", "length", "two-decimal-signs"],
    ["1.052.300", "length", "two-decimal-signs"],
    ["1,05.2", "length", "two-decimal-signs"],
    ["1,052 mm", "length", "ambiguous-thousands"],
    ["-28,575", "length", "ambiguous-thousands"],
    ["123,456 mm", "length", "ambiguous-thousands"],
    ["442 mm thick", "length", "trailing-text"],
    ["442 mm 3", "length", "parts-do-not-fit"],
    ["20-30 mm", "length", "trailing-text"],
    ["4 mm; DROP TABLE bikes", "length", "trailing-text"],
    ["<script>alert(1)</script>", "length", "not-a-number"],
    ["$" + "{1}", "length", "not-a-number"],
    ["1/0 in", "length", "bad-fraction"],
    ["1 9/8 in", "length", "bad-fraction"],
    ["1/8/2 in", "length", "trailing-text"],
    ["5 ft 13 in", "length", "parts-do-not-fit"],
    ["5.5 ft 3 in", "length", "parts-do-not-fit"],
    ["11 in 5 ft", "length", "parts-do-not-fit"],
    ["5 in 3 mm", "length", "parts-do-not-fit"],
    ["71°30", "angle", "parts-do-not-fit"],
    ["2e9 mm", "length", "too-large"],
    ["1 001 km", "length", "too-large"], // 1.001e9 mm
    [1.1e9, "length", "too-large"],
    [-1e300, "length", "too-large"],
    ["1e99 mm", "length", "too-large"],
    ["32.5", "count", "not-whole"],
    ["12\u0000 mm", "length", "hidden-character"],
    ["12\u200b mm", "length", "hidden-character"],
    ["\u202e12 mm", "length", "hidden-character"],
    ["\ud800 12", "length", "hidden-character"],
    [`${"1".repeat(65)}`, "length", "too-long"],
    ["١٢ mm", "length", "not-a-number"],
    ["£12 EUR", "money", "trailing-text"],
  ])("%s as %s: %s", (text, want, code) => {
    const reading = readQuantity(text, want);
    expect(reading).toMatchObject({ kind: "unreadable", code });
    if (reading.kind !== "unreadable") return;
    expect(reading.ways).toHaveLength(3);
    expect(reading.reason).toMatch(/\.$/);
    expect(reading.written.length).toBeLessThanOrEqual(64);
  });

  test("an ambiguous comma is answered with both figures, written so that they can be read", () => {
    const reading = readQuantity("1,052 mm", "length");
    if (reading.kind !== "unreadable") throw new Error("read");
    expect(reading.reason).toBe('"1,052" could be 1.052 or 1052.');
    expect(reading.ways).toEqual(["1.052 mm", "1052 mm", "1 052 mm"]);
    expect(reading.ways.map((w) => readValue(w, "length"))).toEqual([1.052, 1052, 1052]);
  });

  test("a wrong sort is named, a mistyped unit gets its neighbour", () => {
    expect(readQuantity("12 Nm", "length")).toMatchObject({ reason: '"12 Nm" is a torque, wanted is a length.' });
    expect(readQuantity("12 mmm", "length")).toMatchObject({ reason: expect.stringContaining("did you mean mm") });
    expect(readQuantity("12 apples", "length")).toMatchObject({ reason: '"apples" is no unit of a length.' });
  });

  test("money in another currency is not converted", () => {
    expect(readQuantity("£12", "money", { currency: "EUR" })).toMatchObject({ code: "other-currency" });
    expect(readValue("€12", "money", { currency: "EUR" })).toBe(12);
    expect(readValue("12", "money", { currency: "EUR" })).toBe(12);
  });

  test("what is shown back holds nothing that could upset a screen", () => {
    const reading = readQuantity("\u001b[31m12", "length");
    expect(reading.written).toBe("\uFFFD[31m12");
  });

  test("things that are neither text nor number are refused, not thrown", () => {
    for (const odd of [null, undefined, {}, [], true, 12n, Symbol("x")]) {
      expect(readQuantity(odd as unknown as string, "length")).toMatchObject({ kind: "unreadable", code: "not-text" });
    }
  });
});
