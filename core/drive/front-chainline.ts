/**
 * Where do the rings stand, measured on the frame or predicted from the chainset and another spindle?
 * Answers in mm from the frame centre. Source: drive-chainline.
 */

/** Measured: gap from the ring (or the middle of the rings) to the side of the seat tube, plus half the tube. */
export function measuredFrontChainline(q: {
  readonly ringToSeatTubeMm: number;
  readonly seatTubeDiameterMm: number;
}): number {
  return q.ringToSeatTubeMm + q.seatTubeDiameterMm / 2;
}

/** Predicted: the stated chainline moves out by half of what the spindle is longer, and by a right-hand cup spacer. */
export function predictedFrontChainline(q: {
  readonly statedMm: number;
  readonly statedSpindleMm: number;
  readonly spindleMm: number;
  readonly rightCupSpacerMm?: number;
}): number {
  return q.statedMm + (q.spindleMm - q.statedSpindleMm) / 2 + (q.rightCupSpacerMm ?? 0);
}

/** Rear: half the hub width less the way to the middle of the smallest cog and half the stack of cogs. */
export function rearChainline(q: {
  readonly olnMm: number;
  readonly locknutToSmallestMm: number;
  readonly cogs: number;
  readonly cogPitchMm: number;
}): number {
  return q.olnMm / 2 - q.locknutToSmallestMm - ((q.cogs - 1) * q.cogPitchMm) / 2;
}
