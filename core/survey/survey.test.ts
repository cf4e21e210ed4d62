import { describe, expect, it } from "vitest";
import { surveySources } from "../data/sources-survey.js";
import { runSheet, sheetFaults, startInput } from "../sheet/index.js";
import { donorSurvey } from "./donor-survey.js";
import { DONORS, exactReadings, WORKED_FRAME } from "./exact-frame.test-data.js";
import { MEASUREMENT_KINDS, SURVEY_SIGMA } from "./measurement-kinds.js";
import { newSideModel, placePoints, predictMeasurement, UNKNOWN_COUNT } from "./side-model.js";
import { type SurveyValue, survey } from "./survey.js";
import { surveyFrame } from "./survey-frame.js";
import type { SurveyInput, SurveyMeasurement } from "./survey-input.js";
import { surveySheet } from "./survey-sheet.js";

function solved(input: SurveyInput): SurveyValue {
  const answer = survey(input);
  if (answer.kind !== "answered") throw new Error(JSON.stringify(answer.refusals));
  return answer.value;
}

function refusals(input: SurveyInput) {
  const answer = survey(input);
  return answer.kind === "refused" ? answer.refusals : [];
}

const exact = exactReadings(WORKED_FRAME);
const constants = {
  lower_stack_mm: 12,
  top_tube_below_head_tube_top_mm: 35,
  down_tube_joint_above_head_tube_bottom_mm: 32,
};
const take = (names: readonly string[]): SurveyMeasurement[] =>
  names.map((name) => ({ name, value: exact[name] ?? Number.NaN }));

/** Eleven readings, just enough. */
const LEAST = [
  "bb_height_mm",
  "chainstay_mm",
  "rear_axle_height_mm",
  "seat_angle_deg",
  "seat_tube_cc_mm",
  "head_angle_deg",
  "head_tube_mm",
  "axle_to_crown_mm",
  "rake_mm",
  "front_centre_mm",
  "front_axle_height_mm",
];
const ALL = MEASUREMENT_KINDS.map((kind) => kind.name).filter(
  (name) => !name.includes("joint") && !name.includes("below"),
);

describe("worked example of the trade's page, method M4", () => {
  // CS 442, drop 58, A-C 392, rake 45, lower stack 12, HT 145, FC 616, HA 71, SA 73, wheels R 346:
  // stack 560.0, reach 392.8, wheelbase 1051.4, trail 71.5, BB height 288.0.
  it("from just enough readings", () => {
    const value = solved({ constants, measurements: take(LEAST) });
    expect(value.adjusted.stack_mm).toBeCloseTo(560.0, 1);
    expect(value.adjusted.reach_mm).toBeCloseTo(392.8, 1);
    expect(value.shape.wheelbase_mm).toBeCloseTo(1051.4, 1);
    expect(value.adjusted.trail_mm).toBeCloseTo(71.5, 1);
    expect(value.shape.bb_height_mm).toBeCloseTo(288.0, 6);
    expect(value.degrees_of_freedom).toBe(0);
  });

  it("with nothing to check a reading says so, and gives no normalised residual", () => {
    const answer = survey({ constants, measurements: take(LEAST) });
    if (answer.kind !== "answered") throw new Error("refused");
    expect(answer.cautions.map((c) => c.code)).toContain("no-redundancy");
    expect(answer.value.largest_normalised_residual).toBeNull();
    expect(Object.values(answer.value.normalised_residuals).every((w) => w === null)).toBe(true);
    expect(Object.values(answer.value.minimal_detectable_blunder).every((w) => w === null)).toBe(true);
    expect(answer.value.uncheckable).toHaveLength(11);
  });

  it("from all readings the same frame, all residuals nought", () => {
    const value = solved({ constants, measurements: take(ALL) });
    expect(value.adjusted.stack_mm).toBeCloseTo(exact["=stack_mm"] ?? 0, 6);
    expect(value.adjusted.reach_mm).toBeCloseTo(exact["=reach_mm"] ?? 0, 6);
    expect(value.adjusted.trail_mm).toBeCloseTo(exact["=trail_mm"] ?? 0, 6);
    expect(value.chi_square).toBeLessThan(1e-9);
    expect(value.degrees_of_freedom).toBe(ALL.length - 11);
    for (const key of ALL) expect(value.adjusted_measurements[key]).toBeCloseTo(exact[key] ?? 0, 5);
  });
});

