import { element } from "../numeric/index.js";
import { say } from "../texts/say.js";
import { CHECKABLE_FROM } from "./checkability.js";
import { isGrosslyOff, type SurveyFit } from "./fit-survey.js";
import { type LeftOut, leaveOut } from "./leave-out.js";
import { MEASUREMENT_KINDS, type MeasurementKind } from "./measurement-kinds.js";
import { COLLAR_MM, possibleSlips, type SlipCause, type SlipContext } from "./slips.js";
import { compareSizes, FLAG_LIMIT, type ReadingCheck } from "./survey.js";
import type { ReadSurvey } from "./survey-input.js";

/** A slip is worth testing where it takes this much off chi-square. */
const NOTICED = 4;
/** A lean of the floor between these is looked for. */
const FLOOR_DEG = { least: 0.2, most: 6 } as const;

export interface Suspect {
  readonly measurement: string;
  /** null where no frame comes near all readings, or nothing checks this one. */
  readonly normalised_residual: number | null;
  readonly measured: number;
  /** What the others say that it should read, and one standard deviation of that. */
  readonly predicted_by_others: number;
  readonly predicted_sd: number;
  readonly chi_square_without: number;
}

/** One slip, put in the place of its reading, before the full fit. */
export interface Trial {
  readonly cause: SlipCause;
  /** Indices of the readings in the survey. */
  readonly indices: readonly number[];
  readonly corrected: readonly number[];
  readonly fittedOffset: boolean;
  readonly words: string;
  readonly rarity: number;
  readonly score: number;
}

/** Which usual slips of the suspects would help? Every suspect is left out in turn, its slips compared with the rest. */
export function trySlips(
  read: ReadSurvey,
  fitted: SurveyFit | undefined,
  checks: readonly ReadingCheck[],
  context: SlipContext,
  culprits: readonly LeftOut[],
): { readonly suspects: readonly Suspect[]; readonly trials: Trial[] } {
  const gross = fitted === undefined || isGrosslyOff(fitted);
  const before = fitted?.fit.chiSquare ?? Number.POSITIVE_INFINITY;
  const sizes = read.keys.map((_, i) => Math.abs(checks[i]?.normalised_residual ?? 0));
  const largest = Math.max(...sizes);
  const order = (culprits.length > 0 ? culprits.map((c) => c.index) : read.keys.map((_, i) => i))
    .filter((i) => gross || (sizes[i] ?? 0) > Math.max(2, 0.5 * largest))
    .sort((a, b) => compareSizes(sizes[a] ?? 0, sizes[b] ?? 0, checks[a], checks[b]));
  const suspects: Suspect[] = [];
  const trials: Trial[] = [];
  for (const index of order.slice(0, gross ? 40 : 8)) {
    const kind = MEASUREMENT_KINDS[element(read.kinds, index)];
    const others = culprits.find((c) => c.index === index) ?? whatOthersSay(read, fitted, index, gross);
    if (others === undefined || kind === undefined) continue;
    const measured = element(read.values, index);
    const spread = Math.hypot(element(read.sds, index), others.predictedSd);
    suspects.push({
      measurement: read.keys[index] ?? "",
      normalised_residual: checks[index]?.normalised_residual ?? null,
      measured,
      predicted_by_others: others.predicted,
      predicted_sd: others.predictedSd,
      chi_square_without: others.chiSquare,
    });
    for (const slip of possibleSlips(kind, measured, context)) {
      const w = (slip.corrected - others.predicted) / spread;
      const after = others.chiSquare + w * w;
      if (Math.abs(w) > FLAG_LIMIT || after > before - NOTICED) continue;
      trials.push({
        ...slip,
        indices: [index],
        corrected: [slip.corrected],
        fittedOffset: false,
        score: after + slip.rarity,
      });
    }
    const collar = collarTrial(kind, index, measured, others, context);
    if (collar !== undefined && others.chiSquare < before - NOTICED) trials.push(collar);
  }
  if (gross) suspects.sort((a, b) => a.chi_square_without - b.chi_square_without);
  return { suspects: suspects.slice(0, 8), trials };
}

