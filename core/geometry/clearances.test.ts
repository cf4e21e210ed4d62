import { describe, expect, it } from "vitest";
import { bicyclePoints } from "./bicycle-points.js";
import type { FrameMeasures } from "./frame-measures.js";
import { pedalStrikeLeanDeg } from "./pedal-strike.js";
import { rimBrakeReachMm, saggedRadiusMm } from "./sagged-radius.js";
import { type ToeClearanceInput, toeClearance, toeInputOf } from "./toe-clearance.js";
import { type GapStation, tyreGap, tyreWidthOnRimMm } from "./tyre-gap.js";

const rad = Math.PI / 180;
const toe = (input: ToeClearanceInput) => {
  const answer = toeClearance(input);
  if (answer.kind !== "answered") throw new Error(JSON.stringify(answer.refusals));
  return answer;
};

/** Frame of M4 and 7.1 from its front-centre: joint and cluster as in fork-swap.test.ts. */
const joint = { x: 392.82187 + 35 * Math.cos(71 * rad), y: 559.98883 - 35 * Math.sin(71 * rad) };
const cluster = { x: -491 * Math.cos(73 * rad), y: 491 * Math.sin(73 * rad) };
const QUAYSIDE: FrameMeasures = {
  seat_tube_cc_mm: 491,
  top_tube_actual_mm: Math.hypot(joint.x - cluster.x, joint.y - cluster.y),
  top_tube_slope_deg: Math.atan2(joint.y - cluster.y, joint.x - cluster.x) / rad,
  head_angle_deg: 71,
  seat_angle_deg: 73,
  head_tube_mm: 145,
  top_tube_below_head_tube_top_mm: 35,
  lower_stack_mm: 12,
  axle_to_crown_mm: 392,
  rake_mm: 45,
  chainstay_mm: 442,
  bb_drop_mm: 58,
  rear_radius_mm: 346,
  front_radius_mm: 346,
};
const FA = { axle_to_crown_mm: 395, rake_mm: 45, front_radius_mm: 339, rear_radius_mm: 339 };
const FB = { ...FA, axle_to_crown_mm: 440 };

