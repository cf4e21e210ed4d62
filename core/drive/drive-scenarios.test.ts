/**
 * Chain, chainline, clearances and cables of the three demo scenarios. Facts and `expect` figures are the invented
 * scenarios' own, derived by M10, M24 to M28, M30 and M37; tolerance = their last printed digit.
 */
import { describe, expect, it } from "vitest";
import type { Answer, Answered } from "../quantity/index.js";
import { runSheet, sheetFaults } from "../sheet/index.js";
import {
  armGap,
  armGapSheet,
  cableLength,
  chainlineSheet,
  chainOnFixedCentresSheet,
  derailleurCapacity,
  derailleurChainLinks,
  development,
  dishSheet,
  fixedCentres,
  hoseLengthSheet,
  judgeChainline,
  predictedFrontChainline,
  rearChainline,
  setPerSide,
  wallCadence,
} from "./index.js";

function ok<T>(answer: Answer<T>): Answered<T> {
  if (answer.kind === "refused") throw new Error(JSON.stringify(answer.refusals));
  return answer;
}

const near = (got: number | null | undefined, want: number, tolerance: number) => {
  expect(Math.abs((got ?? Number.NaN) - want), `${got} against ${want}`).toBeLessThanOrEqual(tolerance);
};

describe("sheets are well made", () => {
  for (const sheet of [chainOnFixedCentresSheet, chainlineSheet, armGapSheet, hoseLengthSheet, dishSheet]) {
    it(sheet.id, () => expect(sheetFaults(sheet)).toEqual([]));
  }
});

describe("Quayside, chain on fixed centres", () => {
  const PAIRS = [
    { ring: 42, cog: 22 },
    { ring: 38, cog: 18 },
    { ring: 43, cog: 21 },
    { ring: 41, cog: 19 },
  ];
  it("slack at a chainstay of 442.0", () => {
    // 42/22 with 102 links by hand: m = 102 - 32 = 70, k = 20 / 2 pi = 3.1831; C = 12.7 (70 + sqrt(4900 - 8 x 10.132)) / 4
    // = 12.7 x 139.4186 / 4 = 442.654; slack 0.65.
    const { value } = ok(fixedCentres({ chainstayMm: 442, chainstayHalfWidthMm: 0.3, pairs: PAIRS }));
    expect(value.pairs.map((pair) => pair.links)).toEqual([102, 98, 102, 100]);
    [0.65, 0.65, 0.26, 0.26].forEach((slack, i) => {
      near(value.pairs[i]?.slack_mm, slack, 0.005);
    });
  });

  it("first answer: the survey cannot decide, measure first", () => {
    const answer = ok(
      fixedCentres({ chainstayMm: 442.3, chainstayHalfWidthMm: 1.959964 * 1.2, pairs: PAIRS.slice(0, 3) }),
    );
    expect(answer.value.verdict).toBe("measure first");
    expect(answer.value.accuracy_needed_mm).toBe(0.3);
    expect(answer.value.next).toMatchObject({ kind: "measure", accuracy: "± 0.3 mm" });
    const windows = [
      [441.85, 442.65],
      [441.85, 442.65],
      [441.46, 442.26],
    ];
    windows.forEach(([from, to], i) => {
      const pair = answer.value.pairs[i];
      expect(pair?.verdict).toBe("measure first");
      near(pair?.fits_if_chainstay_from_mm, from ?? Number.NaN, 0.006);
      near(pair?.fits_if_chainstay_to_mm, to ?? Number.NaN, 0.006);
    });
    // z = 0.35 / 1.2 and -0.45 / 1.2: 0.6147 - 0.3538 = 0.26 (normal table). Both share one range, so "either" is 0.26 too.
    const either = ok(
      fixedCentres({ chainstayMm: 442.3, chainstayHalfWidthMm: 1.959964 * 1.2, pairs: PAIRS.slice(0, 2) }),
    ).value;
    near(either.chance_that_any_fits, 0.26, 0.005);
    near(either.pairs[0]?.chance, 0.26, 0.005);
  });

  it("answer when measured to 0.3: fits, 0.95 would be 0.15 over", () => {
    const answer = ok(fixedCentres({ chainstayMm: 442, chainstayHalfWidthMm: 0.3, pairs: PAIRS.slice(0, 2) }));
    expect(answer.value.verdict).toBe("fits");
    expect(answer.value.next).toBeNull();
    for (const i of [0, 1]) {
      expect(answer.value.pairs[i]?.verdict).toBe("fits");
      expect(answer.value.pairs[i]?.note).toContain("0.95 would be 0.15 over");
      near(answer.bands[`pairs.${i}.slack_mm`]?.low, 0.35, 0.006);
      near(answer.bands[`pairs.${i}.slack_mm`]?.high, 0.95, 0.006);
    }
    // Worn by 0.5 %: 102 x 12.7 x 0.005 = 6.5 of chain, half of it, 3.2, in centre distance.
    near((answer.value.pairs[0]?.slack_when_worn_mm ?? 0) - (answer.value.pairs[0]?.slack_mm ?? 0), 3.2, 0.06);
    expect(answer.cautions.map((c) => c.code)).toContain("chain-wear-opens-the-slack");
  });

  it("the sheet joins every ring with every sprocket and asks the hub", () => {
    const answer = ok(
      runSheet(chainOnFixedCentresSheet, {
        rings: [42, 38],
        sprockets: [22, 18],
        chainstay_mm: 442,
        chainstay_accuracy_mm: 0.3,
        least_ring_over_sprocket: 1.8,
        least_sprocket: 16,
      }),
    );
    const found = answer.value.pairs.map((pair) => [pair.ring, pair.cog, pair.verdict, pair.allowed_by_hub]);
    // 38/22 = 1.73 is under the hub's 1.80; 42/18 is 0.16 too tight with 100 links and 12 too slack with 102.
    expect(found).toEqual([
      [42, 22, "fits", true],
      [42, 18, "will not fit", true],
      [38, 22, "will not fit", false],
      [38, 18, "fits", true],
    ]);
  });
});

