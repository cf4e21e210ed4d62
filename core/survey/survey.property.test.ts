import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ExactFrame, exactReadings } from "./exact-frame.test-data.js";
import { MEASUREMENT_NAMES, SURVEY_SIGMA } from "./measurement-kinds.js";
import { type SurveyValue, survey } from "./survey.js";
import type { SurveyInput, SurveyMeasurement } from "./survey-input.js";

const frames: fc.Arbitrary<ExactFrame> = fc.record({
  head: fc.double({ min: 66, max: 75, noNaN: true }),
  seat: fc.double({ min: 70, max: 76, noNaN: true }),
  chainstay: fc.double({ min: 400, max: 480, noNaN: true }),
  drop: fc.double({ min: -10, max: 85, noNaN: true }),
  rearRadius: fc.double({ min: 250, max: 370, noNaN: true }),
  frontRadius: fc.double({ min: 250, max: 370, noNaN: true }),
  crown: fc.double({ min: 360, max: 480, noNaN: true }),
  rake: fc.double({ min: 30, max: 70, noNaN: true }),
  headTube: fc.double({ min: 90, max: 220, noNaN: true }),
  lowerStack: fc.double({ min: 0, max: 20, noNaN: true }),
  frontCentre: fc.double({ min: 570, max: 720, noNaN: true }),
  seatTube: fc.double({ min: 350, max: 620, noNaN: true }),
  topJoint: fc.double({ min: 15, max: 60, noNaN: true }),
  downJoint: fc.double({ min: 15, max: 60, noNaN: true }),
});
const noises = fc.array(fc.double({ min: -1.5, max: 1.5, noNaN: true }), { minLength: 23, maxLength: 23 });
const SETTINGS = { seed: 20240611, numRuns: 60 };

function inputOf(frame: ExactFrame, noise: readonly number[] = []): SurveyInput {
  const exact = exactReadings(frame);
  return {
    constants: { lower_stack_mm: frame.lowerStack },
    measurements: MEASUREMENT_NAMES.map((name, i) => {
      const sd = SURVEY_SIGMA[name] ?? 1;
      return { name, value: (exact[name] ?? 0) + (noise[i] ?? 0) * sd, sd };
    }),
  };
}

function solved(input: SurveyInput): SurveyValue {
  const answer = survey(input);
  if (answer.kind !== "answered") throw new Error(JSON.stringify(answer.refusals));
  return answer.value;
}

function near(a: SurveyValue, b: SurveyValue, digits = 5): void {
  for (const key of ["stack_mm", "reach_mm", "trail_mm", "head_angle_deg", "seat_angle_deg"] as const) {
    expect(a.adjusted[key]).toBeCloseTo(b.adjusted[key], digits);
    expect(a.std[key]).toBeCloseTo(b.std[key], digits);
  }
  expect(a.chi_square).toBeCloseTo(b.chi_square, digits);
}

