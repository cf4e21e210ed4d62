import { describe, expect, test } from "vitest";
import type { Item } from "../model/index.js";
import { cloudAndWall } from "./cloud-and-wall.js";
import { frontRetentionArrows } from "./front-retention-arrows.js";
import { gapBars } from "./gap-bars.js";
import { planStrip } from "./plan-strip.js";
import { residualBars } from "./residual-bars.js";

const b95 = (low: number, high: number) => ({ low, high, means: "95 %" });
const texts = (items: readonly Item[]) => items.filter((i) => i.kind === "text").map((i) => i.text);
const only = <K extends Item["kind"]>(items: readonly Item[], kind: K) =>
  items.filter((i): i is Extract<Item, { kind: K }> => i.kind === kind);

describe("cloud and wall", () => {
  const input = { what: "gap", unit: "mm", limit: 4, limitIs: "least" as const, from: 0, to: 10 };

  test("the dust spans its band on the line's scale", () => {
    const { items, label } = cloudAndWall({ ...input, value: 5, band: b95(3, 7) });
    // The line is 264 px for 10 mm: a band of 4 mm is 105.6 px, so one sd is 105.6 / 3.92 = 26.94.
    expect(only(items, "dust")[0]?.sdXMm).toBeCloseTo(26.94, 2);
    expect(only(items, "dust")[0]?.at.x).toBeCloseTo(8 + 132, 9);
    expect(label).toBe("gap: 5.0 mm ± 2.0; limit 4 mm.");
  });

  test("a number without a band is a triangle and says as entered", () => {
    const { items, label } = cloudAndWall({ ...input, value: 5 });
    expect(only(items, "dust")).toHaveLength(0);
    expect(only(items, "solid")).toHaveLength(1);
    expect(texts(items)).toContain("as entered");
    expect(label).toContain("as entered");
  });

  test("not measured is not zero", () => {
    const { items, label } = cloudAndWall(input);
    expect(only(items, "solid")).toHaveLength(0);
    expect(texts(items)).toContain("? not measured");
    expect(label).toContain("not measured");
  });

  test("the hatched ground lies behind the wall", () => {
    const side = (limitIs: "least" | "most") => {
      const first = only(cloudAndWall({ ...input, limitIs, value: 5 }).items, "hatch")[0]?.path[0];
      return first?.op === "move" ? first.to.x : undefined;
    };
    expect(side("least")).toBe(8);
    expect(side("most")).toBeCloseTo(8 + 264 * 0.4, 9);
  });
});

describe("letters under cloud and wall", () => {
  /** Stretch of each text on its row, at 8.2 px a letter. */
  const stretches = (items: readonly Item[]) =>
    only(items, "text").map((t) => {
      const long = t.text.length * 8.2;
      const left = t.anchor === "end" ? t.at.x - long : t.anchor === "middle" ? t.at.x - long / 2 : t.at.x;
      return { row: t.at.y, left, right: left + long };
    });

  test.each([
    [587, 560],
    [44, 35],
    [35.7, 40],
    [39.9, 40],
    [40, 40],
    [1, 100],
    [100, 1],
  ])("%d against at most %d: none runs into another, none out of the drawing, none into the line", (value, limit) => {
    const { items, view } = cloudAndWall({ what: "sum", unit: "", value, limit, limitIs: "most" });
    const line = only(items, "line")[0]?.from.y ?? 0;
    const found = stretches(items);
    for (const [i, a] of found.entries()) {
      expect(a.left).toBeGreaterThanOrEqual(0);
      expect(a.right).toBeLessThanOrEqual(view.widthMm);
      expect(a.row).toBeGreaterThanOrEqual(view.yMm);
      // Letters of 16 px are less than 13 px high.
      expect(a.row + 13).toBeLessThan(line - 5);
      for (const b of found.slice(i + 1)) expect(a.row !== b.row || a.right < b.left || b.right < a.left).toBe(true);
    }
  });

  test("between a least and a most stand two walls with hatched ground outside", () => {
    const { items } = cloudAndWall({
      what: "chainstay",
      unit: "mm",
      value: 5,
      band: b95(3, 7),
      limit: 4,
      most: 6,
      limitIs: "least",
    });
    expect(only(items, "line").filter((l) => l.role === "cut")).toHaveLength(2);
    expect(only(items, "hatch")).toHaveLength(2);
    expect(texts(items)).toEqual(["4 to 6"]);
  });
});

