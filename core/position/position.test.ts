/** Edges, refusals and outside values of the position room. */
import { describe, expect, it } from "vitest";
import { positionSources } from "../data/sources-position.js";
import type { Answer, Answered, Refused } from "../quantity/index.js";
import { runSheet, startInput } from "../sheet/index.js";
import {
  barPlace,
  bestCockpit,
  type CockpitInput,
  cockpit,
  cockpitSheet,
  contactPoints,
  handError,
  postInsertion,
  type SaddleInput,
  type SteererInput,
  saddle,
  saddleHeight,
  saddleSheet,
  spacerSums,
  steerer,
  steererSheet,
  steererThreaded,
} from "./index.js";

const START = startInput(cockpitSheet) as unknown as CockpitInput;
const SADDLE = startInput(saddleSheet) as unknown as SaddleInput;
const STEERER = startInput(steererSheet) as unknown as SteererInput;

function ok<T>(answer: Answer<T>): Answered<T> {
  if (answer.kind === "refused") throw new Error(JSON.stringify(answer.refusals));
  return answer;
}
function no<T>(answer: Answer<T>): Refused {
  if (answer.kind !== "refused") throw new Error("answered where it should refuse");
  return answer;
}

describe("cockpit", () => {
  it("moves by -3.09 and +9.51 for 10 mm of spacer at 72 degrees (common practice, hand calculation)", () => {
    const place = {
      stackMm: 500,
      reachMm: 400,
      headAngleDeg: 72,
      stemLengthMm: 0,
      stemAngleDeg: 0,
      handForwardMm: 0,
      handUpMm: 0,
    };
    const low = barPlace({ ...place, upAxisMm: 0 });
    const high = barPlace({ ...place, upAxisMm: 10 });
    expect(high.hand.xMm - low.hand.xMm).toBeCloseTo(-3.09, 2);
    expect(high.hand.yMm - low.hand.yMm).toBeCloseTo(9.51, 2);
  });

  it("a stem of -17 on a 73 degree head tube lies level, of 0 square to the axis", () => {
    const place = {
      stackMm: 500,
      reachMm: 400,
      headAngleDeg: 73,
      upAxisMm: 50,
      stemLengthMm: 100,
      handForwardMm: 0,
      handUpMm: 0,
    };
    const level = barPlace({ ...place, stemAngleDeg: -17 });
    expect(level.stemToGroundDeg).toBe(0);
    expect(level.barClamp.yMm).toBeCloseTo(level.stemOnAxis.yMm, 9);
    expect(level.barClamp.xMm - level.stemOnAxis.xMm).toBeCloseTo(100, 9);
  });

  it("the exact stem for each angle hits the target when it is put back in", () => {
    for (const angle of [-40, -17, 0, 6, 35]) {
      const exact = ok(cockpit({ ...START, stem_angles_deg: [angle] })).value.exact_for_each_angle[0];
      expect(exact?.stem_angle_deg).toBe(angle);
      const hand = barPlace({
        stackMm: START.stack_mm,
        reachMm: START.reach_mm,
        headAngleDeg: START.head_angle_deg,
        upAxisMm: START.upper_stack_mm + START.clamp_height_mm / 2 + (exact?.exact_spacers_mm ?? Number.NaN),
        stemLengthMm: exact?.exact_stem_length_mm ?? Number.NaN,
        stemAngleDeg: angle,
        handForwardMm: START.hand_forward_mm,
        handUpMm: START.hand_up_mm,
      }).hand;
      expect(hand.xMm).toBeCloseTo(START.target_x_mm, 8);
      expect(hand.yMm).toBeCloseTo(START.target_y_mm, 8);
    }
  });

  it("counts combinations, sorts, and agrees with a plain search over all of them", () => {
    const q = {
      ...START,
      stem_lengths_mm: [60, 70, 80, 90, 100],
      stem_angles_deg: [-17, -6, 6, 17],
      spacers_mm: [0, 5, 10, 15, 20, 25],
    };
    const { value } = ok(cockpit(q));
    expect(value.combinations).toBe(120);
    const plain: number[] = [];
    for (const stemLengthMm of q.stem_lengths_mm)
      for (const stemAngleDeg of q.stem_angles_deg)
        for (const spacer of q.spacers_mm) {
          const { hand } = barPlace({
            stackMm: q.stack_mm,
            reachMm: q.reach_mm,
            headAngleDeg: q.head_angle_deg,
            upAxisMm: q.upper_stack_mm + spacer + q.clamp_height_mm / 2,
            stemLengthMm,
            stemAngleDeg,
            handForwardMm: q.hand_forward_mm,
            handUpMm: q.hand_up_mm,
          });
          plain.push(Math.hypot(hand.xMm - q.target_x_mm, hand.yMm - q.target_y_mm));
        }
    plain.sort((a, b) => a - b);
    const got = [value.best, ...value.next_best].map((row) => row.error_mm);
    expect(got.length).toBe(11);
    got.forEach((error, i) => {
      expect(error).toBeCloseTo(plain[i] ?? Number.NaN, 9);
    });
    expect(value.best.error_x_mm).toBeCloseTo(value.best.hand_x_mm - q.target_x_mm, 12);
    expect(value.best.error_y_mm).toBeCloseTo(value.best.hand_y_mm - q.target_y_mm, 12);
  });

  it("says it when no stem reaches", () => {
    const answer = ok(cockpit({ ...START, target_x_mm: 700 }));
    expect(answer.value.reachable_within_10_mm).toBe(false);
    expect(answer.cautions.map((c) => c.code)).toContain("hands-not-on-target");
  });

  it("tells a tie, and takes the fewer spacers first", () => {
    // Level stem on an upright axis: length and spacers trade evenly about a target half-way between two stacks.
    const q = { ...START, head_angle_deg: 90, stem_angles_deg: [0], stem_lengths_mm: [80], spacers_mm: [0, 10] };
    const middle = q.stack_mm + q.upper_stack_mm + q.clamp_height_mm / 2 + 5 + q.hand_up_mm;
    const answer = ok(cockpit({ ...q, target_x_mm: q.reach_mm + 80 + q.hand_forward_mm, target_y_mm: middle }));
    expect(answer.cautions.map((c) => c.code)).toContain("tie");
    expect(answer.value.best.spacers_mm).toBe(0);
  });

  it("refuses all impossible numbers at once", () => {
    const bad = { ...START, stack_mm: -1, head_angle_deg: 120, stem_lengths_mm: [80, -5], spacers_mm: [Number.NaN] };
    const { refusals } = no(cockpit(bad));
    expect(refusals.map((r) => r.at)).toEqual(["stack_mm", "head_angle_deg", "stem_lengths_mm[1]", "spacers_mm[0]"]);
    for (const r of refusals) expect(r.message).toContain(r.at);
    expect(no(cockpit({ ...START, spacers_mm: [] })).refusals[0]?.code).toBe("wrong-count");
    expect(no(runSheet(cockpitSheet, {})).refusals.length).toBe(12);
  });

  it("cites only sources that are listed", () => {
    const ids = new Set(positionSources.map((row) => row.id));
    const cited = [
      ok(cockpit(START)),
      ok(saddle(SADDLE)),
      ok(steerer(STEERER)),
      ok(saddleHeight({ inseamMm: 800 })),
      ok(postInsertion({ extensionMm: 680, seatTubeTopMm: 530, postLengthMm: 300, postDiameterMm: 27.2 })),
    ].flatMap((answer) => answer.sources);
    for (const id of cited) expect(ids).toContain(id);
  });
});

