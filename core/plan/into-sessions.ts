/**
 * A course has so many sessions and the work takes more: which ways were tried to get into them?
 * Tries a wait that counts in days of the calendar instead of clock hours from the end of the task (a week's wait is then
 * over on the same evening of the next week), work cut at closing time, and both. Source: plan-derivation.
 */
import { say } from "../texts/say.js";
import type { Calendar } from "./calendar.js";
import { planLength } from "./plan-length.js";
import type { IntoSessions, Operation } from "./plan-types.js";

const WAY_BUDGET_STATES = 5_000;

export function intoSessions(operations: readonly Operation[], calendar: Calendar): readonly IntoSessions[] {
  const byTheDay = operations.map((o) =>
    o.waitDays <= 0 ? o : { ...o, waitDays: Math.max(0, o.waitDays - calendar.lengthH / 24) },
  );
  const waits = operations.some((o) => o.waitDays > 0);
  const ways = [
    ...(waits ? [{ what: say("plan.into-sessions.waits-counted-in-days-of-the"), list: byTheDay, cut: false }] : []),
    { what: say("plan.into-sessions.work-cut-at-closing-time"), list: operations, cut: true },
    ...(waits ? [{ what: say("plan.into-sessions.waits-in-days-of-the-calendar"), list: byTheDay, cut: true }] : []),
  ];
  return ways.map(({ what, list, cut }) => {
    const { sessions, proven } = planLength(list, calendar, cut, WAY_BUDGET_STATES).length;
    return { what, sessions, proven, fits: sessions <= calendar.listed };
  });
}
