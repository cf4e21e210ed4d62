/**
 * Where do the bar clamp and the hand stand, for one stem on one head tube?
 * Inputs: stackMm, reachMm (centre of the head tube's top face from the BB), headAngleDeg to level ground,
 *   upAxisMm from the top face up the steering axis to where the stem's centre line leaves it (upper stack + spacers +
 *   half the clamp height; for a quill stem the same up to the locknut, with the raise as spacers), stemLengthMm from
 *   the axis to the bar clamp's centre, stemAngleDeg from the perpendicular of the axis, positive up,
 *   handForwardMm and handUpMm from the clamp's centre in ground axes (bar already turned as it will be).
 * Answer: points in mm from the BB, x forward, y up. The stem stands at 90 - head angle + stem angle to the ground.
 * Limits: side view only; the hand's place across the bicycle does not enter. Source: position-contact-points.
 */
export interface Point {
  readonly xMm: number;
  readonly yMm: number;
}

export interface BarPlaceInput {
  readonly stackMm: number;
  readonly reachMm: number;
  readonly headAngleDeg: number;
  readonly upAxisMm: number;
  readonly stemLengthMm: number;
  readonly stemAngleDeg: number;
  readonly handForwardMm: number;
  readonly handUpMm: number;
}

export interface BarPlace {
  /** Where the stem's centre line leaves the steering axis. */
  readonly stemOnAxis: Point;
  readonly barClamp: Point;
  readonly hand: Point;
  /** Angle of the stem's centre line to level ground, positive when it rises forward. */
  readonly stemToGroundDeg: number;
}

const RAD = Math.PI / 180;

export function barPlace(q: BarPlaceInput): BarPlace {
  const head = q.headAngleDeg * RAD;
  const stemToGroundDeg = 90 - q.headAngleDeg + q.stemAngleDeg;
  const stem = stemToGroundDeg * RAD;
  const stemOnAxis = {
    xMm: q.reachMm - q.upAxisMm * Math.cos(head),
    yMm: q.stackMm + q.upAxisMm * Math.sin(head),
  };
  const barClamp = {
    xMm: stemOnAxis.xMm + q.stemLengthMm * Math.cos(stem),
    yMm: stemOnAxis.yMm + q.stemLengthMm * Math.sin(stem),
  };
  return {
    stemOnAxis,
    barClamp,
    hand: { xMm: barClamp.xMm + q.handForwardMm, yMm: barClamp.yMm + q.handUpMm },
    stemToGroundDeg,
  };
}
