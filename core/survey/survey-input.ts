import type { Caution, Refusal } from "../quantity/index.js";
import { nearestName } from "../quantity/nearest-name.js";
import { say } from "../texts/say.js";
import { MEASUREMENT_KINDS, MEASUREMENT_NAMES, measurementKindIndex } from "./measurement-kinds.js";
import { directUnknown, U, UNKNOWN_COUNT } from "./side-model.js";

export interface SurveyMeasurement {
  /** One of MEASUREMENT_NAMES. A name may come more than once: a repeat reading. */
  readonly name: string;
  /** mm or degrees, as the name ends. */
  readonly value: number;
  /** One standard deviation, > 0; the workshop's SURVEY_SIGMA where it is left out. */
  readonly sd?: number | undefined;
}

export interface SurveyConstants {
  readonly lower_stack_mm: number;
  /** Exact where it stands here; otherwise give it among the measurements. */
  readonly top_tube_below_head_tube_top_mm?: number | undefined;
  /** Needed with `down_tube_cc_mm`, here or among the measurements. */
  readonly down_tube_joint_above_head_tube_bottom_mm?: number | undefined;
}

export interface SurveyInput {
  readonly constants: SurveyConstants;
  readonly measurements: readonly SurveyMeasurement[];
}

/** A survey that passed its checks, ready for the fit. */
export interface ReadSurvey {
  readonly kinds: readonly number[];
  readonly values: readonly number[];
  readonly sds: readonly number[];
  /** Key of each measurement in the answer: its name; the second reading of a name is `name#2`, and so on. */
  readonly keys: readonly string[];
  readonly lowerStackMm: number;
  readonly topJointMm: number | undefined;
  readonly downJointMm: number | undefined;
  /** Places of the unknowns that the fit may move. */
  readonly active: readonly number[];
  readonly cautions: readonly Caution[];
}

const OTHER_WORDS: Readonly<Record<string, string>> = {
  rear_radius_mm: "rear_axle_height_mm",
  front_radius_mm: "front_axle_height_mm",
  top_tube_mm: "top_tube_actual_mm",
  chainstay_length_mm: "chainstay_mm",
  seat_cluster_to_rear_axle_mm: "rear_axle_to_seat_cluster_mm",
  fork_rake_mm: "rake_mm",
};

