import type { FrameKey } from "../geometry/frame-measures.js";
import { type SurveyFit, varianceOf } from "./fit-survey.js";
import { DEGREES, type ModelPoint, type SideModel, U, UNKNOWN_COUNT } from "./side-model.js";

/** The five figures of the sheet (docs/methods/sheets.md). */
export const HEADLINE_KEYS = ["stack_mm", "reach_mm", "trail_mm", "head_angle_deg", "seat_angle_deg"] as const;
export type HeadlineKey = (typeof HEADLINE_KEYS)[number];

/** Figures of the whole bicycle that follow from the frame. */
export const SHAPE_KEYS = [
  "stack_mm",
  "reach_mm",
  "effective_top_tube_mm",
  "effective_top_tube_at_crossing_mm",
  "front_centre_mm",
  "front_centre_horizontal_mm",
  "wheelbase_mm",
  "bb_height_mm",
  "trail_mm",
  "mechanical_trail_mm",
  "wheel_flop_mm",
] as const;
export type ShapeKey = (typeof SHAPE_KEYS)[number];

export type FigureKey = HeadlineKey | FrameKey | ShapeKey;

export interface Figure {
  readonly value: number;
  /** Slopes by the 13 unknowns. */
  readonly slopes: Float64Array;
}

/**
 * Which figures of the frame follow from the adjusted unknowns, and how do they change with each?
 *
 * trail = (R cos HA − rake)/sin HA with R the adjusted front axle height; mechanical trail = trail sin HA; wheel flop =
 * trail sin HA cos HA; effective top tube = x + y/tan SA of the head tube top (at the crossing: of the joint).
 */
export function figuresOf(model: SideModel): Readonly<Record<FigureKey, Figure>> {
  const { u, top, joint, front, rear } = model;
  const headAngle = u[U.headAngle] as number;
  const seatAngle = u[U.seatAngle] as number;
  const sinH = Math.sin(headAngle);
  const cosH = Math.cos(headAngle);
  const own = (place: number, factor = 1): Figure => {
    const slopes = new Float64Array(UNKNOWN_COUNT);
    slopes[place] = factor;
    return { value: (u[place] as number) * factor, slopes };
  };
  const frontRadius: Figure = { value: (u[U.bbHeight] as number) + front.y, slopes: Float64Array.from(front.dy) };
  frontRadius.slopes[U.bbHeight] = 1;
  const wheelbase: Figure = { value: front.x - rear.x, slopes: Float64Array.from(front.dx) };
  wheelbase.slopes[U.rearBehind] = 1;
  const trailValue = (frontRadius.value * cosH - (u[U.rake] as number)) / sinH;
  const trail: Figure = { value: trailValue, slopes: scaled(frontRadius.slopes, cosH / sinH) };
  add(trail.slopes, U.rake, -1 / sinH);
  add(trail.slopes, U.headAngle, -frontRadius.value - (trailValue * cosH) / sinH);
  const mechanical: Figure = { value: trailValue * sinH, slopes: scaled(trail.slopes, sinH) };
  add(mechanical.slopes, U.headAngle, trailValue * cosH);
  const flop: Figure = { value: trailValue * sinH * cosH, slopes: scaled(trail.slopes, sinH * cosH) };
  add(flop.slopes, U.headAngle, trailValue * (cosH * cosH - sinH * sinH));
  const lowerStack: Figure = { value: model.lowerStack, slopes: new Float64Array(UNKNOWN_COUNT) };
  const drop: Figure = { value: rear.y, slopes: Float64Array.from(rear.dy) };
  return {
    stack_mm: { value: top.y, slopes: Float64Array.from(top.dy) },
    reach_mm: { value: top.x, slopes: Float64Array.from(top.dx) },
    trail_mm: trail,
    head_angle_deg: own(U.headAngle, DEGREES),
    seat_angle_deg: own(U.seatAngle, DEGREES),
    effective_top_tube_mm: toSeatLine(top, seatAngle),
    effective_top_tube_at_crossing_mm: toSeatLine(joint, seatAngle),
    front_centre_mm: fromBb(front),
    front_centre_horizontal_mm: { value: front.x, slopes: Float64Array.from(front.dx) },
    wheelbase_mm: wheelbase,
    bb_height_mm: own(U.bbHeight),
    mechanical_trail_mm: mechanical,
    wheel_flop_mm: flop,
    seat_tube_cc_mm: own(U.seatTube),
    top_tube_actual_mm: own(U.topTube),
    top_tube_slope_deg: own(U.slope, DEGREES),
    head_tube_mm: own(U.headTube),
    top_tube_below_head_tube_top_mm: own(U.topJoint),
    lower_stack_mm: lowerStack,
    axle_to_crown_mm: own(U.axleToCrown),
    rake_mm: own(U.rake),
    chainstay_mm: fromBb(rear),
    bb_drop_mm: drop,
    rear_radius_mm: own(U.rearHeight),
    front_radius_mm: frontRadius,
  };
}

/** One standard deviation of a figure, in its unit. */
export function figureSd(fitted: SurveyFit, figure: Figure): number {
  return Math.sqrt(Math.max(0, varianceOf(fitted, figure.slopes, figure.slopes)));
}

/** The wanted figures by key. */
export function pickFigures<K extends FigureKey>(
  figures: Readonly<Record<FigureKey, Figure>>,
  keys: readonly K[],
): Record<K, number> {
  const out = {} as Record<K, number>;
  for (const key of keys) out[key] = figures[key].value;
  return out;
}

/** One standard deviation of the wanted figures by key. */
export function pickSds<K extends FigureKey>(
  fitted: SurveyFit,
  figures: Readonly<Record<FigureKey, Figure>>,
  keys: readonly K[],
): Record<K, number> {
  const out = {} as Record<K, number>;
  for (const key of keys) out[key] = figureSd(fitted, figures[key]);
  return out;
}

function scaled(slopes: Float64Array, factor: number): Float64Array {
  return slopes.map((s) => s * factor);
}

function add(slopes: Float64Array, place: number, amount: number): void {
  slopes[place] = (slopes[place] as number) + amount;
}

function fromBb(point: ModelPoint): Figure {
  const length = Math.hypot(point.x, point.y);
  const slopes = new Float64Array(UNKNOWN_COUNT);
  for (let j = 0; j < UNKNOWN_COUNT; j++) {
    slopes[j] = (point.x * (point.dx[j] as number) + point.y * (point.dy[j] as number)) / length;
  }
  return { value: length, slopes };
}

function toSeatLine(point: ModelPoint, seatAngle: number): Figure {
  const tan = Math.tan(seatAngle);
  const sin = Math.sin(seatAngle);
  const slopes = new Float64Array(UNKNOWN_COUNT);
  for (let j = 0; j < UNKNOWN_COUNT; j++) slopes[j] = (point.dx[j] as number) + (point.dy[j] as number) / tan;
  add(slopes, U.seatAngle, -point.y / (sin * sin));
  return { value: point.x + point.y / tan, slopes };
}
