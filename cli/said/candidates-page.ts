/** How do the parts weighed beside the chosen ones stand: forks with their side view, others by the joints they touch? */
import type { CandidateAnswer } from "@coldset/core/fit";
import { type Reckoning, showNumber } from "@coldset/core/questions";
import type { Page, Span } from "../screen/page.js";
import { quantityText, verdictStyle } from "./figures.js";

const FIGURES = [
  ["head_angle_deg", "head angle", "°", 1],
  ["seat_angle_deg", "seat angle", "°", 1],
  ["stack_mm", "stack", "mm", 1],
  ["reach_mm", "reach", "mm", 1],
  ["bb_height_mm", "cranks' axis over the ground", "mm", 1],
  ["wheelbase_mm", "wheelbase", "mm", 1],
  ["trail_mm", "trail", "mm", 1],
] as const;

export function sideViewPage(r: Reckoning, page: Page): void {
  const before = r.geometry.before?.figures;
  const after = r.after?.figures;
  if (before === undefined && after === undefined) return;
  page.heading("Side view, today and after");
  if (r.geometry.setAside !== undefined)
    page.text("Reckoned without the reading that disagrees with the rest (question 13).");
  const cell = (side: typeof before, [key, , unit, decimals]: (typeof FIGURES)[number]) =>
    side === undefined ? "?" : quantityText(side.value[key], unit, decimals, side.bands[key]);
  page.table(
    FIGURES.map((f) => [f[1], cell(before, f), cell(after, f)]),
    { heads: ["", "today", "after"] },
  );
  if (r.forks.length === 0) return;
  page.blank().text("Forks side by side, with the chosen wheels:");
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
      heads: ["fork", "turn", "head", "seat", "cranks", "trail", "toe to tyre", "to guard"],
      right: [1, 2, 3, 4, 5, 6, 7],
    },
  );
  page.text("* chosen. Turn: nose up. Cranks: over the ground. Lengths in mm, as sure as those above.", 2, 2);
}

export function candidatesPage(r: Reckoning, page: Page): void {
  const rows = [
    ...r.forks.filter((f) => !f.chosen).map((f) => ({ place: "fork", id: f.part.id, answer: f.answer })),
    ...r.others.map((o) => ({ place: o.place.replaceAll("_", " "), id: o.part.id, answer: o.answer })),
  ];
  if (rows.length === 0) return;
  page.heading("Parts weighed beside the chosen ones");
  for (const { place, id, answer } of rows) candidatePage(`${id} as the ${place}`, answer, page);
}

function candidatePage(name: string, answer: CandidateAnswer, page: Page): void {
  const looked = answer.joints.filter((j) => j.verdict !== "not checked yet");
  const fits = looked.filter((j) => j.verdict === "fits");
  const rest = looked.filter((j) => j.verdict !== "fits");
  const good = fits.length === 0 ? "" : `fits at ${fits.map((j) => j.id).join(", ")}`;
  page.text(
    [
      ["strong", name],
      good === "" ? (looked.length === 0 ? "– nothing in this version judges it yet" : "") : `– ${good}`,
    ],
    1,
    4,
  );
  for (const j of rest) {
    const verdict: Span = [verdictStyle(j.verdict), j.verdict];
    page.text([`${j.id} ${j.title}:`, verdict, "–", j.reason, ...j.rules.map((f) => `(${f.level} ${f.rule})`)], 4, 6);
  }
}
