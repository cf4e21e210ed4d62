import { expect, test } from "vitest";
import {
  exactBelow,
  exactFromDecimal,
  exactOver,
  exactPlus,
  exactRatio,
  exactTimes,
  exactToNumber,
} from "./exact-number.js";

test("nine eighths of an inch is 28.575 mm to the last bit (9 x 25.4 / 8 by hand)", () => {
  expect(exactToNumber(exactTimes(exactRatio(9n, 8n), exactFromDecimal("25.4")))).toBe(28.575);
});

test("a tenth and two tenths make three tenths, as no sum of doubles does", () => {
  expect(0.1 + 0.2).not.toBe(0.3);
  expect(exactToNumber(exactPlus(exactFromDecimal("0.1"), exactFromDecimal("0.2")))).toBe(0.3);
});

test("decimal text of all shapes comes back as the same double", () => {
  for (const n of [0, 1, -1, 0.1, -2.5, 1e-7, 5e-324, 1.7976931348623157e308, 123456.789, 1 / 3]) {
    expect(exactToNumber(exactFromDecimal(String(n)))).toBe(n);
  }
});

test("a minus in the lower number moves to the upper one; zero below is our fault and throws", () => {
  expect(exactRatio(1n, -2n)).toEqual({ num: -1n, den: 2n });
  expect(() => exactOver(exactFromDecimal("1"), exactFromDecimal("0"))).toThrow(RangeError);
  expect(() => exactFromDecimal("1,5")).toThrow(RangeError);
  expect(() => exactFromDecimal("")).toThrow(RangeError);
});

test("order: 1/3 is below 0.34 and not below itself", () => {
  expect(exactBelow(exactRatio(1n, 3n), exactFromDecimal("0.34"))).toBe(true);
  expect(exactBelow(exactRatio(1n, 3n), exactRatio(2n, 6n))).toBe(false);
});