/**
 * What do the others say that this reading should be, and how well do they agree without it?
 * By a fit without it; a reading that they hardly check would come out wild there, so it is taken straight from its
 * residual: v/r, with sd² (1 − r)/r.
 */
function whatOthersSay(
  read: ReadSurvey,
  fitted: SurveyFit | undefined,
  index: number,
  gross: boolean,
): LeftOut | undefined {
  if (fitted === undefined || gross) return leaveOut(read, index);
  const { fit, model } = fitted;
  const r = element(fit.redundancy, index);
  const w = element(fit.normalised, index);
  if (Number.isNaN(w)) return undefined;
  if (r >= CHECKABLE_FROM) return leaveOut(read, index, model.u);
  return {
    index,
    predicted: element(read.values, index) - element(fit.residuals, index) / r,
    predictedSd: element(read.sds, index) * Math.sqrt((1 - r) / r),
    chiSquare: Math.max(0, fit.chiSquare - w * w),
    degreesOfFreedom: fit.degreesOfFreedom - 1,
  };
}

/** The seat tube read to its top instead of to the top tube: the collar's height is not known, so it is fitted. */
function collarTrial(
  kind: MeasurementKind,
  index: number,
  measured: number,
  others: LeftOut,
  context: SlipContext,
): Trial | undefined {
  const collar = measured - others.predicted;
  if (kind.name !== "seat_tube_cc_mm" || collar < COLLAR_MM.least || collar > COLLAR_MM.most) return undefined;
  const topLength = context.seatTubeCtMm;
  const same = topLength !== undefined && Math.abs(topLength - measured) <= 2;
  if (topLength !== undefined && !same) return undefined;
  const rarity = same ? 0 : 2;
  const proof = same ? say("survey.slip-trials.the-seat-tube-measures-to-its", { topLength }) : "";
  return {
    cause: "centre-to-top",
    indices: [index],
    corrected: [others.predicted],
    fittedOffset: true,
    words: say("survey.slip-trials.read-to-the-top-of-the", { collar: collar.toFixed(0), proof }),
    rarity,
    score: others.chiSquare + rarity,
  };
}

/** One tilt for all angles, fitted on the straightened model: t = −pᵀv/(pᵀ M p), p = 1/sd at the angles. */
export function slopingFloor(fitted: SurveyFit): Trial | undefined {
  const { read, fit } = fitted;
  const m = read.keys.length;
  const angles = read.keys.map((_, i) => i).filter((i) => MEASUREMENT_KINDS[element(read.kinds, i)]?.unit === "deg");
  if (new Set(angles.map((i) => element(read.kinds, i))).size < 2) return undefined;
  let along = 0;
  let size = 0;
  for (const i of angles) {
    const sd = element(read.sds, i);
    along += element(fit.residuals, i) / (sd * sd);
    for (const j of angles) size += element(fit.projection, i * m + j) / (sd * element(read.sds, j));
  }
  if (size < 1e-6) return undefined;
  const tilt = along / size;
  const chi = fit.chiSquare - (along * along) / size;
  if (Math.abs(tilt) < FLOOR_DEG.least || Math.abs(tilt) > FLOOR_DEG.most || chi > fit.chiSquare - NOTICED)
    return undefined;
  const rarity = 1.5;
  return {
    cause: "sloping-floor",
    indices: angles,
    corrected: angles.map((i) => element(read.values, i) - tilt),
    fittedOffset: true,
    words: say("survey.slip-trials.the-floor-or-the-level-leans", {
      leansDeg: Math.abs(tilt).toFixed(1),
      tooMuchOrLittle: tilt > 0 ? say("survey.slip-trials.too-much") : say("survey.slip-trials.too-little"),
    }),
    rarity,
    score: chi + rarity,
  };
}