describe("Quayside, gearing and setting", () => {
  it("development with the hub's lowest and highest gear, 584-47", () => {
    const radiusMm = 584 / 2 + 47;
    // 2 pi 0.339 x 42 / 22 = 4.066; x 0.54 = 2.20, x 1.62 = 6.59.
    near(development({ radiusMm, ring: 42, cog: 22, hubRatio: 0.54 }), 2.2, 0.005);
    near(development({ radiusMm, ring: 42, cog: 22, hubRatio: 1.62 }), 6.59, 0.005);
    near(development({ radiusMm, ring: 38, cog: 18, hubRatio: 0.54 }), 2.43, 0.005);
    near(development({ radiusMm, ring: 38, cog: 18, hubRatio: 1.62 }), 7.28, 0.005);
  });
  it("cadence on the 8 % climb: 51 and 46 with air, ours without it up to 1 higher", () => {
    const climb = { powerW: 120 * (1 + 0.12 * 4), efficiency: 0.96, massKg: 105, grade: 0.08, crr: 0.008 };
    near(wallCadence({ ...climb, developmentM: 2.196 }), 51.4, 1);
    near(wallCadence({ ...climb, developmentM: 2.428 }), 46.5, 1);
  });
  it("set 130.4 to 135: 2.3 per side, 0.34 degrees at the bridge's 383", () => {
    const set = setPerSide({ oldMm: 130.4, newMm: 135, rootToDropoutMm: 383 });
    near(set.perSideMm, 2.3, 1e-9);
    near(set.dropoutTurnDeg, 0.34, 0.005);
  });
  it("published check of M10: 3.5 at 340 turns 0.59 degrees, 2.5 turns 0.42, 2 turns 0.34", () => {
    [
      [3.5, 0.59],
      [2.5, 0.42],
      [2, 0.34],
    ].forEach(([side = 0, turn = 0]) => {
      near(setPerSide({ oldMm: 0, newMm: 2 * side, rootToDropoutMm: 340 }).dropoutTurnDeg, turn, 0.005);
    });
  });
});

