/** How does the plan stand in print? The strip of evenings, every operation in order, gates with lines to sign, ways back. */

import type { PlanValue } from "@coldset/core/plan";
import { type Reckoning, showNumber } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { planStrip } from "../bicycle/index.js";
import type { BookBlock, BookSection } from "../book/index.js";
import { ruleCautions } from "./rule-cautions.js";
import { sentence } from "./words.js";

export function planSection(r: Reckoning): BookSection {
  const answer = r.plan.plan;
  if (answer.kind === "refused")
    return {
      title: say("drawing.plan-of-book.the-plan"),
      newSheet: true,
      lead: say("asked.which-order.the-plan-cannot-be-laid-out"),
      blocks: [{ kind: "list", items: answer.refusals.map((x) => x.message) }],
    };
  const p = answer.value;
  const days = (n: number) => showNumber(n, 1);
  const deadline =
    p.deadlineDays === undefined
      ? ""
      : p.meetsDeadline === true
        ? say("drawing.plan-of-book.the-deadline-of-days-is-met", { deadlineDays: showNumber(p.deadlineDays, 0) })
        : say("drawing.plan-of-book.the-deadline-of-days-is-missed", {
            deadlineDays: showNumber(p.deadlineDays, 0),
            days: days(p.onePiece.days - p.deadlineDays),
          });
  const ids = new Set(p.operations.map((o) => o.id));
  const gates = gatesOf(r, p);
  return {
    title: say("drawing.plan-of-book.the-plan"),
    newSheet: true,
    lead: say("drawing.plan-of-book.days-in-s-each-task-in", {
      days: days(p.onePiece.days),
      sessions: p.onePiece.sessions,
      sessionWord: p.sessionWord,
      cutDays: days(p.cutAtClosing.days),
      criticalPathDays: days(p.criticalPathDays),
      deadline,
      evenings: evenings(p),
    }),
    blocks: [
      {
        kind: "drawing",
        drawing: strip(p),
        caption: say("drawing.plan-of-book.solid-an-evening-at-the-bench"),
      },
      ...ruleCautions(
        r,
        r.rules.filter((f) => ids.has(f.about) || (f.onChosen && f.level === "gate")),
      ),
      {
        kind: "table",
        caption: say("drawing.plan-of-book.in-this-order-sign-first-the"),
        columns: [
          { head: "Day", share: 7, align: "right" },
          { head: "", share: 4 },
          { head: "What", share: 34 },
          { head: "Hours", share: 7, align: "right" },
          { head: "Wait", share: 8 },
          { head: say("drawing.plan-of-book.sign-first"), share: 11 },
          { head: "Mind", share: 18 },
          { head: say("drawing.plan-of-book.done-by"), share: 12 },
        ],
        rows: p.operations.map((o) => [
          o.date ?? String(o.day),
          o.id,
          `${o.what}${o.piece === "" ? "" : ` (${o.piece})`}`,
          showNumber(o.handsOnH, 1),
          o.waitDays > 0 ? daysText(o.waitDays) : "",
          o.locked ? o.lockedBy.join(", ") : "",
          [
            ...(o.gate ? ["gate"] : []),
            ...(o.irreversible === undefined
              ? []
              : [say("drawing.plan-of-book.no-way-back", { irreversible: o.irreversible })]),
            ...(o.missing.length === 0
              ? []
              : [say("drawing.plan-of-book.ask-a-builder", { missing: o.missing.join(", ") })]),
          ].join(", "),
          "",
        ]),
      },
      ...intoSessions(p),
      ...waysBack(p),
      ...(gates.length === 0
        ? []
        : ([
            { kind: "heading", text: say("drawing.plan-of-book.gates-signed-by-a-person-or") },
            { kind: "signatures", lines: gates.map((g) => signature(r, g.id, g.what)) },
          ] as const)),
      ...orders(p),
      ...(p.findings.length === 0
        ? []
        : ([
            { kind: "heading", text: "Findings" },
            {
              kind: "cautions",
              items: p.findings.map((f) => ({
                first: f.level === "advice" ? "" : `${f.level.charAt(0).toUpperCase()}${f.level.slice(1)}.`,
                text: sentence(
                  `${/^t\d/.test(f.message) ? "Task " : ""}${f.message} ${f.wayOut}`
                    .replace(/ Would do: .*$/, " The ways back stand above.")
                    .trim(),
                ),
              })),
            },
          ] as const)),
    ],
  };
}

