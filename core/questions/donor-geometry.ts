/**
 * What bicycle is this really? The donor's readings, adjusted together; a reading that the others name as wrong is set
 * aside for everything that follows, and said so, until it is measured again.
 */

import { tyreRadius } from "../fit/index.js";
import {
  type BicyclePoints,
  bicyclePoints,
  type ForkSwapValue,
  type FrameMeasures,
  forkSwapWithBands,
  type NewParts,
} from "../geometry/index.js";
import type { Answer, Answered, NextStep, Refusal } from "../quantity/index.js";
import {
  type BlunderExplanation,
  DONOR_NAMES,
  donorSurvey,
  type SurveyFrame,
  type SurveyInput,
  type SurveyValue,
  surveyWithSlips,
} from "../survey/index.js";
import { say } from "../texts/say.js";
import type { DonorDoc, Entered, PartOfKind, ResolvedBuild } from "../workshop/index.js";

export interface DonorGeometry {
  readonly input: SurveyInput;
  /** All readings as they stand. */
  readonly survey: Answer<SurveyValue>;
  readonly blunder: Answer<BlunderExplanation>;
  /** Reading set aside for what follows, by the survey's name. */
  readonly setAside?: string;
  /** The frame that everything after this is reckoned with. */
  readonly frame: Answer<SurveyFrame>;
  readonly before?: { readonly figures: Answered<ForkSwapValue>; readonly points: BicyclePoints };
  readonly missing: readonly NextStep[];
}

/** Two thirds of a written ± is taken as one standard deviation only where the person wrote one: ± is read as 95 %. */
const SD_OF_PLUS_MINUS = 1.96;

export function donorGeometry(donor: DonorDoc): DonorGeometry {
  const missing: NextStep[] = [];
  if (donor.lower_headset_stack === undefined) {
    missing.push({
      kind: "measure",
      what: say("questions.donor-geometry.lower-headset-stack-bottom-face-of"),
      at: "donor.lower_headset_stack",
      tool: "calliper",
      accuracy: "± 0.5 mm",
    });
  }
  if (donor.wheels_now.radius === undefined) {
    missing.push({
      kind: "measure",
      what: say("questions.donor-geometry.axle-height-over-the-floor-under"),
      at: "donor.wheels_now.radius",
      tool: "rule",
      accuracy: "± 1 mm",
    });
  }
  const entries = Object.entries(donor.measured).flatMap(([name, e]) =>
    e === undefined ? [] : [[name, e as Entered] as const],
  );
  const base = donorSurvey({
    measured: Object.fromEntries(entries.map(([name, e]) => [name, e.value])),
    lowerHeadsetStackMm: donor.lower_headset_stack ?? Number.NaN,
    rearRadiusMm: donor.wheels_now.radius ?? Number.NaN,
    frontRadiusMm: donor.wheels_now.radius ?? Number.NaN,
  });
  const spreads = new Map(
    entries.flatMap(([name, e]) =>
      e.plusMinus === undefined || e.plusMinus <= 0
        ? []
        : [[DONOR_NAMES[name] ?? name, e.plusMinus / SD_OF_PLUS_MINUS] as const],
    ),
  );
  const input: SurveyInput = {
    constants: base.constants,
    measurements: base.measurements.map((m) => {
      const sd = spreads.get(m.name);
      return sd === undefined ? m : { ...m, sd };
    }),
  };
  if (missing.length > 0) {
    const refusals: Refusal[] = missing.map((m) => ({
      code: "measure-first",
      at: m.at ?? "",
      given: null,
      allowed: say("questions.donor-geometry.a-length-in-mm"),
      message: say("questions.donor-geometry.not-measured-yet", { what: m.what }),
    }));
    const refusedAll = { kind: "refused", refusals } as const;
    return { input, survey: refusedAll, blunder: refusedAll, frame: refusedAll, missing };
  }
  const { survey, blunder, setAside, frame } = surveyWithSlips(input, {
    seatTubeOdMm: donor.interfaces.seat_tube_od,
    topTubeOdMm: donor.tube.top_tube_od,
    headTubeOdMm: donor.tube.head_tube_od,
    downTubeOdMm: donor.tube.down_tube_od,
    seatTubeCtMm: donor.interfaces.seat_tube_ct,
  });
  const before = frame.kind === "answered" ? onGround(frame.value, {}) : undefined;
  return {
    input,
    survey,
    blunder,
    ...(setAside === undefined ? {} : { setAside }),
    frame,
    ...(before === undefined ? {} : { before }),
    missing,
  };
}

/** The bicycle with these parts, level on its ground, with bands. undefined where the parts close no figure. */
export function onGround(
  frame: SurveyFrame,
  parts: NewParts,
): { readonly figures: Answered<ForkSwapValue>; readonly points: BicyclePoints } | undefined {
  const figures = forkSwapWithBands(frame.frame as FrameMeasures, parts, frame.covariance);
  return figures.kind === "refused"
    ? undefined
    : { figures, points: bicyclePoints(frame.frame as FrameMeasures, parts) };
}

export interface WheelRadii {
  readonly frontMm?: number;
  readonly rearMm?: number;
}

/** Loaded radii of the wheels with their tyres, M6. Not known where tyre or wheel is not chosen, or they do not go together. */
export function radiiOf(build: ResolvedBuild): WheelRadii {
  const front = tyreRadius(build.at, "tyre_front");
  const rear = tyreRadius(build.at, "tyre_rear");
  return { ...(front === undefined ? {} : { frontMm: front }), ...(rear === undefined ? {} : { rearMm: rear }) };
}

/** The new parts as the swap takes them; keys that are not known are left as before, which the caller must have checked. */
export function newParts(
  fork: PartOfKind<"fork"> | undefined,
  headset: PartOfKind<"headset"> | undefined,
  radii: WheelRadii,
): NewParts {
  return {
    ...(fork?.ports.axle_to_crown === undefined ? {} : { axle_to_crown_mm: fork.ports.axle_to_crown }),
    ...(fork?.ports.rake === undefined ? {} : { rake_mm: fork.ports.rake }),
    ...(radii.frontMm === undefined ? {} : { front_radius_mm: radii.frontMm }),
    ...(radii.rearMm === undefined ? {} : { rear_radius_mm: radii.rearMm }),
    ...(headset?.ports.lower_stack === undefined ? {} : { lower_stack_mm: headset.ports.lower_stack }),
  };
}
