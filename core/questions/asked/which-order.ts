/** Question 15: in which order do I do it, and where do I wait? */

import { capital } from "../../quantity/index.js";
import { standingRefusals } from "../../safety/index.js";
import { say } from "../../texts/say.js";
import { figure, type Head, type Question, row, settleFirst, showNumber } from "../question.js";

const HEAD: Head = { n: 15, question: say("asked.which-order.in-which-order-do-i-do"), stake: "time" };

export const whichOrder: Question = (r) => {
  const answer = r.plan.plan;
  if (answer.kind === "refused") {
    const first = answer.refusals[0];
    if (first?.code === "measure-first")
      return row(HEAD, {
        answer: say("asked.which-order.not-known-yet-which-evenings-there"),
        verdict: "measure first",
        about: say("asked.which-order.your-evenings"),
        next: {
          kind: "measure",
          what: first.message.replace(/\.$/, ""),
          at: first.at,
          tool: first.at === "shop.session_h" ? "clock" : "calendar",
        },
        words: answer.refusals.map((x) => x.message),
      });
    return row(HEAD, {
      answer: say("asked.which-order.the-plan-cannot-be-laid-out"),
      verdict: "measure first",
      about: say("asked.which-order.list-of-operations"),
      next: {
        kind: "decide",
        what: answer.refusals[0]?.message ?? say("asked.which-order.mend-the-list-of-operations"),
      },
      words: answer.refusals.map((x) => x.message),
    });
  }
  const p = answer.value;
  const days = Math.round(p.onePiece.days);
  const cut = Math.round(p.cutAtClosing.days);
  const over = p.meetsDeadline === false;
  const refused = standingRefusals(r.rules)[0];
  const ways = p.waysBack.filter((w) => w.meetsDeadline);
  const there = p.sessionsListed;
  const short = there !== undefined && p.onePiece.sessions > there;
  const held = p.intoSessions.find((w) => w.fits);
  return row(HEAD, {
    answer: say("asked.which-order.days", {
      refused:
        refused === undefined ? "" : say("asked.which-order.no-plan-while-a-refusal-stands", { rule: refused.rule }),
      short: short
        ? say("asked.which-order.s-and-there-are", { sessions: p.onePiece.sessions, sessionWord: p.sessionWord, there })
        : "",
      days,
      cut: cut < days ? say("asked.which-order.if-work-may-be-cut-at", { cut }) : "",
      deadlineDays:
        p.deadlineDays === undefined
          ? ""
          : say("asked.which-order.you-have", { deadlineDays: showNumber(p.deadlineDays, 0) }),
    }),
    verdict: over || short ? "over" : "within",
    about:
      there !== undefined && (short || p.deadlineDays === undefined)
        ? `${there} ${p.sessionWord}s`
        : p.deadlineDays === undefined
          ? say("asked.which-order.no-deadline-entered")
          : say("asked.which-order.days-2", { deadlineDays: showNumber(p.deadlineDays, 0) }),
    figure: short
      ? figure(`${p.sessionWord}s`, p.onePiece.sessions, "", 0, undefined, {
          against: say("asked.which-order.there-are", { there }),
          limit: { high: there, words: `${there} ${p.sessionWord}s` },
        })
      : figure(
          "length",
          p.onePiece.days,
          "days",
          0,
          undefined,
          p.deadlineDays === undefined
            ? {}
            : {
                against: say("asked.which-order.you-have-2", { deadlineDays: showNumber(p.deadlineDays, 0) }),
                limit: {
                  high: p.deadlineDays,
                  words: say("asked.which-order.days-2", { deadlineDays: showNumber(p.deadlineDays, 0) }),
                },
              },
        ),
    open: over || short || p.findings.some((f) => f.level !== "advice"),
    next:
      refused !== undefined
        ? settleFirst(refused)
        : over
          ? {
              kind: "decide",
              what:
                ways[0] === undefined
                  ? say("asked.which-order.a-later-day-or-fewer-tasks")
                  : say("asked.which-order.bring-it-to-days", {
                      what: capital(ways[0].what),
                      days: showNumber(ways[0].days, 1),
                    }),
            }
          : short
            ? {
                kind: "decide",
                what:
                  held === undefined
                    ? say("asked.which-order.fewer-tasks-or-more-s-nothing", { sessionWord: p.sessionWord, there })
                    : say("asked.which-order.s-say-of-each-task-whether", {
                        what: capital(held.what),
                        sessions: held.sessions,
                        sessionWord: p.sessionWord,
                      }),
              }
            : undefined,
    words: [
      say("asked.which-order.h-of-work-over-s-days", {
        handsOnH: showNumber(p.handsOnH, 1),
        sessions: p.onePiece.sessions,
        sessionWord: p.sessionWord,
        waitsDays: showNumber(p.waitsDays, 0),
        criticalPathDays: showNumber(p.criticalPathDays, 1),
      }),
      p.onePiece.proven
        ? say("asked.which-order.no-order-of-these-tasks-ends")
        : say("asked.which-order.a-shorter-order-may-exist-the"),
      ...p.findings.map((f) => `${f.message} ${f.wayOut}`),
    ],
    tables: [
      {
        title: say("asked.which-order.operations-in-order"),
        columns: [
          "Operation",
          "Hours",
          "Session",
          "Day",
          say("asked.which-order.then-wait"),
          say("asked.which-order.locked-by"),
        ],
        rows: p.operations.map((o) => [
          `${o.id} ${o.what}${o.piece === "" ? "" : ` (${o.piece})`}${o.gate ? " [gate]" : ""}`,
          showNumber(o.handsOnH, 1),
          `${o.session}`,
          o.date ?? `${o.day}`,
          o.waitDays > 0 ? `${showNumber(o.waitDays, 0)} ${o.waitDays === 1 ? "day" : "days"}` : "",
          o.locked ? o.lockedBy.join(", ") : "",
        ]),
      },
      ...(p.waysBack.length > 0
        ? [
            {
              title: say("asked.which-order.ways-back-inside-the-deadline"),
              columns: ["Way", "Days", say("asked.which-order.meets-it")],
              rows: p.waysBack.map((w) => [w.what, showNumber(w.days, 1), w.meetsDeadline ? "yes" : "no"]),
            },
          ]
        : []),
      ...(p.intoSessions.length > 0
        ? [
            {
              title: say("asked.which-order.ways-into-the-s", { there, sessionWord: p.sessionWord }),
              columns: ["Way", `${capital(p.sessionWord)}s`, "Fits"],
              rows: p.intoSessions.map((w) => [w.what, `${w.sessions}`, w.fits ? "yes" : "no"]),
            },
          ]
        : []),
      ...(p.orders.length > 0
        ? [
            {
              title: say("asked.what-to-buy.order-by"),
              columns: ["Part", say("asked.which-order.needed-by"), say("asked.which-order.order-by-day"), "Slack"],
              rows: p.orders.map((o) => [
                o.part,
                o.neededBy,
                o.orderByDate ?? showNumber(o.orderByDay, 0),
                say("asked.which-order.days-3", { slackDays: showNumber(o.slackDays, 0) }),
              ]),
            },
          ]
        : []),
    ],
    sources: answer.sources,
    cautions: answer.cautions,
  });
};