/** Every gate that wants a signature: of the work, of a risk that must be accepted by name, and of the safety rules. */
function gatesOf(r: Reckoning, p: PlanValue): readonly { readonly id: string; readonly what: string }[] {
  const own = p.operations.filter((o) => o.lockedBy.includes(o.id));
  const all = [
    ...own.map((o) => ({ id: o.id, what: say("drawing.plan-of-book.risk-accepted", { what: o.what }) })),
    ...p.operations.filter((o) => o.gate),
    ...r.rules
      .filter((f) => f.level === "gate" && f.onChosen)
      .map((f) => ({ id: f.rule, what: f.evidenceNeeded ?? f.here })),
  ];
  return [...new Map(all.map((g) => [g.id, { id: g.id, what: g.what }])).values()];
}

function daysText(days: number): string {
  return days === 1
    ? say("drawing.plan-of-book.1-day")
    : say("drawing.plan-of-book.days", { days: showNumber(days, days % 1 === 0 ? 0 : 1) });
}

function signature(r: Reckoning, id: string, what: string) {
  const shown = r.resolved.build.evidence?.find((e) => e.gate === id);
  return { label: `${id} ${what}`, ...(shown === undefined ? {} : { signed: `${shown.by}, ${shown.on}` }) };
}

function strip(p: PlanValue) {
  const last = p.deadlineDays ?? p.lastSessionEndsDay;
  return planStrip({
    sessions: [...new Set(p.operations.map((o) => o.day))],
    waits: p.operations
      .filter((o) => o.waitDays > 0)
      .map((o) => ({ fromDay: o.endClockH / 24, toDay: o.readyAgainDays, text: o.what })),
    ...(last === undefined ? {} : { deadlineDay: last }),
    finish: { day: p.onePiece.days },
    version: "wide",
  });
}

/** A course has so many sessions. */
function evenings(p: PlanValue): string {
  const there = p.sessionsListed;
  if (there === undefined) return "";
  return p.onePiece.sessions > there
    ? say("drawing.plan-of-book.there-are-s-over-by", {
        there,
        sessionWord: p.sessionWord,
        sessions: p.onePiece.sessions - there,
      })
    : say("drawing.plan-of-book.there-are-s-they-suffice", { there, sessionWord: p.sessionWord });
}

function intoSessions(p: PlanValue): readonly BookBlock[] {
  if (p.intoSessions.length === 0 || p.sessionsListed === undefined) return [];
  return [
    {
      kind: "table",
      caption: say("drawing.plan-of-book.ways-into-the-s", {
        sessionsListed: p.sessionsListed,
        sessionWord: p.sessionWord,
      }),
      columns: [
        { head: "Way", share: 40 },
        { head: `${p.sessionWord.charAt(0).toUpperCase()}${p.sessionWord.slice(1)}s`, align: "right", share: 8 },
        { head: "", share: 14 },
      ],
      rows: p.intoSessions.map((w) => [
        w.what,
        `${w.sessions}`,
        w.fits ? "fits" : say("drawing.plan-of-book.too-many"),
      ]),
    },
  ];
}

function waysBack(p: PlanValue): readonly BookBlock[] {
  if (p.waysBack.length === 0) return [];
  return [
    {
      kind: "table",
      caption: say("asked.which-order.ways-back-inside-the-deadline"),
      columns: [
        { head: "Way", share: 40 },
        { head: "Days", align: "right", share: 8 },
        { head: "", share: 14 },
      ],
      rows: p.waysBack.map((w) => [
        w.what,
        showNumber(w.days, 1),
        w.meetsDeadline ? say("drawing.plan-of-book.meets-it") : say("drawing.plan-of-book.too-late"),
      ]),
    },
  ];
}

function orders(p: PlanValue): readonly BookBlock[] {
  if (p.orders.length === 0)
    return [
      {
        kind: "paragraph",
        first: say("drawing.plan-of-book.order-by"),
        text: say("drawing.plan-of-book.no-part-has-a-delivery-time"),
      },
    ];
  return [
    {
      kind: "table",
      caption: say("drawing.plan-of-book.order-by-2"),
      columns: [
        { head: "Part" },
        { head: say("drawing.plan-of-book.needed-by") },
        { head: say("drawing.plan-of-book.order-by-2") },
        { head: "Slack" },
      ],
      rows: p.orders.map((o) => [
        o.part,
        say("drawing.plan-of-book.day", { neededBy: o.neededBy, neededOnDay: o.neededOnDay }),
        o.orderByDate ?? say("drawing.plan-of-book.day-2", { orderByDay: showNumber(o.orderByDay, 0) }),
        say("drawing.plan-of-book.days-2", { slackDays: showNumber(o.slackDays, 1) }),
      ]),
    },
  ];
}
