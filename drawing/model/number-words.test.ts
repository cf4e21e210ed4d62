import { expect, test } from "vitest";
import { bandWords, numberWords } from "./number-words.js";

test("a minus sign is a minus sign, and nothing is minus nothing", () => {
  expect(numberWords(-0.8)).toBe("−0.8");
  expect(numberWords(-0.04)).toBe("0.0");
  expect(numberWords(1790, 0)).toBe("1\u00a0790");
  expect(numberWords(1234567.25, 2)).toBe("1\u00a0234\u00a0567.25");
  expect(numberWords(Number.NaN)).toBe("?");
});

test("a band is even, or from to, or missing", () => {
  expect(bandWords(6.5, { low: 5.9, high: 7.1, means: "95 %" })).toBe("± 0.6");
  expect(bandWords(1, { low: -0.5, high: 4, means: "95 %" })).toBe("−0.5 to 4.0");
  expect(bandWords(7, { low: 6, high: 8, means: "worst corners" }, 0)).toBe("± 1 (worst corners)");
  expect(bandWords(7, undefined)).toBe("as entered");
});
