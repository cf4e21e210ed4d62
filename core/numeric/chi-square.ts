import { findRoot } from "./find-root.js";
import { incompleteGamma } from "./incomplete-gamma.js";

/** How likely is a chi-square of this size or less, with so many degrees of freedom? 0 to 1; NaN for no freedom. */
export function chiSquareCdf(chiSquare: number, degreesOfFreedom: number): number {
  return incompleteGamma(degreesOfFreedom / 2, chiSquare / 2).lower;
}

/**
 * Which chi-square is passed only by chance 1 - p, with so many degrees of freedom?
 *
 * @param p share below the answer, 0 < p < 1 (0.95 for the global test).
 * @param degreesOfFreedom > 0, need not be whole.
 * @returns the limit, no unit; NaN outside the range.
 * Method: root of the regularised incomplete gamma function.
 */
export function chiSquareQuantile(p: number, degreesOfFreedom: number): number {
  if (!(p > 0 && p < 1) || !(degreesOfFreedom > 0)) return Number.NaN;
  let high = degreesOfFreedom + 10;
  while (chiSquareCdf(high, degreesOfFreedom) < p) high *= 2;
  const root = findRoot((x) => chiSquareCdf(x, degreesOfFreedom) - p, 0, high, 1e-13);
  return root.kind === "root" ? root.x : Number.NaN;
}
