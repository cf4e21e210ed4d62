/** How does the whole check of a build stand on a terminal? */

import type { JointAnswer, RemedyOffer } from "@coldset/core/fit";
import { capital } from "@coldset/core/quantity";
import { aboutWords, type Reckoning, type RuleGroup, ruleGroups, ruleSentence } from "@coldset/core/questions";
import { standingRefusals } from "@coldset/core/safety";
import { say } from "@coldset/core/texts";
import type { Page, Span } from "../screen/page.js";
import { boardPage, stepText, workingPage } from "./board-page.js";
import { candidatesPage, sideViewPage } from "./candidates-page.js";
import { hoursText, numberCells, quantityText, sum, verdictStyle } from "./figures.js";
import { standingPage } from "./standing.js";

export function checkPage(r: Reckoning, page: Page, working = false): Page {
  const { build } = r.resolved;
  page.text([["strong", build.id], "–", build.title]);
  page.text([["quiet", say("cli.check-page.donor", { donor: r.resolved.donor.id, label: r.resolved.donor.label })]]);
  page.blank().text(summaryWords(r));
  const refusals = standingRefusals(r.rules);
  if (refusals.length > 0) {
    page.blank().text([["bad", say("cli.check-page.a-refusal-stands-on-what-this")]]);
    for (const g of ruleGroups(refusals)) rulePage(r, g, page);
  }
  page.heading(say("cli.check-page.today-s-answers-by-what-is"));
  boardPage(r.board, page);
  if (working) workingPage(r.board, page);
  sideViewPage(r, page);
  jointsPage(r, page, working);
  candidatesPage(r, page);
  rulesPage(r, page);
  ledgerPage(r, page);
  nextPage(r, page);
  if (refusals.length > 0)
    page.blank().text([
      [
        "bad",
        say("cli.check-page.it-ends-refused-told-at-the", {
          rules: [...new Set(refusals.map((f) => f.rule))].join(", "),
        }),
      ],
    ]);
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
  return say("cli.check-page.questions-open-settled-not-checked-yet", {
    boardCount: r.board.length,
    open,
    boardCount2: r.board.length - open - not,
    not,
    jointsCount: r.joints.joints.length,
    looked: countsOf(looked),
    jointsCount2: r.joints.joints.length - looked.length,
  });
}

