/** Outside values, edges and refusals of the drive room. */
import { describe, expect, it } from "vitest";
import { driveSources } from "../data/sources-drive.js";
import type { Answer, Answered, Refused } from "../quantity/index.js";
import { runSheet, startInput } from "../sheet/index.js";
import { chainOnFixedCentres } from "./fixed-centres-sheet.js";
import {
  type ArmGapInput,
  armGap,
  armGapSheet,
  CHAIN_CLASSES,
  type ChainlineInput,
  cableLength,
  centreForLinks,
  chainClassForSpeeds,
  chainline,
  chainlineSheet,
  chainPitches,
  chanceInside,
  derailleurCapacity,
  derailleurChainLinks,
  development,
  dish,
  fixedCentres,
  measuredFrontChainline,
  normalBelow,
  predictedFrontChainline,
  wallCadence,
} from "./index.js";

function ok<T>(answer: Answer<T>): Answered<T> {
  if (answer.kind === "refused") throw new Error(JSON.stringify(answer.refusals));
  return answer;
}
function no<T>(answer: Answer<T>): Refused {
  if (answer.kind !== "refused") throw new Error("answered where it should refuse");
  return answer;
}

describe("chain length, handbook formula as printed on engineering pages (ISO 606)", () => {
  // Table recomputed from the formula by hand, 12.7 mm pitch.
  const table = [
    [44, 11, 430, 96.031],
    [44, 36, 430, 107.764],
    [40, 42, 435, 109.507],
    [42, 18, 420, 96.583],
  ] as const;
  for (const [ring, cog, chainstayMm, pitches] of table) {
    it(`${ring}/${cog} at ${chainstayMm}`, () => {
      expect(chainPitches({ ring, cog, chainstayMm })).toBeCloseTo(pitches, 3);
    });
  }
  it("C 442, 38/20 is 98.84 pitches, where circle arcs give 98.90", () => {
    expect(chainPitches({ ring: 38, cog: 20, chainstayMm: 442 })).toBeCloseTo(98.84, 2);
  });
  it("lies within 0.003 pitch of rollers laid on the true polygons", () => {
    // An independent count: tangent length between pitch circles plus wrap angle x teeth / 2 pi on each wheel.
    for (const [ring, cog, c] of table) {
      const r1 = 6.35 / Math.sin(Math.PI / ring);
      const r2 = 6.35 / Math.sin(Math.PI / cog);
      const lean = Math.asin((r1 - r2) / c);
      const wraps = (ring * (Math.PI + 2 * lean) + cog * (Math.PI - 2 * lean)) / (2 * Math.PI);
      const polygon = (2 * Math.sqrt(c * c - (r1 - r2) ** 2)) / 12.7 + wraps;
      expect(Math.abs(chainPitches({ ring, cog, chainstayMm: c }) - polygon)).toBeLessThan(0.003);
    }
  });
  it("turned round it gives the centre distance back", () => {
    for (const [ring, cog, c, pitches] of table) {
      expect(centreForLinks({ ring, cog, links: chainPitches({ ring, cog, chainstayMm: c }) })).toBeCloseTo(c, 9);
      expect(centreForLinks({ ring: cog, cog: ring, links: pitches })).toBeCloseTo(c, 1);
    }
  });
  it("equal wheels: two straights and half of each wheel, exactly", () => {
    expect(chainPitches({ ring: 20, cog: 20, chainstayMm: 12.7 * 30 })).toBeCloseTo(80, 12);
  });
  it("an even tight length needs exactly two more links, not four", () => {
    expect(derailleurChainLinks({ chainstayMm: 12.7 * 30, largestRing: 20, largestCog: 20 })).toBe(82);
  });
});