describe("toe clearance (M8; the figures worked for the demos are ± 2)", () => {
  it("M4's frame, R 346, tyre 35, crank 170, z 137: 136 at 27 deg", () => {
    const v = toe(
      toeInputOf(bicyclePoints(QUAYSIDE), { tyre_width_mm: 35, crank_mm: 170, pedal_from_centre_mm: 137 }),
    ).value;
    expect(Math.abs((v.toe_clearance_mm ?? 0) - 136)).toBeLessThan(0.5);
    expect(Math.abs((v.at_steer_deg ?? 0) - 27)).toBeLessThan(1);
    expect(v.shortest_line_mm).toBeLessThan(v.toe_clearance_mm ?? 0);
  });

  it("7.1: now 135; FA 143, guard 127, on q29 142 and 126; FB 154, guard 139", () => {
    const on = (parts: object, width: number, z: number, guard?: number) =>
      toe(
        toeInputOf(bicyclePoints(QUAYSIDE, parts), {
          tyre_width_mm: width,
          crank_mm: 170,
          pedal_from_centre_mm: z,
          ...(guard === undefined ? {} : { guard_over_tyre_mm: guard }),
        }),
      ).value.toe_clearance_mm ?? Number.NaN;
    expect(Math.abs(on({}, 35, 135) - 135)).toBeLessThan(2);
    expect(Math.abs(on(FA, 47, 135) - 143)).toBeLessThan(2);
    expect(Math.abs(on(FA, 47, 135, 14) - 127)).toBeLessThan(2);
    expect(Math.abs(on(FA, 47, 132.5) - 142)).toBeLessThan(2);
    expect(Math.abs(on(FA, 47, 132.5, 14) - 126)).toBeLessThan(2);
    expect(Math.abs(on(FB, 47, 135) - 154)).toBeLessThan(2);
    expect(Math.abs(on(FB, 47, 135, 14) - 139)).toBeLessThan(2);
  });

  it("7.2 Moorside: 113 now with 622-28; 584-42: m28 118/103, m29 126/110, m47 115/99 and 117/101", () => {
    // front axle by hand: Fx = sqrt(592^2 - 70^2) = 587.847, equal wheels
    const bike = {
      front_centre_horizontal_mm: Math.sqrt(592 ** 2 - 70 ** 2),
      front_axle_above_bb_mm: 70,
      head_angle_deg: 72.5,
      rake_mm: 50,
    };
    const at = (crank: number, z: number, radius: number, width: number, guard?: number) =>
      toe({
        ...bike,
        front_radius_mm: radius,
        tyre_width_mm: width,
        crank_mm: crank,
        pedal_from_centre_mm: z,
        ...(guard === undefined ? {} : { guard_over_tyre_mm: guard }),
      }).value.toe_clearance_mm ?? Number.NaN;
    expect(Math.abs(at(172.5, 125, 339, 28) - 113)).toBeLessThan(2);
    const expected: [number, number, number, number][] = [
      [172.5, 125, 118, 103],
      [170, 134, 126, 110],
      [172.5, 118, 115, 99],
      [172.5, 121, 117, 101],
    ];
    for (const [crank, z, bare, guarded] of expected) {
      expect(Math.abs(at(crank, z, 334, 42) - bare)).toBeLessThan(2);
      expect(Math.abs(at(crank, z, 334, 42, 14) - guarded)).toBeLessThan(2);
    }
  });

  it("7.3 Canalside: 149 now, 148 and 132 on 559-50", () => {
    const bike = {
      front_centre_horizontal_mm: Math.sqrt(612 ** 2 - 32 ** 2),
      front_axle_above_bb_mm: 32,
      head_angle_deg: 70.5,
      rake_mm: 42,
    };
    const at = (radius: number, width: number, guard?: number) =>
      toe({
        ...bike,
        front_radius_mm: radius,
        tyre_width_mm: width,
        crank_mm: 170,
        pedal_from_centre_mm: 136,
        ...(guard === undefined ? {} : { guard_over_tyre_mm: guard }),
      }).value.toe_clearance_mm ?? Number.NaN;
    expect(Math.abs(at(328.5, 49) - 149)).toBeLessThan(2);
    expect(Math.abs(at(329.5, 50) - 148)).toBeLessThan(2);
    expect(Math.abs(at(329.5, 50, 14) - 132)).toBeLessThan(2);
  });

  it("by hand, a wheel that cannot turn out of plane: pedal in the centre plane behind a thin tyre", () => {
    // head 90, rake 0, axle at BB height 600 ahead, R 340, tyre 2, pedal 0.5 out: straight ahead the tyre's rear is 600 - 340 - 170 = 90 away
    const v = toe({
      front_centre_horizontal_mm: 600,
      front_axle_above_bb_mm: 0,
      head_angle_deg: 90,
      rake_mm: 0,
      front_radius_mm: 340,
      tyre_width_mm: 2,
      crank_mm: 170,
      pedal_from_centre_mm: 0.5,
    }).value;
    expect(v.toe_clearance_mm ?? 0).toBeCloseTo(90, 3);
    // pedal 120 out: the thin wheel's rear rim end passes (600 - 340 cos t, 340 sin t); sin t = 120/340 gives 600 - 318.119 - 170 = 111.881
    const out = toe({
      front_centre_horizontal_mm: 600,
      front_axle_above_bb_mm: 0,
      head_angle_deg: 90,
      rake_mm: 0,
      front_radius_mm: 340,
      tyre_width_mm: 0.01,
      crank_mm: 170,
      pedal_from_centre_mm: 120,
    }).value;
    expect(out.toe_clearance_mm ?? 0).toBeCloseTo(111.881, 1);
    expect(out.at_steer_deg ?? 0).toBeCloseTo(Math.asin(120 / 340) / rad, 1);
  });

  it("speaks under 100 and louder under 89, and not at 100", () => {
    const base = {
      front_axle_above_bb_mm: 58,
      head_angle_deg: 71,
      rake_mm: 45,
      front_radius_mm: 346,
      tyre_width_mm: 35,
      crank_mm: 170,
      pedal_from_centre_mm: 137,
    };
    const codes = (x: number) => toe({ ...base, front_centre_horizontal_mm: x }).cautions.map((c) => c.code);
    expect(codes(613.3)).toEqual([]);
    expect(codes(570)).toEqual(["toe-near"]);
    expect(codes(550)).toEqual(["toe-overlap"]);
  });

  it("gives a negative distance where pedal and tyre overlap", () => {
    const v = toe({
      front_centre_horizontal_mm: 500,
      front_axle_above_bb_mm: 0,
      head_angle_deg: 90,
      rake_mm: 0,
      front_radius_mm: 340,
      tyre_width_mm: 40,
      crank_mm: 170,
      pedal_from_centre_mm: 10,
    }).value;
    // turned until its rearmost line stands at the pedal's side, sin t = 10 / 340: rear at 500 - 340 cos t = 160.15, pedal at 170
    expect(v.toe_clearance_mm ?? 0).toBeCloseTo(-9.85, 1);
  });
});