describe("gap bars", () => {
  const rows = [
    { name: "a", gapMm: 10, band: b95(9, 11), wantedMm: 6 },
    { name: "b", gapMm: 5, wantedMm: 3 },
    { name: "c", wantedMm: 3 },
  ];

  test.each(["wide", "narrow"] as const)("one scale for all, %s", (version) => {
    const { items } = gapBars(rows, version);
    const bars = only(items, "solid").filter((s) => s.points.length === 4);
    const long = bars.map((s) => (s.points[1]?.x ?? 0) - (s.points[0]?.x ?? 0));
    expect(bars).toHaveLength(2);
    expect((long[0] ?? 0) / (long[1] ?? 1)).toBeCloseTo(2, 9);
    expect(only(items, "dust")).toHaveLength(1);
    expect(texts(items)).toContain("? measure first");
  });

  test("close hatching to the wanted gap, open hatching two beyond", () => {
    const { items } = gapBars(rows, "wide");
    const width = (index: number, name: string) => {
      const path = only(items, "hatch").filter((h) => h.hatch === name)[index]?.path ?? [];
      const xs = path.flatMap((s) => (s.op === "move" || s.op === "line" ? [s.to.x] : []));
      return Math.max(...xs) - Math.min(...xs);
    };
    expect(width(0, "short") / width(0, "tight")).toBeCloseTo(3, 9);
    expect(width(1, "short") / width(1, "tight")).toBeCloseTo(1.5, 9);
  });
});

test("residuals name the largest, and a reading nothing can check gets no bar", () => {
  const drawing = residualBars(
    [{ name: "top tube", w: -5.47, again: true }, { name: "rake" }, { name: "chainstay", w: 1 }],
    3.29,
    "wide",
  );
  expect(drawing.label).toBe(
    "Largest disagreement: top tube, −5.5 standard deviations; the limit is 3.29. Each bar ends in its dust, ± 1.96, 95 %.",
  );
  expect(only(drawing.items, "solid").map((s) => s.ink)).toEqual(["mark-line", "ink"]);
  // Two bars end in dust one spread wide; the third is the box of the reading that nothing checks.
  const [box, ...ends] = [...only(drawing.items, "dust")].sort((a, b) => b.sdYMm - a.sdYMm).reverse();
  expect(box?.sdXMm).toBe(18);
  // By hand: the limit's lines are 2 × 3.29 spreads apart.
  const [left, right] = only(drawing.items, "line").map((l) => l.from.x);
  for (const end of ends) expect(end.sdXMm).toBeCloseTo(((right ?? 0) - (left ?? 0)) / (2 * 3.29), 9);
  expect(ends).toHaveLength(2);
});

test("the plan says when it is done and when it is due", () => {
  const drawing = planStrip({
    sessions: [0, 2],
    waits: [{ fromDay: 3, toDay: 10, text: "cure" }],
    deadlineDay: 35,
    finish: { day: 40, low: 36, high: 44 },
    version: "wide",
  });
  expect(drawing.label).toBe("2 evenings at the bench, 1 wait, done on day 40 ± 4, due on day 35.");
});

test("the words of a wait stand where no evening crosses them", () => {
  const drawing = planStrip({
    sessions: [0, 7, 9, 14],
    waits: [{ fromDay: 7, toDay: 13, text: "wait 6" }],
    finish: { day: 44 },
    version: "wide",
  });
  const words = only(drawing.items, "text").find((t) => t.text === "wait 6");
  const half = ("wait 6".length * 8.2) / 2;
  for (const solid of only(drawing.items, "solid").filter((s) => s.points.length === 4)) {
    const xs = solid.points.map((p) => p.x);
    expect(Math.max(...xs) < (words?.at.x ?? 0) - half || Math.min(...xs) > (words?.at.x ?? 0) + half).toBe(true);
  }
});

test("force arrows are to one scale, and an open end is open", () => {
  const open = frontRetentionArrows({ end: "open-down", pushOutN: 1800, gripN: 900 });
  const long = only(open.items, "arrow").map((a) => Math.abs(a.to.y - a.from.y));
  expect((long[0] ?? 0) / (long[1] ?? 1)).toBeCloseTo(2, 9);
  const arcs = (d: typeof open) => only(d.items, "path")[0]?.path.filter((s) => s.op === "arc").length;
  expect(arcs(open)).toBe(1);
  expect(arcs(frontRetentionArrows({ end: "closed", pushOutN: 1800 }))).toBe(0);
});

test("an arrow whose force has a band ends in dust over it, on the arrow's own scale", () => {
  const { items } = frontRetentionArrows({ end: "open-down", pushOutN: 1000, pushOutBand: b95(800, 1200), gripN: 600 });
  const [arrow] = only(items, "arrow");
  const [dust, ...none] = only(items, "dust");
  expect(none).toHaveLength(0);
  // By hand: the longest that is drawn, 1200 N, is 78 px, so 1000 N are 65 px and the band of 400 N is 26 px: one sd 26 / 3.92 = 6.633.
  expect((arrow?.from.y ?? 0) - (arrow?.to.y ?? 0)).toBeCloseTo(65, 9);
  expect(dust?.sdXMm).toBeCloseTo(6.633, 3);
  expect(dust?.at.y).toBeCloseTo(arrow?.to.y ?? 0, 9);
});