describe("normal chances (printed normal table)", () => {
  it("0, 1, 1.959964, 2.575829 and far out", () => {
    expect(normalBelow(0)).toBe(0.5);
    expect(normalBelow(1)).toBeCloseTo(0.8413447460685429, 13);
    expect(normalBelow(1.959963984540054)).toBeCloseTo(0.975, 13);
    expect(normalBelow(-2.5758293035489004)).toBeCloseTo(0.005, 13);
    expect(normalBelow(-4) / 3.167124183311986e-5).toBeCloseTo(1, 10);
    expect(normalBelow(3.0001) - normalBelow(3)).toBeGreaterThan(0);
  });
  it("overlapping ranges count once", () => {
    const whole = chanceInside(0, 1, [{ fromMm: -1, toMm: 1 }]);
    expect(
      chanceInside(0, 1, [
        { fromMm: -1, toMm: 0.5 },
        { fromMm: 0, toMm: 1 },
        { fromMm: 0.2, toMm: 0.3 },
      ]),
    ).toBeCloseTo(whole, 14);
  });
});

describe("fixed centres", () => {
  const q = { chainstayMm: 442, chainstayHalfWidthMm: 0.3, pairs: [{ ring: 42, cog: 22 }] };
  it("without a band for the chainstay it never decides", () => {
    const { value } = ok(fixedCentres({ chainstayMm: 442, pairs: q.pairs }));
    expect(value.verdict).toBe("measure first");
    expect(value.chance_that_any_fits).toBeUndefined();
    expect(value.pairs[0]?.chance).toBeUndefined();
  });
  it("a band inside the window fits, one outside will not, whatever the accuracy asked for", () => {
    expect(ok(fixedCentres({ ...q, chainstayMm: 442.25, chainstayHalfWidthMm: 0.39 })).value.verdict).toBe("fits");
    const out = ok(fixedCentres({ ...q, chainstayMm: 446, chainstayHalfWidthMm: 2 }));
    expect(out.value.verdict).toBe("will not fit");
    expect(out.cautions.map((c) => c.code)).toContain("chain-does-not-close");
  });
  it("just outside the window, measured well enough, will not fit and is called a near miss", () => {
    const pair = ok(fixedCentres({ ...q, chainstayMm: 442.75 })).value.pairs[0];
    expect(pair?.verdict).toBe("will not fit");
    expect(pair?.note).toContain("near miss");
  });
  it("takes a half link only where it is allowed and the even number does not fit", () => {
    // 41 teeth in place of 42 needs half a pitch less; 101 links then close where 102 leave 3 mm.
    const odd = { ...q, chainstayMm: 439.4, pairs: [{ ring: 41, cog: 22 }] };
    const even = ok(fixedCentres(odd)).value.pairs[0];
    expect(even?.half_link).toBe(false);
    expect(even?.verdict).toBe("will not fit");
    const answer = ok(fixedCentres({ ...odd, halfLinkAllowed: true }));
    expect(answer.value.pairs[0]).toMatchObject({ links: 101, half_link: true });
    expect(answer.cautions.map((c) => c.code)).toContain("half-link");
    expect(ok(fixedCentres({ ...q, halfLinkAllowed: true })).value.pairs[0]?.half_link).toBe(false);
  });
  it("a chainstay hardly known at all has the windows' share of the turn as its chance", () => {
    // Windows of 0.8 every 12.75 of centre distance: 0.8 / 12.75 = 6.3 %.
    const pair = ok(fixedCentres({ ...q, chainstayHalfWidthMm: 15 })).value.pairs[0];
    expect(pair?.chance).toBeGreaterThan(0.04);
    expect(pair?.chance).toBeLessThan(0.085);
  });
  it("known hardly at all, the chance is the windows' share of one turn: 0.8 / 12.75", () => {
    const wide = ok(fixedCentres({ ...q, chainstayHalfWidthMm: 49 })).value;
    expect(wide.pairs[0]?.chance).toBeCloseTo(0.8 / 12.75, 3);
  });
  it("a pair that the hub bars never counts towards the chance", () => {
    const pairs = [{ ring: 38, cog: 22 }];
    const free = ok(fixedCentres({ chainstayMm: 445, chainstayHalfWidthMm: 10, pairs })).value;
    expect(free.chance_that_any_fits).toBeGreaterThan(0);
    const barred = ok(fixedCentres({ chainstayMm: 445, chainstayHalfWidthMm: 10, pairs, leastRingOverCog: 1.8 })).value;
    expect(barred.chance_that_any_fits).toBe(0);
    expect(barred.verdict).toBe("will not fit");
  });
  it("refuses everything impossible at once", () => {
    const bad = no(
      fixedCentres({
        chainstayMm: 442,
        slackLeastMm: 1,
        slackMostMm: 0,
        pairs: [
          { ring: 42.5, cog: 3 },
          { ring: 150, cog: 100 },
        ],
      }),
    );
    expect(bad.refusals.map((r) => r.at)).toEqual(["slackMostMm", "pairs[0].ring", "pairs[0].cog", "pairs[1]"]);
    const both = no(
      chainOnFixedCentres({
        rings: [42],
        sprockets: [22],
        chainstay_mm: 442,
        chainstay_sd_mm: 1,
        chainstay_accuracy_mm: 1,
      }),
    );
    expect(both.refusals[0]?.code).toBe("give-one");
  });
});