describe("tyre gap (M9) against the scenarios", () => {
  const stays = (profile: Record<string, number>): GapStation[] =>
    Object.entries(profile).map(([r, g]) => ({ radius_mm: Number(r), inner_gap_mm: g }));
  const rear = stays({ "300": 64, "315.5": 60, "329.5": 55, "332": 54, "345": 49 });
  const gap = (bsd: number, width: number, stations: GapStation[], from?: number) => {
    const answer = tyreGap({
      bsd_mm: bsd,
      tyre_width_mm: width,
      stations,
      ...(from === undefined ? {} : { constrictions: [{ name: "bridge", from_axle_mm: from }] }),
    });
    if (answer.kind !== "answered") throw new Error(JSON.stringify(answer.refusals));
    return answer.value;
  };

  it("7.1 side gaps: 584-47 6.5, 622-42 6.0, 622-37 9.0; brake bridge 27, 13, 18", () => {
    // the scenario's figures hold for the width as named: (60 - 47) / 2 = 6.5
    const a = gap(584, 47, rear, 366);
    expect([a.side_gap_mm, a.radial_gaps[0]?.gap_mm]).toEqual([6.5, 27]);
    const b = gap(622, 42, rear, 366);
    expect([b.side_gap_mm, b.radial_gaps[0]?.gap_mm]).toEqual([6, 13]);
    const c = gap(622, 37, rear, 366);
    expect([c.side_gap_mm, c.radial_gaps[0]?.gap_mm]).toEqual([9, 18]);
    expect([a.judgement, b.judgement, c.judgement]).toEqual([
      "no problem found",
      "no problem found",
      "no problem found",
    ]);
  });

  it("7.1 front: FA 8.5, 10.5, 13.1 and crown 37, 23, 28; FC 6.0, 8.0, 10.6", () => {
    const fa = stays({ "315.5": 64, "329.5": 63.2, "332": 63 });
    const fc = stays({ "315.5": 59, "329.5": 58.2, "332": 58 });
    expect(gap(584, 47, fa, 376)).toMatchObject({ side_gap_mm: 8.5, radial_gaps: [{ gap_mm: 37 }] });
    expect(gap(622, 42, fa, 376)).toMatchObject({ side_gap_mm: 10.5, radial_gaps: [{ gap_mm: 23 }] });
    expect(gap(622, 37, fa, 376).side_gap_mm).toBeCloseTo(13.1, 9);
    expect(gap(584, 47, fc).side_gap_mm).toBe(6);
    expect(gap(622, 42, fc).side_gap_mm).toBe(8);
    expect(gap(622, 37, fc).side_gap_mm).toBeCloseTo(10.6, 9);
  });

  it("7.2: 584-42 5.75 flag, 584-47 2.9 refuse; 7.3: 559-50 8.5", () => {
    const m = stays({ "280": 62, "300": 57, "313": 53.5, "315.5": 52.8, "325": 50, "340": 45, "358": 40 });
    expect(gap(584, 42, m)).toMatchObject({ side_gap_mm: 5.75, judgement: "flag" });
    expect(gap(584, 47, m).side_gap_mm).toBeCloseTo(2.9, 9);
    expect(gap(584, 47, m).judgement).toBe("refuse");
    // front of 7.2 at 315.5: 56 - 2.5/12 = 55.79, (55.79 - 47) / 2 = 4.4
    expect(gap(584, 47, stays({ "313": 56, "325": 55 })).side_gap_mm).toBeCloseTo(4.4, 1);
    expect(gap(559, 50, stays({ "304.5": 67, "320": 62 }), 360)).toMatchObject({
      side_gap_mm: 8.5,
      radial_gaps: [{ gap_mm: 30.5 }],
    });
  });

  it("a rim other than tyre/1.9 changes the width by 0.4 a millimetre (1b on M9)", () => {
    // 47 on 23 inner: 47 + 0.4 (23 - 24.737) = 46.305
    expect(tyreWidthOnRimMm(47, 23)).toBeCloseTo(46.305, 3);
    expect(tyreWidthOnRimMm(38, 20)).toBe(38);
  });

  it("goes to the guard where there is one, and never beyond the stations", () => {
    const guarded = tyreGap({
      bsd_mm: 584,
      tyre_width_mm: 47,
      stations: rear,
      guard_width_mm: 60,
      constrictions: [{ name: "bridge", from_axle_mm: 366 }],
    });
    // (60 - 60) / 2 = 0 at the chainstays, 27 - 14 = 13 under the bridge: trimmed guard or none there, as 7.1 says
    expect(guarded).toMatchObject({
      kind: "answered",
      value: { side_gap_mm: 0, judgement: "refuse", radial_gaps: [{ gap_mm: 13 }] },
    });
    const outside = tyreGap({ bsd_mm: 406, tyre_width_mm: 40, stations: rear });
    expect(outside.kind === "refused" && outside.refusals[0]?.code).toBe("measure-first");
  });
});