describe("best cockpit", () => {
  const frame = { stackMm: 560, reachMm: 390, headAngleDeg: 71, targetXMm: 460, targetYMm: 600, spacerSumsMm: [0, 10] };
  const stem = { kind: "unthreaded" as const, id: "s", lengthMm: 90, angleDeg: 10, clampHeightMm: 40 };
  const bar = { id: "b", handForwardMm: 0, handUpMm: 0, clampMm: 31.8 };
  it("turns an unthreaded stem over where that is better, and asks for an unmeasured clamp", () => {
    const answer = ok(bestCockpit({ ...frame, upperStackMm: 12, stems: [stem], bars: [bar] }));
    expect(answer.value.best?.turnedOver).toBe(true);
    expect(answer.value.best?.stemAngleDeg).toBe(-10);
    expect(answer.cautions.map((c) => c.code)).toContain("clamp-not-measured");
  });
  it("leaves out what has no headset, with the reason, and says that nothing could be tried", () => {
    const answer = ok(bestCockpit({ ...frame, locknutStackMm: 25, stems: [stem], bars: [bar] }));
    expect(answer.value.best).toBeNull();
    expect(answer.value.leftOut).toHaveLength(1);
    expect(answer.cautions.map((c) => c.code)).toContain("nothing-to-try");
  });
  it("names stem and bar in a refusal", () => {
    const bad = no(bestCockpit({ ...frame, upperStackMm: 12, stems: [{ ...stem, lengthMm: 900 }], bars: [bar] }));
    expect(bad.refusals[0]?.at).toBe("s+b.stem_lengths_mm[0]");
  });
  it("makes every stack from the pieces, each once", () => {
    expect(spacerSums([10, 10, 5], 40)).toEqual([0, 5, 10, 15, 20, 25]);
    expect(spacerSums([10, 10, 5], 12)).toEqual([0, 5, 10]);
    expect(spacerSums([], 40)).toEqual([0]);
  });
});