describe("chainline", () => {
  const start = startInput(chainlineSheet) as unknown as ChainlineInput;
  const triple = {
    crank_chainline_mm: 45,
    ring_count: 3,
    ring_pitch_mm: 7.5,
    OLN_mm: 130,
    locknut_to_smallest_cog_mm: 3.8,
    cog_count: 10,
    cog_pitch_mm: 3.95,
    chainstay_mm: 430,
  };
  it("triple: inner ring first, keys from 1, angle by hand", () => {
    const { value } = ok(chainline(triple));
    expect(value.ring_chainlines_mm).toEqual([37.5, 45, 52.5]);
    expect(Object.keys(value.chain_angles_deg)).toHaveLength(30);
    // Outer ring 52.5 on the largest cog 25.65: atan(26.85 / 430) = 3.573 degrees.
    expect(value.chain_angles_deg.ring3_cog10).toBeCloseTo(3.573, 3);
    // Inner ring 37.5 on the smallest cog 61.2: atan(-23.7 / 430) = -3.155 degrees.
    expect(value.chain_angles_deg.ring1_cog1).toBeCloseTo(-3.155, 3);
    expect(value.largest_angle_deg).toBeCloseTo(3.573, 3);
    expect(value.largest_angle_on).toBe("ring3_cog10");
  });
  it("the 10-speed on 130 of a published blog: 61.2, 25.65, middle 43.4", () => {
    const { value } = ok(chainline(triple));
    expect(value.smallest_cog_mm).toBeCloseTo(61.2, 9);
    expect(value.largest_cog_mm).toBeCloseTo(25.65, 9);
    expect(value.rear_chainline_mm).toBeCloseTo(43.425, 9);
  });
  it("one cog 1.6 off is too far, a cassette 4.1 off is", () => {
    expect(ok(chainline({ ...start, crank_chainline_mm: 48.1 })).value.judgement).toBe("too far off");
    const far = ok(chainline({ ...triple, crank_chainline_mm: 47.6 }));
    expect(far.value.judgement).toBe("too far off");
    expect(far.cautions.map((c) => c.code)).toEqual(["chainline-off"]);
  });
  it("refuses cogs and rings past the frame centre, and cogs with no room between them", () => {
    const bad = no(chainline({ ...triple, OLN_mm: 70, crank_chainline_mm: 7 }));
    expect(bad.refusals.map((r) => r.code)).toEqual(["cog-past-the-middle", "ring-past-the-middle"]);
    // 130 / 2 - 11 x 3.95 = 21.55, which binary arithmetic makes 21.549999999999997
    const deep = { ...triple, OLN_mm: 130, cog_count: 12, cog_pitch_mm: 3.95, locknut_to_smallest_cog_mm: 60 };
    expect(no(chainline(deep)).refusals[0]?.allowed).toBe("under 21.55 mm with these cogs");
    expect(no(chainline({ ...triple, cog_pitch_mm: 0, ring_pitch_mm: 0 })).refusals).toHaveLength(2);
    expect(no(chainline({ ...triple, cog_count: 2.5 })).refusals[0]?.at).toBe("cog_count");
  });
  it("measured at the seat tube", () => {
    expect(measuredFrontChainline({ ringToSeatTubeMm: 29.2, seatTubeDiameterMm: 28.6 })).toBeCloseTo(43.5, 9);
    const q = { statedMm: 43.5, statedSpindleMm: 110, spindleMm: 110 };
    expect(predictedFrontChainline({ ...q, rightCupSpacerMm: 2 })).toBeCloseTo(45.5, 9);
  });
});