function jointsPage(r: Reckoning, page: Page, working: boolean): void {
  const { joints, reckoned } = r.joints;
  const looked = JOINT_WORDS.flatMap((w) => joints.filter((j) => j.verdict === w));
  const not = joints.filter((j) => j.verdict === "not checked yet");
  page.heading(say("cli.check-page.joints-where-two-parts-meet"));
  page.text(
    say("cli.check-page.of-looked-at-a-number-without", {
      lookedCount: looked.length,
      jointsCount: joints.length,
      looked: countsOf(looked),
      working: working ? "" : say("cli.check-page.working-shows-the-numbers-of-those"),
    }),
  );
  const large = working ? looked : looked.filter((j) => j.verdict !== "fits");
  for (const j of large) jointPage(j, reckoned.get(j.id), page);
  const lines = looked.filter((j) => !large.includes(j));
  if (lines.length > 0) page.blank().text([["strong", say("cli.check-page.these-fit")]]);
  for (const j of lines) {
    page.text([["strong", j.id], `${j.title}:`, j.reason], 2, 6);
    if (j.next !== undefined) page.text([["strong", say("cli.board-page.next")], stepText(j.next)], 6, 8);
    for (const f of j.rules) page.text([["bad", `${capital(f.level)} ${f.rule}:`], sentence(f.why)], 6, 8);
    for (const c of j.cautions) page.text([["open", say("cli.answer-page.caution")], c.message], 6, 8);
  }
  for (const c of r.joints.cautions) page.blank().text([say("cli.answer-page.caution"), c.message]);
  if (not.length > 0) {
    page
      .blank()
      .text([["strong", say("cli.check-page.not-checked-yet")], say("cli.check-page.look-at-these-yourself-at-the")]);
    const chosen = not.filter((j) => j.between.length > 0);
    for (const j of chosen) {
      page.text([`${j.id} ${j.title}:`, j.reason], 2, 6);
      for (const c of j.cautions) page.text([["open", say("cli.answer-page.caution")], c.message], 6, 8);
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
  if (j.remedies.length > 0) page.text([["strong", say("cli.check-page.ways-to-make-it-fit")]], 4);
  for (const m of j.remedies) {
    const takenHere = taken?.id === m.id ? [["strong", say("cli.check-page.this-one-is-reckoned-with")] as const] : [];
    page.text(["-", `${m.what}.`, remedyWords(m), ...takenHere], 4, 6);
  }
  if (j.next !== undefined) page.text([["strong", say("cli.board-page.next")], stepText(j.next)], 4, 6);
  for (const f of j.rules) page.text([["bad", `${capital(f.level)} ${f.rule}:`], sentence(f.why)], 4, 6);
  for (const c of j.cautions) page.text([["open", say("cli.answer-page.caution")], c.message], 4, 6);
}

/** "2 h, cost 17, heavier by 40 g, cannot be taken back, medium risk, in this shop. The rear becomes 135." */
export function remedyWords(m: RemedyOffer): string {
  if (m.refused !== undefined) return say("cli.check-page.refused", { refused: sentence(m.refused) });
  const risk = { L: say("cli.check-page.low"), M: say("cli.check-page.medium"), H: say("cli.check-page.high") }[m.risk];
  const facts = [
    hoursText(m.hours),
    say("cli.check-page.cost", { cost: sum(m.cost) }),
    ...(m.massG === 0
      ? []
      : [
          say("cli.check-page.by-g", {
            massG: m.massG > 0 ? say("cli.check-page.heavier") : say("cli.check-page.lighter"),
            massG2: Math.abs(m.massG),
          }),
        ]),
    m.reversible
      ? say("drawing.joints-of-build.can-be-taken-back")
      : say("drawing.joints-of-build.cannot-be-taken-back"),
    say("cli.check-page.risk", { risk }),
    m.here
      ? say("cli.check-page.in-this-shop")
      : say("cli.check-page.not-in-this-shop-ask-a", {
          missingCount: m.missing.length === 0 ? "" : ` (${m.missing.map((a) => a.replaceAll("_", " ")).join(", ")})`,
        }),
    ...m.conditions,
    ...(m.part === undefined ? [] : [say("cli.check-page.with", { part: m.part })]),
    ...(m.rules.length === 0 ? [] : [say("cli.check-page.under-rule", { rules: m.rules.join(", ") })]),
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
  const open =
    f.level === "gate"
      ? f.open
        ? say("cli.check-page.shut-until-a-person-shows-evidence")
        : say("cli.check-page.evidence-entered")
      : "";
  page.blank();
  for (const each of group.fired) {
    const head: Span[] = [
      ["strong", `${f.rule} ${f.level}`],
      ...(open === "" ? [] : [`(${open})`]),
      say("cli.check-page.on", { about: aboutWords(r, each.about) }),
    ];
    page.text([...head, ruleSentence(each)], 2, 4);
  }
  page
    .text(say("cli.check-page.why", { why: f.why }), 4, 6)
    .text(say("cli.check-page.instead", { insteadDo: f.insteadDo }), 4, 6);
  if (f.evidenceNeeded !== undefined && f.level === "gate")
    page.text(say("cli.check-page.evidence-asked-for", { evidenceNeeded: sentence(f.evidenceNeeded) }), 4, 6);
  if (f.evidence !== undefined)
    page.text(
      say("cli.check-page.entered-by-on", { by: f.evidence.by, on: f.evidence.on, what: f.evidence.what }),
      4,
      6,
    );
}

function rulesPage(r: Reckoning, page: Page): void {
  const { rules } = r;
  page.heading(say("cli.check-page.safety-rules-that-fire"));
  if (rules.length === 0) page.text(say("cli.check-page.none-on-what-you-entered-what"));
  const chosen = rules.filter((f) => f.onChosen);
  const beside = rules.filter((f) => !f.onChosen);
  for (const g of ruleGroups(chosen)) rulePage(r, g, page);
  if (beside.length > 0) {
    page.blank().text([["strong", say("cli.check-page.on-parts-beside-the-chosen-ones")]]);
    for (const g of ruleGroups(beside)) rulePage(r, g, page);
  }
}

function ledgerPage(r: Reckoning, page: Page): void {
  const { money, mass, hours, alternatives } = r.ledger;
  page.heading(say("cli.check-page.money-hours-and-mass"));
  const rows: (readonly Span[])[] = [];
  if (money.kind === "answered") {
    const m = money.value;
    const verdict: Span =
      m.verdict === undefined ? say("cli.check-page.no-budget-entered") : [verdictStyle(m.verdict), m.verdict];
    const by =
      m.overBy > 0
        ? say("cli.check-page.by", { overBy: sum(m.overBy) })
        : m.budget === undefined
          ? ""
          : say("cli.check-page.to-spare", { toSpare: sum(m.toSpare) });
    const known =
      m.priceNotKnown.length === 0
        ? ""
        : say("cli.check-page.price-not-known", { priceNotKnown: m.priceNotKnown.join(", ") });
    rows.push([
      say("cli.check-page.money"),
      `${sum(m.total)}${m.budget === undefined ? "" : say("cli.check-page.of", { budget: sum(m.budget) })}`,
      verdict,
      [by, known].filter((t) => t !== "").join("; "),
    ]);
  }
  if (hours.kind === "answered") {
    const h = hours.value;
    const verdict: Span =
      h.verdict === undefined ? say("cli.check-page.no-limit-entered") : [verdictStyle(h.verdict), h.verdict];
    const by =
      h.overByH > 0
        ? say("cli.check-page.by-h", { overByH: sum(h.overByH) })
        : h.hoursMax === undefined
          ? ""
          : say("cli.check-page.h-to-spare", { toSpareH: h.toSpareH.toFixed(1) });
    rows.push([
      say("cli.check-page.hours"),
      `${h.handsOnH.toFixed(1)} h${h.hoursMax === undefined ? "" : say("cli.check-page.of-2", { hoursMax: sum(h.hoursMax) })}`,
      verdict,
      by,
    ]);
  }
  if (mass.kind === "answered") {
    const v = mass.value;
    const known =
      v.massNotKnown.length === 0 ? "" : say("cli.check-page.not-known", { massNotKnown: v.massNotKnown.join(", ") });
    rows.push([
      say("cli.check-page.mass"),
      quantityText(v.massG / 1000, "kg", 2, scaled(mass.bands.massG)),
      v.verdict ?? say("cli.check-page.no-limit-entered"),
      known,
    ]);
  }
  page.table(rows, { heads: ["", say("cli.check-page.sum"), say("cli.check-page.verdict"), ""] });
  for (const answer of [money, hours, mass])
    if (answer.kind === "refused") for (const x of answer.refusals) page.text(sentence(x.message), 2, 4);
  if (alternatives.length > 0) {
    page.blank().text(say("cli.check-page.ways-tried-for-the-money"), 2);
    page.table(
      alternatives.map((a) => [
        a.name,
        a.total === undefined ? say("drawing.buy-of-build.a-price-is-not-known") : sum(a.total),
        a.toSpare === undefined
          ? ""
          : a.toSpare >= 0
            ? say("cli.check-page.within-to-spare", { toSpare: sum(a.toSpare) })
            : say("cli.check-page.over-by", { toSpare: sum(-a.toSpare) }),
      ]),
      { indent: 4 },
    );
  }
}

function scaled(band: { readonly low: number; readonly high: number; readonly means: string } | undefined) {
  return band === undefined ? undefined : { ...band, low: band.low / 1000, high: band.high / 1000 };
}

function nextPage(r: Reckoning, page: Page): void {
  page.heading(say("drawing.summary-of-build.what-to-measure-next"));
  if (r.next.length === 0) page.text(say("cli.check-page.nothing-is-waiting-for-a-measurement"));
  r.next.forEach((step, i) => {
    page.text([`${i + 1}.`, stepText(step)], 1, 4);
    if (step.how !== undefined) page.text(say("cli.check-page.how", { how: sentence(step.how) }), 4, 4);
    page.text(
      [
        [
          "quiet",
          say("cli.check-page.settles", {
            settles: step.settles.join(" and "),
            at: step.at === undefined ? "" : say("cli.check-page.enter-it-at", { at: step.at }),
          }),
        ],
      ],
      4,
      4,
    );
  });
}