describe("radius, reach, pedal", () => {
  it("M6: 622-40 351, 584-42 334, 559-50 329.5", () => {
    expect([saggedRadiusMm(622, 40), saggedRadiusMm(584, 42), saggedRadiusMm(559, 50)]).toEqual([351, 334, 329.5]);
  });

  it("M22: 622 to 584 +19, 630 to 622 +4, 630 to 584 +23, 559 to 584 -12.5; 7.2: 50 and 52 become 69 and 71", () => {
    expect([
      rimBrakeReachMm(0, 622, 584),
      rimBrakeReachMm(0, 630, 622),
      rimBrakeReachMm(0, 630, 584),
      rimBrakeReachMm(0, 559, 584),
    ]).toEqual([19, 4, 23, -12.5]);
    expect([rimBrakeReachMm(50, 622, 584), rimBrakeReachMm(52, 622, 584)]).toEqual([69, 71]);
  });

  it("pedal strike by hand: knife-edge tyre, pedal edge 130 out and 100 up leans atan(100/130) = 37.57 deg", () => {
    expect(pedalStrikeLeanDeg(280, 170, 130, 10, 0)).toBeCloseTo(37.5686, 3);
    // a tyre 40 wide: u = 80, atan2(80, 130) + asin(20 / 152.643) = 31.608 + 7.529
    expect(pedalStrikeLeanDeg(280, 170, 130, 10, 40)).toBeCloseTo(39.137, 2);
  });
});