describe("hand error", () => {
  const q = {
    headAngleDeg: 71,
    upAxisMm: 50,
    stemLengthMm: 80,
    stemAngleDeg: 17,
    stackSdMm: 1,
    reachSdMm: 2,
    headAngleSdDeg: 0.2,
  };
  it("agrees with moving each measure by a little (numerical derivative)", () => {
    const hand = (headAngleDeg: number) =>
      barPlace({ ...q, headAngleDeg, stackMm: 560, reachMm: 390, handForwardMm: 0, handUpMm: 0 }).hand;
    const dx = (hand(71.001).xMm - hand(70.999).xMm) / 0.002;
    const dy = (hand(71.001).yMm - hand(70.999).yMm) / 0.002;
    const got = handError(q);
    expect(got.xSdMm).toBeCloseTo(Math.hypot(2, dx * 0.2), 6);
    expect(got.ySdMm).toBeCloseTo(Math.hypot(1, dy * 0.2), 6);
    expect(got.radius95Mm).toBeGreaterThan(1.96 * Math.max(got.xSdMm, got.ySdMm));
  });
  it("without the angle's error the radius is 2.448 times the larger sd (Rayleigh, 95 %)", () => {
    expect(handError({ ...q, headAngleSdDeg: 0 }).radius95Mm).toBeCloseTo(2 * 2.4477, 3);
  });
});

describe("saddle", () => {
  it("gives the nearest setback and says that it does not reach", () => {
    const answer = ok(saddle({ ...SADDLE, setbacks_mm: [0], rail_range_plus_minus_mm: 15 }));
    expect(answer.value.reachable).toBe(false);
    expect(answer.value.best_setback_mm).toBe(0);
    expect(answer.cautions.map((c) => c.code)).toEqual(["saddle-not-reached"]);
  });
  it("with the centred setback the rails need no push", () => {
    const centred = ok(saddle(SADDLE)).value.setback_for_centred_rails_mm;
    const row = ok(saddle({ ...SADDLE, setbacks_mm: [centred] })).value.per_setback[0];
    expect(row?.rail_shift_back_mm).toBeCloseTo(0, 9);
  });
  it("upright seat tube: setback and push are the same thing", () => {
    const { value } = ok(saddle({ ...SADDLE, seat_angle_deg: 90, target_x_mm: -30, setbacks_mm: [10] }));
    expect(value.per_setback[0]?.rail_shift_back_mm).toBeCloseTo(20, 9);
    expect(value.per_setback[0]?.extension_along_seat_tube_mm).toBeCloseTo(692 - 45, 9);
  });
  it("refuses a saddle below the bottom bracket and impossible numbers", () => {
    const low = no(saddle({ ...SADDLE, target_y_mm: 60, saddle_height_above_clamp_mm: 100, setbacks_mm: [0] }));
    expect(low.refusals[0]?.code).toBe("saddle-below-bottom-bracket");
    expect(no(saddle({ ...SADDLE, seat_angle_deg: 0, setbacks_mm: [] })).refusals).toHaveLength(2);
  });
});

