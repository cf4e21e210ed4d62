/** A wider span never makes a joint surer; unknown stays unknown through every sum. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judgeSpan } from "./judge-span.js";
import { type Check, settle } from "./settle.js";
import { minus, plus, span, times, UNKNOWN, widened } from "./span.js";

const SEED = 20240611;
const value = fc.double({ min: -50, max: 50, noNaN: true });
const half = fc.double({ min: 0, max: 10, noNaN: true });

describe("judgeSpan", () => {
  it("widening turns neither straddles nor outside nor unknown into inside", () => {
    fc.assert(
      fc.property(value, half, half, value, half, (mid, h, more, low, width) => {
        const limits = { low, high: low + width };
        const before = judgeSpan(span(mid, h), limits);
        const after = judgeSpan(widened(span(mid, h), more), limits);
        if (before !== "inside") expect(after).not.toBe("inside");
        if (before === "straddles") expect(after).toBe("straddles");
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });
  it("10.1 - 10 keeps the limit 0.1: the last binary digit decides nothing", () => {
    expect(judgeSpan(minus(span(10.1), span(10)), { low: 0.1 })).toBe("inside");
  });
});

describe("settle", () => {
  const check = (mid: number | undefined, h: number, kind: "hard" | "wanted"): Check => ({
    name: "n",
    unit: "mm",
    value: span(mid, h),
    limit: { low: 0, high: 1, kind, words: "0 to 1" },
    measure: { what: "measure it", at: "donor.interfaces.head_bore", tool: "calliper" },
  });
  it("widening any span of a joint never turns an open answer into fits", () => {
    const one = fc.record({
      mid: value,
      h: half,
      more: half,
      kind: fc.constantFrom("hard" as const, "wanted" as const),
    });
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 5 }), (rows) => {
        const before = settle(rows.map((r) => check(r.mid / 50, r.h, r.kind))).outcome;
        const after = settle(rows.map((r) => check(r.mid / 50, r.h + r.more, r.kind))).outcome;
        if (before === "open") expect(after).toBe("open");
        if (before === "fails") expect(after).not.toBe("fits");
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });
  it("unknown: hard is open with its measurement, wanted flags", () => {
    const hard = settle([check(undefined, 0, "hard")]);
    expect(hard.outcome).toBe("open");
    expect(hard.next).toMatchObject({
      kind: "measure",
      at: "donor.interfaces.head_bore",
      tool: "calliper",
      accuracy: "± 0.05 mm",
    });
    const wanted = settle([check(undefined, 0, "wanted")]);
    expect(wanted.outcome).toBe("fits");
    expect(wanted.cautions).toHaveLength(1);
  });
  it("a failed hard limit wins over an open one: nothing is measured in vain", () => {
    const both = settle([check(undefined, 0, "hard"), check(5, 0.1, "hard")]);
    expect(both.outcome).toBe("fails");
    expect(both.next).toBeUndefined();
  });
});

describe("span", () => {
  it("unknown stays unknown, half-widths add", () => {
    expect(plus(UNKNOWN, span(1))).toEqual(UNKNOWN);
    expect(times(span(undefined), 2)).toEqual(UNKNOWN);
    expect(minus(span(3, 0.25), span(1, 0.5))).toEqual({ kind: "known", mid: 2, half: 0.75 });
  });
});
