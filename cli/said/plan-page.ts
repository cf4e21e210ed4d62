/** How does the plan of a build stand on a terminal, and as one object? */

import type { PlanValue } from "@coldset/core/plan";
import { type Reckoning, showNumber } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { WEEKDAY_NAMES } from "@coldset/core/workshop";
import type { Page, Span } from "../screen/page.js";
import { standingPage } from "./standing.js";

export function planPage(r: Reckoning, p: PlanValue, page: Page): Page {
  const { build, shop } = r.resolved;
  page.text([["strong", build.id], "–", build.title]);
  page.text(
    p.sessionsListed === undefined
      ? say("cli.plan-page.shop-sessions-of-h-on-one", {
          shop: shop.id,
          sessionH: shop.session_h ?? "?",
          dayName: shop.open_days?.map(dayName).join(", ") ?? "?",
        })
      : say("cli.plan-page.shop-s-of-h-on-days", {
          shop: shop.id,
          sessionsListed: p.sessionsListed,
          sessionWord: p.sessionWord,
          sessionH: shop.session_h ?? "?",
          sessionDays: shop.session_days?.join(", ") ?? "?",
        }),
  );
  if (p.deadlineDays !== undefined) deadlineLine(p, p.deadlineDays, page);
  page.heading(say("cli.plan-page.how-long-it-takes"));
  const proven = (yes: boolean) =>
    yes ? say("cli.plan-page.proven-the-earliest") : say("cli.plan-page.not-proven-the-earliest");
  const rows: (readonly Span[])[] = [
    [
      say("cli.plan-page.each-task-in-one-piece"),
      say("cli.plan-page.days", { days: showNumber(p.onePiece.days, 1) }),
      `${p.onePiece.sessions} ${p.sessionWord}s, ${proven(p.onePiece.proven)}`,
    ],
    [
      say("cli.plan-page.tasks-cut-at-closing-time"),
      say("cli.plan-page.days", { days: showNumber(p.cutAtClosing.days, 1) }),
      `${p.cutAtClosing.sessions} ${p.sessionWord}s, ${proven(p.cutAtClosing.proven)}`,
    ],
    [
      say("cli.plan-page.round-the-clock-the-floor"),
      say("cli.plan-page.days-2", { criticalPathDays: showNumber(p.criticalPathDays, 1) }),
      say("cli.plan-page.no-opening-days-can-beat-this"),
    ],
    [say("cli.plan-page.hands-on-work"), `${showNumber(p.handsOnH, 1)} h`, ""],
    [
      say("cli.plan-page.waiting"),
      say("cli.plan-page.days-3", { waitsDays: showNumber(p.waitsDays, 0) }),
      say("cli.plan-page.days-of-24-h-from-the"),
    ],
  ];
  page.table(rows);
  if (p.sessionsListed !== undefined && p.intoSessions.length > 0) {
    page.heading(
      say("cli.plan-page.ways-into-the-s", { sessionsListed: p.sessionsListed, sessionWord: p.sessionWord }),
    );
    page.table(
      p.intoSessions.map((w) => [
        w.what,
        `${w.sessions} ${p.sessionWord}s`,
        w.fits
          ? ["good", say("cli.plan-page.fits")]
          : say("cli.plan-page.over-by", { sessions: w.sessions - (p.sessionsListed ?? 0) }),
      ]),
    );
  }
  if (p.waysBack.length > 0) {
    page.heading(say("asked.which-order.ways-back-inside-the-deadline"));
    page.table(
      p.waysBack.map((w) => [
        w.what,
        say("cli.plan-page.days", { days: showNumber(w.days, 1) }),
        w.meetsDeadline ? ["good", say("cli.plan-page.meets-it")] : say("cli.plan-page.too-late"),
      ]),
    );
  }
  page.heading(say("cli.plan-page.in-this-order"));
  const dated = p.operations.some((o) => o.date !== undefined);
  page.table(
    p.operations.map((o) => [
      o.date ?? say("cli.plan-page.day", { day: o.day }),
      o.id,
      `${o.what}${o.piece === "" ? "" : ` (${o.piece})`}`,
      `${showNumber(o.handsOnH, 1)} h`,
      o.waitDays > 0 ? daysText(o.waitDays) : "",
      o.locked ? o.lockedBy.join(", ") : "",
      marks(o),
    ]),
    {
      indent: 1,
      heads: [
        dated ? say("cli.plan-page.date") : say("cli.plan-page.when"),
        "",
        say("cli.plan-page.what"),
        say("cli.plan-page.work"),
        say("cli.plan-page.then-wait"),
        say("cli.plan-page.sign-first"),
        say("cli.plan-page.mind"),
      ],
      right: [3],
    },
  );
  page.blank().text(say("cli.plan-page.sign-first-the-gates-that-a"), 1, 1);
  gatesPage(r, p, page);
  if (p.orders.length > 0) {
    page.heading(say("cli.plan-page.order-by"));
    page.table(
      p.orders.map((o) => [
        o.part,
        say("cli.plan-page.needed-by-on-day", { neededBy: o.neededBy, neededOnDay: o.neededOnDay }),
        say("cli.plan-page.order-by-2", {
          orderByDate: o.orderByDate ?? say("cli.plan-page.day-2", { orderByDay: showNumber(o.orderByDay, 0) }),
        }),
        say("cli.plan-page.days-of-slack", { slackDays: showNumber(o.slackDays, 1) }),
      ]),
    );
  } else {
    page.heading(say("cli.plan-page.order-by"));
    page.text(say("cli.plan-page.no-part-has-a-delivery-time"));
  }
  if (p.findings.length > 0) {
    page.heading(say("cli.plan-page.findings"));
    for (const f of p.findings)
      page.text([["strong", `${f.level.charAt(0).toUpperCase()}${f.level.slice(1)}:`], findingWords(f)], 2, 4);
  }
  return standingPage(page);
}

