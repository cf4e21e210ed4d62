import { findRoot } from "./find-root.js";
import { incompleteGamma } from "./incomplete-gamma.js";

/** How likely is a standard normal value of this size or less? 0 to 1; keeps its digits in both tails. */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) return Number.NaN;
  const half = incompleteGamma(0.5, (z * z) / 2).upper / 2;
  return z > 0 ? 1 - half : half;
}

/** How likely is a standard normal value at least this far from zero, on either side? 0 to 1. */
export function normalTwoSided(z: number): number {
  return incompleteGamma(0.5, (z * z) / 2).upper;
}

/** Which standard normal value has the share p below it? For 0 < p < 1; NaN outside. */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) return Number.NaN;
  if (p === 0.5) return 0;
  const tail = Math.min(p, 1 - p);
  const root = findRoot((z) => Math.log(normalCdf(z) / tail), -38, 0, 1e-13);
  if (root.kind !== "root") return Number.NaN;
  return p < 0.5 ? root.x : -root.x;
}