describe("chainlines", () => {
  it("Quayside: hub 46.5; spindle +8 moves 43.5 to 47.5, +3 to 45.0", () => {
    near(rearChainline({ olnMm: 135, locknutToSmallestMm: 21, cogs: 1, cogPitchMm: 0 }), 46.5, 1e-9);
    const q28 = predictedFrontChainline({ statedMm: 43.5, statedSpindleMm: 110, spindleMm: 118 });
    const q29 = predictedFrontChainline({ statedMm: 43.5, statedSpindleMm: 110, spindleMm: 113 });
    near(q28, 47.5, 1e-9);
    near(q29, 45, 1e-9);
    expect(judgeChainline(q28 - 46.5, true)).toBe("good");
    expect(judgeChainline(q29 - 46.5, true)).toBe("good");
  });

  const sheet = (crank: number, olnMm: number, toSmallest: number, cogs: number, pitch: number) =>
    ok(
      runSheet(chainlineSheet, {
        crank_chainline_mm: crank,
        ring_count: 1,
        ring_pitch_mm: 0,
        OLN_mm: olnMm,
        locknut_to_smallest_cog_mm: toSmallest,
        cog_count: cogs,
        cog_pitch_mm: pitch,
        chainstay_mm: 430,
      }),
    ).value;

  it("the all-road bike: rear 43.4, 43.7, 42.7, 44.25", () => {
    near(sheet(45.5, 130, 3.8, 10, 3.95).rear_chainline_mm, 43.4, 0.05);
    near(sheet(45.5, 130, 3.9, 9, 4.35).rear_chainline_mm, 43.7, 0.05);
    near(sheet(45.5, 130, 3.6, 11, 3.74).rear_chainline_mm, 42.7, 0.05);
    near(sheet(45.5, 126, 5, 6, 5.5).rear_chainline_mm, 44.25, 0.005);
  });
  it("the all-road bike on m22: smallest 61.2, largest 25.65, errors and judgement", () => {
    const m28 = sheet(45.5, 130, 3.8, 10, 3.95);
    // A 10-speed page gives the same: 65 - 3 - 0.8 = 61.2 outermost, 61.2 - 9 x 3.95 = 25.65 innermost.
    near(m28.smallest_cog_mm, 61.2, 1e-9);
    near(m28.largest_cog_mm, 25.65, 1e-9);
    near(m28.chainline_error_front_minus_rear_mm, 2.1, 0.05);
    expect(m28.judgement).toBe("acceptable with a derailleur");
    const double = sheet((45 + 37.5) / 2, 130, 3.8, 10, 3.95);
    near(double.chainline_error_front_minus_rear_mm, -2.2, 0.05);
    expect(double.judgement).toBe("acceptable with a derailleur");
    const onM48 = predictedFrontChainline({ statedMm: 42, statedSpindleMm: 110, spindleMm: 116 });
    near(onM48, 45, 1e-9);
    const m47 = sheet(42, 130, 3.8, 10, 3.95);
    near(m47.chainline_error_front_minus_rear_mm, -1.4, 0.05);
    expect(m47.judgement).toBe("good");
    near(sheet(onM48, 130, 3.8, 10, 3.95).chainline_error_front_minus_rear_mm, 1.6, 0.05);
  });
  it("Canalside: rear 46.8, error 0.7, smallest 63.6, largest 30.0", () => {
    const c = sheet(47.5, 135, 3.9, 8, 4.8);
    near(c.rear_chainline_mm, 46.8, 0.01);
    near(c.chainline_error_front_minus_rear_mm, 0.7, 0.01);
    near(c.smallest_cog_mm, 63.6, 0.01);
    near(c.largest_cog_mm, 30, 0.01);
    expect(c.judgement).toBe("good");
  });
});

describe("chain of the all-road bike", () => {
  it("42/34: 108 links, 46/34: 110", () => {
    // 2 x 430 / 12.7 + 38 + (8 / 2 pi)^2 x 12.7 / 430 = 105.76, + 2, up to 108.
    expect(derailleurChainLinks({ chainstayMm: 430, largestRing: 42, largestCog: 34 })).toBe(108);
    expect(derailleurChainLinks({ chainstayMm: 430, largestRing: 46, largestCog: 34 })).toBe(110);
  });
  it("capacity: doubles exceed the cage of 35 by 4 and bar the two smallest cogs; one ring fits", () => {
    const cogs = [11, 13, 15, 17, 19, 21, 23, 26, 30, 34];
    for (const rings of [
      [46, 30],
      [42, 26],
    ]) {
      const answer = ok(derailleurCapacity({ rings, cogs, cageCapacityTeeth: 35, largestCogTeeth: 34 }));
      expect(answer.value).toMatchObject({ needed_teeth: 39, over_teeth: 4, verdict: "fits with work" });
      expect(answer.value.bars).toEqual([11, 13].map((cog) => ({ ring: rings[1], cog })));
      expect(answer.cautions.map((c) => c.code)).toEqual(["capacity-exceeded"]);
    }
    const one = ok(derailleurCapacity({ rings: [42], cogs, cageCapacityTeeth: 35, largestCogTeeth: 34 })).value;
    expect(one).toMatchObject({ needed_teeth: 23, over_teeth: 0, verdict: "fits", bars: [] });
  });
});

