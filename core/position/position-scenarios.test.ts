/**
 * The rider's place in the three demo scenarios. Facts and `expect` figures are the invented scenarios' own, derived by
 * M7 and C8; tolerance = their last printed digit. One case of each is worked by hand in a comment.
 */
import { describe, expect, it } from "vitest";
import type { Answer, Answered } from "../quantity/index.js";
import { runSheet, sheetFaults } from "../sheet/index.js";
import {
  bestCockpit,
  cockpitSheet,
  contactPoints,
  postInsertion,
  quillSteps,
  saddleHeight,
  saddleSheet,
  spacerSums,
  steererSheet,
  steererThreadedSheet,
} from "./index.js";

function ok<T>(answer: Answer<T>): Answered<T> {
  if (answer.kind === "refused") throw new Error(JSON.stringify(answer.refusals));
  return answer;
}

const near = (got: number | undefined, want: number, tolerance: number) => {
  expect(Math.abs((got ?? Number.NaN) - want), `${got} against ${want}`).toBeLessThanOrEqual(tolerance);
};

describe("sheets are well made", () => {
  for (const sheet of [cockpitSheet, saddleSheet, steererSheet, steererThreadedSheet]) {
    it(sheet.id, () => expect(sheetFaults(sheet)).toEqual([]));
  }
});

const QUAYSIDE = {
  stackMm: 561.1,
  reachMm: 391.3,
  headAngleDeg: 70.84,
  targetXMm: 345,
  targetYMm: 672,
  upperStackMm: 10,
  stems: [
    { kind: "unthreaded" as const, id: "q12", lengthMm: 60, angleDeg: 6, clampHeightMm: 40, barClampMm: 31.8 },
    { kind: "unthreaded" as const, id: "q13", lengthMm: 80, angleDeg: 17, clampHeightMm: 40, barClampMm: 31.8 },
  ],
  bars: [{ id: "q15", handForwardMm: -95, handUpMm: 10, clampMm: 31.8 }],
};

describe("Quayside cockpit", () => {
  it("best and next best stem from the bin, both ways up", () => {
    const { value } = ok(bestCockpit({ ...QUAYSIDE, spacerSumsMm: spacerSums([10, 10], 40) }));
    // By hand for q13, 20 mm: up the axis 10 + 20 + 20 = 50; x 391.3 - 50 cos 70.84 = 374.89, y 561.1 + 50 sin 70.84 =
    // 608.33; stem at 90 - 70.84 + 17 = 36.16 to the ground: +64.58, +47.20; hand 374.89 + 64.58 - 95 = 344.5,
    // 608.33 + 47.20 + 10 = 665.5; error hypot(-0.5, -6.5) = 6.5.
    expect(value.best).toMatchObject({ stemId: "q13", stemAngleDeg: 17, spacersMm: 20, turnedOver: false });
    near(value.best?.handXMm, 344.5, 0.05);
    near(value.best?.handYMm, 665.5, 0.05);
    near(value.best?.errorMm, 6.5, 0.05);
    expect(value.ranked[1]).toMatchObject({ stemId: "q13", stemAngleDeg: 17, spacersMm: 10 });
    near(value.ranked[1]?.errorMm, 16.2, 0.05);
    // The q13 without spacers comes third; the scenario lists the next other stem.
    const nextOther = value.ranked.find((row) => row.stemId === "q12");
    expect(nextOther).toMatchObject({ stemAngleDeg: 6, spacersMm: 20 });
    near(nextOther?.errorMm, 30.2, 0.05);
  });

  it("with another 5 mm spacer", () => {
    const { value } = ok(bestCockpit({ ...QUAYSIDE, spacerSumsMm: spacerSums([10, 10, 5], 40) }));
    expect(value.best).toMatchObject({ stemId: "q13", spacersMm: 25 });
    near(value.best?.handXMm, 342.8, 0.05);
    near(value.best?.handYMm, 670.3, 0.05);
    near(value.best?.errorMm, 2.8, 0.05);
  });

  it("bar centres and bar minus saddle", () => {
    const at = (stemLengthMm: number, stemAngleDeg: number) =>
      contactPoints({
        ...QUAYSIDE,
        upperStackMm: 10,
        spacersMm: 20,
        clampHeightMm: 40,
        stemLengthMm,
        stemAngleDeg,
        handForwardMm: -95,
        handUpMm: 10,
        seatAngleDeg: 72.84,
        extensionMm: 683.3,
        setbackMm: 20,
        railShiftBackMm: -0.7,
        saddleHeightAboveClampMm: 45,
        crankMm: 170,
        crankAngleDeg: 90,
      });
    const q13 = at(80, 17);
    near(q13.barClamp.xMm, 439, 0.6);
    near(q13.barClamp.yMm, 656, 0.6);
    near(q13.saddleTop.xMm, -220, 0.1);
    near(q13.saddleTop.yMm, 692, 0.1);
    near(q13.barMinusSaddleMm, -36, 0.6);
    const q12 = at(60, 6);
    near(q12.barClamp.xMm, 429, 0.6);
    near(q12.barClamp.yMm, 634, 0.6);
    near(q12.barMinusSaddleMm, -58, 0.6);
    near(q13.pedal.yMm, -170, 1e-9);
  });

  it("steerer of FA: needed 224 of 240, carries 36 mm of spacers", () => {
    // 12 + 145 + 10 + 20 + 40 - 3 = 224; 20 + (240 - 224) = 36.
    const { value } = ok(
      runSheet(steererSheet, {
        head_tube_mm: 145,
        faced_off_mm: 0,
        lower_stack_mm: 12,
        upper_stack_mm: 10,
        spacers_below_mm: 20,
        stem_clamp_mm: 40,
        spacers_above_mm: 0,
        gap_mm: 3,
        steerer_available_mm: 240,
        limit_spacers_mm: 40,
      }),
    );
    expect(value).toMatchObject({ steerer_needed_mm: 224, spare_mm: 16, long_enough: true, cut_from_top_mm: 16 });
    expect(value.most_spacers_below_mm).toBe(36);
    expect(value.stem_centre_above_crown_seat_mm).toBe(207);
    expect(value.stem_clamped_on_steerer_mm).toBe(37);
  });
});

