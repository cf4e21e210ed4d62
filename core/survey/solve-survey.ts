import type { Caution, Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { fitSurvey, isGrosslyOff, PATIENT_STEPS, type SurveyFit, type SurveyFitAnswer } from "./fit-survey.js";
import { culpritSentence, grossCulprits, type LeftOut } from "./leave-out.js";
import { otherFrames } from "./other-frames.js";
import { type ReadSurvey, readSurvey, type SurveyInput } from "./survey-input.js";
import { refuseUndetermined, settlesAnOrdinaryFrame } from "./undetermined.js";

/** Sources that every answer of the survey stands on. */
export const SURVEY_SOURCE_IDS = [
  "survey-side-view",
  "survey-ghilani",
  "survey-baarda",
  "survey-workshop-sigma",
] as const;

export type SolvedSurvey =
  | {
      readonly kind: "refused";
      readonly refusals: readonly Refusal[];
      /** Where the survey is whole but no frame comes near it: a reading is far off. */
      readonly farOff?: ReadSurvey;
      readonly culprits?: readonly LeftOut[];
    }
  | {
      readonly kind: "solved";
      readonly fitted: SurveyFit;
      readonly cautions: readonly Caution[];
      /** Where a reading is far off: those that, left out, let all others agree. */
      readonly culprits: readonly LeftOut[];
    };

/**
 * Can a frame be fitted to these measurements at all? The fit, or all reasons why not.
 * @param patient true: go on creeping where a reading is far off, so that the bent fit can be shown with its cautions.
 */
export function solveSurvey(input: SurveyInput, patient = false): SolvedSurvey {
  const checked = readSurvey(input);
  if ("refusals" in checked) return { kind: "refused", refusals: checked.refusals };
  return solveRead(checked.read, patient);
}

/** The same for a survey that passed its checks. @param quick the fit of all its readings, where it is known already. */
export function solveRead(read: ReadSurvey, patient: boolean, quick: SurveyFitAnswer = fitSurvey(read)): SolvedSurvey {
  let answer = quick;
  if (patient && answer.kind === "no-convergence" && read.keys.length > read.active.length) {
    answer = fitSurvey(read, { maxSteps: PATIENT_STEPS });
  }
  if (answer.kind === "rank-deficient") {
    if (settlesAnOrdinaryFrame(read)) return { kind: "refused", refusals: [doesNotClose(read.keys)] };
    return { kind: "refused", refusals: [refuseUndetermined(read, answer)] };
  }
  if (answer.kind === "no-convergence") {
    if (read.keys.length <= read.active.length) return { kind: "refused", refusals: [doesNotClose(read.keys)] };
    const culprits = grossCulprits(read);
    return { kind: "refused", refusals: [farOff(read, culprits)], farOff: read, culprits };
  }
  if (answer.fit.degreesOfFreedom === 0 && answer.fit.chiSquare > 1e-6) {
    return { kind: "refused", refusals: [doesNotClose(read.keys)] };
  }
  const { fitted, cautions: doubts } = otherFrames(answer);
  const cautions = [...read.cautions, ...doubts];
  const culprits = isGrosslyOff(fitted) ? grossCulprits(read, fitted.fit.normalised) : [];
  const [culprit] = culprits;
  if (culprit !== undefined) {
    cautions.push({
      code: "measurement-far-off",
      at: `measurements[${culprit.index}].value`,
      message: culpritSentence(read, culprits),
    });
  }
  return { kind: "solved", fitted, cautions, culprits };
}

function farOff(read: ReadSurvey, culprits: readonly LeftOut[]): Refusal {
  const [culprit] = culprits;
  if (culprit === undefined) {
    return {
      code: "no-convergence",
      at: "measurements",
      given: read.keys,
      allowed: say("survey.solve-survey.measurements-of-one-frame"),
      message: say("survey.solve-survey.no-frame-was-found-that-comes"),
    };
  }
  return {
    code: "no-convergence",
    at: `measurements[${culprit.index}].value`,
    given: read.values[culprit.index],
    allowed: say("survey.solve-survey.about-as-the-others-say", { predicted: culprit.predicted.toFixed(1) }),
    message: say("survey.solve-survey.no-frame-was-found-that-comes-2", { read: culpritSentence(read, culprits) }),
  };
}

function doesNotClose(given: readonly string[]): Refusal {
  return {
    code: "does-not-close",
    at: "measurements",
    given,
    allowed: say("survey.solve-survey.lengths-that-close-every-triangle-of"),
    message: say("survey.solve-survey.these-figures-close-no-frame-somewhere"),
  };
}
