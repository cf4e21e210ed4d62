/** Question 15: in which order do I do it, and where do I wait? */
import { capital } from "../../quantity/index.js";
import { standingRefusals } from "../../safety/index.js";
import { figure, type Head, type Question, row, settleFirst, showNumber } from "../question.js";

const HEAD: Head = { n: 15, question: "In which order do I do it, and where do I wait?", stake: "time" };

export const whichOrder: Question = (r) => {
  const answer = r.plan.plan;
  if (answer.kind === "refused") {
    return row(HEAD, {
      answer: "The plan cannot be laid out as entered.",
      verdict: "measure first",
      about: "list of operations",
      next: { kind: "decide", what: answer.refusals[0]?.message ?? "Mend the list of operations" },
      words: answer.refusals.map((x) => x.message),
    });
  }
  const p = answer.value;
  const days = Math.round(p.onePiece.days);
  const cut = Math.round(p.cutAtClosing.days);
  const over = p.meetsDeadline === false;
  const refused = standingRefusals(r.rules)[0];
  const ways = p.waysBack.filter((w) => w.meetsDeadline);
  return row(HEAD, {
    answer: `${refused === undefined ? "" : `No plan while a refusal stands (${refused.rule}). As entered: `}${days} days${cut < days ? `, ${cut} if work may be cut at closing time` : ""}.${p.deadlineDays === undefined ? "" : ` You have ${showNumber(p.deadlineDays, 0)}.`}`,
    verdict: p.meetsDeadline === undefined ? "within" : over ? "over" : "within",
    about: p.deadlineDays === undefined ? "no deadline entered" : `${showNumber(p.deadlineDays, 0)} days`,
    figure: figure(
      "length",
      p.onePiece.days,
      "days",
      0,
      undefined,
      p.deadlineDays === undefined
        ? {}
        : {
            against: `you have ${showNumber(p.deadlineDays, 0)}`,
            limit: { high: p.deadlineDays, words: `${showNumber(p.deadlineDays, 0)} days` },
          },
    ),
    open: over || p.findings.some((f) => f.level !== "advice"),
    next:
      refused !== undefined
        ? settleFirst(refused)
        : over
          ? {
              kind: "decide",
              what:
                ways[0] === undefined
                  ? "A later day, or fewer tasks: nothing tried here meets the deadline"
                  : `${capital(ways[0].what)} bring it to ${showNumber(ways[0].days, 1)} days`,
            }
          : undefined,
    words: [
      `${showNumber(p.handsOnH, 1)} h of work over ${p.onePiece.sessions} sessions, ${showNumber(p.waitsDays, 0)} days of waiting. Round the clock it could not be under ${showNumber(p.criticalPathDays, 1)} days.`,
      p.onePiece.proven
        ? "No order of these tasks ends sooner: that is proven."
        : "A shorter order may exist: the search was stopped before it was proven.",
      ...p.findings.map((f) => `${f.message} ${f.wayOut}`),
    ],
    tables: [
      {
        title: "Operations in order",
        columns: ["Operation", "Hours", "Session", "Day", "Then wait", "Locked by"],
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
              title: "Ways back inside the deadline",
              columns: ["Way", "Days", "Meets it"],
              rows: p.waysBack.map((w) => [w.what, showNumber(w.days, 1), w.meetsDeadline ? "yes" : "no"]),
            },
          ]
        : []),
      ...(p.orders.length > 0
        ? [
            {
              title: "Order by",
              columns: ["Part", "Needed by", "Order by day", "Slack"],
              rows: p.orders.map((o) => [
                o.part,
                o.neededBy,
                o.orderByDate ?? showNumber(o.orderByDay, 0),
                `${showNumber(o.slackDays, 0)} days`,
              ]),
            },
          ]
        : []),
    ],
    sources: answer.sources,
    cautions: answer.cautions,
  });
};