const SADDLES = [
  {
    name: "Quayside",
    in: [72.84, -220, 692, 45, [0, 20, 30]] as const,
    rows: [
      [0, 677.1, 20.2, false],
      [20, 683.3, -0.7, true],
      [30, 686.4, -11.2, true],
    ],
    best: 20,
    centred: 19.3,
    post: { seatTubeTopMm: 530, postLengthMm: 300, postDiameterMm: 27.2 },
    // The scenario prints 55 for 2 x 27.2 = 54.4, rounded up to a whole millimetre.
    postExpect: [153.3, 146.7, 54.4],
  },
  {
    name: "the all-road bike",
    in: [73.07, -228, 718, 47, [0, 22]] as const,
    rows: [
      [0, 701.4, 23.8, false],
      [22, 708.1, 0.8, true],
    ],
    best: 22,
    centred: 22.7,
    post: { seatTubeTopMm: 552, postLengthMm: 270, postDiameterMm: 27.2 },
    postExpect: [156.1, 113.9, 54.4],
  },
  {
    name: "Canalside",
    in: [72.37, -198, 627, 58, [0, 15]] as const,
    rows: [
      [0, 597.0, 17.2, false],
      [15, 601.8, 1.4, true],
    ],
    best: 15,
    centred: 16.4,
    post: { seatTubeTopMm: 430, postLengthMm: 350, postDiameterMm: 26.4 },
    postExpect: [171.8, 178.2, 52.8],
  },
] as const;

describe("saddle and post", () => {
  for (const scenario of SADDLES) {
    it(scenario.name, () => {
      const [angle, x, y, height, setbacks] = scenario.in;
      const { value } = ok(
        runSheet(saddleSheet, {
          seat_angle_deg: angle,
          target_x_mm: x,
          target_y_mm: y,
          saddle_height_above_clamp_mm: height,
          setbacks_mm: [...setbacks],
          rail_range_plus_minus_mm: 15,
        }),
      );
      // By hand, Quayside, setback 0: extension (692 - 45) / sin 72.84 = 677.1; push 220 - 677.1 cos 72.84 = 20.2.
      scenario.rows.forEach(([setback, extension, push, within], i) => {
        const row = value.per_setback[i];
        expect(row?.setback_mm).toBe(setback);
        near(row?.extension_along_seat_tube_mm, extension, 0.06);
        near(row?.rail_shift_back_mm, push, 0.06);
        expect(row?.within_rail_range).toBe(within);
      });
      expect(value.best_setback_mm).toBe(scenario.best);
      expect(value.reachable).toBe(true);
      near(value.setback_for_centred_rails_mm, scenario.centred, 0.06);
      const extensionMm = value.per_setback.find((r) => r.setback_mm === scenario.best)?.extension_along_seat_tube_mm;
      const post = ok(postInsertion({ ...scenario.post, extensionMm: extensionMm ?? Number.NaN, markMm: 50 })).value;
      const [exposed, inserted, needed] = scenario.postExpect;
      near(post.exposed_mm, exposed, 0.06);
      near(post.inserted_mm, inserted, 0.06);
      near(post.insertion_needed_mm, needed, 1e-9);
      expect(post.verdict).toBe("fits");
    });
  }

  it("saddle height target 724 along the seat tube is 692 up", () => {
    // 0.883 x 820 = 724.06; x sin 72.84 = 691.8.
    const { value } = ok(saddleHeight({ inseamMm: 820 }));
    near(value.saddle_height_mm, 724, 0.1);
    near(value.saddle_height_mm * Math.sin((72.84 * Math.PI) / 180), 692, 0.5);
  });
});