describe("saddle height rules", () => {
  it("Peveler et al. 2005, recomputed: inseam 850, crank 170 gives 750.55 and 756.5", () => {
    const answer = ok(saddleHeight({ inseamMm: 850, crankMm: 170 }));
    expect(answer.value.saddle_height_mm).toBeCloseTo(750.55, 9);
    expect(answer.bands.saddle_height_mm?.low).toBeCloseTo(750.55, 9);
    expect(answer.bands.saddle_height_mm?.high).toBeCloseTo(756.5, 9);
    expect(answer.cautions.map((c) => c.code)).toEqual(["saddle-height-is-a-guess"]);
  });
  it("the two rules meet at a crank of 0.207 inseam", () => {
    const { rules } = ok(saddleHeight({ inseamMm: 850, crankMm: 175.95 })).value;
    expect(rules[0]?.height_mm).toBeCloseTo(rules[1]?.height_mm ?? Number.NaN, 9);
  });
  it("refuses both at once", () => {
    expect(no(saddleHeight({ inseamMm: 82, crankMm: 17 })).refusals).toHaveLength(2);
  });
});

describe("post insertion", () => {
  const post = { extensionMm: 680, seatTubeTopMm: 530, postLengthMm: 300, postDiameterMm: 27.2 };
  it("is measure first while the mark has not been read", () => {
    const answer = ok(postInsertion(post));
    expect(answer.value.verdict).toBe("measure first");
    expect(answer.cautions.map((c) => c.code)).toContain("post-mark-not-read");
  });
  it("takes the largest of mark, twice the diameter and the joint", () => {
    expect(ok(postInsertion({ ...post, markMm: 80 })).value.insertion_needed_mm).toBe(80);
    expect(ok(postInsertion({ ...post, markMm: 80, topTubeJointBelowTopMm: 95 })).value.insertion_needed_mm).toBe(95);
  });
  it("will not fit above the mark, below the tube's top, or through the shell", () => {
    const short = ok(postInsertion({ ...post, postLengthMm: 200, markMm: 65 }));
    expect(short.value).toMatchObject({ inserted_mm: 50, verdict: "will not fit", spare_mm: -15 });
    expect(short.cautions.map((c) => c.code)).toContain("post-above-its-mark");
    const tall = ok(postInsertion({ ...post, extensionMm: 520, markMm: 65 }));
    expect(tall.cautions.map((c) => c.code)).toContain("saddle-below-tube-top");
    const long = ok(postInsertion({ ...post, seatTubeTopMm: 250, extensionMm: 260, postLengthMm: 350, markMm: 65 }));
    expect(long.cautions.map((c) => c.code)).toContain("post-longer-than-tube");
    expect(long.value.verdict).toBe("will not fit");
  });
});