describe("survey, for any frame", () => {
  it("exact readings give the frame back (worked out the other way round)", () => {
    fc.assert(
      fc.property(frames, (frame) => {
        const exact = exactReadings(frame);
        const value = solved(inputOf(frame));
        expect(value.adjusted.stack_mm).toBeCloseTo(exact["=stack_mm"] ?? 0, 5);
        expect(value.adjusted.reach_mm).toBeCloseTo(exact["=reach_mm"] ?? 0, 5);
        expect(value.adjusted.trail_mm).toBeCloseTo(exact["=trail_mm"] ?? 0, 5);
        expect(value.chi_square).toBeLessThan(1e-8);
      }),
      SETTINGS,
    );
  });

  it("the order of the measurements does not matter", () => {
    fc.assert(
      fc.property(frames, noises, fc.integer({ min: 1, max: 22 }), (frame, noise, turn) => {
        const input = inputOf(frame, noise);
        const turned = [...input.measurements.slice(turn), ...input.measurements.slice(0, turn)].reverse();
        const a = solved(input);
        const b = solved({ ...input, measurements: turned });
        near(a, b);
        const [first, second] = a.readings.filter((r) => r.shares_residual_with.length === 0);
        const lead = Math.abs(first?.normalised_residual ?? 0) - Math.abs(second?.normalised_residual ?? 0);
        if (lead > 1e-3 && first?.measurement === a.largest_normalised_residual?.measurement) {
          expect(b.largest_normalised_residual?.measurement).toBe(a.largest_normalised_residual?.measurement);
        }
      }),
      SETTINGS,
    );
  });

  it("all lengths and their sd times k: lengths times k, angles and tests as before", () => {
    fc.assert(
      fc.property(frames, noises, fc.double({ min: 0.5, max: 2, noNaN: true }), (frame, noise, k) => {
        const input = inputOf(frame, noise);
        const scale = (m: SurveyMeasurement): SurveyMeasurement =>
          m.name.endsWith("_deg") ? m : { name: m.name, value: m.value * k, sd: (m.sd ?? 1) * k };
        const a = solved(input);
        const b = solved({
          constants: { lower_stack_mm: input.constants.lower_stack_mm * k },
          measurements: input.measurements.map(scale),
        });
        expect(b.adjusted.stack_mm).toBeCloseTo(a.adjusted.stack_mm * k, 4);
        expect(b.std.reach_mm).toBeCloseTo(a.std.reach_mm * k, 5);
        expect(b.adjusted.head_angle_deg).toBeCloseTo(a.adjusted.head_angle_deg, 6);
        expect(b.chi_square).toBeCloseTo(a.chi_square, 5);
      }),
      SETTINGS,
    );
  });

  it("two equal readings with sd times sqrt 2 weigh as one", () => {
    fc.assert(
      fc.property(frames, noises, fc.nat({ max: 22 }), (frame, noise, which) => {
        const input = inputOf(frame, noise);
        const chosen = input.measurements[which];
        if (chosen === undefined) return;
        const half = { ...chosen, sd: (chosen.sd ?? 1) * Math.SQRT2 };
        const rest = input.measurements.filter((m) => m !== chosen);
        near(solved(input), solved({ ...input, measurements: [...rest, half, half] }));
      }),
      SETTINGS,
    );
  });

  it("redundancy numbers add up to the degrees of freedom, each between 0 and 1", () => {
    fc.assert(
      fc.property(frames, noises, (frame, noise) => {
        const value = solved(inputOf(frame, noise));
        const numbers = Object.values(value.redundancy_numbers);
        expect(numbers.reduce((a, b) => a + b, 0)).toBeCloseTo(value.degrees_of_freedom, 7);
        for (const r of numbers) {
          expect(r).toBeGreaterThanOrEqual(0);
          expect(r).toBeLessThanOrEqual(1);
        }
      }),
      SETTINGS,
    );
  });

  it("leaving out the largest: its predicted value is the reading less its estimated blunder, near enough", () => {
    fc.assert(
      fc.property(frames, noises, (frame, noise) => {
        const input = inputOf(frame, noise);
        const measurements = input.measurements.map((m) =>
          m.name === "wheelbase_mm" ? { ...m, value: m.value + 25 } : m,
        );
        const value = solved({ ...input, measurements });
        expect(value.largest_normalised_residual?.measurement).toBe("wheelbase_mm");
        const wheelbase = measurements.find((m) => m.name === "wheelbase_mm")?.value ?? 0;
        const predicted = value.after_removing_largest?.predicted_value_of_removed ?? 0;
        expect(Math.abs(wheelbase - (value.estimated_blunder_of_largest ?? 0) - predicted)).toBeLessThan(1);
      }),
      SETTINGS,
    );
  });
});

describe("the standard deviations are what repeated surveys scatter by", () => {
  it("400 surveys with normal errors: scatter of stack, reach, trail within 12 % of the sd; chi-square near its freedom", () => {
    // A small seeded generator, so that the check is the same every time.
    let state = 12345;
    const uniform = (): number => {
      state = (state + 0x6d2b79f5) | 0;
      let t = Math.imul(state ^ (state >>> 15), 1 | state);
      t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
      return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const frame: ExactFrame = {
      head: 71,
      seat: 73,
      chainstay: 442,
      drop: 58,
      rearRadius: 346,
      frontRadius: 346,
      crown: 392,
      rake: 45,
      headTube: 145,
      lowerStack: 12,
      frontCentre: 616,
      seatTube: 490,
      topJoint: 35,
      downJoint: 32,
    };
    const truth = exactReadings(frame);
    const sd = solved(inputOf(frame)).std;
    const sums = { stack_mm: 0, reach_mm: 0, trail_mm: 0 };
    let chi = 0;
    const runs = 400;
    let freedom = 0;
    for (let run = 0; run < runs; run++) {
      const value = solved(inputOf(frame, MEASUREMENT_NAMES.map(normal)));
      for (const key of ["stack_mm", "reach_mm", "trail_mm"] as const) {
        sums[key] += (value.adjusted[key] - (truth[`=${key}`] ?? 0)) ** 2;
      }
      chi += value.chi_square;
      freedom = value.degrees_of_freedom;
    }
    for (const key of ["stack_mm", "reach_mm", "trail_mm"] as const) {
      expect(Math.abs(Math.sqrt(sums[key] / runs) / sd[key] - 1)).toBeLessThan(0.12);
    }
    // Mean of chi-square is its freedom, sd of the mean sqrt(2 f / runs): 10 ± 0.22.
    expect(Math.abs(chi / runs - freedom)).toBeLessThan(4 * Math.sqrt((2 * freedom) / runs));
  });
});
