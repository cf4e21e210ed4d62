/** How does the plan stand in print? The strip of evenings, every operation in order, gates with lines to sign, ways back. */
import type { PlanValue } from "@coldset/core/plan";
import { type Reckoning, showNumber } from "@coldset/core/questions";
import { planStrip } from "../bicycle/index.js";
import type { BookBlock, BookSection } from "../book/index.js";
import { ruleCautions } from "./rule-cautions.js";
import { sentence } from "./words.js";

export function planSection(r: Reckoning): BookSection {
  const answer = r.plan.plan;
  if (answer.kind === "refused")
    return {
      title: "The plan",
      newSheet: true,
      lead: "The plan cannot be laid out as entered.",
      blocks: [{ kind: "list", items: answer.refusals.map((x) => x.message) }],
    };
  const p = answer.value;
  const days = (n: number) => showNumber(n, 1);
  const deadline =
    p.deadlineDays === undefined
      ? ""
      : p.meetsDeadline === true
        ? ` The deadline of ${showNumber(p.deadlineDays, 0)} days is met.`
        : ` The deadline of ${showNumber(p.deadlineDays, 0)} days is missed by ${days(p.onePiece.days - p.deadlineDays)} days.`;
  const ids = new Set(p.operations.map((o) => o.id));
  const gates = gatesOf(r, p);
  return {
    title: "The plan",
    newSheet: true,
    lead: `${days(p.onePiece.days)} days in ${p.onePiece.sessions} sessions, each task in one piece; ${days(p.cutAtClosing.days)} days where tasks may be cut at closing time; ${days(p.criticalPathDays)} round the clock.${deadline}`,
    blocks: [
      {
        kind: "drawing",
        drawing: strip(p),
        caption: "Solid: an evening at the bench. Dashed: waiting. Days from the first session.",
      },
      ...ruleCautions(
        r,
        r.rules.filter((f) => ids.has(f.about) || (f.onChosen && f.level === "gate")),
      ),
      {
        kind: "table",
        caption:
          "In this order. Sign first: the gates to be signed before it begins; its own number: its risk accepted by name.",
        columns: [
          { head: "Day", share: 7, align: "right" },
          { head: "", share: 4 },
          { head: "What", share: 34 },
          { head: "Hours", share: 7, align: "right" },
          { head: "Wait", share: 8 },
          { head: "Sign first", share: 11 },
          { head: "Mind", share: 18 },
          { head: "Done by", share: 12 },
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
            ...(o.irreversible === undefined ? [] : [`no way back: ${o.irreversible}`]),
            ...(o.missing.length === 0 ? [] : [`ask a builder: ${o.missing.join(", ")}`]),
          ].join(", "),
          "",
        ]),
      },
      ...waysBack(p),
      ...(gates.length === 0
        ? []
        : ([
            { kind: "heading", text: "Gates: signed by a person, or shut" },
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
    ...own.map((o) => ({ id: o.id, what: `${o.what}: risk accepted` })),
    ...p.operations.filter((o) => o.gate),
    ...r.rules
      .filter((f) => f.level === "gate" && f.onChosen)
      .map((f) => ({ id: f.rule, what: f.evidenceNeeded ?? f.here })),
  ];
  return [...new Map(all.map((g) => [g.id, { id: g.id, what: g.what }])).values()];
}

function daysText(days: number): string {
  return days === 1 ? "1 day" : `${showNumber(days, days % 1 === 0 ? 0 : 1)} days`;
}

function signature(r: Reckoning, id: string, what: string) {
  const shown = r.resolved.build.evidence?.find((e) => e.gate === id);
  return { label: `${id} ${what}`, ...(shown === undefined ? {} : { signed: `${shown.by}, ${shown.on}` }) };
}

function strip(p: PlanValue) {
  return planStrip({
    sessions: [...new Set(p.operations.map((o) => o.day))],
    waits: p.operations
      .filter((o) => o.waitDays > 0)
      .map((o) => ({ fromDay: o.endClockH / 24, toDay: o.readyAgainDays, text: o.what })),
    ...(p.deadlineDays === undefined ? {} : { deadlineDay: p.deadlineDays }),
    finish: { day: p.onePiece.days },
    version: "wide",
  });
}

function waysBack(p: PlanValue): readonly BookBlock[] {
  if (p.waysBack.length === 0) return [];
  return [
    {
      kind: "table",
      caption: "Ways back inside the deadline",
      columns: [
        { head: "Way", share: 40 },
        { head: "Days", align: "right", share: 8 },
        { head: "", share: 14 },
      ],
      rows: p.waysBack.map((w) => [w.what, showNumber(w.days, 1), w.meetsDeadline ? "meets it" : "too late"]),
    },
  ];
}

function orders(p: PlanValue): readonly BookBlock[] {
  if (p.orders.length === 0)
    return [
      {
        kind: "paragraph",
        first: "Order by.",
        text: "No part has a delivery time entered (delivery_days), so no order date can be given.",
      },
    ];
  return [
    {
      kind: "table",
      caption: "Order by",
      columns: [{ head: "Part" }, { head: "Needed by" }, { head: "Order by" }, { head: "Slack" }],
      rows: p.orders.map((o) => [
        o.part,
        `${o.neededBy}, day ${o.neededOnDay}`,
        o.orderByDate ?? `day ${showNumber(o.orderByDay, 0)}`,
        `${showNumber(o.slackDays, 1)} days`,
      ]),
    },
  ];
}
