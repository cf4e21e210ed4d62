/**
 * What do another fork, other wheels or another lower headset do to this frame?
 *
 * The frame is rigid. The new front axle is laid out from the crown seat, then the whole bicycle turns about the BB
 * until both tyres stand on the same level ground; exact, no small-angle shortcut. Angles change by the turn.
 * Sources: M4 and M5 (plane geometry).
 */

import { type Answer, answered, type Caution, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import {
  type BicyclePoints,
  frontTyreAboveGroundMm,
  pointsAsMeasured,
  RAD,
  turned,
  turnToLevelRad,
} from "./bicycle-points.js";
import { FRAME_KEYS, type FrameMeasures, measureLabel, type NewParts } from "./frame-measures.js";
import { frameProblems, newPartProblems } from "./frame-problems.js";
import { trailFigures } from "./trail.js";

export interface ForkSwapInput {
  readonly frame: FrameMeasures;
  readonly new: NewParts;
}

export interface ForkSwapValue {
  /** Positive when the head rises. */
  readonly rotation_nose_up_deg: number;
  readonly head_angle_deg: number;
  readonly seat_angle_deg: number;
  readonly bb_height_mm: number;
  readonly bb_drop_mm: number;
  readonly stack_mm: number;
  readonly reach_mm: number;
  readonly effective_top_tube_mm: number;
  readonly effective_top_tube_at_crossing_mm: number;
  readonly front_centre_mm: number;
  readonly front_centre_horizontal_mm: number;
  readonly wheelbase_mm: number;
  readonly trail_mm: number;
  readonly mechanical_trail_mm: number;
  readonly wheel_flop_mm: number;
}

/** Beyond this the measured bicycle does not stand level on its own old parts (common practice, no source). */
export const LEVEL_BEFORE_LIMIT_MM = 2;

/** Head angles outside this are rare enough to be a slip (common practice, no source). */
export const USUAL_HEAD_ANGLE_DEG = { low: 60, high: 80 } as const;

/** Which figures does a bicycle have whose points lie so? The bicycle must stand level; `turnRad` is how it got there. */
export function forkSwapFigures(points: BicyclePoints, turnRad: number): ForkSwapValue {
  const seat = points.seatAngleDeg * RAD;
  const cot = Math.cos(seat) / Math.sin(seat);
  const trail = trailFigures(points.frontRadiusMm, points.headAngleDeg * RAD, points.rakeMm);
  return {
    rotation_nose_up_deg: turnRad / RAD,
    head_angle_deg: points.headAngleDeg,
    seat_angle_deg: points.seatAngleDeg,
    bb_height_mm: -points.groundY,
    bb_drop_mm: points.rearAxle.y,
    stack_mm: points.headTop.y,
    reach_mm: points.headTop.x,
    effective_top_tube_mm: points.headTop.x + points.headTop.y * cot,
    effective_top_tube_at_crossing_mm: points.headCrossing.x + points.headCrossing.y * cot,
    front_centre_mm: Math.hypot(points.frontAxle.x, points.frontAxle.y),
    front_centre_horizontal_mm: points.frontAxle.x,
    wheelbase_mm: points.frontAxle.x - points.rearAxle.x,
    trail_mm: trail.trailMm,
    mechanical_trail_mm: trail.mechanicalTrailMm,
    wheel_flop_mm: trail.wheelFlopMm,
  };
}

/** The figures after the swap, without any check. `undefined` where the bicycle cannot stand level. */
export function forkSwapValue(frame: FrameMeasures, parts: NewParts): ForkSwapValue | undefined {
  const points = pointsAsMeasured(frame, parts);
  const turn = turnToLevelRad(points);
  if (!Number.isFinite(turn) || Math.abs(turn) > Math.PI / 3) return undefined;
  return forkSwapFigures(turned(points, turn), turn);
}

/**
 * What do these new parts do? Keys left out of `new` mean "as before". Angles degrees, lengths mm.
 * The turn counts from the frame as its own angles say it stands; where the old parts would not stand level by more
 * than 2 mm the answer says so, because then part of the turn is in the measurements, not in the parts.
 */
export function forkSwap(input: ForkSwapInput): Answer<ForkSwapValue> {
  const { frame } = input;
  const parts = input.new;
  const missing: Refusal[] = FRAME_KEYS.filter((key) => frame[key] === undefined).map((key) => ({
    code: "missing",
    at: `frame.${key}`,
    given: undefined,
    allowed: say("geometry.fork-swap.a-number"),
    message: say("geometry.fork-swap.the-swap-needs-the-frame-fill", { label: measureLabel(key), key }),
  }));
  const problems = [...missing, ...frameProblems(frame, "frame."), ...newPartProblems(frame, parts)];
  if (problems.length > 0) return refused(problems);
  const before = pointsAsMeasured(frame);
  const value = forkSwapValue(frame, parts);
  if (value === undefined || before.frontAxle.x <= 0) {
    return refused([
      {
        code: "cannot-stand-level",
        at: "frame",
        given: frame,
        allowed: say("geometry.fork-swap.measures-that-put-the-front-axle"),
        message: say("geometry.fork-swap.with-these-measures-the-bicycle-cannot"),
      },
    ]);
  }
  return answered(value, {
    sources: ["m4-same-frame-new-fork", "m5-trail"],
    cautions: swapCautions(before, value),
  });
}

function swapCautions(before: BicyclePoints, value: ForkSwapValue): Caution[] {
  const cautions: Caution[] = [];
  const gap = frontTyreAboveGroundMm(before);
  if (Math.abs(gap) > LEVEL_BEFORE_LIMIT_MM) {
    const turn = turnToLevelRad(before) / RAD;
    cautions.push({
      code: "not-level-before",
      at: "frame",
      message: say("geometry.fork-swap.by-these-measures-the-old-front", {
        gapMm: Math.abs(gap).toFixed(1),
        aboveOrBelow: gap > 0 ? "above" : "below",
        turnDeg: turn.toFixed(2),
      }),
    });
  }
  cautions.push(...steeringCautions(value.head_angle_deg, value.trail_mm));
  return cautions;
}

/** What is odd about this front end? Angle in degrees, trail in mm. */
export function steeringCautions(headAngleDeg: number, trailMm: number): Caution[] {
  const cautions: Caution[] = [];
  if (headAngleDeg < USUAL_HEAD_ANGLE_DEG.low || headAngleDeg > USUAL_HEAD_ANGLE_DEG.high) {
    cautions.push({
      code: "unusual-head-angle",
      at: "value.head_angle_deg",
      message: say("geometry.fork-swap.a-head-angle-of-deg-is", { headAngleDeg: headAngleDeg.toFixed(1) }),
    });
  }
  if (trailMm <= 0) {
    cautions.push({
      code: "no-trail",
      at: "value.trail_mm",
      message: say("geometry.fork-swap.the-tyre-touches-the-ground-ahead"),
    });
  }
  return cautions;
}