/** Gates of the plan and of the safety rules that nobody has signed yet. */
function gatesPage(r: Reckoning, p: PlanValue, page: Page): void {
  const signed = new Set((r.resolved.build.evidence ?? []).map((e) => e.gate));
  const ids = [
    ...p.operations.filter((o) => o.gate && !signed.has(o.id)).map((o) => o.id),
    ...p.operations.flatMap((o) => o.lockedBy),
  ];
  const rows = [...new Set(ids)].map((id) => {
    const what = p.operations.find((o) => o.id === id)?.what ?? "";
    const held = [...new Set(p.operations.filter((o) => o.lockedBy.includes(id) && o.id !== id).map((o) => o.id))];
    const own = p.operations.some((o) => o.id === id && o.lockedBy.includes(id));
    const words = own
      ? say("cli.plan-page.its-risk-must-be-accepted-by")
      : held.length === 0
        ? say("cli.plan-page.the-last-gate-nothing-waits-for")
        : say("cli.plan-page.locks", { held: held.join(", ") });
    return [id, what, words];
  });
  const rules = r.rules.filter((f) => f.level === "gate" && f.onChosen && f.open);
  if (rows.length + rules.length === 0) return;
  page.heading(say("cli.plan-page.gates-that-are-shut"));
  page.text(say("cli.plan-page.a-gate-opens-only-when-a"));
  page.table([
    ...rows,
    ...rules.map((f) => [
      f.rule,
      f.here,
      f.evidenceNeeded === undefined ? "" : say("cli.plan-page.asks-for", { evidenceNeeded: f.evidenceNeeded }),
    ]),
  ]);
}

const dayName = (day: string) => WEEKDAY_NAMES[day] ?? day;

/** The answer first: is the deadline met? */
function deadlineLine(p: PlanValue, deadline: number, page: Page): void {
  const over = p.onePiece.days - deadline;
  const days = showNumber(p.onePiece.days, 1);
  page.blank().text(
    p.meetsDeadline === true
      ? [
          ["good", say("cli.plan-page.within")],
          say("cli.plan-page.days-the-deadline-of-days-is", { days, deadline: showNumber(deadline, 0) }),
        ]
      : [
          ["bad", say("cli.plan-page.over")],
          say("cli.plan-page.days-the-deadline-of-days-is-2", {
            days,
            deadline: showNumber(deadline, 0),
            over: showNumber(over, 1),
          }),
        ],
    0,
    2,
  );
}

/** A finding's sentences; the ways that were tried stand in their own table already. */
function findingWords(f: PlanValue["findings"][number]): string {
  return `${f.message} ${f.wayOut}`.replace(/ Would do: .*$/, " The ways back stand above.").trim();
}

function daysText(days: number): string {
  return days === 1
    ? say("cli.plan-page.1-day")
    : say("cli.plan-page.days", { days: showNumber(days, days % 1 === 0 ? 0 : 1) });
}

function marks(o: PlanValue["operations"][number]): string {
  return [
    ...(o.gate ? [say("cli.plan-page.gate")] : []),
    ...(o.irreversible === undefined ? [] : [say("cli.plan-page.no-way-back", { irreversible: o.irreversible })]),
    ...(o.missing.length === 0 ? [] : [say("cli.plan-page.ask-a-builder", { missing: o.missing.join(", ") })]),
    ...(o.slackH >= 12 ? [say("cli.plan-page.slack-d", { slackH: showNumber(o.slackH / 24, 0) })] : []),
  ].join(", ");
}