describe("arm gap", () => {
  const start = startInput(armGapSheet) as unknown as ArmGapInput;
  it("a right-hand cup spacer takes from the left arm what it gives the right", () => {
    const none = ok(armGap(start)).value;
    const two = ok(armGap({ ...start, right_cup_spacer_mm: 2 })).value;
    expect(two.arm_gap_mm).toBeCloseTo(none.arm_gap_mm + 2, 9);
    expect(two.left_arm_gap_mm).toBeCloseTo(none.arm_gap_mm - 2, 9);
    expect(two.ring_gaps[0]?.gap_mm).toBeCloseTo((none.ring_gaps[0]?.gap_mm ?? Number.NaN) + 2, 9);
  });
  it("measure first where the stay was not measured all along the arm, or at the ring", () => {
    const answer = ok(armGap({ ...start, stay_radius_mm: [95, 140], stay_outer_mm: [43, 51] }));
    expect(answer.value.verdict).toBe("measure first");
    expect(answer.value.ring_gaps[0]).toMatchObject({ gap_mm: null, verdict: "measure first" });
    expect(answer.cautions.map((c) => c.code)).toEqual(
      expect.arrayContaining(["stay-not-measured-everywhere", "stay-not-measured-at-ring"]),
    );
  });
  it("says that 340 was taken where no bridge is given", () => {
    const { chainstay_bridge_from_axle_mm: _, ...rest } = start;
    expect(ok(armGap(rest)).cautions.map((c) => c.code)).toContain("bridge-not-measured");
    expect(ok(armGap({ ...rest, set_per_side_mm: 0 })).cautions.map((c) => c.code)).not.toContain(
      "bridge-not-measured",
    );
  });
  it("in front of the bridge nothing moves: a small ring there has the same gap before and after setting", () => {
    // 26 teeth: 6.35 / sin(180/26) + 4 = 56.7, inside the root at 442 - 383 = 59. Stay 34.6 + 1.9 x 0.668 = 35.87.
    const rings = [{ teeth: 26, chainline_mm: 40, width: "3/32" }];
    const gap = (set: number) => ok(armGap({ ...start, set_per_side_mm: set, rings })).value.ring_gaps[0]?.gap_mm;
    expect(gap(2.3)).toBe(gap(0));
    expect(gap(2.3)).toBeCloseTo(44 - 1.05 - 35.87, 2);
  });
  it("order of the stations does not matter", () => {
    const turned = {
      ...start,
      stay_radius_mm: [...start.stay_radius_mm].reverse(),
      stay_outer_mm: [...start.stay_outer_mm].reverse(),
    };
    expect(ok(armGap(turned)).value).toEqual(ok(armGap(start)).value);
  });
  it("is never too large: no point of a fine sweep along the arm is nearer", () => {
    const { value } = ok(armGap(start));
    const radii = start.stay_radius_mm;
    const outer = start.stay_outer_mm;
    let least = Number.POSITIVE_INFINITY;
    for (let r = 50; r <= 170; r += 0.05) {
      let i = 1;
      while ((radii[i] ?? 1e9) < r) i++;
      const [r0 = 0, r1 = 1, o0 = 0, o1 = 0] = [radii[i - 1], radii[i], outer[i - 1], outer[i]];
      const stay = o0 + ((o1 - o0) * (r - r0)) / (r1 - r0) + 2.3 * Math.max(0, (r - 59) / 383);
      least = Math.min(least, 51 + ((85 - 13 - 51) * r) / 170 - stay);
    }
    expect(value.arm_gap_mm).toBeLessThanOrEqual(least + 1e-9);
    expect(value.arm_gap_mm).toBeCloseTo(least, 2);
  });
  it("refuses lists that do not match, a doubled distance and a bridge past the shell, all at once", () => {
    const bad = no(
      armGap({ ...start, stay_radius_mm: [60, 60, 80], stay_outer_mm: [36, 40], chainstay_bridge_from_axle_mm: 500 }),
    );
    expect(bad.refusals.map((r) => r.code)).toEqual(["wrong-count", "given-twice", "bridge-past-the-shell"]);
    expect(no(armGap({ ...start, rings: [{ teeth: 42, chainline_mm: 45, width: "5/32" }] })).refusals[0]?.at).toBe(
      "rings[0].width",
    );
    expect(no(runSheet(armGapSheet, { q_mm: "wide" })).refusals.length).toBeGreaterThan(5);
  });
});

