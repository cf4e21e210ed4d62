/**
 * How much trail does this front end have? Ground trail, mechanical trail (square to the axis) and wheel flop, mm.
 *
 * radiusMm: loaded front radius, > 0; headAngleRad: steering axis to the ground, > 0; rakeMm: positive ahead of the axis.
 * trail = (R cos H - rake) / sin H, mechanical = trail sin H, flop = trail sin H cos H; positive = contact behind the axis.
 * Source: M5; same trail as in Meijaard et al. 2007. Flop after Wilson, Bicycling Science (from memory, not re-read).
 */
export function trailFigures(
  radiusMm: number,
  headAngleRad: number,
  rakeMm: number,
): { readonly trailMm: number; readonly mechanicalTrailMm: number; readonly wheelFlopMm: number } {
  const cos = Math.cos(headAngleRad);
  const mechanical = radiusMm * cos - rakeMm;
  return { trailMm: mechanical / Math.sin(headAngleRad), mechanicalTrailMm: mechanical, wheelFlopMm: mechanical * cos };
}

/** Which rake gives this trail? mm; the inverse of `trailFigures`: rake = R cos H - trail sin H. */
export function rakeForTrail(radiusMm: number, headAngleRad: number, trailMm: number): number {
  return radiusMm * Math.cos(headAngleRad) - trailMm * Math.sin(headAngleRad);
}
