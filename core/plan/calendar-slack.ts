/**
 * How much later may each operation start, in this order and on these evenings, without moving the finish?
 * Inputs: the network, the calendar, a plan of one builder in whole pieces.
 * Answer: clock hours by place in the network, 0 or more.
 * How: from the last operation backwards, each put at the last place that leaves the next in order, and all its
 *   successors with their waits, where they are. Another order may give more; this is what the plan shown allows.
 */
import { at } from "./at.js";
import { type Calendar, CLOCK_EPS_H, placeWholeBefore } from "./calendar.js";
import type { CalendarPlan } from "./feasible-calendar.js";
import type { Network } from "./network.js";

export function calendarSlack(network: Network, calendar: Calendar, plan: CalendarPlan): readonly number[] {
  const latestStart = new Array<number>(network.count).fill(plan.finishH);
  const slack = new Array<number>(network.count).fill(0);
  let byH = plan.finishH;
  for (const p of [...plan.placed].reverse()) {
    const i = p.operation;
    let endBy = byH;
    for (const s of at(network.next, i)) endBy = Math.min(endBy, at(latestStart, s) - at(network.cureAfterH, i));
    const place = placeWholeBefore(calendar, endBy, at(network.handsOnH, i));
    const start = Math.max(place?.startH ?? p.startH, p.startH);
    latestStart[i] = start;
    slack[i] = start - p.startH < CLOCK_EPS_H ? 0 : start - p.startH;
    byH = start;
  }
  return slack;
}
