/**
 * How far may the bicycle lean before the pedal strikes the ground? Degrees from upright.
 *
 * bbHeightMm; crankMm; pedalOuterMm: outer edge of the pedal from the centre plane; pedalHalfHeightMm: pedal axle to
 * its lower face; tyreWidthMm: the tyre rolls on its round section of radius w/2 as it leans.
 * The pedal's lower outer edge P = (y, z) touches where y sin t - u cos t = w/2, with u = z - w/2:
 *   t = atan2(u, y) + asin((w/2) / sqrt(y^2 + u^2)).  With w = 0 this is atan(z / y).
 * Negative: it strikes upright. Source: plane geometry. Wanted 25 deg: 16 CFR 1512.17(c); ISO 25 (from memory).
 */
export function pedalStrikeLeanDeg(
  bbHeightMm: number,
  crankMm: number,
  pedalOuterMm: number,
  pedalHalfHeightMm: number,
  tyreWidthMm: number,
): number {
  const r = tyreWidthMm / 2;
  const u = bbHeightMm - crankMm - pedalHalfHeightMm - r;
  return ((Math.atan2(u, pedalOuterMm) + Math.asin(r / Math.hypot(u, pedalOuterMm))) * 180) / Math.PI;
}
