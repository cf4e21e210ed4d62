import { type LeastSquaresFit, type NotConverged, type RankDeficient, weightedLeastSquares } from "../numeric/index.js";
import { newSideModel, placePoints, predictMeasurement, type SideModel, UNKNOWN_COUNT } from "./side-model.js";
import { startGeometry } from "./start-geometry.js";
import type { ReadSurvey } from "./survey-input.js";

/** The fit of a survey, with the frame placed at its adjusted unknowns. */
export interface SurveyFit {
  readonly kind: "fitted";
  readonly read: ReadSurvey;
  readonly fit: LeastSquaresFit;
  /** Index in the survey of each row of the fit. */
  readonly rows: readonly number[];
  readonly model: SideModel;
}

export type SurveyFitAnswer = SurveyFit | RankDeficient | NotConverged;

/** Beyond this normalised residual a second start is tried: something is grossly wrong, or the search went astray. */
const GROSS = 20;
/** Steps of the search; a grossly wrong reading makes it creep, and then only `survey` waits for the end. */
const MOST_STEPS = 60;
export const PATIENT_STEPS = 400;

export interface FitOptions {
  /** Indices of measurements to leave out. */
  readonly without?: readonly number[];
  /** Other values for some measurements, by index. */
  readonly instead?: ReadonlyMap<number, number>;
  /** All 13 unknowns to begin from. */
  readonly start?: Float64Array;
  readonly maxSteps?: number;
}

/** Which frame agrees best with these measurements? */
export function fitSurvey(read: ReadSurvey, options: FitOptions = {}): SurveyFitAnswer {
  const without = options.without ?? [];
  if (options.start !== undefined) {
    const warm = fitFrom(read, options, options.start);
    if (warm.kind === "fitted" && !isGrosslyOff(warm)) return warm;
  }
  const first = fitFrom(read, options, startGeometry(read, without));
  if (first.kind === "fitted" && !isGrosslyOff(first)) return first;
  const second = fitFrom(read, options, startGeometry(read, without, true));
  if (first.kind !== "fitted") return second.kind === "fitted" ? second : first;
  return second.kind === "fitted" && second.fit.chiSquare < first.fit.chiSquare ? second : first;
}

/** Is a reading so far off that it bends the whole fit? */
export function isGrosslyOff(fitted: SurveyFit): boolean {
  return fitted.fit.normalised.some((w) => Math.abs(w) > GROSS);
}

/** Which frame agrees best with these measurements, searched from this one start? */
export function fitFrom(read: ReadSurvey, options: FitOptions, start: Float64Array): SurveyFitAnswer {
  const without = options.without;
  const rows: number[] = [];
  for (let i = 0; i < read.kinds.length; i++) if (without === undefined || !without.includes(i)) rows.push(i);
  const model = newSideModel();
  model.lowerStack = read.lowerStackMm;
  model.u.set(start);
  const { active } = read;
  const n = active.length;
  const slopes = new Float64Array(UNKNOWN_COUNT);
  const kinds = Int32Array.from(rows, (i) => read.kinds[i] ?? -1);
  const place = (unknowns: Float64Array): boolean => {
    for (let j = 0; j < n; j++) model.u[active[j] as number] = unknowns[j] as number;
    return placePoints(model);
  };
  const answer = weightedLeastSquares({
    measured: rows.map((i) => options.instead?.get(i) ?? (read.values[i] as number)),
    sd: rows.map((i) => read.sds[i] as number),
    start: active.map((u) => start[u] as number),
    maxIterations: options.maxSteps ?? MOST_STEPS,
    model: (unknowns, predicted, jacobian) => {
      if (!place(unknowns)) return false;
      for (let i = 0; i < kinds.length; i++) {
        const value = predictMeasurement(model, kinds[i] as number, jacobian ? slopes : undefined);
        if (Number.isNaN(value)) return false;
        predicted[i] = value;
        if (jacobian) for (let j = 0; j < n; j++) jacobian[i * n + j] = slopes[active[j] as number] as number;
      }
      return true;
    },
  });
  if (answer.kind !== "converged") return answer;
  place(answer.unknowns);
  return { kind: "fitted", read, fit: answer, rows, model };
}

/**
 * What would another measurement read on the adjusted frame, and how surely (one standard deviation)?
 * @param kindIndex place in MEASUREMENT_KINDS.
 */
export function predictFromFit(fitted: SurveyFit, kindIndex: number): { readonly value: number; readonly sd: number } {
  const slopes = new Float64Array(UNKNOWN_COUNT);
  const value = predictMeasurement(fitted.model, kindIndex, slopes);
  return { value, sd: Math.sqrt(Math.max(0, varianceOf(fitted, slopes, slopes))) };
}

/** Covariance of two things of the frame, from their slopes by the 13 unknowns. */
export function varianceOf(fitted: SurveyFit, a: Float64Array, b: Float64Array): number {
  return along(fitted, a, spread(fitted, b));
}

/** Covariances of all these things, from the slopes of each by the 13 unknowns. */
export function covariances(fitted: SurveyFit, slopes: readonly Float64Array[]): number[][] {
  const spreads = slopes.map((b) => spread(fitted, b));
  return slopes.map((a) => spreads.map((b) => along(fitted, a, b)));
}

/** Covariance of every active unknown with a thing of the frame. */
function spread(fitted: SurveyFit, b: Float64Array): Float64Array {
  const { covariance } = fitted.fit;
  const { active } = fitted.read;
  const n = active.length;
  const out = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    const slope = b[active[j] as number] as number;
    if (slope === 0) continue;
    for (let i = 0; i < n; i++) out[i] = (out[i] as number) + (covariance[i * n + j] as number) * slope;
  }
  return out;
}

function along(fitted: SurveyFit, a: Float64Array, spreadOfB: Float64Array): number {
  const { active } = fitted.read;
  let sum = 0;
  for (let i = 0; i < active.length; i++) {
    const own = a[active[i] as number] as number;
    if (own !== 0) sum += own * (spreadOfB[i] as number);
  }
  return sum;
}
