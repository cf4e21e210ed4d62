/**
 * Which operations must not slip, if hands and hours were no limit? The plain critical path.
 * Inputs: a network; hands-on times and cures in hours.
 * Answer: earliest and latest start, float, length, all in hours from the start.
 *   earliest start = greatest of (earliest finish + cure) over the predecessors; latest start likewise from the end;
 *   float = latest − earliest start; an operation with no float is critical.
 * Length = latest hands-on end; the cure of an operation that nothing follows does not count.
 * Limits: unlimited builders, work round the clock, no calendar. See `proveCalendar` for evenings.
 * Source: critical-path-textbook (method), checked on two of its worked networks in references/critical-path.
 */
import { at } from "./at.js";
import type { Network } from "./network.js";

/** Hours under which a float counts as none: 0.004 s, far above rounding and far below any task. */
export const NO_FLOAT_H = 1e-6;

export interface CriticalPath {
  readonly lengthH: number;
  /** By place in the network. */
  readonly earliestStartH: readonly number[];
  readonly latestStartH: readonly number[];
  readonly totalFloatH: readonly number[];
  /** Places with no float, predecessors first. */
  readonly critical: readonly number[];
}

export function criticalPath(network: Network): CriticalPath {
  const { count, handsOnH, cureAfterH, before, next, order } = network;
  const early = new Array<number>(count).fill(0);
  let lengthH = 0;
  for (const i of order) {
    let start = 0;
    for (const p of at(before, i)) start = Math.max(start, at(early, p) + at(handsOnH, p) + at(cureAfterH, p));
    early[i] = start;
    lengthH = Math.max(lengthH, start + at(handsOnH, i));
  }
  const late = new Array<number>(count).fill(0);
  for (let k = count - 1; k >= 0; k--) {
    const i = at(order, k);
    let finish = lengthH;
    for (const s of at(next, i)) finish = Math.min(finish, at(late, s) - at(cureAfterH, i));
    late[i] = finish - at(handsOnH, i);
  }
  const totalFloatH = late.map((l, i) => {
    const float = l - at(early, i);
    return Math.abs(float) < NO_FLOAT_H ? 0 : float;
  });
  return {
    lengthH,
    earliestStartH: early,
    latestStartH: late,
    totalFloatH,
    critical: order.filter((i) => at(totalFloatH, i) === 0),
  };
}