const STAYS = {
  quayside: {
    stay_radius_mm: [50, 60, 80, 97, 112, 127, 142, 160, 170, 185],
    stay_outer_mm: [34.6, 36.5, 40.0, 43.5, 46.4, 49.1, 51.0, 53.0, 54.0, 55.5],
    chainstay_mm: 442,
    chainstay_bridge_from_axle_mm: 383,
    set_per_side_mm: 2.3,
  },
  allRoad: {
    stay_radius_mm: [45, 58, 72, 90, 105, 117, 130, 150, 172.5, 190],
    stay_outer_mm: [30.8, 33.5, 37.0, 39.5, 42.0, 43.8, 45.5, 48.0, 52.0, 54.5],
    chainstay_mm: 430,
    chainstay_bridge_from_axle_mm: 372,
    set_per_side_mm: 2,
  },
  canalside: {
    stay_radius_mm: [50, 60, 69, 77, 95, 110, 126, 150, 170, 190],
    stay_outer_mm: [35.0, 39.0, 41.5, 43.2, 48.6, 53.0, 55.5, 58.5, 60.5, 62.0],
    chainstay_mm: 431,
    chainstay_bridge_from_axle_mm: 366,
    set_per_side_mm: 0,
  },
};

const crank = (q: number, z0: number, end: number, length: number, longer = 0) => ({
  q_mm: q,
  arm_inner_at_spindle_mm: z0,
  arm_end_thickness_mm: end,
  crank_length_mm: length,
  spindle_longer_by_mm: longer,
});

const q30 = (longer: number) => crank(162, 47, 13, 170, longer);
const m28 = crank(150, 48, 12, 172.5);
const m29 = crank(168, 48, 13, 170);
const m47 = (longer: number) => crank(136, 44, 13.5, 172.5, longer);
const c19 = crank(172, 50, 13, 170);
const c22 = crank(174, 52, 14, 170);

describe("arm gaps", () => {
  // q30 on q28 by hand at 142: Q 170, z0 51; arm 51 + (85 - 13 - 51) x 142 / 170 = 68.54; stay 51.0 + 2.3 x (142 - 59) /
  // 383 = 51.50; gap 17.0.
  const cases = [
    { name: "q30 on q28", in: { ...STAYS.quayside, ...q30(8) }, q: 170, gap: 17.0, at: 142, verdict: "fits" },
    { name: "q30 on q29", in: { ...STAYS.quayside, ...q30(3) }, q: 165, gap: 14.5, at: 142, verdict: "fits" },
    { name: "m28", in: { ...STAYS.allRoad, ...m28 }, q: 150, gap: 10.4, at: 172.5, verdict: "fits" },
    { name: "m29 on m46", in: { ...STAYS.allRoad, ...m29 }, q: 168, gap: 18.8, at: 170, verdict: "fits" },
    { name: "m47 on m46", in: { ...STAYS.allRoad, ...m47(0) }, q: 136, gap: 1.9, at: 172.5, verdict: "will not fit" },
    { name: "m47 on m48", in: { ...STAYS.allRoad, ...m47(6) }, q: 142, gap: 4.9, at: 172.5, verdict: "fits" },
    { name: "m47 on 113", in: { ...STAYS.allRoad, ...m47(3) }, q: 139, gap: 3.4, at: 172.5, verdict: "measure first" },
    { name: "c19 on c23", in: { ...STAYS.canalside, ...c19 }, q: 172, gap: 11.5, at: 126, verdict: "fits" },
    { name: "c22 on c23", in: { ...STAYS.canalside, ...c22 }, q: 174, gap: 12.0, at: 150, verdict: "fits" },
  ] as const;
  for (const c of cases) {
    it(c.name, () => {
      const { value } = ok(runSheet(armGapSheet, c.in));
      near(value.arm_gap_mm, c.gap, 0.05);
      expect(value.arm_gap_at_radius_mm).toBe(c.at);
      expect(value.q_fitted_mm).toBe(c.q);
      expect(value.verdict).toBe(c.verdict);
      expect(value.left_arm_gap_mm).toBe(value.arm_gap_mm);
    });
  }
  it("m47 on m46 had 2.5 before setting", () => {
    near(ok(armGap({ ...STAYS.allRoad, ...m47(0) })).value.arm_gap_before_setting_mm, 2.5, 0.05);
  });
});

