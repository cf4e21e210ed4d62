/** Question 5: what does this fork, with these wheels, do to it? */
import { figure, type Head, joint, type Question, type Reckoned, row, setAsideWords, showNumber } from "../question.js";

const HEAD: Head = { n: 5, question: "What does this fork do to it?", stake: "hurt" };
const NAMES = [
  ["head_angle_deg", "head angle", "°", 1],
  ["seat_angle_deg", "seat angle", "°", 1],
  ["bb_height_mm", "cranks' axis over the ground", "mm", 0],
  ["trail_mm", "trail", "mm", 1],
  ["stack_mm", "stack", "mm", 0],
  ["reach_mm", "reach", "mm", 0],
  ["wheelbase_mm", "wheelbase", "mm", 0],
] as const;

function toeWords(r: Reckoned): readonly string[] {
  if (r.toe.kind !== "known") return [];
  const bare = r.toe.toGuard && r.toe.bareMm !== undefined ? `, to the bare tyre ${showNumber(r.toe.bareMm, 0)}` : "";
  return [
    `Toe to ${r.toe.toGuard ? "guard" : "tyre"}: ${showNumber(r.toe.mm, 0)} mm${bare}; 100 is asked of new bicycles without foot retention (from memory of ISO 4210-2, not re-read).`,
  ];
}

export const forkDoes: Question = (r) => {
  const j4 = joint(r, "J4");
  const before = r.geometry.before?.figures.value;
  const after = r.after?.figures;
  if (before === undefined || after === undefined) {
    return row(HEAD, {
      answer: "Not known yet: the side view or the new parts are not complete.",
      verdict: "measure first",
      next: r.geometry.missing[0] ?? j4.next,
      joints: [j4],
    });
  }
  const v = after.value;
  const lower = before.bb_height_mm - v.bb_height_mm;
  const trail = v.trail_mm - before.trail_mm;
  const steers = Math.abs(trail) < 3 ? "steers as before" : trail > 0 ? "steers slower" : "steers quicker";
  const half = (key: (typeof NAMES)[number][0]) => {
    const b = after.bands[key];
    return b === undefined ? "" : ` ± ${showNumber((b.high - b.low) / 2, 1)}`;
  };
  return row(HEAD, {
    answer: `${j4.verdict === "will not fit" || j4.verdict === "fits with work" ? `${j4.reason} ` : ""}${Math.abs(lower) < 1 ? "As high as before" : `${showNumber(Math.abs(lower), 0)} mm ${lower > 0 ? "lower" : "higher"} at the cranks`}, ${steers}.`,
    verdict: j4.verdict,
    about: r.resolved.at.fork?.id,
    also: r.forks.flatMap((f) => {
      const a = f.answer.joints.find((j) => j.id === "J4");
      return f.chosen || a === undefined || a.verdict === "fits" ? [] : [{ verdict: a.verdict, about: f.part.id }];
    }),
    figure: figure("trail", v.trail_mm, "mm", 1, after.bands.trail_mm, {
      against: `was ${showNumber(before.trail_mm, 1)}`,
    }),
    next: j4.next,
    words: [
      `The frame turns ${showNumber(Math.abs(v.rotation_nose_up_deg), 1)}° ${v.rotation_nose_up_deg >= 0 ? "nose up" : "nose down"} until both tyres stand on one level.`,
      ...toeWords(r),
      ...setAsideWords(r),
    ],
    figures: NAMES.map(([key, name, unit, decimals]) =>
      figure(name, v[key], unit, decimals, after.bands[key], { against: `was ${showNumber(before[key], decimals)}` }),
    ),
    tables: [
      {
        title: "Forks side by side, with the chosen wheels",
        columns: [
          "Fork",
          "Turn",
          "Head angle",
          "Seat angle",
          "Cranks' axis",
          "Trail",
          "Toe to tyre",
          "Toe to guard",
          "Verdict",
        ],
        rows: [
          [
            "today",
            "",
            `${showNumber(before.head_angle_deg, 1)}°`,
            `${showNumber(before.seat_angle_deg, 1)}°`,
            showNumber(before.bb_height_mm, 0),
            showNumber(before.trail_mm, 1),
            "",
            "",
            "",
          ],
          ...r.forks.map((f) => {
            const g = f.figures?.value;
            const verdict = f.answer.joints.find((j) => j.id === "J4");
            const bare = f.toe.kind === "known" ? (f.toe.toGuard ? f.toe.bareMm : f.toe.mm) : undefined;
            const guard = f.toe.kind === "known" && f.toe.toGuard ? f.toe.mm : undefined;
            return [
              `${f.part.id}${f.chosen ? " (chosen)" : ""}`,
              g === undefined ? "?" : `${showNumber(g.rotation_nose_up_deg, 1)}°`,
              g === undefined ? "?" : `${showNumber(g.head_angle_deg, 1)}°`,
              g === undefined ? "?" : `${showNumber(g.seat_angle_deg, 1)}°`,
              g === undefined ? "?" : showNumber(g.bb_height_mm, 0),
              g === undefined ? "?" : showNumber(g.trail_mm, 1),
              bare === undefined ? "?" : showNumber(bare, 0),
              guard === undefined ? "" : showNumber(guard, 0),
              verdict === undefined ? "not checked yet" : `${verdict.verdict}: ${verdict.reason}`,
            ];
          }),
        ],
      },
      {
        title: "Bands, 95 %",
        columns: ["Figure", "After"],
        rows: NAMES.map(([key, name, unit, d]) => [
          name,
          `${showNumber(v[key], d)}${half(key)}${unit === "°" ? "°" : ` ${unit}`}`,
        ]),
      },
    ],
    joints: [j4],
    sources: after.sources,
    cautions: after.cautions,
  });
};