describe("slopes of the model", () => {
  it("agree with differences for every kind of measurement and every unknown", () => {
    const model = newSideModel();
    const at = [288, 438, 346, 1.27, 490, 547, 0.06, 1.24, 145, 392, 45, 35, 32];
    const slopes = new Float64Array(UNKNOWN_COUNT);
    MEASUREMENT_KINDS.forEach((kind, index) => {
      const read = (j: number, step: number): number => {
        model.u.set(at);
        model.u[j] = (at[j] ?? 0) + step;
        model.lowerStack = 12;
        placePoints(model);
        return predictMeasurement(model, index, undefined);
      };
      read(0, 0);
      predictMeasurement(model, index, slopes);
      const given = Array.from(slopes);
      for (let j = 0; j < UNKNOWN_COUNT; j++) {
        const step = 1e-5 * Math.max(1, Math.abs(at[j] ?? 0));
        const difference = (read(j, step) - read(j, -step)) / (2 * step);
        expect(given[j], `${kind.name} by unknown ${j}`).toBeCloseTo(difference, 4);
      }
    });
  });
});

describe("scenarios of the trade's page", () => {
  const CASES = [
    // blunder, read, re-measured, |w| as measured, adjusted_after_fix: HA, its sigma, SA, CS, drop, FC
    ["quayside", "top_tube_cc", 551, 5.5, 71.06, 0.18, 72.83, 442.3, 57.4, 615.2],
    ["moorside", "wheelbase", 1012, 7.4, 72.47, 0.19, 73.07, 429.8, 70.2, 592.3],
    ["canalside", "seat_tube_cc", 400, 7.1, 70.5, 0.18, 72.37, 430.7, 32.1, 611.6],
  ] as const;
  const NAMES: Record<string, string> = {
    top_tube_cc: "top_tube_actual_mm",
    wheelbase: "wheelbase_mm",
    seat_tube_cc: "seat_tube_cc_mm",
  };
  for (const [scenario, word, again, w, head, headSd, seat, chainstay, drop, frontCentre] of CASES) {
    const donor = DONORS[scenario];
    it(`${scenario}: ${word} has the largest residual, |w| ${w}, and the global test fails`, () => {
      const value = solved(donorSurvey(donor));
      expect(value.largest_normalised_residual?.measurement).toBe(NAMES[word]);
      expect(Math.abs(value.largest_normalised_residual?.value ?? 0)).toBeCloseTo(w, 1);
      expect(value.global_test_passes).toBe(false);
      expect(value.readings[0]?.measurement).toBe(NAMES[word]);
      expect(value.after_removing_largest?.global_test_passes).toBe(true);
      // The others say what the re-measurement found, within 3 mm.
      expect(Math.abs((value.after_removing_largest?.predicted_value_of_removed ?? 0) - again)).toBeLessThan(3);
    });
    it(`${scenario}: re-measured as ${again}, the adjusted figures stand`, () => {
      const value = solved(donorSurvey({ ...donor, measured: { ...donor.measured, [word]: again } }));
      expect(Math.abs(value.adjusted.head_angle_deg - head)).toBeLessThan(0.006);
      expect(Math.abs(value.std.head_angle_deg - headSd)).toBeLessThan(0.006);
      expect(Math.abs(value.adjusted.seat_angle_deg - seat)).toBeLessThan(0.006);
      expect(Math.abs(value.frame.chainstay_mm - chainstay)).toBeLessThan(0.06);
      expect(Math.abs(value.frame.bb_drop_mm - drop)).toBeLessThan(0.06);
      expect(Math.abs(value.shape.front_centre_mm - frontCentre)).toBeLessThan(0.06);
      expect(value.global_test_passes).toBe(true);
      expect(value.after_removing_largest).toBeUndefined();
    });
    it(`${scenario}: with both joint offsets exact the blunder keeps its |w|`, () => {
      const input = donorSurvey(donor);
      const joints = ["top_tube_below_head_tube_top_mm", "down_tube_joint_above_head_tube_bottom_mm"];
      const value = solved({
        constants: {
          ...input.constants,
          top_tube_below_head_tube_top_mm: donor.measured.top_tube_joint_below_head_top,
          down_tube_joint_above_head_tube_bottom_mm: donor.measured.down_tube_joint_above_head_bottom,
        },
        measurements: input.measurements.filter((m) => !joints.includes(m.name)),
      });
      expect(value.largest_normalised_residual?.measurement).toBe(NAMES[word]);
      expect(Math.abs(value.largest_normalised_residual?.value ?? 0)).toBeCloseTo(w, 1);
    });
  }

  it("Quayside: sd of the chainstay is 1.2 (chain_first_answer), its survey value 442.3", () => {
    const measured = { ...DONORS.quayside.measured, top_tube_cc: 551 };
    const value = solved(donorSurvey({ ...DONORS.quayside, measured }));
    expect(value.frame.chainstay_mm).toBeCloseTo(442.3, 1);
    expect(value.frame_std.chainstay_mm).toBeCloseTo(1.2, 1);
  });

  it("Quayside: top tube and its joint share one residual; the caution asks to measure both", () => {
    const answer = survey(donorSurvey(DONORS.quayside));
    if (answer.kind !== "answered") throw new Error("refused");
    expect(answer.value.readings[0]?.shares_residual_with).toEqual(["top_tube_below_head_tube_top_mm"]);
    const off = answer.cautions.find((c) => c.code === "measurement-off");
    expect(off?.message).toContain("measure both again");
    expect(answer.value.uncheckable.map((u) => u.measurement)).toContain("top_tube_below_head_tube_top_mm");
  });

  it("holding the tyre radii ever tighter (sd 0.1 to 0.00001) moves nothing by more than a thousandth", () => {
    const loose = solved(donorSurvey({ ...DONORS.quayside, radiusSdMm: 1e-2 }));
    for (const radiusSdMm of [1e-3, 1e-4, 1e-5, 1e-6]) {
      const value = solved(donorSurvey({ ...DONORS.quayside, radiusSdMm }));
      expect(value.adjusted.stack_mm).toBeCloseTo(loose.adjusted.stack_mm, 3);
      expect(value.normalised_residuals.front_axle_height_mm).toBeCloseTo(
        loose.normalised_residuals.front_axle_height_mm ?? 0,
        3,
      );
    }
  });
});

