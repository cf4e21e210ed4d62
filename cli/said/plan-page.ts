/** How does the plan of a build stand on a terminal, and as one object? */
import type { PlanValue } from "@coldset/core/plan";
import { type Reckoning, showNumber } from "@coldset/core/questions";
import type { Page, Span } from "../screen/page.js";
import { standingPage } from "./standing.js";

export function planPage(r: Reckoning, p: PlanValue, page: Page): Page {
  const { build, shop } = r.resolved;
  page.text([["strong", build.id], "–", build.title]);
  page.text(
    `Shop ${shop.id}: sessions of ${shop.session_h} h on ${shop.open_days.map(dayName).join(", ")}; one builder.`,
  );
  if (p.deadlineDays !== undefined) deadlineLine(p, p.deadlineDays, page);
  page.heading("How long it takes");
  const proven = (yes: boolean) => (yes ? "proven the earliest" : "not proven the earliest");
  const rows: (readonly Span[])[] = [
    [
      "each task in one piece",
      `${showNumber(p.onePiece.days, 1)} days`,
      `${p.onePiece.sessions} sessions, ${proven(p.onePiece.proven)}`,
    ],
    [
      "tasks cut at closing time",
      `${showNumber(p.cutAtClosing.days, 1)} days`,
      `${p.cutAtClosing.sessions} sessions, ${proven(p.cutAtClosing.proven)}`,
    ],
    ["round the clock, the floor", `${showNumber(p.criticalPathDays, 1)} days`, "no opening days can beat this"],
    ["hands-on work", `${showNumber(p.handsOnH, 1)} h`, ""],
    ["waiting", `${showNumber(p.waitsDays, 0)} days`, "days of 24 h from the end of the task"],
  ];
  page.table(rows);
  if (p.waysBack.length > 0) {
    page.heading("Ways back inside the deadline");
    page.table(
      p.waysBack.map((w) => [
        w.what,
        `${showNumber(w.days, 1)} days`,
        w.meetsDeadline ? ["good", "meets it"] : "too late",
      ]),
    );
  }
  page.heading("In this order");
  const dated = p.operations.some((o) => o.date !== undefined);
  page.table(
    p.operations.map((o) => [
      o.date ?? `day ${o.day}`,
      o.id,
      `${o.what}${o.piece === "" ? "" : ` (${o.piece})`}`,
      `${showNumber(o.handsOnH, 1)} h`,
      o.waitDays > 0 ? daysText(o.waitDays) : "",
      o.locked ? o.lockedBy.join(", ") : "",
      marks(o),
    ]),
    {
      indent: 1,
      heads: [dated ? "date" : "when", "", "what", "work", "then wait", "sign first", "mind"],
      right: [3],
    },
  );
  page
    .blank()
    .text(
      "Sign first: the gates that a person must sign before it begins; its own number: its risk must be accepted by name. Gate: it ends with a signature. Slack: it may slip so long without moving the end. Days count from the first session.",
      1,
      1,
    );
  gatesPage(r, p, page);
  if (p.orders.length > 0) {
    page.heading("Order by");
    page.table(
      p.orders.map((o) => [
        o.part,
        `needed by ${o.neededBy} on day ${o.neededOnDay}`,
        `order by ${o.orderByDate ?? `day ${showNumber(o.orderByDay, 0)}`}`,
        `${showNumber(o.slackDays, 1)} days of slack`,
      ]),
    );
  } else {
    page.heading("Order by");
    page.text("No part has a delivery time entered (delivery_days in the bin), so no order date can be given.");
  }
  if (p.findings.length > 0) {
    page.heading("Findings");
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
      ? "its risk must be accepted by name"
      : held.length === 0
        ? "the last gate: nothing waits for it"
        : `locks ${held.join(", ")}`;
    return [id, what, words];
  });
  const rules = r.rules.filter((f) => f.level === "gate" && f.onChosen && f.open);
  if (rows.length + rules.length === 0) return;
  page.heading("Gates that are shut");
  page.text(
    "A gate opens only when a person has entered evidence for it in the build: evidence, with gate, by, on and what.",
  );
  page.table([
    ...rows,
    ...rules.map((f) => [f.rule, f.here, f.evidenceNeeded === undefined ? "" : `asks for: ${f.evidenceNeeded}`]),
  ]);
}

const DAY_NAMES: Readonly<Record<string, string>> = {
  mon: "Monday",
  tue: "Tuesday",
  wed: "Wednesday",
  thu: "Thursday",
  fri: "Friday",
  sat: "Saturday",
  sun: "Sunday",
};
const dayName = (day: string) => DAY_NAMES[day] ?? day;

/** The answer first: is the deadline met? */
function deadlineLine(p: PlanValue, deadline: number, page: Page): void {
  const over = p.onePiece.days - deadline;
  const days = showNumber(p.onePiece.days, 1);
  page
    .blank()
    .text(
      p.meetsDeadline === true
        ? [["good", "within"], `– ${days} days; the deadline of ${showNumber(deadline, 0)} days is met.`]
        : [
            ["bad", "over"],
            `– ${days} days; the deadline of ${showNumber(deadline, 0)} days is missed by ${showNumber(over, 1)}. Say so before anything is bought.`,
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
  return days === 1 ? "1 day" : `${showNumber(days, days % 1 === 0 ? 0 : 1)} days`;
}

function marks(o: PlanValue["operations"][number]): string {
  return [
    ...(o.gate ? ["gate"] : []),
    ...(o.irreversible === undefined ? [] : [`no way back: ${o.irreversible}`]),
    ...(o.missing.length === 0 ? [] : [`ask a builder: ${o.missing.join(", ")}`]),
    ...(o.slackH >= 12 ? [`slack ${showNumber(o.slackH / 24, 0)} d`] : []),
  ].join(", ");
}
