import { describe, expect, test } from "vitest";
import { hoursLedger } from "./hours-ledger.js";
import { gramsPerMoney, type MassLine, massLedger } from "./mass-ledger.js";
import { type MoneyLine, moneyLedger } from "./money-ledger.js";
import { swapsThatFit } from "./swaps-that-fit.js";

const part = (id: string, price: number | null, rest: Partial<MoneyLine> = {}): MoneyLine => ({
  id,
  what: id,
  kind: "part",
  qty: 1,
  price,
  spent: false,
  ...rest,
});
function value<T>(answer: { kind: "answered"; value: T } | { kind: "refused" }): T {
  if (answer.kind === "refused") throw new Error("refused");
  return answer.value;
}

describe("money", () => {
  const lines = [
    part("frame", 30, { kind: "donor", spent: true }),
    part("tyre", 22, { qty: 2 }),
    part("paint", 9, { kind: "consumable", qty: 4 }),
  ];
  test("sums by kind, spent and to spend; work beside them", () => {
    const ledger = value(moneyLedger({ lines, budget: 120, hours: 10, ratePerHour: 6, readyBicycle: 70 }));
    expect(ledger).toMatchObject({
      total: 110,
      spent: 30,
      toSpend: 80,
      work: 60,
      verdict: "within",
      overBy: 0,
      toSpare: 10,
    });
    expect(ledger.byKind).toMatchObject({ donor: 30, part: 44, consumable: 36 });
    // 80 still to spend against 70 for a ready one: the 30 already spent are no reason either way
    expect(ledger.dearerThanReadyBicycleBy).toBe(10);
  });
  test("a price not known is not nothing", () => {
    const unknown = [...lines, part("hub", null)];
    const answer = moneyLedger({ lines: unknown, budget: 120 });
    expect(value(answer)).toMatchObject({ total: 110, verdict: "measure first", priceNotKnown: ["hub"] });
    expect(answer.kind === "answered" && answer.cautions.map((c) => c.code)).toEqual(["price-not-known"]);
    expect(value(moneyLedger({ lines: unknown, budget: 100 }))).toMatchObject({ verdict: "over", overBy: 10 });
    expect(value(moneyLedger({ lines: [...lines, part("owned", 0)], budget: 120 })).verdict).toBe("within");
  });
  test("twenty times 0.3 on a budget of 6 is within", () => {
    expect(value(moneyLedger({ lines: [part("rivet nuts", 0.3, { qty: 20 })], budget: 6 })).verdict).toBe("within");
  });
  test("refusals, all at once", () => {
    const answer = moneyLedger({ lines: [part("a", -1), part("a", 1, { qty: -2 })], budget: -5 });
    expect(answer.kind === "refused" && answer.refusals.map((r) => r.code)).toEqual([
      "bad-amount",
      "duplicate-id",
      "bad-amount",
      "bad-amount",
    ]);
  });
});

describe("swaps", () => {
  const lines = [part("a", 50), part("b", 40), part("c", 30)];
  const swap = (id: string, out: string[], price: number, loss = 0) => ({
    id,
    what: id,
    out,
    in: [part(`${id} new`, price)],
    loss,
  });
  test("least loss first, then fewest swaps; two swaps of the same line do not go together", () => {
    // over by 20 at 100: a→45 saves 5, a→25 saves 25 but loses 30, b→30 saves 10, c→20 saves 10; b and c do it for 4
    const swaps = [
      swap("a45", ["a"], 45),
      swap("a25", ["a"], 25, 30),
      swap("b30", ["b"], 30, 2),
      swap("c20", ["c"], 20, 2),
    ];
    const ways = value(swapsThatFit({ lines, budget: 100, swaps }));
    expect(ways.best).toMatchObject({ swaps: ["b30", "c20"], total: 100, loss: 4, toSpare: 0 });
    expect(ways.cheapest).toMatchObject({ swaps: ["a25", "b30", "c20"], total: 75 });
  });
  test("a list that fits needs no swap; one that cannot fit says so", () => {
    expect(value(swapsThatFit({ lines, budget: 120, swaps: [swap("a45", ["a"], 45)] })).best?.swaps).toEqual([]);
    expect(value(swapsThatFit({ lines, budget: 10, swaps: [swap("a45", ["a"], 45)] }))).toMatchObject({
      possible: false,
      best: undefined,
      cheapest: { total: 115 },
    });
  });
  test("a price not known stops the search and is named", () => {
    const ways = value(
      swapsThatFit({ lines: [...lines, part("d", null)], budget: 100, swaps: [swap("a45", ["a"], 45)] }),
    );
    expect(ways).toMatchObject({ possible: false, best: undefined, priceNotKnown: ["d"] });
  });
  test("refusals", () => {
    const codes = (swaps: Parameters<typeof swapsThatFit>[0]["swaps"]) => {
      const answer = swapsThatFit({ lines, budget: 100, swaps });
      return answer.kind === "refused" ? answer.refusals.map((r) => r.code) : [];
    };
    expect(codes([swap("x", ["zz"], 1)])).toEqual(["unknown-line"]);
    expect(codes([{ id: "x", what: "x", out: ["a"], in: [part("b", 1)] }])).toEqual(["already-listed"]);
    expect(codes([swap("x", ["a"], 1), swap("x", ["b"], 1)])).toEqual(["duplicate-id"]);
    expect(codes([swap("x", ["a"], 1, -1)])).toEqual(["bad-amount"]);
    expect(codes(Array.from({ length: 21 }, (_, i) => swap(`x${i}`, ["a"], 1)))).toEqual(["too-many-swaps"]);
  });
});

