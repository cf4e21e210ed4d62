import { FRAME_KEYS, type FrameKey } from "../geometry/frame-measures.js";
import { chiSquareQuantile, element } from "../numeric/index.js";
import { type Answer, answered, type Band, type Caution, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { type Uncheckable, uncheckable, uncheckableSentence } from "./checkability.js";
import {
  figuresOf,
  HEADLINE_KEYS,
  type HeadlineKey,
  pickFigures,
  pickSds,
  SHAPE_KEYS,
  type ShapeKey,
} from "./derived-figures.js";
import { fitSurvey, predictFromFit, type SurveyFit, varianceOf } from "./fit-survey.js";
import { type SolvedSurvey, SURVEY_SOURCE_IDS, solveSurvey } from "./solve-survey.js";
import type { SurveyInput } from "./survey-input.js";
import { largestRow, sharedResiduals } from "./worst-reading.js";

/** A normalised residual beyond this names a reading as off (0.1 % two-sided). */
export const FLAG_LIMIT = 3.29;
/** Baarda's delta0 for a test at 0.1 % with power 80 %. */
export const DELTA0 = 4.13;
/** Half width of a 95 % band in standard deviations. */
const NINETY_FIVE = 1.96;

/** One reading against the rest. `null` where nothing checks it. */
export interface ReadingCheck {
  readonly measurement: string;
  readonly measured: number;
  readonly sd: number;
  readonly adjusted: number;
  readonly residual: number;
  readonly normalised_residual: number | null;
  readonly redundancy: number;
  readonly minimal_detectable_blunder: number | null;
  readonly estimated_blunder: number | null;
  readonly flagged: boolean;
  /** Readings that share one residual with this one: nobody can say from the numbers which of them is off. */
  readonly shares_residual_with: readonly string[];
}

export interface AfterRemoving {
  readonly removed: string;
  readonly adjusted: Readonly<Record<HeadlineKey, number>>;
  readonly std: Readonly<Record<HeadlineKey, number>>;
  readonly chi_square: number;
  readonly degrees_of_freedom: number;
  readonly global_test_passes: boolean;
  readonly predicted_value_of_removed: number;
}

export interface SurveyValue {
  readonly adjusted: Readonly<Record<HeadlineKey, number>>;
  readonly std: Readonly<Record<HeadlineKey, number>>;
  readonly cov_stack_reach_mm2: number;
  readonly corr_stack_reach: number;
  readonly adjusted_measurements: Readonly<Record<string, number>>;
  readonly residuals_measured_minus_adjusted: Readonly<Record<string, number>>;
  /** `null` where nothing checks the reading. */
  readonly normalised_residuals: Readonly<Record<string, number | null>>;
  readonly redundancy_numbers: Readonly<Record<string, number>>;
  /** `null` where nothing checks the reading: a slip of any size would go unseen. */
  readonly minimal_detectable_blunder: Readonly<Record<string, number | null>>;
  readonly chi_square: number;
  readonly degrees_of_freedom: number;
  /** 0 where there is nothing to test. */
  readonly chi_square_limit_95: number;
  readonly global_test_passes: boolean;
  /** Signed. `null` where no reading is checked by another. */
  readonly largest_normalised_residual: { readonly measurement: string; readonly value: number } | null;
  readonly estimated_blunder_of_largest: number | null;
  readonly after_removing_largest?: AfterRemoving;
  /** The fourteen figures of the frame as `fork-swap` takes them, and their standard deviations. */
  readonly frame: Readonly<Record<FrameKey, number>>;
  readonly frame_std: Readonly<Record<FrameKey, number>>;
  readonly shape: Readonly<Record<ShapeKey, number>>;
  readonly shape_std: Readonly<Record<ShapeKey, number>>;
  /** All readings, the worst first. */
  readonly readings: readonly ReadingCheck[];
  readonly uncheckable: readonly Uncheckable[];
  readonly iterations: number;
}

/**
 * What do all my measurements together say, how surely, and which one is wrong?
 *
 * Weighted least squares on the plane model of the frame (11 unknowns, more where joint offsets are measured).
 * v = measured − adjusted; w = v/sqrt((R − A Cx Aᵀ)_ii); r = (R − A Cx Aᵀ)_ii/R_ii; smallest blunder that is found =
 * sd × 4.13/sqrt(r); estimated blunder = v/r. Covariances are not scaled by chi-square.
 *
 * @param input lengths in mm, angles in degrees, sd one standard deviation (the workshop's where left out).
 * @param options patient (default true): where one reading is far off, go on until the bent fit is found (up to about
 *   0.3 s); false refuses sooner and names the reading, for use at every keystroke.
 * @returns adjusted figures with 95 % bands (1.96 sd), every reading against the rest, and cautions that name readings
 *   beyond 3.29; or refusals where the frame is not settled, with what to measure.
 * Limits: frame in its plane of symmetry, level ground, both tyres on it; one blunder at a time is named surely; a
 *   reading with redundancy under 0.1 cannot be checked.
 * Sources: survey-side-view, survey-ghilani, survey-baarda, survey-workshop-sigma.
 */
export function survey(input: SurveyInput, options: { readonly patient?: boolean } = {}): Answer<SurveyValue> {
  return surveyOf(solveSurvey(input, options.patient ?? true));
}

/** The survey's answer from its solution. */
export function surveyOf(solved: SolvedSurvey): Answer<SurveyValue> {
  if (solved.kind === "refused") return refused(solved.refusals);
  const { fitted } = solved;
  const { fit, read, rows, model } = fitted;
  const figures = figuresOf(model);
  const adjusted = pickFigures(figures, HEADLINE_KEYS);
  const std = pickSds(fitted, figures, HEADLINE_KEYS);
  const covariance = varianceOf(fitted, figures.stack_mm.slopes, figures.reach_mm.slopes);
  const limit = chiSquareLimit(fit.degreesOfFreedom);
  const passes = fit.chiSquare <= limit || fit.degreesOfFreedom === 0;
  const checks = readingChecks(fitted);
  const worst = largestRow(fitted);
  const worstKey = worst === undefined ? "" : (read.keys[element(rows, worst)] ?? "");
  const after = passes || worst === undefined ? undefined : afterRemoving(fitted, worst);
  const weak = uncheckable(fitted);
  const frame = pickFigures(figures, FRAME_KEYS);
  const frameStd = pickSds(fitted, figures, FRAME_KEYS);
  const shape = pickFigures(figures, SHAPE_KEYS);
  const shapeStd = pickSds(fitted, figures, SHAPE_KEYS);
  const byKey = <T>(pick: (check: ReadingCheck) => T): Record<string, T> =>
    Object.fromEntries(checks.map((check) => [check.measurement, pick(check)]));

  const value: SurveyValue = {
    adjusted,
    std,
    cov_stack_reach_mm2: covariance,
    corr_stack_reach: covariance / (std.stack_mm * std.reach_mm),
    adjusted_measurements: byKey((c) => c.adjusted),
    residuals_measured_minus_adjusted: byKey((c) => c.residual),
    normalised_residuals: byKey((c) => c.normalised_residual),
    redundancy_numbers: byKey((c) => c.redundancy),
    minimal_detectable_blunder: byKey((c) => c.minimal_detectable_blunder),
    chi_square: fit.chiSquare,
    degrees_of_freedom: fit.degreesOfFreedom,
    chi_square_limit_95: limit,
    global_test_passes: passes,
    largest_normalised_residual:
      worst === undefined ? null : { measurement: worstKey, value: element(fit.normalised, worst) },
    estimated_blunder_of_largest:
      worst === undefined ? null : element(fit.residuals, worst) / element(fit.redundancy, worst),
    ...(after === undefined ? {} : { after_removing_largest: after }),
    frame,
    frame_std: frameStd,
    shape,
    shape_std: shapeStd,
    readings: [...checks].sort(worstFirst),
    uncheckable: weak,
    iterations: fit.iterations,
  };

  const bands: Record<string, Band> = {};
  const band = (key: string, centre: number, sd: number): void => {
    bands[key] = { low: centre - NINETY_FIVE * sd, high: centre + NINETY_FIVE * sd, means: "95 %" };
  };
  for (const key of HEADLINE_KEYS) band(`adjusted.${key}`, adjusted[key], std[key]);
  for (const key of FRAME_KEYS) if (frameStd[key] > 0) band(`frame.${key}`, frame[key], frameStd[key]);
  for (const key of SHAPE_KEYS) band(`shape.${key}`, shape[key], shapeStd[key]);
  for (const c of checks) {
    band(`adjusted_measurements.${c.measurement}`, c.adjusted, c.sd * Math.sqrt(Math.max(0, 1 - c.redundancy)));
  }
  return answered(value, {
    bands,
    sources: [...SURVEY_SOURCE_IDS, "survey-chi-square-table"],
    cautions: [...solved.cautions, ...surveyCautions(fitted, value, weak)],
  });
}

/** Cautions of a fitted survey: readings that are off, readings that cannot be checked, nothing to test with. */
export function surveyCautions(
  fitted: SurveyFit,
  value: Pick<
    SurveyValue,
    "readings" | "global_test_passes" | "chi_square" | "chi_square_limit_95" | "adjusted" | "std"
  >,
  weak: readonly Uncheckable[],
): Caution[] {
  const { read, fit } = fitted;
  const at = (key: string): string => `measurements[${read.keys.indexOf(key)}]`;
  const cautions: Caution[] = [];
  for (const c of value.readings) {
    if (!c.flagged || c.normalised_residual === null || c.estimated_blunder === null) continue;
    const shared = c.shares_residual_with;
    const pair =
      shared.length === 0
        ? ""
        : say("survey.survey.it-shares-its-residual-with-measure", { shared: shared.join(", ") });
    cautions.push({
      code: "measurement-off",
      at: at(c.measurement),
      message: say("survey.survey.disagrees-with-the-rest-of-its", {
        measurement: c.measurement,
        measured: c.measured,
        normalisedResidual: Math.abs(c.normalised_residual).toFixed(1),
        flagLimit: FLAG_LIMIT,
        estimatedBlunder: c.estimated_blunder.toFixed(1),
        pair,
      }),
    });
  }
  if (fit.degreesOfFreedom === 0) {
    cautions.push({
      code: "no-redundancy",
      at: "measurements",
      message: say("survey.survey.there-are-just-enough-measurements-nothing"),
    });
  } else if (!value.global_test_passes) {
    cautions.push({
      code: "measurements-disagree",
      at: "measurements",
      message: say("survey.survey.taken-together-the-measurements-disagree-more", {
        chiSquare: value.chi_square.toFixed(1),
        chiSquareLimit95: value.chi_square_limit_95.toFixed(1),
      }),
    });
  }
  for (const u of weak) cautions.push({ code: "uncheckable", at: at(u.measurement), message: uncheckableSentence(u) });
  if (value.std.stack_mm > 25 || value.std.reach_mm > 25 || value.std.head_angle_deg > 3) {
    cautions.push({
      code: "weakly-determined",
      at: "adjusted",
      message: say("survey.survey.the-measurements-settle-the-frame-only", {
        ninetyFive: (NINETY_FIVE * value.std.stack_mm).toFixed(0),
        ninetyFive2: (NINETY_FIVE * value.std.reach_mm).toFixed(0),
        ninetyFive3: (NINETY_FIVE * value.std.head_angle_deg).toFixed(1),
      }),
    });
  }
  const { head_angle_deg: head, seat_angle_deg: seat, stack_mm: stack, reach_mm: reach } = value.adjusted;
  if (!(head > 55 && head < 85 && seat > 60 && seat < 85 && stack > 0 && reach > 0)) {
    cautions.push({
      code: "unusual-shape",
      at: "adjusted",
      message: say("survey.survey.the-adjusted-frame-has-an-unusual", {
        head: head.toFixed(1),
        seat: seat.toFixed(1),
        stack: stack.toFixed(0),
        reach: reach.toFixed(0),
      }),
    });
  }
  return cautions;
}

/** The 95 % limit of chi-square; 0 where there is nothing to test. */
export function chiSquareLimit(degreesOfFreedom: number): number {
  if (degreesOfFreedom === 0) return 0;
  const known = LIMITS.get(degreesOfFreedom);
  if (known !== undefined) return known;
  const limit = chiSquareQuantile(0.95, degreesOfFreedom);
  LIMITS.set(degreesOfFreedom, limit);
  return limit;
}
const LIMITS = new Map<number, number>();

/** Every reading against the rest, in the order given. */
export function readingChecks(fitted: SurveyFit): ReadingCheck[] {
  const { fit, read, rows } = fitted;
  const shared = sharedResiduals(fitted);
  return rows.map((index, row) => {
    const r = element(fit.redundancy, row);
    const w = element(fit.normalised, row);
    const sd = element(read.sds, index);
    const checked = !Number.isNaN(w);
    return {
      measurement: read.keys[index] ?? "",
      measured: element(read.values, index),
      sd,
      adjusted: element(fit.predicted, row),
      residual: element(fit.residuals, row),
      normalised_residual: checked ? w : null,
      redundancy: r,
      minimal_detectable_blunder: checked ? (sd * DELTA0) / Math.sqrt(r) : null,
      estimated_blunder: checked ? element(fit.residuals, row) / r : null,
      flagged: checked && Math.abs(w) > FLAG_LIMIT,
      shares_residual_with: (shared.get(row) ?? []).map((other) => read.keys[element(rows, other)] ?? ""),
    };
  });
}

/** Sorts readings, the worst first; of readings that share a residual the one with the larger redundancy. */
export function worstFirst(a: ReadingCheck, b: ReadingCheck): number {
  const size = (c: ReadingCheck): number => (c.normalised_residual === null ? -1 : Math.abs(c.normalised_residual));
  return compareSizes(size(a), size(b), a, b);
}

/** As worstFirst, from the sizes of the two residuals. */
export function compareSizes(
  a: number,
  b: number,
  checkA: ReadingCheck | undefined,
  checkB: ReadingCheck | undefined,
): number {
  if (Math.abs(a - b) > 1e-6 * Math.max(1, a, b)) return b - a;
  return (checkB?.redundancy ?? 0) - (checkA?.redundancy ?? 0);
}

function afterRemoving(fitted: SurveyFit, row: number): AfterRemoving | undefined {
  const { read, rows, model } = fitted;
  const index = element(rows, row);
  const rest = fitSurvey(read, { without: [index], start: model.u });
  if (rest.kind !== "fitted") return undefined;
  const figures = figuresOf(rest.model);
  const { chiSquare, degreesOfFreedom } = rest.fit;
  return {
    removed: read.keys[index] ?? "",
    adjusted: pickFigures(figures, HEADLINE_KEYS),
    std: pickSds(rest, figures, HEADLINE_KEYS),
    chi_square: chiSquare,
    degrees_of_freedom: degreesOfFreedom,
    global_test_passes: degreesOfFreedom === 0 || chiSquare <= chiSquareLimit(degreesOfFreedom),
    predicted_value_of_removed: predictFromFit(rest, element(read.kinds, index)).value,
  };
}