describe("capacity", () => {
  it("unknown cage is measure first, five over will not fit", () => {
    expect(ok(derailleurCapacity({ rings: [42], cogs: [11, 34] })).value.verdict).toBe("measure first");
    const five = { rings: [48, 30], cogs: [11, 34], cageCapacityTeeth: 36, largestCogTeeth: 34 };
    expect(ok(derailleurCapacity(five)).value).toMatchObject({ over_teeth: 5, verdict: "will not fit" });
    const cog = ok(derailleurCapacity({ ...five, cageCapacityTeeth: 45, largestCogTeeth: 32 }));
    expect(cog.value).toMatchObject({ largest_cog_over_teeth: 2, verdict: "fits with work" });
    expect(cog.cautions.map((c) => c.code)).toEqual(["largest-cog-exceeded"]);
    expect(no(derailleurCapacity({ rings: [], cogs: [11.5] })).refusals).toHaveLength(2);
  });
});

describe("development, dish, cables, chains", () => {
  it("recomputed published figures: 30/34 on 690 mm is 1.9127 m, 44/11 on 700 mm is 8.7965 m", () => {
    expect(development({ radiusMm: 345, ring: 30, cog: 34 })).toBeCloseTo(1.9127, 4);
    expect(development({ radiusMm: 350, ring: 44, cog: 11 })).toBeCloseTo(8.7965, 4);
    expect(development({ radiusMm: 353, ring: 42, cog: 11 })).toBeCloseTo(8.47, 2);
    expect(development({ radiusMm: 353, ring: 26, cog: 34 })).toBeCloseTo(1.7, 2);
  });
  it("on the flat without rolling the wall is no wall", () => {
    expect(wallCadence({ powerW: 100, efficiency: 1, massKg: 90, grade: 0, crr: 0, developmentM: 2 })).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
  it("126 to 130 with all 4 on the right: rim 2 to the right; half each side: stays", () => {
    expect(ok(dish({ OLN_old_mm: 126, add_left_mm: 0, add_right_mm: 4 })).value).toEqual({
      OLN_new_mm: 130,
      rim_shift_mm_positive_right: 2,
    });
    expect(ok(dish({ OLN_old_mm: 126, add_left_mm: 2, add_right_mm: 2 })).value.rim_shift_mm_positive_right).toBe(0);
    expect(no(dish({ OLN_old_mm: 12, add_left_mm: 0, add_right_mm: Number.NaN })).refusals).toHaveLength(2);
  });
  it("says what is too short and what is only just enough", () => {
    const route = [
      { x_mm: 0, y_mm: 0, z_mm: 0 },
      { x_mm: 300, y_mm: 400, z_mm: 0 },
    ];
    const { value, cautions } = ok(cableLength({ route, outer_at_hand_mm: 610, inner_at_hand_mm: 700 }));
    expect(value).toMatchObject({ route_mm: 500, outer_mm: 600, inner_mm: 750, enough: false });
    expect(cautions.map((c) => c.code)).toEqual(["cable-just-enough", "cable-too-short"]);
    expect(ok(cableLength({ route })).value.enough).toBeUndefined();
    expect(no(cableLength({ route: [{ x_mm: 0, y_mm: 0, z_mm: 1e9 }] })).refusals).toHaveLength(2);
  });
  it("chains get narrower with the speeds and each row names a listed source", () => {
    const ids = new Set(driveSources.map((row) => row.id));
    for (const [i, chain] of CHAIN_CLASSES.entries()) {
      expect(ids).toContain(chain.source);
      expect(chain.outerLowMm).toBeLessThanOrEqual(chain.outerHighMm);
      const wider = CHAIN_CLASSES[i - 1];
      if (wider !== undefined) expect(chain.outerHighMm).toBeLessThanOrEqual(wider.outerHighMm);
    }
    expect(chainClassForSpeeds(10)?.innerMm).toBe(2.18);
    expect(chainClassForSpeeds(4)).toBeUndefined();
  });
});