describe("mass", () => {
  const mass = (id: string, massG: number | null, rest: Partial<MassLine> = {}): MassLine => ({
    id,
    what: id,
    group: "frame",
    qty: 1,
    massG,
    known: "weighed",
    ...rest,
  });
  test("weighed 2450 ± 5, two tyres 690 ± 20 %, an old fork off: band by root-sum-square", () => {
    const lines = [
      mass("frame", 2450),
      mass("tyre", 690, { qty: 2, group: "wheels", known: "class mean" }),
      mass("old fork", 950, { removed: true }),
    ];
    const answer = massLedger({ lines });
    // 2450 + 1380 - 950 = 2880; half-widths 5, 2 × 138 = 276, 5: sqrt(25 + 76176 + 25) = 276.09
    expect(value(answer)).toMatchObject({ massG: 2880, byGroupG: { frame: 1500, wheels: 1380 } });
    expect(value(answer).halfWidthG).toBeCloseTo(276.09, 2);
    expect(answer.kind === "answered" && answer.bands.massG?.low).toBeCloseTo(2603.91, 2);
  });
  test("a band across a hard limit is measure first and names what to weigh; across a wanted one it flags", () => {
    const lines = [mass("bags", 10_000, { known: "class mean" })];
    expect(value(massLedger({ lines, limitG: 11_000 }))).toMatchObject({
      verdict: "measure first",
      next: [{ what: "Weigh bags (bags)" }],
    });
    const wanted = massLedger({ lines, limitG: 11_000, limitIs: "wanted" });
    expect(value(wanted).verdict).toBe("within");
    expect(wanted.kind === "answered" && wanted.cautions.map((c) => c.code)).toEqual(["band-across-the-limit"]);
    expect(value(massLedger({ lines, limitG: 12_500 })).verdict).toBe("within");
    expect(value(massLedger({ lines, limitG: 7_500 })).verdict).toBe("over");
  });
  test("a mass not known: measure first, over stays over unless it comes off", () => {
    const lines = [mass("seat", 4000), mass("rack", null)];
    expect(value(massLedger({ lines, limitG: 9000 }))).toMatchObject({
      verdict: "measure first",
      massNotKnown: ["rack"],
    });
    expect(value(massLedger({ lines, limitG: 3000 })).verdict).toBe("over");
    expect(
      value(massLedger({ lines: [mass("seat", 4000), mass("rack", null, { removed: true })], limitG: 3000 })).verdict,
    ).toBe("measure first");
  });
  test("grams for money", () => {
    expect(gramsPerMoney({ massOutG: 640, massInG: 600, priceOut: 10, priceIn: 18 })).toBe(5);
    expect(gramsPerMoney({ massOutG: 640, massInG: 600, priceOut: 18, priceIn: 8 })).toBeUndefined();
  });
  test("refusal", () => {
    expect(massLedger({ lines: [mass("a", -1)] }).kind).toBe("refused");
  });
});

describe("hours", () => {
  const line = (id: string, handsOnH: number | null, done = false) => ({ id, what: id, handsOnH, done });
  test("done and to do; over, within, measure first", () => {
    const lines = [line("strip", 2.5, true), line("clean", 2)];
    expect(value(hoursLedger({ lines, hoursMax: 5 }))).toMatchObject({
      handsOnH: 4.5,
      doneH: 2.5,
      toDoH: 2,
      verdict: "within",
      toSpareH: 0.5,
    });
    expect(value(hoursLedger({ lines, hoursMax: 4 }))).toMatchObject({ verdict: "over", overByH: 0.5 });
    expect(value(hoursLedger({ lines: [...lines, line("post", null)], hoursMax: 5 }))).toMatchObject({
      verdict: "measure first",
      hoursNotKnown: ["post"],
    });
    expect(hoursLedger({ lines: [line("a", -1)] }).kind).toBe("refused");
  });
});
