/**
 * Where do the points of this bicycle lie? Frame, fork and wheels as points in the plane of symmetry, first as the
 * angles of the frame say, then turned until both tyres stand on the same level ground.
 *
 * x forward, y up, mm, origin at the BB centre. Up along the steering axis a = (-cos HA, sin HA), forward of it
 * n = (sin HA, cos HA).
 */
import type { FrameMeasures, NewParts } from "./frame-measures.js";

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface BicyclePoints {
  readonly bb: Point;
  readonly rearAxle: Point;
  readonly frontAxle: Point;
  /** Seat-tube and top-tube centre lines cross here. */
  readonly seatCluster: Point;
  /** Head-tube and top-tube centre lines cross here. */
  readonly headCrossing: Point;
  readonly headTop: Point;
  readonly headBottom: Point;
  readonly crownSeat: Point;
  /** Foot of the square from the front axle to the steering axis. */
  readonly axisFoot: Point;
  readonly headAngleDeg: number;
  readonly seatAngleDeg: number;
  readonly rearRadiusMm: number;
  readonly frontRadiusMm: number;
  /** Ground under the rear tyre. On level ground both tyres touch it. */
  readonly groundY: number;
  readonly rakeMm: number;
}

export const RAD = Math.PI / 180;

/** Where do the points lie while the frame stands as its own angles say? Lengths as in `FrameMeasures`. */
export function pointsAsMeasured(frame: FrameMeasures, parts: NewParts = {}): BicyclePoints {
  const ha = frame.head_angle_deg * RAD;
  const sa = frame.seat_angle_deg * RAD;
  const slope = frame.top_tube_slope_deg * RAD;
  const cosH = Math.cos(ha);
  const sinH = Math.sin(ha);
  const up = (from: Point, mm: number): Point => ({ x: from.x - cosH * mm, y: from.y + sinH * mm });
  const seatCluster = { x: -frame.seat_tube_cc_mm * Math.cos(sa), y: frame.seat_tube_cc_mm * Math.sin(sa) };
  const headCrossing = {
    x: seatCluster.x + frame.top_tube_actual_mm * Math.cos(slope),
    y: seatCluster.y + frame.top_tube_actual_mm * Math.sin(slope),
  };
  const headTop = up(headCrossing, frame.top_tube_below_head_tube_top_mm);
  const headBottom = up(headTop, -frame.head_tube_mm);
  const crownSeat = up(headBottom, -(parts.lower_stack_mm ?? frame.lower_stack_mm));
  const rake = parts.rake_mm ?? frame.rake_mm;
  const axleToCrown = parts.axle_to_crown_mm ?? frame.axle_to_crown_mm;
  const axisFoot = up(crownSeat, -Math.sqrt(axleToCrown * axleToCrown - rake * rake));
  const frontAxle = { x: axisFoot.x + sinH * rake, y: axisFoot.y + cosH * rake };
  const drop = frame.bb_drop_mm;
  const rearAxle = { x: -Math.sqrt(frame.chainstay_mm * frame.chainstay_mm - drop * drop), y: drop };
  const rearRadiusMm = parts.rear_radius_mm ?? frame.rear_radius_mm;
  return {
    bb: { x: 0, y: 0 },
    rearAxle,
    frontAxle,
    seatCluster,
    headCrossing,
    headTop,
    headBottom,
    crownSeat,
    axisFoot,
    headAngleDeg: frame.head_angle_deg,
    seatAngleDeg: frame.seat_angle_deg,
    rearRadiusMm,
    frontRadiusMm: parts.front_radius_mm ?? frame.front_radius_mm,
    groundY: drop - rearRadiusMm,
    rakeMm: rake,
  };
}

/**
 * How far must the bicycle turn about the BB to stand level on both tyres? Radians, positive nose up.
 * The line of the axles, d = front - rear, must rise by R_front - R_rear: turn = asin((R_f - R_r) / |d|) - atan2(d_y, d_x).
 * NaN where the radii differ by more than the distance of the axles.
 */
export function turnToLevelRad(points: BicyclePoints): number {
  const dx = points.frontAxle.x - points.rearAxle.x;
  const dy = points.frontAxle.y - points.rearAxle.y;
  return Math.asin((points.frontRadiusMm - points.rearRadiusMm) / Math.hypot(dx, dy)) - Math.atan2(dy, dx);
}

/** How high does the front tyre hang above the ground (mm, negative = below) while the rear one stands on it? */
export function frontTyreAboveGroundMm(points: BicyclePoints): number {
  return points.frontAxle.y - points.rearAxle.y - (points.frontRadiusMm - points.rearRadiusMm);
}

/** Where do the points lie after the whole bicycle has turned about the BB by `turnRad` (positive nose up)? */
export function turned(points: BicyclePoints, turnRad: number): BicyclePoints {
  const cos = Math.cos(turnRad);
  const sin = Math.sin(turnRad);
  const turn = (p: Point): Point => ({ x: cos * p.x - sin * p.y, y: sin * p.x + cos * p.y });
  const rearAxle = turn(points.rearAxle);
  return {
    ...points,
    rearAxle,
    frontAxle: turn(points.frontAxle),
    seatCluster: turn(points.seatCluster),
    headCrossing: turn(points.headCrossing),
    headTop: turn(points.headTop),
    headBottom: turn(points.headBottom),
    crownSeat: turn(points.crownSeat),
    axisFoot: turn(points.axisFoot),
    headAngleDeg: points.headAngleDeg - turnRad / RAD,
    seatAngleDeg: points.seatAngleDeg - turnRad / RAD,
    groundY: rearAxle.y - points.rearRadiusMm,
  };
}

/**
 * Where does everything lie on level ground, with these parts? For drawings and every method that needs a point.
 * `parts` left out means "as before". The measures must have passed `frameProblems`.
 */
export function bicyclePoints(frame: FrameMeasures, parts: NewParts = {}): BicyclePoints {
  const points = pointsAsMeasured(frame, parts);
  return turned(points, turnToLevelRad(points));
}