describe("checkability", () => {
  it("what it proposes does make the reading checkable", () => {
    const names = LEAST.concat(["top_tube_actual_mm", "wheelbase_mm"]);
    const value = solved({ constants, measurements: take(names) });
    const helped = value.uncheckable.filter((u) => u.measure_also !== u.measurement);
    expect(helped.length).toBeGreaterThan(0);
    for (const u of helped) {
      const more = solved({ constants, measurements: take([...names, u.measure_also]) });
      expect(more.redundancy_numbers[u.measurement]).toBeCloseTo(u.redundancy_then, 3);
      expect(u.redundancy_then).toBeGreaterThanOrEqual(0.1);
    }
  });
  it("a second reading of the same is keyed #2", () => {
    const value = solved({ constants, measurements: take([...LEAST, "rake_mm"]) });
    expect(value.redundancy_numbers["rake_mm#2"]).toBeCloseTo(0.5, 6);
    expect(value.redundancy_numbers.rake_mm).toBeCloseTo(0.5, 6);
  });
});

describe("refusals and hard cases", () => {
  it("too few: says what is open and what to measure, and that is enough", () => {
    const ten = LEAST.filter((name) => name !== "rake_mm");
    const [refusal] = refusals({ constants, measurements: take(ten) });
    expect(refusal?.code).toBe("undetermined");
    expect(refusal?.message).toContain("Still open");
    const more = /Measure as well: ([a-z_]+)/.exec(refusal?.message ?? "")?.[1] ?? "";
    expect(survey({ constants, measurements: take([...ten, more]) }).kind).toBe("answered");
  });
  it("many readings that leave a part open are refused just so", () => {
    // Without the slope, only the head end of the top tube is known: its seat end may lie anywhere on the seat tube.
    const without = ["seat_tube_cc_mm", "top_tube_actual_mm", "top_tube_slope_deg", "rear_axle_to_seat_cluster_mm"];
    const names = ALL.filter((name) => ![...without, "front_axle_to_seat_cluster_mm"].includes(name));
    expect(names.length).toBeGreaterThan(11);
    const [refusal] = refusals({ constants, measurements: take(names) });
    expect(refusal?.code).toBe("undetermined");
    expect(refusal?.message).toContain("seat tube");
  });
  it("none at all", () => {
    expect(refusals({ constants, measurements: [] })[0]?.code).toBe("undetermined");
  });
  it("all faults at once: unknown name with a hint, sd nought, no number, out of range", () => {
    const found = refusals({
      constants,
      measurements: [
        ...take(ALL),
        { name: "chain_stay_mm", value: 440 },
        { name: "rear_radius_mm", value: 346 },
        { name: "rake_mm", value: 45, sd: 0 },
        { name: "rake_mm", value: Number.NaN },
        { name: "chainstay_mm", value: 1e9 },
        { name: "wheelbase_mm", value: -1052 },
        { name: "head_angle_deg", value: Number.POSITIVE_INFINITY },
      ],
    });
    expect(found).toHaveLength(7);
    expect(found[0]?.message).toContain("Did you mean chainstay_mm?");
    expect(found[1]?.message).toContain("Did you mean rear_axle_height_mm?");
    expect(found[2]?.at).toBe(`measurements[${ALL.length + 2}].sd`);
  });
  it("a missing lower stack is not taken as nought", () => {
    const found = refusals({ constants: {} as SurveyInput["constants"], measurements: take(ALL) });
    expect(found.map((r) => r.at)).toContain("constants.lower_stack_mm");
  });
  it("a down tube without its joint is refused", () => {
    const { down_tube_joint_above_head_tube_bottom_mm: _, ...rest } = constants;
    expect(refusals({ constants: rest, measurements: take(ALL) })[0]?.code).toBe("missing");
  });
  it("a rake as long as the fork is refused", () => {
    const measurements = take(ALL).map((m) => (m.name === "rake_mm" ? { ...m, value: 450 } : m));
    expect(refusals({ constants, measurements })[0]?.code).toBe("impossible-figure");
  });
  it("just enough readings whose triangle does not close are refused", () => {
    // Front centre 3000 with a fork, head tube and top tube of an ordinary frame: nothing reaches so far.
    const names = [...LEAST.filter((n) => n !== "front_axle_height_mm"), "top_tube_actual_mm"];
    const measurements = take(names).map((m) => (m.name === "front_centre_mm" ? { ...m, value: 3000 } : m));
    expect(refusals({ constants, measurements })[0]?.code).toBe("does-not-close");
  });
  it("a reading far off is named, whether the fit comes near or not: inch, centimetre, a nought too many", () => {
    for (const name of ["chainstay_mm", "seat_tube_cc_mm", "top_tube_actual_mm", "wheelbase_mm", "bb_height_mm"]) {
      for (const factor of [1 / 25.4, 1 / 10, 10]) {
        const index = ALL.indexOf(name);
        const measurements = take(ALL).map((m) => (m.name === name ? { ...m, value: m.value * factor } : m));
        const answer = survey({ constants, measurements });
        const notices =
          answer.kind === "refused" ? answer.refusals : answer.cautions.filter((c) => c.code === "measurement-far-off");
        expect(notices[0]?.at, `${name} × ${factor}`).toBe(`measurements[${index}].value`);
      }
    }
  });
  it("lengths alone close a second frame: said so, with the measurement that decides", () => {
    const names = [
      "front_centre_mm",
      "chainstay_mm",
      "bb_height_mm",
      "rear_axle_height_mm",
      "rake_mm",
      "wheelbase_mm",
    ].concat([
      "top_tube_actual_mm",
      "seat_tube_cc_mm",
      "head_tube_mm",
      "down_tube_cc_mm",
      "front_axle_to_head_tube_top_mm",
    ]);
    const answer = survey({ constants, measurements: take(names) });
    if (answer.kind !== "answered") throw new Error("refused");
    const caution = answer.cautions.find((c) => c.code === "second-frame-fits");
    const more = /Measuring ([a-z_]+) as well/.exec(caution?.message ?? "")?.[1] ?? "";
    const decided = survey({ constants, measurements: take([...names, more]) });
    if (decided.kind !== "answered") throw new Error("refused");
    expect(decided.cautions.map((c) => c.code)).not.toContain("second-frame-fits");
    expect(decided.value.adjusted.stack_mm).toBeCloseTo(exact["=stack_mm"] ?? 0, 5);
  });
  it("a joint given twice: the constant rules, the reading is checked against it", () => {
    const answer = survey({
      constants,
      measurements: [...take(ALL), { name: "top_tube_below_head_tube_top_mm", value: 40, sd: 1 }],
    });
    if (answer.kind !== "answered") throw new Error("refused");
    expect(answer.cautions.map((c) => c.code)).toContain("joint-given-twice");
    expect(answer.value.redundancy_numbers.top_tube_below_head_tube_top_mm).toBeCloseTo(1, 9);
    expect(answer.value.normalised_residuals.top_tube_below_head_tube_top_mm).toBeCloseTo(5, 6);
    expect(answer.value.adjusted.stack_mm).toBeCloseTo(exact["=stack_mm"] ?? 0, 4);
  });
  it("a top-tube joint given nowhere is worked out, costs one check and is said", () => {
    const known = survey({ constants, measurements: take(ALL) });
    const { top_tube_below_head_tube_top_mm: _joint, ...rest } = constants;
    const open = survey({ constants: rest, measurements: take(ALL) });
    if (known.kind !== "answered" || open.kind !== "answered") throw new Error("refused");
    expect(open.value.degrees_of_freedom).toBe(known.value.degrees_of_freedom - 1);
    expect(open.cautions.map((c) => c.code)).toContain("joint-not-given");
    expect(known.cautions.map((c) => c.code)).not.toContain("joint-not-given");
    expect(open.value.adjusted.stack_mm).toBeCloseTo(exact["=stack_mm"] ?? 0, 4);
  });
  it("a joint read ten times too long: both readings that share the residual are named", () => {
    const donor = { ...DONORS.quayside.measured, top_tube_cc: 551, top_tube_joint_below_head_top: 350 };
    const answer = survey(donorSurvey({ ...DONORS.quayside, measured: donor }));
    if (answer.kind !== "answered") throw new Error("refused");
    const caution = answer.cautions.find((c) => c.code === "measurement-far-off");
    expect(caution?.message).toContain("top_tube_below_head_tube_top_mm");
    expect(caution?.message).toContain("top_tube_actual_mm");
  });
  it("contradicting readings never give a number that is none", () => {
    const measurements = ALL.map((name, i) => ({
      name,
      value: (exact[name] ?? 1) * (i % 2 === 0 ? 0.7 : 1.4),
      sd: 0.5,
    }));
    const answer = survey({ constants, measurements });
    if (answer.kind === "answered") {
      expect(JSON.stringify(answer.value)).not.toContain('_mm":null,"reach');
      for (const x of Object.values(answer.value.adjusted)) expect(Number.isFinite(x)).toBe(true);
      expect(answer.value.global_test_passes).toBe(false);
    } else {
      expect(answer.refusals.length).toBeGreaterThan(0);
    }
  });
});

