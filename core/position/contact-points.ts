/**
 * Where are the points that the rider touches, and what leads to them, for the picture of the bicycle?
 * Inputs: frame measures, stem and spacers as in `barPlace`, seat angle, post setback and extension, rails pushed back and
 *   the saddle's height over its clamp; crank length and crank angle (0 = forward, 90 = down). Mm and degrees.
 * Answer: points in mm from the BB, x forward, y up, ground level, and bar clamp minus saddle top (positive: bar higher).
 * Limits: side view. The saddle point is the top over the middle of the rails. Source: position-contact-points.
 */
import { type BarPlace, type BarPlaceInput, barPlace, type Point } from "./bar-place.js";

export interface ContactPointsInput extends Omit<BarPlaceInput, "upAxisMm"> {
  readonly upperStackMm: number;
  readonly spacersMm: number;
  readonly clampHeightMm: number;
  readonly seatAngleDeg: number;
  readonly extensionMm: number;
  readonly setbackMm: number;
  readonly railShiftBackMm: number;
  readonly saddleHeightAboveClampMm: number;
  readonly crankMm: number;
  readonly crankAngleDeg: number;
}

export interface ContactPoints extends BarPlace {
  readonly headTubeTop: Point;
  /** Underside of the stem clamp, on the axis. */
  readonly stemUnderside: Point;
  readonly stemTop: Point;
  /** On the seat tube axis, where the setback starts. */
  readonly postOnAxis: Point;
  readonly saddleClamp: Point;
  readonly saddleTop: Point;
  readonly pedal: Point;
  /** Bar clamp centre minus saddle top, up positive. */
  readonly barMinusSaddleMm: number;
}

const RAD = Math.PI / 180;

export function contactPoints(q: ContactPointsInput): ContactPoints {
  const head = q.headAngleDeg * RAD;
  const seat = q.seatAngleDeg * RAD;
  const upAxis = (mm: number): Point => ({
    xMm: q.reachMm - mm * Math.cos(head),
    yMm: q.stackMm + mm * Math.sin(head),
  });
  const underside = q.upperStackMm + q.spacersMm;
  const bar = barPlace({ ...q, upAxisMm: underside + q.clampHeightMm / 2 });
  const postOnAxis = { xMm: -q.extensionMm * Math.cos(seat), yMm: q.extensionMm * Math.sin(seat) };
  const saddleClamp = {
    xMm: postOnAxis.xMm - q.setbackMm * Math.sin(seat),
    yMm: postOnAxis.yMm - q.setbackMm * Math.cos(seat),
  };
  const saddleTop = {
    xMm: saddleClamp.xMm - q.railShiftBackMm,
    yMm: saddleClamp.yMm + q.saddleHeightAboveClampMm,
  };
  const crank = q.crankAngleDeg * RAD;
  return {
    ...bar,
    headTubeTop: upAxis(0),
    stemUnderside: upAxis(underside),
    stemTop: upAxis(underside + q.clampHeightMm),
    postOnAxis,
    saddleClamp,
    saddleTop,
    pedal: { xMm: q.crankMm * Math.cos(crank), yMm: -q.crankMm * Math.sin(crank) },
    barMinusSaddleMm: bar.barClamp.yMm - saddleTop.yMm,
  };
}