describe("ring gaps", () => {
  // q31 on q28 by hand: outside radius 6.35 / sin(180/42) + 4 = 88.97; stay 40 + 3.5 x 8.97 / 17 + 2.3 x 29.97 / 383 =
  // 42.03; ring inner face 47.5 - 1.05 = 46.45; gap 4.4.
  const one = (stay: object, arm: object, teeth: number, chainline_mm: number, width = "3/32") =>
    ok(runSheet(armGapSheet, { ...stay, ...arm, rings: [{ teeth, chainline_mm, width }] })).value.ring_gaps[0];
  const cases: readonly (readonly [string, object, object, number, number, string, number])[] = [
    ["q31 on q28", STAYS.quayside, q30(8), 42, 43.5, "3/32", 4.4],
    ["q31 on q29", STAYS.quayside, q30(3), 42, 43.5, "3/32", 1.9],
    ["q32 on q28", STAYS.quayside, q30(8), 38, 43.5, "3/32", 6.1],
    ["q32 on q29", STAYS.quayside, q30(3), 38, 43.5, "3/32", 3.6],
    ["q33 on q28", STAYS.quayside, q30(8), 44, 43.5, "1/8", 3.1],
    ["q33 on q29", STAYS.quayside, q30(3), 44, 43.5, "1/8", 0.6],
    ["m28, 46", STAYS.allRoad, m28, 46, 49.25, "3/32", 7.3],
    ["m28, 30", STAYS.allRoad, m28, 30, 41.75, "3/32", 5.5],
    ["m29, 42", STAYS.allRoad, m29, 42, 45, "3/32", 4.4],
    ["m29, 26", STAYS.allRoad, m29, 26, 37.5, "3/32", 3.2],
    ["m47 on m46", STAYS.allRoad, m47(0), 42, 42, "3/32", 1.4],
    ["m47 on m48", STAYS.allRoad, m47(6), 42, 42, "3/32", 4.4],
    ["c21 on c19", STAYS.canalside, c19, 32, 47.5, "3/32", 5.0],
    ["c20 on c19", STAYS.canalside, c19, 36, 47.5, "3/32", 3.3],
    ["c22, 42", STAYS.canalside, c22, 42, 54.5, "3/32", 6.7],
    ["c22, 34", STAYS.canalside, c22, 34, 47.5, "3/32", 4.1],
    ["c22, 24", STAYS.canalside, c22, 24, 40.5, "3/32", 3.4],
  ];
  for (const [name, stay, arm, teeth, line, width, gap] of cases) {
    it(name, () => {
      const ring = one(stay, arm, teeth, line, width);
      near(ring?.gap_mm, gap, 0.05);
      expect(ring?.verdict).toBe(gap >= 3 ? "fits" : "will not fit");
    });
  }
});

describe("Quayside, cables", () => {
  const route = (points: readonly (readonly [number, number, number])[]) =>
    points.map(([x_mm, y_mm, z_mm]) => ({ x_mm, y_mm, z_mm }));
  const rear = route([
    [380, 662, -250],
    [470, 610, -60],
    [400, 530, 15],
    [-135, 468, 15],
    [-395, 125, 55],
  ]);
  const front = route([
    [380, 662, 250],
    [470, 610, 60],
    [500, 420, 55],
    [565, 135, 55],
  ]);
  it("outer and inner, front and rear", () => {
    // Front by hand: sqrt(90^2 + 52^2 + 190^2) = 216.6, sqrt(30^2 + 190^2 + 5^2) = 192.4, sqrt(65^2 + 285^2) = 292.3;
    // 701.3 + 60 + 40 = 801.
    const f = ok(cableLength({ route: front, outer_at_hand_mm: 3000, inner_at_hand_mm: 2000 })).value;
    const r = ok(cableLength({ route: rear, outer_at_hand_mm: 3000, inner_at_hand_mm: 2000 })).value;
    near(f.outer_mm, 801, 0.5);
    near(f.inner_mm, 951, 0.5);
    near(r.outer_mm, 1418, 0.5);
    near(r.inner_mm, 1568, 0.5);
    near(f.outer_mm + r.outer_mm, 2219, 1);
    expect([f.enough, r.enough]).toEqual([true, true]);
  });
});