describe("surveyFrame", () => {
  it("gives the fourteen figures with sd and covariance", () => {
    const measured = { ...DONORS.quayside.measured, top_tube_cc: 551 };
    const input = donorSurvey({ ...DONORS.quayside, measured });
    const answer = surveyFrame(input);
    if (answer.kind !== "answered") throw new Error("refused");
    const { frame, frame_std, keys, covariance } = answer.value;
    expect(keys).toHaveLength(14);
    keys.forEach((key, i) => {
      expect(Math.sqrt(covariance[i]?.[i] ?? -1)).toBeCloseTo(frame_std[key], 9);
      keys.forEach((_, j) => {
        expect(covariance[i]?.[j]).toBeCloseTo(covariance[j]?.[i] ?? Number.NaN, 9);
      });
    });
    expect(frame.lower_stack_mm).toBe(12);
    expect(frame_std.lower_stack_mm).toBe(0);
    // Rear radius is held to 0.1, and drop = rear radius - BB height.
    expect(frame.rear_radius_mm - frame.bb_drop_mm).toBeCloseTo(answer.value.shape.bb_height_mm, 9);
    // Figures of the shape follow from the fourteen: stack by hand from tubes and angles.
    const rad = Math.PI / 180;
    const stack =
      frame.seat_tube_cc_mm * Math.sin(frame.seat_angle_deg * rad) +
      frame.top_tube_actual_mm * Math.sin(frame.top_tube_slope_deg * rad) +
      frame.top_tube_below_head_tube_top_mm * Math.sin(frame.head_angle_deg * rad);
    expect(answer.value.shape.stack_mm).toBeCloseTo(stack, 9);
    // And its sd from the covariance: slopes by hand.
    const slope: Partial<Record<string, number>> = {
      seat_tube_cc_mm: Math.sin(frame.seat_angle_deg * rad),
      seat_angle_deg: frame.seat_tube_cc_mm * Math.cos(frame.seat_angle_deg * rad) * rad,
      top_tube_actual_mm: Math.sin(frame.top_tube_slope_deg * rad),
      top_tube_slope_deg: frame.top_tube_actual_mm * Math.cos(frame.top_tube_slope_deg * rad) * rad,
      top_tube_below_head_tube_top_mm: Math.sin(frame.head_angle_deg * rad),
      head_angle_deg: frame.top_tube_below_head_tube_top_mm * Math.cos(frame.head_angle_deg * rad) * rad,
    };
    let variance = 0;
    keys.forEach((a, i) => {
      keys.forEach((b, j) => {
        variance += (slope[a] ?? 0) * (slope[b] ?? 0) * (covariance[i]?.[j] ?? 0);
      });
    });
    expect(Math.sqrt(variance)).toBeCloseTo(answer.value.shape_std.stack_mm, 9);
  });
});

