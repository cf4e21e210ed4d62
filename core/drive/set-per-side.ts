/**
 * By how much must each rear stay move out, and by how much does its dropout turn?
 * Inputs: oldMm and newMm between the dropouts; rootToDropoutMm = chainstay bridge to axle, 340 where there is none.
 * Answer: mm per side (negative: together) and degrees per dropout. Formula: (new - old) / 2; atan(side / root).
 * Limits: both sides alike; whether the stay may be set at all is another question. Source: drive-spread.
 */
export function setPerSide(q: { readonly oldMm: number; readonly newMm: number; readonly rootToDropoutMm: number }): {
  readonly perSideMm: number;
  readonly dropoutTurnDeg: number;
} {
  const perSideMm = (q.newMm - q.oldMm) / 2;
  return { perSideMm, dropoutTurnDeg: (Math.atan(perSideMm / q.rootToDropoutMm) * 180) / Math.PI };
}
