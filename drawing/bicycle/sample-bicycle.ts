import { at, type Point } from "../model/index.js";
import type { BicycleSketch } from "./bicycle-sketch.js";

/** What a frame and fork are, by the numbers a builder measures. mm and degrees; only for samples and tests. */
export interface SampleNumbers {
  readonly chainstayMm: number;
  readonly bbDropMm: number;
  readonly seatTubeMm: number;
  readonly topTubeMm: number;
  readonly seatAngleDeg: number;
  readonly headAngleDeg: number;
  readonly headTubeMm: number;
  readonly crossingBelowTopMm: number;
  readonly lowerStackMm: number;
  readonly axleToCrownMm: number;
  readonly rakeMm: number;
  readonly tyreRadiusMm: number;
  readonly beadRadiusMm: number;
  readonly topTubeSlopeDeg: number;
}

/** Which points follow from such numbers? The chain of side-view geometry: seat tube, top tube, head tube, fork, axle. */
export function sampleSketch(n: SampleNumbers): BicycleSketch {
  const rad = Math.PI / 180;
  const bb = at(0, 0);
  const seatDir = at(-Math.cos(n.seatAngleDeg * rad), Math.sin(n.seatAngleDeg * rad));
  const headDir = at(-Math.cos(n.headAngleDeg * rad), Math.sin(n.headAngleDeg * rad));
  const go = (p: Point, d: Point, mm: number) => at(p.x + d.x * mm, p.y + d.y * mm);
  const seatCluster = go(bb, seatDir, n.seatTubeMm);
  const headCrossing = go(
    seatCluster,
    at(Math.cos(n.topTubeSlopeDeg * rad), Math.sin(n.topTubeSlopeDeg * rad)),
    n.topTubeMm,
  );
  const headTop = go(headCrossing, headDir, n.crossingBelowTopMm);
  const headBottom = go(headTop, headDir, -n.headTubeMm);
  const crownSeat = go(headBottom, headDir, -n.lowerStackMm);
  const alongMm = Math.sqrt(n.axleToCrownMm ** 2 - n.rakeMm ** 2);
  const onAxis = go(crownSeat, headDir, -alongMm);
  const frontAxle = go(onAxis, at(headDir.y, -headDir.x), n.rakeMm);
  const rearAxle = at(-Math.sqrt(n.chainstayMm ** 2 - n.bbDropMm ** 2), n.bbDropMm);
  // Both tyres stand on level ground: the whole bicycle turns about the bottom bracket until the axles are level.
  const tilt = -Math.atan2(frontAxle.y - rearAxle.y, frontAxle.x - rearAxle.x);
  const turn = (p: Point) =>
    at(p.x * Math.cos(tilt) - p.y * Math.sin(tilt), p.x * Math.sin(tilt) + p.y * Math.cos(tilt));
  return {
    bb,
    rearAxle: turn(rearAxle),
    frontAxle: turn(frontAxle),
    seatCluster: turn(seatCluster),
    headCrossing: turn(headCrossing),
    headTop: turn(headTop),
    headBottom: turn(headBottom),
    crownSeat: turn(crownSeat),
    rearRadiusMm: n.tyreRadiusMm,
    frontRadiusMm: n.tyreRadiusMm,
    rearBeadMm: n.beadRadiusMm,
    frontBeadMm: n.beadRadiusMm,
    groundY: turn(rearAxle).y - n.tyreRadiusMm,
  };
}

const FRAME = {
  chainstayMm: 442,
  seatTubeMm: 491,
  topTubeMm: 551,
  seatAngleDeg: 72.8,
  headAngleDeg: 71.1,
  headTubeMm: 145,
  crossingBelowTopMm: 35,
  lowerStackMm: 12,
  topTubeSlopeDeg: 6.2,
} as const;

/** The invented donor of the harbour workshop, near enough for a picture. */
export const SAMPLE_BEFORE: BicycleSketch = sampleSketch({
  ...FRAME,
  bbDropMm: 57,
  axleToCrownMm: 392,
  rakeMm: 45,
  tyreRadiusMm: 346,
  beadRadiusMm: 311,
});

const converted = sampleSketch({
  ...FRAME,
  bbDropMm: 57,
  axleToCrownMm: 395,
  rakeMm: 45,
  tyreRadiusMm: 339,
  beadRadiusMm: 292,
});

/** The same frame with another fork, wheels, saddle and bar. */
export const SAMPLE_AFTER: BicycleSketch = {
  ...converted,
  saddle: at(-220, 692),
  steererTop: at(converted.headTop.x - 22, converted.headTop.y + 66),
  barClamp: at(converted.headTop.x + 42, converted.headTop.y + 100),
  palm: at(345, 668),
  crankLengthMm: 170,
  chainringRadiusMm: 85,
  rotorRadiusMm: { front: 80, rear: 80 },
  guards: true,
  tubesMm: { seat: 28.6 },
};
