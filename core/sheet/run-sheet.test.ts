import { describe, expect, test } from "vitest";
import { answered, refused } from "../quantity/index.js";
import { firstNotFinite, runSheet } from "./run-sheet.js";
import type { AnySheet, Sheet } from "./sheet.js";
import { startInput } from "./start-input.js";
import { sampleSheet } from "./testing/sample-sheet.js";

const good = startInput(sampleSheet);

test("good input runs: 340 + 45 = 385", () => {
  expect(runSheet(sampleSheet, good)).toEqual(answered({ sum_mm: 385 }, { sources: ["sample"] }));
});

test("bad input never reaches the calculation", () => {
  let ran = false;
  const watched: Sheet<unknown, number> = {
    ...sampleSheet,
    run: () => {
      ran = true;
      return answered(1);
    },
  };
  expect(runSheet(watched, { ...good, teeth: 1 }).kind).toBe("refused");
  expect(ran).toBe(false);
});

test("refusals of the calculation pass through", () => {
  const no = refused([{ code: "no", at: "", given: null, allowed: "nothing", message: "No." }]);
  expect(runSheet({ ...sampleSheet, run: () => no }, good)).toBe(no);
});

describe("a number that is not finite is our fault", () => {
  test.each<[string, unknown, string]>([
    ["deep in the value", { list: [{ x: 1 }, { x: Number.NaN }] }, "value.list[1].x (NaN)"],
    ["the value itself", Number.POSITIVE_INFINITY, "value (Infinity)"],
  ])("%s", (_name, value, place) => {
    expect(() => runSheet({ ...sampleSheet, run: () => answered(value) }, good)).toThrow(place);
  });

  test("in a band too: JSON would turn it into null", () => {
    const bands = { sum_mm: { low: Number.NEGATIVE_INFINITY, high: 1, means: "95 %" } };
    expect(() => runSheet({ ...sampleSheet, run: () => answered(1, { bands }) }, good)).toThrow("bands.sum_mm.low");
  });

  test("null, text and booleans are fine; the same object twice is no loop, a loop is named", () => {
    const shared = { x: 1 };
    expect(firstNotFinite({ a: shared, b: shared, c: null, d: "NaN", e: true }, "value")).toBeUndefined();
    const loop: { self?: unknown } = {};
    loop.self = loop;
    expect(firstNotFinite(loop, "value")).toBe("value.self (a loop)");
  });
});

test("sheets of different kinds stand in one list and run from there", () => {
  const all: readonly AnySheet[] = [sampleSheet, { ...sampleSheet, id: "other" }];
  for (const sheet of all) expect(runSheet(sheet, good).kind).toBe("answered");
});
