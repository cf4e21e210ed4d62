/** How does the whole check of a build stand on a terminal? */

import type { JointAnswer, RemedyOffer } from "@coldset/core/fit";
import { capital } from "@coldset/core/quantity";
import { aboutWords, type Reckoning, type RuleGroup, ruleGroups, ruleSentence } from "@coldset/core/questions";
import { standingRefusals } from "@coldset/core/safety";
import type { Page, Span } from "../screen/page.js";
import { boardPage, stepText, workingPage } from "./board-page.js";
import { candidatesPage, sideViewPage } from "./candidates-page.js";
import { hoursText, numberCells, quantityText, sum, verdictStyle } from "./figures.js";
import { standingPage } from "./standing.js";

export function checkPage(r: Reckoning, page: Page, working = false): Page {
  const { build } = r.resolved;
  page.text([["strong", build.id], "–", build.title]);
  page.text([["quiet", `Donor ${r.resolved.donor.id}: ${r.resolved.donor.label}`]]);
  page.blank().text(summaryWords(r));
  const refusals = standingRefusals(r.rules);
  if (refusals.length > 0) {
    page.blank().text([["bad", "A refusal stands on what this build has chosen: no plan and no task is made of it."]]);
    for (const g of ruleGroups(refusals)) rulePage(r, g, page);
  }
  page.heading("Today's answers, by what is at stake");
  boardPage(r.board, page);
  if (working) workingPage(r.board, page);
  sideViewPage(r, page);
  jointsPage(r, page, working);
  candidatesPage(r, page);
  rulesPage(r, page);
  ledgerPage(r, page);
  nextPage(r, page);
  if (refusals.length > 0)
    page
      .blank()
      .text([["bad", `It ends refused: ${[...new Set(refusals.map((f) => f.rule))].join(", ")}, told at the top.`]]);
  return standingPage(page);
}

const JOINT_WORDS = ["will not fit", "measure first", "fits with work", "fits"] as const;

function countsOf(joints: readonly JointAnswer[]): string {
  return JOINT_WORDS.flatMap((w) => {
    const n = joints.filter((j) => j.verdict === w).length;
    return n === 0 ? [] : [`${w} ${n}`];
  }).join(", ");
}

/** The whole in two sentences, before anything else. */
function summaryWords(r: Reckoning): string {
  const open = r.board.filter((row) => row.open).length;
  const not = r.board.filter((row) => row.verdict === "not checked yet").length;
  const looked = r.joints.joints.filter((j) => j.verdict !== "not checked yet");
  return `${r.board.length} questions: ${open} open, ${r.board.length - open - not} settled, ${not} not checked yet. ${r.joints.joints.length} joints: ${countsOf(looked)}, ${r.joints.joints.length - looked.length} not checked yet.`;
}

function jointsPage(r: Reckoning, page: Page, working: boolean): void {
  const { joints, reckoned } = r.joints;
  const looked = JOINT_WORDS.flatMap((w) => joints.filter((j) => j.verdict === w));
  const not = joints.filter((j) => j.verdict === "not checked yet");
  page.heading("Joints, where two parts meet");
  page.text(
    `${looked.length} of ${joints.length} looked at: ${countsOf(looked)}. A number without ± is as entered, or reckoned from such.${working ? "" : " --working shows the numbers of those that fit, too."}`,
  );
  const large = working ? looked : looked.filter((j) => j.verdict !== "fits");
  for (const j of large) jointPage(j, reckoned.get(j.id), page);
  const lines = looked.filter((j) => !large.includes(j));
  if (lines.length > 0) page.blank().text([["strong", "These fit:"]]);
  for (const j of lines) {
    page.text([["strong", j.id], `${j.title}:`, j.reason], 2, 6);
    if (j.next !== undefined) page.text([["strong", "Next:"], stepText(j.next)], 6, 8);
    for (const f of j.rules) page.text([["bad", `${capital(f.level)} ${f.rule}:`], sentence(f.why)], 6, 8);
    for (const c of j.cautions) page.text([["open", "Caution:"], c.message], 6, 8);
  }
  for (const c of r.joints.cautions) page.blank().text(["Caution:", c.message]);
  if (not.length > 0) {
    page.blank().text([["strong", "Not checked yet:"], "look at these yourself at the dry fit."]);
    const chosen = not.filter((j) => j.between.length > 0);
    for (const j of chosen) {
      page.text([`${j.id} ${j.title}:`, j.reason], 2, 6);
      for (const c of j.cautions) page.text([["open", "Caution:"], c.message], 6, 8);
    }
    const rest = not.filter((j) => j.between.length === 0).map((j) => `${j.id} ${j.title}`);
    if (rest.length > 0) page.text(`${rest.join("; ")}.`, 2, 2);
  }
}

