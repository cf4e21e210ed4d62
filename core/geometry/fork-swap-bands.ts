/**
 * How surely are the figures after a swap known, when the frame was measured with tape and level?
 *
 * The covariance of the fourteen measures is carried through the exact swap by central differences. Where none is
 * given it is M2's usual spread, narrowed by one certain fact: when it was measured the bicycle stood on both tyres.
 * The new parts' own measures are taken as exact. 95 % = 1.96 standard deviations.
 */

import { type Answer, answered, type Band } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { frontTyreAboveGroundMm, pointsAsMeasured } from "./bicycle-points.js";
import { type ForkSwapValue, forkSwap, forkSwapValue } from "./fork-swap.js";
import { FRAME_KEYS, type FrameMeasures, type NewParts, USUAL_SD } from "./frame-measures.js";

const Z95 = 1.959963984540054;
const STEP = 1e-3;

/** M2's spread of the fourteen measures (rows as in FRAME_KEYS), given that both old tyres touched the ground. */
export function usualFrameCovariance(frame: FrameMeasures): number[][] {
  const variances = FRAME_KEYS.map((key) => USUAL_SD[key] ** 2);
  const slope = FRAME_KEYS.map((key) => {
    const at = (by: number) => frontTyreAboveGroundMm(pointsAsMeasured({ ...frame, [key]: frame[key] + by }));
    return (at(STEP) - at(-STEP)) / (2 * STEP);
  });
  const lean = slope.map((s, i) => s * (variances[i] ?? Number.NaN));
  const spread = lean.reduce((sum, l, i) => sum + l * (slope[i] ?? Number.NaN), 0);
  return FRAME_KEYS.map((_, i) =>
    FRAME_KEYS.map((_, j) => {
      const own = i === j ? (variances[i] ?? Number.NaN) : 0;
      return own - ((lean[i] ?? Number.NaN) * (lean[j] ?? Number.NaN)) / spread;
    }),
  );
}

/** What does the swap do, with a 95 % band on every figure? `covariance`: 14 x 14 in mm and degrees, order FRAME_KEYS. */
export function forkSwapWithBands(
  frame: FrameMeasures,
  parts: NewParts,
  covariance?: readonly (readonly number[])[],
): Answer<ForkSwapValue> {
  const answer = forkSwap({ frame, new: parts });
  if (answer.kind === "refused") return answer;
  const names = Object.keys(answer.value) as (keyof ForkSwapValue)[];
  const gradients = new Map(names.map((name) => [name, [] as number[]]));
  for (const key of FRAME_KEYS) {
    const high = forkSwapValue({ ...frame, [key]: frame[key] + STEP }, parts);
    const low = forkSwapValue({ ...frame, [key]: frame[key] - STEP }, parts);
    for (const name of names) {
      const slope = high && low ? (high[name] - low[name]) / (2 * STEP) : Number.NaN;
      gradients.get(name)?.push(slope);
    }
  }
  const spread = covariance ?? usualFrameCovariance(frame);
  const means = covariance
    ? say("geometry.fork-swap-bands.95-from-how-surely-the-frame")
    : say("geometry.fork-swap-bands.95-from-the-usual-spread-of");
  const bands: Record<string, Band> = {};
  for (const name of names) {
    const g = gradients.get(name) ?? [];
    let variance = 0;
    g.forEach((gi, i) => {
      g.forEach((gj, j) => {
        variance += gi * gj * (spread[i]?.[j] ?? Number.NaN);
      });
    });
    if (!Number.isFinite(variance)) continue;
    const half = Z95 * Math.sqrt(Math.max(variance, 0));
    bands[name] = { low: answer.value[name] - half, high: answer.value[name] + half, means };
  }
  return answered(answer.value, { bands, sources: [...answer.sources, "m2-usual-spread"], cautions: answer.cautions });
}
