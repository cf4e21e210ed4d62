/** How do the parts weighed beside the chosen ones stand: forks with their side view, others by the joints they touch? */

import type { CandidateAnswer } from "@coldset/core/fit";
import { type Reckoning, ruleSentence, showNumber } from "@coldset/core/questions";
import type { FiredRule } from "@coldset/core/safety";
import { say } from "@coldset/core/texts";
import type { Page, Span } from "../screen/page.js";
import { quantityText, verdictStyle } from "./figures.js";

const FIGURES = [
  ["head_angle_deg", say("cli.candidates-page.head-angle"), "°", 1],
  ["seat_angle_deg", say("cli.candidates-page.seat-angle"), "°", 1],
  ["stack_mm", say("cli.candidates-page.stack"), "mm", 1],
  ["reach_mm", say("cli.candidates-page.reach"), "mm", 1],
  ["bb_height_mm", say("asked.fork-does.cranks-axis-over-the-ground"), "mm", 1],
  ["wheelbase_mm", say("cli.candidates-page.wheelbase"), "mm", 1],
  ["trail_mm", say("cli.candidates-page.trail"), "mm", 1],
] as const;

export function sideViewPage(r: Reckoning, page: Page): void {
  const before = r.geometry.before?.figures;
  const after = r.after?.figures;
  if (before === undefined && after === undefined) return;
  page.heading(say("cli.candidates-page.side-view-today-and-after"));
  if (r.geometry.setAside !== undefined)
    page.text(say("cli.candidates-page.reckoned-without-the-reading-that-disagrees"));
  const cell = (side: typeof before, [key, , unit, decimals]: (typeof FIGURES)[number]) =>
    side === undefined ? "?" : quantityText(side.value[key], unit, decimals, side.bands[key]);
  page.table(
    FIGURES.map((f) => [f[1], cell(before, f), cell(after, f)]),
    { heads: ["", say("cli.candidates-page.today"), say("cli.candidates-page.after")] },
  );
  if (r.forks.length === 0) return;
  page.blank().text(say("cli.candidates-page.forks-side-by-side-with-the"));
  page.table(
    r.forks.map((f) => {
      const v = f.figures?.value;
      const n = (value: number | undefined, decimals: number, sign = "") =>
        value === undefined ? "?" : `${showNumber(value, decimals)}${sign}`;
      const bare = f.toe.kind === "known" ? (f.toe.toGuard ? f.toe.bareMm : f.toe.mm) : undefined;
      const guard = f.toe.kind === "known" && f.toe.toGuard ? f.toe.mm : undefined;
      return [
        `${f.part.id}${f.chosen ? " *" : ""}`,
        n(v?.rotation_nose_up_deg, 1, "°"),
        n(v?.head_angle_deg, 1, "°"),
        n(v?.seat_angle_deg, 1, "°"),
        n(v?.bb_height_mm, 0),
        n(v?.trail_mm, 1),
        n(bare, 0),
        guard === undefined ? "" : n(guard, 0),
      ];
    }),
    {
      heads: [
        say("cli.candidates-page.fork"),
        say("cli.candidates-page.turn"),
        say("cli.candidates-page.head"),
        say("cli.candidates-page.seat"),
        say("cli.candidates-page.cranks"),
        say("cli.candidates-page.trail"),
        say("cli.candidates-page.toe-to-tyre"),
        say("cli.candidates-page.to-guard"),
      ],
      right: [1, 2, 3, 4, 5, 6, 7],
    },
  );
  page.text(say("cli.candidates-page.chosen-turn-nose-up-cranks-over"), 2, 2);
}

export function candidatesPage(r: Reckoning, page: Page): void {
  const rows = [
    ...r.forks.filter((f) => !f.chosen).map((f) => ({ place: "fork", id: f.part.id, answer: f.answer })),
    ...r.others.map((o) => ({ place: o.place.replaceAll("_", " "), id: o.part.id, answer: o.answer })),
  ];
  if (rows.length === 0) return;
  page.heading(say("cli.candidates-page.parts-weighed-beside-the-chosen-ones"));
  for (const { place, id, answer } of rows)
    candidatePage(say("cli.candidates-page.as-the", { id, place }), answer, rulesOf(r, id, answer), page);
}

/** Rules that stand on the part itself and come from no joint. */
function rulesOf(r: Reckoning, id: string, answer: CandidateAnswer): readonly FiredRule[] {
  const said = new Set(answer.joints.flatMap((j) => j.rules.map((f) => f.rule)));
  return r.rules.filter((f) => f.about === id && !f.onChosen && !said.has(f.rule));
}

function candidatePage(name: string, answer: CandidateAnswer, rules: readonly FiredRule[], page: Page): void {
  const looked = answer.joints.filter((j) => j.verdict !== "not checked yet");
  const fits = looked.filter((j) => j.verdict === "fits");
  const rest = looked.filter((j) => j.verdict !== "fits");
  const good = fits.length === 0 ? "" : say("cli.candidates-page.fits-at", { fits: fits.map((j) => j.id).join(", ") });
  page.text(
    [
      ["strong", name],
      good === ""
        ? looked.length === 0 && rules.length === 0
          ? say("cli.candidates-page.nothing-in-this-version-judges-it")
          : ""
        : `– ${good}`,
    ],
    1,
    4,
  );
  for (const j of rest) {
    const verdict: Span = [verdictStyle(j.verdict), j.verdict];
    page.text(
      [`${j.id} ${j.title}:`, verdict, "–", j.reason, ...new Set(j.rules.map((f) => `(${f.level} ${f.rule})`))],
      4,
      6,
    );
  }
  for (const f of rules)
    page.text([[f.level === "refuse" ? "bad" : "open", f.level], `${f.rule} – ${ruleSentence(f)}`], 4, 6);
}
