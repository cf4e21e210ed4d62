import { FRAME_KEYS, type FrameKey } from "../geometry/frame-measures.js";
import { type Answer, answered, type Band, refused } from "../quantity/index.js";
import { uncheckable } from "./checkability.js";
import { figuresOf, HEADLINE_KEYS, pickFigures, pickSds, SHAPE_KEYS, type ShapeKey } from "./derived-figures.js";
import { covariances } from "./fit-survey.js";
import { type SolvedSurvey, SURVEY_SOURCE_IDS, solveSurvey } from "./solve-survey.js";
import { chiSquareLimit, readingChecks, surveyCautions } from "./survey.js";
import type { SurveyInput } from "./survey-input.js";

export interface SurveyFrame {
  /** As `fork-swap` takes it. */
  readonly frame: Readonly<Record<FrameKey, number>>;
  /** One standard deviation of each; 0 for what was given as exact. */
  readonly frame_std: Readonly<Record<FrameKey, number>>;
  /** Order of the rows and columns of the covariance. */
  readonly keys: readonly FrameKey[];
  /** 14 × 14, mm and degrees as the keys end. Its rank is below 14: the front radius follows from the rest. */
  readonly covariance: readonly (readonly number[])[];
  readonly shape: Readonly<Record<ShapeKey, number>>;
  readonly shape_std: Readonly<Record<ShapeKey, number>>;
  readonly global_test_passes: boolean;
}

/**
 * Which frame, with all its lengths and angles, do my measurements describe, and how do their errors hang together?
 *
 * @returns the fourteen figures that `fork-swap` takes, their standard deviations and covariance (sd of a figure f with
 *   slopes g is sqrt(g C gᵀ)), and the shape figures. Cautions as in `survey`.
 * Limits and sources as in `survey`.
 */
export function surveyFrame(input: SurveyInput): Answer<SurveyFrame> {
  return surveyFrameOf(solveSurvey(input));
}

/** The frame's figures from a solution. */
export function surveyFrameOf(solved: SolvedSurvey): Answer<SurveyFrame> {
  if (solved.kind === "refused") return refused(solved.refusals);
  const { fitted } = solved;
  const figures = figuresOf(fitted.model);
  const frame = pickFigures(figures, FRAME_KEYS);
  const frameStd = pickSds(fitted, figures, FRAME_KEYS);
  const covariance = covariances(
    fitted,
    FRAME_KEYS.map((key) => figures[key].slopes),
  );
  const limit = chiSquareLimit(fitted.fit.degreesOfFreedom);
  const passes = fitted.fit.degreesOfFreedom === 0 || fitted.fit.chiSquare <= limit;
  const shape = pickFigures(figures, SHAPE_KEYS);
  const shapeStd = pickSds(fitted, figures, SHAPE_KEYS);
  const bands: Record<string, Band> = {};
  for (const key of FRAME_KEYS) {
    const half = 1.96 * frameStd[key];
    if (half > 0) bands[`frame.${key}`] = { low: frame[key] - half, high: frame[key] + half, means: "95 %" };
  }
  for (const key of SHAPE_KEYS) {
    const half = 1.96 * shapeStd[key];
    bands[`shape.${key}`] = { low: shape[key] - half, high: shape[key] + half, means: "95 %" };
  }
  const cautions = surveyCautions(
    fitted,
    {
      readings: readingChecks(fitted),
      global_test_passes: passes,
      chi_square: fitted.fit.chiSquare,
      chi_square_limit_95: limit,
      adjusted: pickFigures(figures, HEADLINE_KEYS),
      std: pickSds(fitted, figures, HEADLINE_KEYS),
    },
    uncheckable(fitted),
  );
  return answered(
    {
      frame,
      frame_std: frameStd,
      keys: FRAME_KEYS,
      covariance,
      shape,
      shape_std: shapeStd,
      global_test_passes: passes,
    },
    { bands, sources: [...SURVEY_SOURCE_IDS], cautions: [...solved.cautions, ...cautions] },
  );
}
