/**
 * How many hours of the evenings before the last must stay empty, whatever the order? A lower bound.
 * Inputs: lengths of the pieces and of the evening, hours; usedH = part of the first evening that is gone already.
 * Answer: hours, 0 or more.
 *   Take the pieces of some length and longer, all over half an evening: each stands in an evening of its own, and
 *   only what fits beside the shortest of them can share an evening with any of them. The room beside them all, less
 *   everything that short, stays empty. One of them may stand in the last evening, where room does not matter: the one
 *   with the most room is left out. The greatest figure over all such lengths is taken.
 * Source: plan-derivation (docs/methods/schedule.md).
 */
import { CLOCK_EPS_H } from "./calendar.js";

export function leastWaste(piecesH: readonly number[], windowH: number, usedH: number): number {
  let most = 0;
  for (const longest of piecesH) {
    if (longest <= windowH / 2 + CLOCK_EPS_H) continue;
    // all pieces at least this long are the long ones; only what fits beside the shortest of them is short
    const room = windowH - longest;
    let emptyBeside = 0;
    let filling = usedH;
    let mostRoom = 0;
    for (const h of piecesH) {
      if (h >= longest - CLOCK_EPS_H) {
        emptyBeside += windowH - h;
        mostRoom = Math.max(mostRoom, windowH - h);
      } else if (h <= room + CLOCK_EPS_H) filling += h;
    }
    most = Math.max(most, emptyBeside - mostRoom - filling);
  }
  return most;
}