/** Is this survey whole and possible? All that is wrong at once, or the survey ready for the fit. */
export function readSurvey(
  input: SurveyInput,
): { readonly refusals: readonly Refusal[] } | { readonly read: ReadSurvey } {
  const refusals: Refusal[] = [];
  const cautions: Caution[] = [];
  const refuse = (code: string, at: string, given: unknown, allowed: string, message: string): void => {
    refusals.push({ code, at, given, allowed, message });
  };
  const constants: Partial<SurveyConstants> = input.constants ?? {};
  const measurements = Array.isArray(input.measurements) ? input.measurements : [];

  const constant = (key: keyof SurveyConstants, low: number, high: number): number | undefined => {
    const value = constants[key];
    if (value === undefined || value === null) return undefined;
    if (typeof value === "number" && value >= low && value <= high) return value;
    refuse(
      "out-of-range",
      `constants.${key}`,
      value,
      say("survey.survey-input.to-mm", { low, high }),
      say("survey.survey-input.is-it-must-be-a-number", { key, value, low, high }),
    );
    return undefined;
  };
  const lowerStackMm = constant("lower_stack_mm", 0, 500);
  const topJointMm = constant("top_tube_below_head_tube_top_mm", -200, 1000);
  const downJointMm = constant("down_tube_joint_above_head_tube_bottom_mm", -200, 1000);
  if (constants.lower_stack_mm === undefined || constants.lower_stack_mm === null) {
    refuse(
      "missing",
      "constants.lower_stack_mm",
      undefined,
      say("survey.survey-input.0-to-500-mm"),
      say("survey.survey-input.lower-stack-mm-is-missing-measure"),
    );
  }

  const kinds: number[] = [];
  const values: number[] = [];
  const sds: number[] = [];
  const keys: string[] = [];
  const seen = new Map<string, number>();
  measurements.forEach((measurement, i) => {
    const at = `measurements[${i}]`;
    const name = String(measurement?.name ?? "");
    const index = measurementKindIndex(name);
    const kind = MEASUREMENT_KINDS[index];
    if (kind === undefined) {
      refuse("unknown-name", `${at}.name`, measurement?.name, MEASUREMENT_NAMES.join(", "), unknownName(name));
      return;
    }
    const { value } = measurement;
    const [low, high] = limits(name, kind.unit);
    if (typeof value !== "number" || !(value >= low && value <= high)) {
      const range = say("survey.survey-input.to", { low, high, unit: kind.unit });
      refuse(
        "out-of-range",
        `${at}.value`,
        value,
        range,
        say("survey.survey-input.reads-it-must-be-a-number", { name, value, range }),
      );
      return;
    }
    const sd = measurement.sd ?? kind.sd;
    if (typeof sd !== "number" || !(sd >= 1e-6 && sd <= 1000)) {
      refuse(
        "out-of-range",
        `${at}.sd`,
        sd,
        say("survey.survey-input.0-000001-to-1000"),
        say("survey.survey-input.the-standard-deviation-of-is-it", { name, sd, usualSd: kind.sd }),
      );
      return;
    }
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    kinds.push(index);
    values.push(value);
    sds.push(sd);
    keys.push(count === 1 ? name : `${name}#${count}`);
  });

  const readings = (name: string): number[] =>
    values.filter((_, i) => MEASUREMENT_KINDS[kinds[i] ?? -1]?.name === name);
  const rakes = readings("rake_mm");
  const crowns = readings("axle_to_crown_mm");
  if (rakes.length > 0 && crowns.length > 0 && Math.min(...rakes.map(Math.abs)) >= Math.max(...crowns)) {
    refuse(
      "impossible-figure",
      "measurements",
      { rake_mm: rakes, axle_to_crown_mm: crowns },
      say("survey.survey-input.rake-mm-smaller-than-axle-to"),
      say("survey.survey-input.a-rake-of-mm-is-no", { rakes: rakes.join(", "), crowns: crowns.join(", ") }),
    );
  }
  const downMeasured = seen.has("down_tube_joint_above_head_tube_bottom_mm");
  if (seen.has("down_tube_cc_mm") && downJointMm === undefined && !downMeasured) {
    refuse(
      "missing",
      "constants.down_tube_joint_above_head_tube_bottom_mm",
      undefined,
      say("survey.survey-input.200-to-1000-mm-here-or"),
      say("survey.survey-input.down-tube-cc-mm-needs-the"),
    );
  }
  for (const [name, exact] of [
    ["top_tube_below_head_tube_top_mm", topJointMm],
    ["down_tube_joint_above_head_tube_bottom_mm", downJointMm],
  ] as const) {
    if (exact === undefined || !seen.has(name)) continue;
    cautions.push({
      code: "joint-given-twice",
      at: `constants.${name}`,
      message: say("survey.survey-input.stands-among-the-constants-and-among", { name, exact }),
    });
  }
  if (topJointMm === undefined && !seen.has("top_tube_below_head_tube_top_mm")) {
    cautions.push({
      code: "joint-not-given",
      at: "constants.top_tube_below_head_tube_top_mm",
      message: say("survey.survey-input.top-tube-below-head-tube-top"),
    });
  }
  if (refusals.length > 0 || lowerStackMm === undefined) return { refusals };

  const active: number[] = [];
  for (let u = 0; u < UNKNOWN_COUNT; u++) {
    if (u === U.topJoint && topJointMm !== undefined) continue;
    if (u === U.downJoint && (downJointMm !== undefined || !downMeasured)) continue;
    active.push(u);
  }
  return { read: { kinds, values, sds, keys, lowerStackMm, topJointMm, downJointMm, active, cautions } };
}

function limits(name: string, unit: "mm" | "deg"): readonly [number, number] {
  if (name === "top_tube_slope_deg") return [-60, 60];
  if (unit === "deg") return [5, 175];
  if (name === "rake_mm") return [-300, 20000];
  if (directUnknown(measurementKindIndex(name)) >= U.topJoint) return [-200, 20000];
  return [0.1, 20000];
}

function unknownName(name: string): string {
  if (name === "lower_stack_mm") return say("survey.survey-input.lower-stack-mm-is-known-without");
  const near = OTHER_WORDS[name] ?? nearestName(name, MEASUREMENT_NAMES);
  const hint =
    near === undefined
      ? say("survey.survey-input.see-the-list-of-names")
      : say("survey.survey-input.did-you-mean", { near });
  return say("survey.survey-input.the-survey-knows-no-measurement-named", { name, hint });
}