describe("quill stems of the other two scenarios", () => {
  const allRoad = {
    stackMm: 551.5,
    reachMm: 383.6,
    headAngleDeg: 72.5,
    targetXMm: 556,
    targetYMm: 651,
    locknutStackMm: 24,
    spacerSumsMm: [0],
    stems: [
      {
        kind: "quill" as const,
        id: "m35",
        lengthMm: 80,
        angleDeg: -17,
        clampHeightMm: 36,
        barClampMm: 26.0,
        raiseMm: { lowest: 0, highest: 55 },
      },
    ],
    bars: [
      { id: "m36", handForwardMm: 115, handUpMm: 20, clampMm: 26.0 },
      { id: "m37", handForwardMm: 108, handUpMm: 18, clampMm: 31.8 },
    ],
  };
  it("m35 raised by 40 holds m36; m37 never goes in m35", () => {
    const { value } = ok(bestCockpit(allRoad));
    expect(value.best).toMatchObject({ stemId: "m35", barId: "m36", spacersMm: 40, turnedOver: false });
    near(value.best?.handXMm, 553.9, 0.05);
    near(value.best?.handYMm, 650.4, 0.05);
    // 2.15 from the printed inputs, which are themselves rounded to 0.1.
    near(value.best?.errorMm, 2.2, 0.06);
    expect(value.ranked.slice(1, 3).map((row) => row.spacersMm)).toEqual([35, 45]);
    near(value.ranked[1]?.errorMm, 5.4, 0.05);
    near(value.ranked[2]?.errorMm, 5.5, 0.05);
    expect(value.leftOut).toMatchObject([{ stemId: "m35", barId: "m37" }]);
    expect(value.ranked.every((row) => row.barId === "m36")).toBe(true);
  });

  const canalside = {
    stackMm: 517.9,
    reachMm: 394.5,
    headAngleDeg: 70.5,
    targetXMm: 294,
    targetYMm: 668,
    locknutStackMm: 26,
    spacerSumsMm: [0],
    stems: [
      {
        kind: "quill" as const,
        id: "c33",
        lengthMm: 60,
        angleDeg: 25,
        clampHeightMm: 40,
        barClampMm: 25.4,
        raiseMm: { lowest: 0, highest: 60 },
      },
    ],
    bars: [
      { id: "c34", handForwardMm: -120, handUpMm: 30, clampMm: 25.4 },
      { id: "c35", handForwardMm: -20, handUpMm: 0, clampMm: 25.4 },
    ],
  };
  it("c33 raised by 35 with the swept bar; the flat bar is 88 off", () => {
    const { value } = ok(bestCockpit(canalside));
    expect(value.best).toMatchObject({ barId: "c34", spacersMm: 35 });
    near(value.best?.handXMm, 290.3, 0.05);
    near(value.best?.handYMm, 666.3, 0.05);
    near(value.best?.errorMm, 4.1, 0.05);
    expect(value.ranked.slice(1, 3).map((row) => row.spacersMm)).toEqual([40, 30]);
    near(value.ranked[1]?.errorMm, 6.2, 0.05);
    near(value.ranked[2]?.errorMm, 6.7, 0.05);
    const flat = ok(bestCockpit({ ...canalside, bars: canalside.bars.slice(1) }));
    expect(flat.value.best).toMatchObject({ barId: "c35", spacersMm: 60 });
    near(flat.value.best?.errorMm, 88.3, 0.05);
    expect(flat.cautions.map((c) => c.code)).toContain("hands-not-on-target");
  });

  it("the mark always stands among the steps", () => {
    expect(quillSteps({ lowest: 0, highest: 12 })).toEqual([0, 5, 10, 12]);
    expect(quillSteps({ lowest: 0, highest: 0 })).toEqual([0]);
  });
});
