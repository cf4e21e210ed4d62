/**
 * What would bring the job back inside its deadline? Tries longer sessions on the same days, and leaving for later
 * what the builder said may come later, alone and together.
 * Inputs: operations, shop, deadline in days. Answer: every way tried, with its length; those that meet the deadline
 *   first, then the fewest changes, then the shortest.
 * Limits: session lengths of 1 and 2 h more; tasks in whole pieces. It proposes nothing about gates.
 */
import { say } from "../texts/say.js";
import type { Calendar } from "./calendar.js";
import { makeCalendar } from "./calendar.js";
import { planLength } from "./plan-length.js";
import type { Operation, WayBack } from "./plan-types.js";

const MORE_HOURS = [0, 1, 2];
/** Many ways are tried in one go, so each gets a small search. */
const WAY_BUDGET_STATES = 2_000;

export function waysBack(operations: readonly Operation[], calendar: Calendar, deadlineDays: number): WayBack[] {
  const later = operations.filter((o) => o.mayComeLater === true && o.gate !== true).map((o) => o.id);
  const sets = [[], ...later.map((id) => [id]), ...(later.length > 1 ? [later] : [])];
  const ways: (WayBack & { readonly changes: number })[] = [];
  for (const hours of MORE_HOURS) {
    const sessionH = calendar.lengthH + hours;
    if (sessionH > 24) continue;
    for (const left of sets) {
      const changes = (hours > 0 ? 1 : 0) + left.length;
      const rest = left.reduce((list, id) => withoutOperation(list, id), operations);
      if (changes === 0 || rest.length === 0) continue;
      const { length } = planLength(
        rest,
        makeCalendar(calendar.days, sessionH, calendar.rhythm),
        false,
        WAY_BUDGET_STATES,
      );
      const words = [
        ...(hours > 0 ? [say("plan.ways-back.sessions-of-h", { sessionH })] : []),
        ...left.map((id) =>
          say("plan.ways-back.left-for-later", { what: operations.find((o) => o.id === id)?.what ?? id }),
        ),
      ];
      ways.push({
        what: words.join(" and "),
        sessionH,
        leftForLater: left,
        days: length.days,
        proven: length.proven,
        meetsDeadline: length.days <= deadlineDays,
        changes,
      });
    }
  }
  ways.sort((a, b) => Number(b.meetsDeadline) - Number(a.meetsDeadline) || a.changes - b.changes || a.days - b.days);
  return ways.map(({ changes: _, ...way }) => way);
}

/** The list without one operation; what came after it comes after what was before it. */
export function withoutOperation(operations: readonly Operation[], id: string): readonly Operation[] {
  const gone = operations.find((o) => o.id === id);
  if (gone === undefined) return operations;
  return operations
    .filter((o) => o.id !== id)
    .map((o) =>
      o.after.includes(id) ? { ...o, after: [...new Set([...o.after.filter((a) => a !== id), ...gone.after])] } : o,
    );
}
