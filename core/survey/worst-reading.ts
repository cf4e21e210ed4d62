import { NOTHING_CHECKS } from "../numeric/index.js";
import type { SurveyFit } from "./fit-survey.js";

/** Two residuals count as one from this correlation on. */
const ONE_RESIDUAL = 1 - 1e-5;

/** Which readings share one residual? Rows of the fit that always move together, so the numbers cannot tell them apart. */
export function sharedResiduals(fitted: SurveyFit): ReadonlyMap<number, readonly number[]> {
  const { projection, redundancy } = fitted.fit;
  const m = redundancy.length;
  const shared = new Map<number, number[]>();
  for (let i = 0; i < m; i++) {
    const own = redundancy[i] as number;
    if (own < NOTHING_CHECKS) continue;
    for (let j = i + 1; j < m; j++) {
      const other = redundancy[j] as number;
      if (other < NOTHING_CHECKS) continue;
      if (Math.abs(projection[i * m + j] as number) / Math.sqrt(own * other) < ONE_RESIDUAL) continue;
      shared.set(i, [...(shared.get(i) ?? []), j]);
      shared.set(j, [...(shared.get(j) ?? []), i]);
    }
  }
  return shared;
}

/**
 * Which reading has the largest normalised residual?
 * Of readings that share it (equal to 1e-6 of it), the one with the largest redundancy: it needs the smallest slip.
 * @returns its row in the fit; undefined where nothing checks any reading.
 */
export function largestRow(fitted: SurveyFit): number | undefined {
  const { normalised, redundancy } = fitted.fit;
  let best: number | undefined;
  for (let i = 0; i < normalised.length; i++) {
    const w = Math.abs(normalised[i] as number);
    if (Number.isNaN(w)) continue;
    if (best === undefined) {
      best = i;
      continue;
    }
    const held = Math.abs(normalised[best] as number);
    if (w > held * (1 + 1e-6) || (w > held * (1 - 1e-6) && (redundancy[i] as number) > (redundancy[best] as number)))
      best = i;
  }
  return best;
}
