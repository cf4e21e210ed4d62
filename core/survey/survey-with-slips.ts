import type { Answer } from "../quantity/index.js";
import { refused } from "../quantity/index.js";
import { type BlunderExplanation, explainSolved } from "./explain-blunder.js";
import { fitSurvey } from "./fit-survey.js";
import { likeliestWrong } from "./likeliest-wrong.js";
import type { SlipContext } from "./slips.js";
import { solveRead } from "./solve-survey.js";
import { type SurveyValue, surveyOf } from "./survey.js";
import { type SurveyFrame, surveyFrame, surveyFrameOf } from "./survey-frame.js";
import { readSurvey, type SurveyInput } from "./survey-input.js";

export interface SurveyWithSlips {
  /** As `survey`: all readings as they stand. */
  readonly survey: Answer<SurveyValue>;
  /** As `explainBlunder`. */
  readonly blunder: Answer<BlunderExplanation>;
  /** Reading that the others name as wrong, set aside for `frame`. */
  readonly setAside?: string;
  /** As `surveyFrame`, without the reading set aside. */
  readonly frame: Answer<SurveyFrame>;
}

/**
 * What do these readings say, which one is wrong, and which frame follows without it? The three answers of `survey`,
 * `explainBlunder` and `surveyFrame`, each as it would be alone, from one fit of the readings. A reading named as wrong
 * is set aside only where the others settle the frame without it.
 */
export function surveyWithSlips(input: SurveyInput, context: SlipContext = {}): SurveyWithSlips {
  const checked = readSurvey(input);
  if ("refusals" in checked) {
    const none = refused(checked.refusals);
    return { survey: none, blunder: none, frame: none };
  }
  const { read } = checked;
  const quick = fitSurvey(read);
  const solved = solveRead(read, false, quick);
  const patient = quick.kind === "no-convergence" ? solveRead(read, true, quick) : solved;
  const blunder = explainSolved(solved, context);
  const suspect =
    blunder.kind === "answered" && blunder.value.disagrees ? likeliestWrong(blunder.value)?.measurement : undefined;
  const without =
    suspect === undefined
      ? undefined
      : surveyFrame({ ...input, measurements: input.measurements.filter((m) => m.name !== suspect) });
  const survey = surveyOf(patient);
  return suspect !== undefined && without?.kind === "answered"
    ? { survey, blunder, setAside: suspect, frame: without }
    : { survey, blunder, frame: surveyFrameOf(solved) };
}
