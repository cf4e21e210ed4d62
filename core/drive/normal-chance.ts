/**
 * How likely is a normally spread length to lie in one of these ranges?
 * Inputs: meanMm; sdMm > 0; ranges {fromMm, toMm}, which may overlap (an overlap counts once).
 * Answer: a chance 0..1. Formula: sum of P((to - mean)/sd) - P((from - mean)/sd) over the merged ranges.
 */
export interface Range {
  readonly fromMm: number;
  readonly toMm: number;
}

export function chanceInside(meanMm: number, sdMm: number, ranges: readonly Range[]): number {
  const sorted = [...ranges].sort((a, b) => a.fromMm - b.fromMm);
  let chance = 0;
  let reached = Number.NEGATIVE_INFINITY;
  for (const { fromMm, toMm } of sorted) {
    const from = Math.max(fromMm, reached);
    if (toMm <= from) continue;
    chance += normalBelow((toMm - meanMm) / sdMm) - normalBelow((from - meanMm) / sdMm);
    reached = toMm;
  }
  return chance;
}

/**
 * Which share of a normal spread lies below z standard deviations?
 * Formula: within 3 the power series z + z^3/3 + z^5/15 + ..., beyond it the continued fraction of the tail
 * (Abramowitz & Stegun 26.2.11 and 26.2.14, from memory); both to about 1e-14.
 */
export function normalBelow(z: number): number {
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (Math.abs(z) <= 3) {
    let term = z;
    let sum = z;
    for (let i = 3; Math.abs(term) > 1e-17 && i < 200; i += 2) {
      term *= (z * z) / i;
      sum += term;
    }
    return 0.5 + density * sum;
  }
  const x = Math.abs(z);
  if (x > 38) return z < 0 ? 0 : 1;
  let fraction = x;
  for (let k = 60; k >= 1; k--) fraction = x + k / fraction;
  const tail = density / fraction;
  return z < 0 ? tail : 1 - tail;
}
