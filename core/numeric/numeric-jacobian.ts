import { element } from "./element.js";
import type { LeastSquaresModel } from "./least-squares-problem.js";

/**
 * How does a model that only predicts become one that also says its slopes?
 *
 * Central differences with a step of 6e-6 of the unknown (at least 6e-6 of its start scale 1), good to about ten
 * digits. Give analytic slopes where speed or the last digits matter.
 *
 * @param predict fills `predicted`; says false where the unknowns lie outside the model.
 */
export function withNumericJacobian(
  predict: (unknowns: Float64Array, predicted: Float64Array) => boolean,
): LeastSquaresModel {
  return (unknowns, predicted, jacobian) => {
    if (!predict(unknowns, predicted)) return false;
    if (jacobian === undefined) return true;
    const m = predicted.length;
    const n = unknowns.length;
    const up = new Float64Array(m);
    const down = new Float64Array(m);
    const moved = Float64Array.from(unknowns);
    for (let j = 0; j < n; j++) {
      const here = element(unknowns, j);
      const step = 6e-6 * (Math.abs(here) || 1);
      moved[j] = here + step;
      const high = element(moved, j);
      if (!predict(moved, up)) return false;
      moved[j] = here - step;
      const low = element(moved, j);
      if (!predict(moved, down)) return false;
      moved[j] = here;
      for (let i = 0; i < m; i++) jacobian[i * n + j] = (element(up, i) - element(down, i)) / (high - low);
    }
    return true;
  };
}