function jointPage(j: JointAnswer, taken: RemedyOffer | undefined, page: Page): void {
  page.blank().text(
    [
      ["strong", j.id],
      ["strong", `${j.title}:`],
      [verdictStyle(j.verdict), j.verdict],
    ],
    0,
    4,
  );
  page.text(j.reason, 4, 4);
  const rows = j.numbers.map((n) => {
    const cells = numberCells(n);
    return [cells.name, cells.value, cells.limit];
  });
  page.table(rows, { indent: 4 });
  if (j.remedies.length > 0) page.text([["strong", "Ways to make it fit:"]], 4);
  for (const m of j.remedies) {
    const takenHere = taken?.id === m.id ? [["strong", "This one is reckoned with."] as const] : [];
    page.text(["-", `${m.what}.`, remedyWords(m), ...takenHere], 4, 6);
  }
  if (j.next !== undefined) page.text([["strong", "Next:"], stepText(j.next)], 4, 6);
  for (const f of j.rules) page.text([["bad", `${capital(f.level)} ${f.rule}:`], sentence(f.why)], 4, 6);
  for (const c of j.cautions) page.text([["open", "Caution:"], c.message], 4, 6);
}

/** "2 h, cost 17, heavier by 40 g, cannot be taken back, medium risk, in this shop. The rear becomes 135." */
export function remedyWords(m: RemedyOffer): string {
  if (m.refused !== undefined) return `Refused: ${sentence(m.refused)}`;
  const risk = { L: "low", M: "medium", H: "high" }[m.risk];
  const facts = [
    hoursText(m.hours),
    `cost ${sum(m.cost)}`,
    ...(m.massG === 0 ? [] : [`${m.massG > 0 ? "heavier" : "lighter"} by ${Math.abs(m.massG)} g`]),
    m.reversible ? "can be taken back" : "cannot be taken back",
    `${risk} risk`,
    m.here
      ? "in this shop"
      : `not in this shop: ask a builder${m.missing.length === 0 ? "" : ` (${m.missing.map((a) => a.replaceAll("_", " ")).join(", ")})`}`,
    ...m.conditions,
    ...(m.part === undefined ? [] : [`with ${m.part}`]),
    ...(m.rules.length === 0 ? [] : [`under rule ${m.rules.join(", ")}`]),
  ].join(", ");
  return [`${capital(facts)}.`, ...m.sideEffects.map((s) => sentence(s.words))].join(" ");
}

/** With a capital and one stop. */
function sentence(text: string): string {
  return /[.!?]$/.test(text) ? capital(text) : `${capital(text)}.`;
}

function rulePage(r: Reckoning, group: RuleGroup, page: Page): void {
  const f = group.fired[0];
  if (f === undefined) return;
  const open = f.level === "gate" ? (f.open ? "shut until a person shows evidence" : "evidence entered") : "";
  page.blank();
  for (const each of group.fired) {
    const head: Span[] = [
      ["strong", `${f.rule} ${f.level}`],
      ...(open === "" ? [] : [`(${open})`]),
      `on ${aboutWords(r, each.about)}:`,
    ];
    page.text([...head, ruleSentence(each)], 2, 4);
  }
  page.text(`Why: ${f.why}`, 4, 6).text(`Instead: ${f.insteadDo}`, 4, 6);
  if (f.evidenceNeeded !== undefined && f.level === "gate")
    page.text(`Evidence asked for: ${sentence(f.evidenceNeeded)}`, 4, 6);
  if (f.evidence !== undefined) page.text(`Entered by ${f.evidence.by} on ${f.evidence.on}: ${f.evidence.what}`, 4, 6);
}

