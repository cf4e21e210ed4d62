import { element } from "../numeric/index.js";
import { type Answer, answered, type Caution, type NextStep, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { fitSurvey, isGrosslyOff, type SurveyFit } from "./fit-survey.js";
import { nextReading } from "./next-reading.js";
import { type Suspect, slopingFloor, type Trial, trySlips } from "./slip-trials.js";
import type { SlipCause, SlipContext } from "./slips.js";
import { type SolvedSurvey, SURVEY_SOURCE_IDS, solveSurvey } from "./solve-survey.js";
import { chiSquareLimit, FLAG_LIMIT, type ReadingCheck, readingChecks, worstFirst } from "./survey.js";
import type { ReadSurvey, SurveyInput } from "./survey-input.js";
import { largestRow } from "./worst-reading.js";

/** An explanation holds where its own reading then fits better than this (method M2). */
const EXPLAINS_BELOW = 2;
const MOST_TESTED = 6;
/** One human cause, tested as if it had happened. */
export interface Explanation {
  readonly cause: SlipCause;
  /** The readings that it changes. */
  readonly measurements: readonly string[];
  readonly read: readonly number[];
  readonly corrected: readonly number[];
  /** Added to each reading, in its unit. */
  readonly offset: number;
  /** True where the offset was fitted, not known beforehand. */
  readonly fitted_offset: boolean;
  readonly sentence: string;
  readonly chi_square_after: number;
  readonly degrees_of_freedom_after: number;
  /** The largest |w| that is left in the whole survey. */
  readonly largest_residual_after: { readonly measurement: string; readonly value: number } | null;
  /** |w| of the corrected reading; null where its offset was fitted. */
  readonly own_residual_after: number | null;
  /** True: own |w| below 2, no reading beyond 3.29, and the global test passes. */
  readonly explains: boolean;
  /** chi-square after plus the rarity of the cause; the smallest stands first. */
  readonly score: number;
  /** Readings that share one residual with the first: the numbers cannot tell which is off. */
  readonly shares_residual_with: readonly string[];
}

export interface BlunderExplanation {
  readonly disagrees: boolean;
  /** Ranked, the likeliest first. */
  readonly explanations: readonly Explanation[];
  readonly suspects: readonly Suspect[];
  /** The one re-measurement that proves or disproves the first explanation. */
  readonly next: {
    readonly measure: readonly string[];
    readonly expected: readonly number[];
    readonly step: NextStep;
  } | null;
  /** All readings, the worst first. */
  readonly readings: readonly ReadingCheck[];
}

/**
 * Which slip of hand or eye would explain the reading that is off, and which one measurement proves it?
 *
 * Every suspect is left out in turn; each usual slip of it is put in its place: w = (corrected − predicted)/sqrt(sd² +
 * sd_predicted²), chi-square = chi-square without it + w². The best are fitted again in full. A sloping floor is one
 * parameter: head and seat angle off by the same amount. (Turning both angles by t is the same as lifting the front
 * axle against the rear one by wheelbase × tan t, so it is tested once.)
 * Ranked by chi-square + rarity of the slip (common practice, no source).
 *
 * @param context tube diameters and the seat tube's centre-to-top length, where known.
 * Limits: one slip at a time. It names what would explain the numbers; only the re-measurement proves it.
 * Sources: survey-slips, survey-ghilani, survey-baarda.
 */
export function explainBlunder(input: SurveyInput, context: SlipContext = {}): Answer<BlunderExplanation> {
  return explainSolved(solveSurvey(input), context);
}

/** The explanation from a solution (not the patient one). */
export function explainSolved(solved: SolvedSurvey, context: SlipContext): Answer<BlunderExplanation> {
  if (solved.kind === "refused" && solved.farOff === undefined) return refused(solved.refusals);
  const fitted = solved.kind === "solved" ? solved.fitted : undefined;
  const read = solved.kind === "solved" ? solved.fitted.read : solved.farOff;
  if (read === undefined) return refused([]);
  const checks = fitted === undefined ? [] : readingChecks(fitted);
  const readings = [...checks].sort(worstFirst);
  const cautions: Caution[] = solved.kind === "solved" ? [...solved.cautions] : [...read.cautions];
  if (fitted !== undefined) {
    const { chiSquare, degreesOfFreedom } = fitted.fit;
    const disagrees = checks.some((c) => c.flagged) || chiSquare > chiSquareLimit(degreesOfFreedom);
    if (!disagrees || degreesOfFreedom === 0) {
      return answered(
        { disagrees: false, explanations: [], suspects: [], next: null, readings },
        { sources: [...SURVEY_SOURCE_IDS], cautions },
      );
    }
  }
  const { suspects, trials } = trySlips(read, fitted, checks, context, solved.culprits ?? []);
  const floor = fitted === undefined ? undefined : slopingFloor(fitted);
  if (floor !== undefined) trials.push(floor);
  trials.sort((a, b) => a.score - b.score);
  const tested: Explanation[] = [];
  for (const trial of trials.slice(0, MOST_TESTED)) {
    const explanation = fitTrial(read, fitted, checks, trial);
    if (explanation !== undefined) tested.push(explanation);
  }
  tested.sort((a, b) => a.score - b.score);
  const good = tested.filter((e) => e.explains);
  const explanations = good.length > 0 ? good : tested.slice(0, 3);
  if (good.length === 0) {
    cautions.push({
      code: "slip-not-found",
      at: "measurements",
      message: say("survey.explain-blunder.none-of-the-usual-slips-brings"),
    });
  }
  return answered(
    { disagrees: true, explanations, suspects, next: nextReading(read, good, suspects), readings },
    { sources: [...SURVEY_SOURCE_IDS, "survey-slips"], cautions },
  );
}

function fitTrial(
  read: ReadSurvey,
  fitted: SurveyFit | undefined,
  checks: readonly ReadingCheck[],
  trial: Trial,
): Explanation | undefined {
  const { indices, corrected, fittedOffset } = trial;
  const single = indices.length === 1;
  const warm = fitted === undefined || isGrosslyOff(fitted) ? {} : { start: fitted.model.u };
  // A fitted offset of one reading says nothing but that the reading is left out.
  const again =
    fittedOffset && single
      ? fitSurvey(read, { ...warm, without: indices })
      : fitSurvey(read, { ...warm, instead: new Map(indices.map((i, k) => [i, corrected[k] ?? 0])) });
  if (again.kind !== "fitted") return undefined;
  const { fit, rows } = again;
  const worst = largestRow(again);
  const largest =
    worst === undefined
      ? null
      : { measurement: read.keys[element(rows, worst)] ?? "", value: Math.abs(element(fit.normalised, worst)) };
  const first = indices[0] ?? 0;
  const own = fittedOffset ? null : Math.abs(element(fit.normalised, rows.indexOf(first)));
  const freedom = fit.degreesOfFreedom - (fittedOffset && !single ? 1 : 0);
  const passes = freedom <= 0 || fit.chiSquare <= chiSquareLimit(freedom);
  const names = indices.map((i) => read.keys[i] ?? "");
  const before = indices.map((i) => element(read.values, i));
  const round = (x: number): string => String(Number(x.toFixed(1)));
  const values = names.map((name, k) =>
    say("survey.explain-blunder.would-be", {
      name,
      before: round(before[k] ?? 0),
      corrected: round(corrected[k] ?? 0),
    }),
  );
  return {
    cause: trial.cause,
    measurements: names,
    read: before,
    corrected,
    offset: (corrected[0] ?? 0) - (before[0] ?? 0),
    fitted_offset: fittedOffset,
    sentence: `${values.join("; ")}: ${trial.words}.`,
    chi_square_after: fit.chiSquare,
    degrees_of_freedom_after: freedom,
    largest_residual_after: largest,
    own_residual_after: own,
    explains: (own ?? 0) < EXPLAINS_BELOW && (largest?.value ?? 0) <= FLAG_LIMIT && passes,
    score: fit.chiSquare + trial.rarity,
    shares_residual_with: checks[first]?.shares_residual_with ?? [],
  };
}
