/**
 * How far is the axle above the ground on this tyre, before anybody has measured it? mm.
 *
 * R = BSD / 2 + tyre width: the section stands about as high as it is wide. Good to ± 3; a roll-out under the rider
 * is good to ± 1. bsdMm: bead seat diameter; tyreWidthMm: nominal width.
 * Source: M6, common practice, no source. Bead seat diameters: ISO 5775.
 */
export function saggedRadiusMm(bsdMm: number, tyreWidthMm: number): number {
  return bsdMm / 2 + tyreWidthMm;
}

/** Half-width of the estimate above, mm (M6, common practice, no source). */
export const SAGGED_RADIUS_HALF_BAND_MM = 3;

/**
 * What do the pads have to reach when the rim changes? mm, from the brake bolt to the middle of the pad.
 * reach_new = reach_now + (BSD_now - BSD_new) / 2: a smaller rim asks for longer arms. Source: M22, plain geometry.
 */
export function rimBrakeReachMm(reachNowMm: number, bsdNowMm: number, bsdNewMm: number): number {
  return reachNowMm + (bsdNowMm - bsdNewMm) / 2;
}
