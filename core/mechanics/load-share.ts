/**
 * How much of the weight does the front wheel carry, and on which slope does it lift?
 * Inputs: weights with their places (forward of the cranks' axis, height over the ground), the axles' places, mm and kg.
 * With the common centre of gravity x ahead of the rear axle and h over the ground: share = x / wheelbase; the front
 * lifts where the slope reaches x / h (M18, M32: sum of moments about the rear wheel's contact). Standing still or at one
 * speed; a pull at the pedals lifts it sooner. Limits: rigid, nobody moves, no wind.
 */
export interface Weight {
  readonly kg: number;
  /** Forward of the cranks' axis. */
  readonly forwardMm: number;
  readonly heightMm: number;
}

export interface LoadShare {
  readonly totalKg: number;
  /** 0 to 1. Under 0 the centre of gravity lies behind the rear axle: it falls over backwards. */
  readonly frontShare: number;
  /** Rise over way, 0.3 = 30 %. */
  readonly liftsAtGrade: number;
}

/** undefined where nothing weighs anything or the axles are not apart. */
export function loadShare(
  weights: readonly Weight[],
  axles: { readonly rearForwardMm: number; readonly frontForwardMm: number },
): LoadShare | undefined {
  const totalKg = weights.reduce((sum, w) => sum + w.kg, 0);
  const wheelbase = axles.frontForwardMm - axles.rearForwardMm;
  if (!(totalKg > 0) || !(wheelbase > 0)) return undefined;
  const forward = weights.reduce((sum, w) => sum + w.kg * w.forwardMm, 0) / totalKg;
  const height = weights.reduce((sum, w) => sum + w.kg * w.heightMm, 0) / totalKg;
  if (!(height > 0)) return undefined;
  const ahead = forward - axles.rearForwardMm;
  return { totalKg, frontShare: ahead / wheelbase, liftsAtGrade: ahead / height };
}
