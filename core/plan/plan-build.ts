/**
 * What is done on which evening, what stays locked, what must be ordered by when, and does it end in time?
 * Inputs: operations (hands-on hours, waits in days of 24 h), the shop's opening days, evidence people typed,
 *   deliveries, deadline in days from the first session, hours the builder will give, maybe a start date.
 * Answer: every operation with its session, slack and locks; the length in whole pieces and with work cut at closing
 *   time; the floor that no shop hours can beat; orders with their last day; findings in plain words; and, where the
 *   deadline is missed, the ways tried to get back inside it.
 * One builder. A gate opens only with evidence {by, on, what}. Nothing here says that work may be done: a locked
 *   operation is shown and marked, not released.
 * Sources: critical-path-textbook, plan-derivation, workshop-order.
 */

import { type Answer, answered, type Caution, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { at } from "./at.js";
import { calendarSlack } from "./calendar-slack.js";
import { criticalPath } from "./critical-path.js";
import { intoSessions } from "./into-sessions.js";
import { meantSessions } from "./meant-sessions.js";
import { everythingBefore } from "./network.js";
import { orderRules } from "./order-rules.js";
import { dateAfter } from "./plan-date.js";
import { planLength, readOperations } from "./plan-length.js";
import type { OrderBy, PlanFinding, PlanInput, PlannedOperation, PlanValue } from "./plan-types.js";
import { shopCalendar } from "./shop-calendar.js";
import { waysBack } from "./ways-back.js";

export function planBuild(input: PlanInput): Answer<PlanValue> {
  const reading = readOperations(input.operations);
  const shop = shopCalendar(input.shop, input.startDate);
  const refusals: Refusal[] = [
    ...(reading.kind === "refused" ? reading.refusals : []),
    ...(shop.kind === "refused" ? shop.refusals : []),
    ...deliveryRefusals(input),
    ...limitRefusals(input),
  ];
  if (reading.kind === "refused" || shop.kind === "refused" || refusals.length > 0) return refused(refusals);

  const { network: plain } = reading;
  const { calendar, sessionsListed } = shop.shop;
  const path = criticalPath(plain);
  const critical = path.critical.map((i) => String(at(plain.ids, i)));
  const whole = planLength(input.operations, calendar, false);
  const cut = planLength(input.operations, calendar, true);
  const slack = calendarSlack(whole.network, calendar, whole.plan);
  const before = everythingBefore(plain);
  const allBefore = new Map(plain.ids.map((id, i) => [String(id), idsOf(plain.ids, at(before, i))]));
  const rules = orderRules(input.operations, allBefore, input.evidence ?? [], input.shop);
  const date = (days: number) => (input.startDate === undefined ? undefined : dateAfter(input.startDate, days));

  const operations = whole.plan.placed.map((p): PlannedOperation => {
    const piece = at(whole.pieces, p.operation);
    const o = piece.operation;
    const lock = rules.locks.get(o.id);
    if (lock === undefined) throw new Error(`no lock read for ${o.id}`);
    const day = Math.floor(calendar.startOf(p.window) / 24 + 1e-9);
    const waitDays = piece.number === piece.of ? o.waitDays : 0;
    return {
      id: o.id,
      what: o.what,
      piece: piece.of === 1 ? "" : say("plan.plan-build.of", { number: piece.number, of: piece.of }),
      handsOnH: p.endH - p.startH,
      session: p.window + 1,
      day,
      date: date(day),
      hoursIntoSession: p.startH - calendar.startOf(p.window),
      startClockH: p.startH,
      endClockH: p.endH,
      waitDays,
      readyAgainDays: p.endH / 24 + waitDays,
      slackH: at(slack, p.operation),
      critical: critical.includes(o.id),
      irreversible: lock.irreversible,
      irreversibleFrom: lock.from,
      needs: o.needs,
      missing: lock.missing,
      gate: o.gate === true,
      locked: lock.lockedBy.length > 0,
      lockedBy: lock.lockedBy,
    };
  });

  const orders = (input.deliveries ?? []).map((d): OrderBy => {
    const first = operations.find((o) => o.id === d.neededBy);
    if (first === undefined) throw new Error(`no operation ${d.neededBy}`);
    const orderByDay = Math.floor(first.startClockH / 24 - d.deliveryDays + 1e-9);
    return {
      part: d.part,
      neededBy: d.neededBy,
      neededOnDay: first.day,
      orderByDay,
      orderByDate: date(orderByDay),
      slackDays: first.slackH / 24,
    };
  });

  const deadlineDays = input.deadlineDays;
  const meetsDeadline = deadlineDays === undefined ? undefined : whole.length.days <= deadlineDays;
  const ways =
    deadlineDays !== undefined && meetsDeadline === false ? waysBack(input.operations, calendar, deadlineDays) : [];
  const sessionWord = input.sessionWord ?? "session";
  const handsOnH = plain.handsOnH.reduce((sum, h) => sum + h, 0);
  const value: PlanValue = {
    operations,
    handsOnH,
    waitsDays: input.operations.reduce((sum, o) => sum + o.waitDays, 0),
    criticalPathDays: path.lengthH / 24,
    criticalOperations: critical,
    onePiece: whole.length,
    cutAtClosing: cut.length,
    deadlineDays,
    meetsDeadline,
    waysBack: ways,
    sessionsListed: Number.isFinite(sessionsListed) ? sessionsListed : undefined,
    lastSessionEndsDay: Number.isFinite(sessionsListed)
      ? (calendar.startOf(sessionsListed - 1) + calendar.lengthH) / 24
      : undefined,
    sessionWord,
    intoSessions: whole.length.sessions > sessionsListed ? intoSessions(input.operations, calendar) : [],
    orders,
    findings: [],
  };
  const findings = [
    ...rules.findings,
    ...meantSessions(input.operations, calendar, sessionWord),
    ...timeFindings(input, value, sessionsListed, calendar.lengthH),
  ];
  const cautions: Caution[] = [];
  for (const [length, how] of [
    [whole.length, "in whole pieces"],
    [cut.length, say("plan.plan-build.cut-at-closing-time")],
  ] as const) {
    if (!length.proven) {
      cautions.push({
        code: "not-proven-earliest",
        at: "operations",
        message: say("plan.plan-build.the-plan-can-be-carried-out", { how }),
      });
    }
  }
  return answered(
    { ...value, findings },
    { sources: ["critical-path-textbook", "plan-derivation", "workshop-order"], cautions },
  );
}

const idsOf = (ids: readonly (number | string)[], places: ReadonlySet<number>): ReadonlySet<string> =>
  new Set([...places].map((i) => String(at(ids, i))));

function deliveryRefusals(input: PlanInput): Refusal[] {
  return (input.deliveries ?? []).flatMap((d, i) => {
    const refusals: Refusal[] = [];
    if (!input.operations.some((o) => o.id === d.neededBy)) {
      refusals.push({
        code: "unknown-operation",
        at: `deliveries[${i}].neededBy`,
        given: d.neededBy,
        allowed: say("plan.plan-build.the-id-of-an-operation-in"),
        message: say("plan.plan-build.is-needed-by-but-there-is", { part: d.part, neededBy: d.neededBy }),
      });
    }
    if (!(Number.isFinite(d.deliveryDays) && d.deliveryDays >= 0)) {
      refusals.push({
        code: "bad-time",
        at: `deliveries[${i}].deliveryDays`,
        given: d.deliveryDays,
        allowed: say("plan.plan-build.0-days-or-more"),
        message: say("plan.plan-build.takes-days-to-come-give-0", { part: d.part, deliveryDays: d.deliveryDays }),
      });
    }
    return refusals;
  });
}

function limitRefusals(input: PlanInput): Refusal[] {
  const limits = [
    ["deadlineDays", input.deadlineDays],
    ["hoursMax", input.hoursMax],
  ] as const;
  return limits.flatMap(([key, given]) =>
    given === undefined || (Number.isFinite(given) && given >= 0)
      ? []
      : [
          {
            code: "bad-limit",
            at: key,
            given,
            allowed: say("plan.money-ledger.0-or-more"),
            message: say("plan.money-ledger.is-give-0-or-more", { key, given }),
          },
        ],
  );
}

const one = (value: number) => value.toFixed(1);

function timeFindings(input: PlanInput, plan: PlanValue, sessionsListed: number, sessionH: number): PlanFinding[] {
  const findings: PlanFinding[] = [];
  for (const o of input.operations) {
    if (o.gate === true && o.mayComeLater === true) {
      findings.push({
        code: "gate-cannot-wait",
        level: "gate",
        at: o.id,
        message: say("plan.plan-build.is-a-dry-fit-it-cannot", { operation: o.id, what: o.what }),
        wayOut: say("plan.plan-build.take-the-mark-off-it"),
      });
    }
    const pieces = plan.operations.filter((p) => p.id === o.id && p.piece !== "");
    if (pieces.length > 0) {
      findings.push({
        code: "longer-than-a-session",
        level: "advice",
        at: o.id,
        message: say("plan.plan-build.h-fits-no-session-of-h", {
          operation: o.id,
          what: o.what,
          handsOnH: o.handsOnH,
          sessionH,
          pieces: pieces.map((p) => one(p.handsOnH).replace(".0", "")).join(" + "),
        }),
        wayOut: say("plan.plan-build.say-where-it-can-be-put"),
      });
    }
  }
  if (plan.onePiece.sessions > sessionsListed) {
    findings.push({
      code: "sessions-run-out",
      level: "flag",
      at: "",
      message: say("plan.plan-build.the-work-takes-s-and-there", {
        sessions: plan.onePiece.sessions,
        sessionWord: plan.sessionWord,
        sessionsListed,
        intoSessions: plan.intoSessions
          .map((w) => say("plan.plan-build.with", { what: w.what, sessions: w.sessions }))
          .join(""),
      }),
      wayOut: say("plan.plan-build.find-more-cut-or-move-a", { sessions: plan.onePiece.sessions - sessionsListed }),
    });
  }
  if (input.hoursMax !== undefined && plan.handsOnH > input.hoursMax + 1e-9) {
    findings.push({
      code: "hours-over",
      level: "flag",
      at: "",
      message: say("plan.plan-build.the-work-takes-h-and-h", {
        handsOnH: one(plan.handsOnH),
        hoursMax: one(input.hoursMax),
        handsOnH2: one(plan.handsOnH - input.hoursMax),
      }),
      wayOut: say("plan.plan-build.leave-something-out-or-get-help"),
    });
  }
  for (const order of plan.orders) {
    if (order.orderByDay < 0) {
      findings.push({
        code: "order-before-the-start",
        level: "flag",
        at: order.part,
        message: say("plan.plan-build.must-be-ordered-days-before-the", {
          part: order.part,
          orderByDay: -order.orderByDay,
          neededBy: order.neededBy,
        }),
        wayOut:
          order.slackDays >= -order.orderByDay
            ? say("plan.plan-build.it-may-come-that-much-later")
            : say("plan.plan-build.order-it-now-take-one-that"),
      });
    }
  }
  if (input.deadlineDays !== undefined && plan.meetsDeadline === false) {
    const works = plan.waysBack.find((w) => w.meetsDeadline);
    const tried = plan.waysBack.map(
      (w) => `${w.what}: ${one(w.days)}${w.meetsDeadline ? "" : say("plan.plan-build.too-late")}`,
    );
    const proven = plan.onePiece.proven
      ? say("plan.plan-build.cannot-be-met")
      : say("plan.plan-build.is-not-met-by-the-best");
    findings.push({
      code: "deadline-not-met",
      level: "flag",
      at: "",
      message: say("plan.plan-build.the-deadline-of-days-with-h", {
        deadlineDays: input.deadlineDays,
        proven,
        sessionH,
        waitsDays: one(plan.waitsDays),
        onePieceDays: one(plan.onePiece.days),
        cutDays: one(plan.cutAtClosing.days),
        criticalPathDays: one(plan.criticalPathDays),
      }),
      wayOut:
        (works === undefined
          ? say("plan.plan-build.none-of-the-ways-tried-is")
          : say("plan.plan-build.would-do-days", { what: works.what, days: one(works.days) })) +
        (tried.length > 0 ? say("plan.plan-build.tried-in-days", { tried: tried.join("; ") }) : ""),
    });
  }
  return findings;
}
