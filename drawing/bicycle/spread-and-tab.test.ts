import { describe, expect, test } from "vitest";
import type { Item } from "../model/index.js";
import { rearSpread, SPREAD_WIDENING } from "./rear-spread.js";
import { holesSpanDeg, tabPlace } from "./tab-place.js";

const only = <K extends Item["kind"]>(items: readonly Item[], kind: K) =>
  items.filter((i): i is Extract<Item, { kind: K }> => i.kind === kind);

describe("rear ends from above", () => {
  test("the set is drawn ten times as wide as it is, and says so", () => {
    const { items, label } = rearSpread({ gapMm: 130, hubMm: 132 });
    const lines = only(items, "polyline");
    const ink = lines.find((l) => l.role === "after")?.points[2]?.y ?? 0;
    const pencil = lines.find((l) => l.role === "before")?.points[2]?.y ?? 0;
    // By hand: 84 px stand for 130 mm; 1 mm each side, ten times as wide, is 10 × 84 / 130 = 6.46 px.
    expect(ink - pencil).toBeCloseTo((SPREAD_WIDENING * 84) / 130, 9);
    expect(label).toContain("130 apart, the hub is 132 wide, so 1 mm is set on each side");
    expect(only(items, "text").map((t) => t.text)).toEqual(
      expect.arrayContaining(["132", "was 130", "1 each side", "The set is drawn ten times as wide."]),
    );
  });
});

describe("brake tab", () => {
  test("its holes span 33.76 degrees at the axle", () => {
    // Law of cosines by hand: (39.9² + 79.1² − 51²) / (2 × 39.9 × 79.1) = 5247.82 / 6312.18 = 0.83138; acos = 33.76°.
    expect(holesSpanDeg(39.9, 79.1, 51)).toBeCloseTo(33.76, 2);
    expect(holesSpanDeg(10, 100, 20)).toBeUndefined();
  });

  test("the holes are as far from the axle and from each other as given", () => {
    const { items } = tabPlace({ nearMm: 39.9, farMm: 79.1, apartMm: 51, chainstayDeg: -5, seatstayDeg: 57 });
    const [near, far] = only(items, "circle")
      .filter((c) => c.radiusMm === 5 && c.fill === "paper")
      .map((c) => c.centre);
    expect(Math.hypot(near?.x ?? 0, near?.y ?? 0)).toBeCloseTo(39.9, 9);
    expect(Math.hypot(far?.x ?? 0, far?.y ?? 0)).toBeCloseTo(79.1, 9);
    expect(Math.hypot((near?.x ?? 0) - (far?.x ?? 0), (near?.y ?? 0) - (far?.y ?? 0))).toBeCloseTo(51, 9);
  });
});

describe("bands at the rear", () => {
  test("the dust of the set is as wide as half the band of what lies over, ten times", () => {
    const { items, label } = rearSpread({ gapMm: 130, hubMm: 132, overBand: { low: 1.5, high: 2.5, means: "95 %" } });
    // By hand: half of 1 mm is 0.5 mm a side, 84 px stand for 130 mm, ten times; one sd is 0.5 × 84 / 130 × 10 / 3.92 = 0.824 px.
    for (const dust of only(items, "dust")) expect(dust.sdXMm).toBeCloseTo(0.824, 3);
    expect(only(items, "dust")).toHaveLength(2);
    expect(label).toContain("1 mm is set on each side, ± 0.25.");
    expect(rearSpread({ gapMm: 130, hubMm: 132 }).label).toContain("on each side, as entered.");
  });

  test("half of the angle's band lies at each stay, across it", () => {
    const between = { deg: 62, band: { low: 61, high: 63, means: "95 %" } };
    const { items } = tabPlace({ nearMm: 39.9, farMm: 79.1, apartMm: 51, chainstayDeg: -5, seatstayDeg: 57, between });
    const dust = only(items, "dust");
    expect(dust.map((d) => d.rotateDeg)).toEqual([85, 147]);
    // By hand: half of ± 1° is ± 0.5°, one sd 0.2551°; at 79.1 + 22 mm from the axle 0.4501 mm, ten times.
    for (const d of dust) expect(d.sdXMm).toBeCloseTo(4.501, 2);
  });
});
