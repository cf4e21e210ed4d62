/**
 * How far does the bicycle go in one turn of the crank?
 * Inputs: radiusMm of the wheel under the rider, ring and cog in teeth, hubRatio of a hub gear (1 without).
 * Answer: metres per crank turn. Formula: 2 pi R ring / cog x hub ratio. Source: drive-development.
 */
export function development(q: {
  readonly radiusMm: number;
  readonly ring: number;
  readonly cog: number;
  readonly hubRatio?: number;
}): number {
  return (2 * Math.PI * q.radiusMm * q.ring * (q.hubRatio ?? 1)) / (q.cog * 1000);
}

/**
 * How fast does the rider still turn the crank on the steepest sustained climb?
 * Inputs: powerW at the crank, efficiency 0..1 of the drive, massKg of all, grade as a ratio > 0, rolling coefficient,
 *   developmentM of the lowest gear. Answer: crank turns a minute; 50 to 55 is the least that is comfortable.
 * Formula: v = P eta / (m g (s + crr)), turns = 60 v / development. Limits: air is left out, which is right for slow
 *   climbs only (the figure is a little high); below 0 total resistance the answer is Infinity. Source: drive-development.
 */
export function wallCadence(q: {
  readonly powerW: number;
  readonly efficiency: number;
  readonly massKg: number;
  readonly grade: number;
  readonly crr: number;
  readonly developmentM: number;
}): number {
  const resistanceN = q.massKg * 9.80665 * (q.grade + q.crr);
  if (resistanceN <= 0) return Number.POSITIVE_INFINITY;
  return (60 * q.powerW * q.efficiency) / (resistanceN * q.developmentM);
}