function rulesPage(r: Reckoning, page: Page): void {
  const { rules } = r;
  page.heading("Safety rules that fire");
  if (rules.length === 0) page.text("None on what you entered. What was not entered was not checked.");
  const chosen = rules.filter((f) => f.onChosen);
  const beside = rules.filter((f) => !f.onChosen);
  for (const g of ruleGroups(chosen)) rulePage(r, g, page);
  if (beside.length > 0) {
    page.blank().text([["strong", "On parts beside the chosen ones:"]]);
    for (const g of ruleGroups(beside)) rulePage(r, g, page);
  }
}

function ledgerPage(r: Reckoning, page: Page): void {
  const { money, mass, hours, alternatives } = r.ledger;
  page.heading("Money, hours and mass");
  const rows: (readonly Span[])[] = [];
  if (money.kind === "answered") {
    const m = money.value;
    const verdict: Span = m.verdict === undefined ? "no budget entered" : [verdictStyle(m.verdict), m.verdict];
    const by = m.overBy > 0 ? `by ${sum(m.overBy)}` : m.budget === undefined ? "" : `${sum(m.toSpare)} to spare`;
    const known = m.priceNotKnown.length === 0 ? "" : `price not known: ${m.priceNotKnown.join(", ")}`;
    rows.push([
      "money",
      `${sum(m.total)}${m.budget === undefined ? "" : ` of ${sum(m.budget)}`}`,
      verdict,
      [by, known].filter((t) => t !== "").join("; "),
    ]);
  }
  if (hours.kind === "answered") {
    const h = hours.value;
    const verdict: Span = h.verdict === undefined ? "no limit entered" : [verdictStyle(h.verdict), h.verdict];
    const by =
      h.overByH > 0 ? `by ${sum(h.overByH)} h` : h.hoursMax === undefined ? "" : `${h.toSpareH.toFixed(1)} h to spare`;
    rows.push([
      "hours",
      `${h.handsOnH.toFixed(1)} h${h.hoursMax === undefined ? "" : ` of ${sum(h.hoursMax)}`}`,
      verdict,
      by,
    ]);
  }
  if (mass.kind === "answered") {
    const v = mass.value;
    const known = v.massNotKnown.length === 0 ? "" : `not known: ${v.massNotKnown.join(", ")}`;
    rows.push([
      "mass",
      quantityText(v.massG / 1000, "kg", 2, scaled(mass.bands.massG)),
      v.verdict ?? "no limit entered",
      known,
    ]);
  }
  page.table(rows, { heads: ["", "sum", "verdict", ""] });
  for (const answer of [money, hours, mass])
    if (answer.kind === "refused") for (const x of answer.refusals) page.text(sentence(x.message), 2, 4);
  if (alternatives.length > 0) {
    page.blank().text("Ways tried for the money:", 2);
    page.table(
      alternatives.map((a) => [
        a.name,
        a.total === undefined ? "a price is not known" : sum(a.total),
        a.toSpare === undefined
          ? ""
          : a.toSpare >= 0
            ? `within, ${sum(a.toSpare)} to spare`
            : `over by ${sum(-a.toSpare)}`,
      ]),
      { indent: 4 },
    );
  }
}

function scaled(band: { readonly low: number; readonly high: number; readonly means: string } | undefined) {
  return band === undefined ? undefined : { ...band, low: band.low / 1000, high: band.high / 1000 };
}

function nextPage(r: Reckoning, page: Page): void {
  page.heading("What to measure next");
  if (r.next.length === 0) page.text("Nothing is waiting for a measurement.");
  r.next.forEach((step, i) => {
    page.text([`${i + 1}.`, stepText(step)], 1, 4);
    if (step.how !== undefined) page.text(`How: ${sentence(step.how)}`, 4, 4);
    page.text(
      [["quiet", `Settles ${step.settles.join(" and ")}${step.at === undefined ? "" : `; enter it at ${step.at}`}.`]],
      4,
      4,
    );
  });
}
