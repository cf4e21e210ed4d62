/**
 * How many evenings do these pieces need at least, whatever the order? A lower bound of bin packing.
 * Inputs: lengths of the pieces and of the evening, hours; each piece at most as long as the evening.
 * Answer: a count that no packing can go under (the true count may be higher).
 *   For a limit p up to half an evening: pieces over (evening − p) stand alone; those over half stand one to an
 *   evening; pieces of p up to half fill what is left beside them, and the rest needs evenings of its own.
 *   The greatest count over all p is taken.
 * Source: bin-packing-bound (Martello and Toth, the bound they call L2; from memory, argued in
 *   docs/methods/schedule.md).
 */
import { CLOCK_EPS_H } from "./calendar.js";

export function fewestWindows(piecesH: readonly number[], windowH: number): number {
  const half = windowH / 2;
  let best = 1; // pieces without hours still want an evening
  const limits = [0, ...new Set(piecesH.filter((h) => h > 0 && h <= half + CLOCK_EPS_H))];
  for (const p of limits) {
    let alone = 0;
    let over = 0;
    let overSum = 0;
    let smallSum = 0;
    for (const h of piecesH) {
      if (h > windowH - p + CLOCK_EPS_H) alone++;
      else if (h > half + CLOCK_EPS_H) {
        over++;
        overSum += h;
      } else if (h >= p - CLOCK_EPS_H) smallSum += h;
    }
    const room = over * windowH - overSum;
    const extra = Math.max(Math.ceil((smallSum - room) / windowH - CLOCK_EPS_H), 0);
    best = Math.max(best, alone + over + extra);
  }
  return best;
}
