/** Which measurement comes next, while the side view of the old bicycle is not settled, or nothing checks its readings? */

import type { NextStep } from "../quantity/index.js";
import { measurementKind } from "../survey/index.js";
import { say } from "../texts/say.js";
import { donorPath } from "./donor-path.js";
import { type Reckoned, readingWords, SURVEY_NAME } from "./question.js";

/**
 * Readings that a tape takes, those first that close or check most (docs/methods/new-build.md). What a tape cannot take,
 * an angle, comes only where the survey asks for nothing else.
 */
const BY_TAPE = [
  "bb_height_mm",
  "chainstay_mm",
  "wheelbase_mm",
  "head_tube_mm",
  "bb_to_head_tube_top_mm",
  "front_axle_to_head_tube_top_mm",
  "rake_mm",
  "seat_tube_cc_mm",
  "rear_axle_to_seat_cluster_mm",
  "top_tube_below_head_tube_top_mm",
  "rear_axle_to_head_tube_top_mm",
  "top_tube_actual_mm",
  "front_centre_mm",
  "axle_to_crown_mm",
] as const;

function stepOf(name: string): NextStep {
  const kind = measurementKind(name);
  const angle = kind?.unit === "deg";
  return {
    kind: "measure",
    what: say("questions.side-view-step.measure-the", { name: readingWords(name) }),
    at: donorPath(name),
    tool: angle
      ? say("questions.side-view-step.digital-level")
      : name === "rake_mm"
        ? say("workshop.new-build-entries.tape-and-a-straight-lath")
        : "tape",
    accuracy: angle ? "± 0.6°" : `± ${2 * (kind?.sd ?? 1.5)} mm`,
    ...(kind === undefined ? {} : { how: kind.how }),
  };
}

const taken = (r: Reckoned) => new Set(r.geometry.input.measurements.map((m) => m.name));

/** undefined: the side view is settled. */
export function sideViewStep(r: Reckoned): NextStep | undefined {
  if (r.geometry.missing[0] !== undefined) return r.geometry.missing[0];
  const { frame } = r.geometry;
  if (frame.kind === "answered") return undefined;
  const have = taken(r);
  // What is wrong with a reading that stands there comes before any reading that is missing.
  const wrong = frame.refusals.find((x) => x.code === "out-of-range" || x.code === "impossible-figure");
  const asked = frame.refusals.flatMap((x) => x.message.match(SURVEY_NAME) ?? []).filter((n) => !have.has(n));
  const next =
    wrong !== undefined
      ? undefined
      : (BY_TAPE.find((n) => asked.includes(n)) ?? BY_TAPE.find((n) => !have.has(n)) ?? asked[0]);
  return next === undefined
    ? {
        kind: "measure",
        what: say("questions.side-view-step.measure-the-frame-again-all-readings"),
        at: "donor.measured.chainstay",
        tool: "tape",
      }
    : stepOf(next);
}

/** One more reading, so that the others are checked. undefined: a tape can take no more. */
export function spareReading(r: Reckoned): NextStep | undefined {
  const have = taken(r);
  const next = ["rear_axle_to_head_tube_top_mm", "top_tube_actual_mm", ...BY_TAPE, "head_angle_deg"].find(
    (n) => !have.has(n),
  );
  return next === undefined ? undefined : stepOf(next);
}

/** What a tape has to read at the door before anything can be said: what is missing of the side view, the next step first. */
export function doorReadings(r: Reckoned): readonly NextStep[] {
  const first = sideViewStep(r);
  const have = taken(r);
  const rest = BY_TAPE.filter((n) => !have.has(n)).map(stepOf);
  return first === undefined ? rest : [first, ...rest.filter((s) => s.at !== first.at)];
}