describe("steerer", () => {
  it("too short, but long enough with fewer spacers", () => {
    // Needs 224; 216 are there: 8 short, carries 12 of the 20.
    const answer = ok(steerer({ ...STEERER, steerer_available_mm: 216 }));
    expect(answer.value).toMatchObject({
      spare_mm: -8,
      long_enough: false,
      cut_from_top_mm: 0,
      most_spacers_below_mm: 12,
    });
    // Clamp starts at 187 on the axis, the steerer ends at 216: 29 of 40.
    expect(answer.value.stem_clamped_on_steerer_mm).toBe(29);
    expect(answer.value.carries_the_stem_without_spacers).toBe(true);
    expect(answer.cautions.map((c) => c.code)).toEqual(["steerer-too-short", "stem-not-fully-on-steerer"]);
  });
  it("too short even without a spacer: never a negative stack", () => {
    const { value } = ok(steerer({ ...STEERER, steerer_available_mm: 150 }));
    expect(value.most_spacers_below_mm).toBe(0);
    expect(value.carries_the_stem_without_spacers).toBe(false);
    expect(value.stem_clamped_on_steerer_mm).toBe(0);
  });
  it("never more than the limit, and says when the stack is over it", () => {
    const answer = ok(steerer({ ...STEERER, steerer_available_mm: 300, spacers_below_mm: 45 }));
    expect(answer.value.most_spacers_below_mm).toBe(40);
    expect(answer.cautions.map((c) => c.code)).toContain("more-spacers-than-allowed");
  });
  it("a spacer above the stem puts the whole clamp on the steerer", () => {
    const answer = ok(steerer({ ...STEERER, spacers_above_mm: 5 }));
    expect(answer.value.stem_clamped_on_steerer_mm).toBe(40);
    expect(answer.cautions).toEqual([]);
  });
  it("facing the head tube needs so much less steerer", () => {
    expect(ok(steerer({ ...STEERER, faced_off_mm: 1.5 })).value.steerer_needed_mm).toBe(222.5);
  });
  it("refuses a head tube faced away and a gap that swallows the stem, both at once", () => {
    const { refusals } = no(steerer({ ...STEERER, head_tube_mm: 40, faced_off_mm: 40, gap_mm: 45 }));
    expect(refusals.map((r) => r.code)).toEqual(["nothing-left", "stem-off-the-steerer"]);
  });
  it("threaded: 12 + 145 + 25 - 2 = 180 long, 25 - 2 - 8 = 15 of thread", () => {
    const q = {
      head_tube_mm: 145,
      lower_stack_mm: 12,
      threaded_upper_stack_mm: 25,
      locknut_cover_mm: 2,
      unthreaded_upper_mm: 8,
    };
    expect(ok(steererThreaded(q)).value).toEqual({ steerer_needed_mm: 180, thread_needed_mm: 15 });
    expect(no(steererThreaded({ ...q, unthreaded_upper_mm: 23 })).refusals[0]?.code).toBe("no-thread-left");
  });
});

describe("contact points", () => {
  it("hang together: clamp height on the axis, setback square to the seat tube", () => {
    const at = contactPoints({
      stackMm: 560,
      reachMm: 390,
      headAngleDeg: 71,
      upperStackMm: 10,
      spacersMm: 20,
      clampHeightMm: 40,
      stemLengthMm: 80,
      stemAngleDeg: 17,
      handForwardMm: -95,
      handUpMm: 10,
      seatAngleDeg: 73,
      extensionMm: 680,
      setbackMm: 20,
      railShiftBackMm: 5,
      saddleHeightAboveClampMm: 45,
      crankMm: 170,
      crankAngleDeg: 0,
    });
    const far = (a: { xMm: number; yMm: number }, b: { xMm: number; yMm: number }) =>
      Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
    expect(far(at.stemUnderside, at.stemTop)).toBeCloseTo(40, 9);
    expect(far(at.stemUnderside, at.headTubeTop)).toBeCloseTo(30, 9);
    expect(far(at.stemOnAxis, at.stemTop)).toBeCloseTo(20, 9);
    expect(far(at.postOnAxis, { xMm: 0, yMm: 0 })).toBeCloseTo(680, 9);
    const [a, b] = [at.postOnAxis, at.saddleClamp];
    expect(a.xMm * (b.xMm - a.xMm) + a.yMm * (b.yMm - a.yMm)).toBeCloseTo(0, 8);
    expect(b.xMm).toBeLessThan(a.xMm);
    expect(b.yMm).toBeLessThan(a.yMm);
    expect(at.pedal).toEqual({ xMm: 170, yMm: -0 });
  });
});