describe("the sheet", () => {
  it("is well made, and answers its own start values through the common door", () => {
    expect(sheetFaults(surveySheet)).toEqual([]);
    expect(runSheet(surveySheet, startInput(surveySheet)).kind).toBe("answered");
  });
  it("its start values are answered, and its id and keys are those of docs/methods/sheets.md", () => {
    expect(surveySheet.id).toBe("survey");
    const list = surveySheet.fields.find((f) => f.kind === "list");
    const measurements = (list?.kind === "list" ? list.start : []) as unknown as SurveyMeasurement[];
    const answer = surveySheet.run({ constants, measurements });
    if (answer.kind !== "answered") throw new Error("refused");
    for (const give of surveySheet.gives) {
      if (give.key !== "after_removing_largest") expect(answer.value).toHaveProperty(give.key);
    }
    const ids = new Set(surveySources.map((row) => row.id));
    for (const id of answer.sources) expect(ids.has(id)).toBe(true);
    expect(answer.bands["adjusted.stack_mm"]?.means).toBe("95 %");
  });
  it("bands are 1.96 sd either side; sd as of a careful workshop where none is given", () => {
    const answer = survey({ constants, measurements: take(ALL) });
    if (answer.kind !== "answered") throw new Error("refused");
    const band = answer.bands["adjusted.trail_mm"];
    expect(((band?.high ?? 0) - (band?.low ?? 0)) / 2).toBeCloseTo(1.96 * answer.value.std.trail_mm, 9);
    expect(answer.value.readings.find((r) => r.measurement === "wheelbase_mm")?.sd).toBe(SURVEY_SIGMA.wheelbase_mm);
  });
});
