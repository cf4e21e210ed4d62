/**
 * Does the builder's own plan hold, session by session? A course says beforehand what is done on which evening; where one
 * evening holds more than it is long, or a wait is not over when it begins, that is said with what would mend it.
 * Inputs: operations with the session that each is meant for (in the order they are listed within it), the calendar.
 * Answer: findings; none where no session was named. Source: plan-derivation.
 */
import { say } from "../texts/say.js";
import type { Calendar } from "./calendar.js";
import { CLOCK_EPS_H } from "./calendar.js";
import type { Operation, PlanFinding } from "./plan-types.js";

const ROOM_WORTH_NAMING_H = 0.25;

interface Meant {
  readonly operation: Operation;
  readonly session: number;
  /** Hours of the session before it, and at its end. */
  readonly fromH: number;
  readonly toH: number;
}

export function meantSessions(operations: readonly Operation[], calendar: Calendar, word: string): PlanFinding[] {
  const meant: Meant[] = [];
  for (const operation of operations) {
    if (operation.session === undefined) continue;
    const fromH = meant.reduce((sum, m) => (m.session === operation.session ? m.toH : sum), 0);
    meant.push({ operation, session: operation.session, fromH, toH: fromH + operation.handsOnH });
  }
  return [...tooFull(meant, calendar, word), ...tooSoon(meant, calendar, word)];
}

const hours = (h: number) => `${h.toFixed(1)} h`;

function tooFull(meant: readonly Meant[], calendar: Calendar, word: string): PlanFinding[] {
  const sessions = [...new Set(meant.map((m) => m.session))].sort((a, b) => a - b);
  const filled = (session: number) => Math.max(0, ...meant.filter((m) => m.session === session).map((m) => m.toH));
  const room = sessions.flatMap((session) => {
    const free = calendar.lengthH - filled(session);
    return free >= ROOM_WORTH_NAMING_H ? [say("plan.meant-sessions.has", { word, session, free: hours(free) })] : [];
  });
  return sessions.flatMap((session): PlanFinding[] => {
    const over = filled(session) - calendar.lengthH;
    const ids = meant.filter((m) => m.session === session).map((m) => m.operation.id);
    if (over <= CLOCK_EPS_H || ids.length < 2) return [];
    return [
      {
        code: "session-too-full",
        level: "flag",
        at: ids[0] ?? "",
        message: say("plan.meant-sessions.holds-of-tasks-in", {
          word: cap(word),
          session,
          session2: hours(filled(session)),
          ids: ids.join(", "),
          lengthH: hours(calendar.lengthH),
        }),
        wayOut: say("plan.meant-sessions.do-of-it-earlier-or-find", {
          over: hours(over),
          roomCount: room.length === 0 ? "" : say("plan.meant-sessions.free", { room: room.join(", ") }),
          word,
        }),
      },
    ];
  });
}

function tooSoon(meant: readonly Meant[], calendar: Calendar, word: string): PlanFinding[] {
  return meant.flatMap((m): PlanFinding[] =>
    m.operation.after.flatMap((id): PlanFinding[] => {
      const before = meant.find((x) => x.operation.id === id);
      if (before === undefined || before.operation.waitDays <= 0) return [];
      const readyH = calendar.startOf(before.session - 1) + before.toH + before.operation.waitDays * 24;
      const intoH = readyH - calendar.startOf(m.session - 1);
      if (intoH + m.operation.handsOnH <= calendar.lengthH + CLOCK_EPS_H) return [];
      const ready =
        intoH < calendar.lengthH
          ? say("plan.meant-sessions.is-ready-only-into-it", { intoH: hours(intoH) })
          : say("plan.meant-sessions.is-not-ready-on-that-at", { word });
      return [
        {
          code: "meant-too-soon",
          level: "flag",
          at: m.operation.id,
          message: say("plan.meant-sessions.is-meant-for-but-what-leaves", {
            operation: m.operation.id,
            what: m.operation.what,
            word,
            session: m.session,
            id,
            ready,
            waitDays: before.operation.waitDays,
          }),
          wayOut: say("plan.meant-sessions.work-only-where-was-not-end", { id, word, operation: m.operation.id }),
        },
      ];
    }),
  );
}

const cap = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
