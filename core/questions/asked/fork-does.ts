/** Question 5: what does this fork, with these wheels, do to it? */

import type { JointAnswer } from "../../fit/index.js";
import { say } from "../../texts/say.js";
import type { BoardRow } from "../board.js";
import { figure, type Head, joint, type Question, type Reckoned, row, setAsideWords, showNumber } from "../question.js";
import { sideViewStep, spareReading } from "../side-view-step.js";

const HEAD: Head = { n: 5, question: say("asked.fork-does.what-does-this-fork-do-to"), stake: "hurt" };
const NAMES = [
  ["head_angle_deg", "head angle", "°", 1],
  ["seat_angle_deg", "seat angle", "°", 1],
  ["bb_height_mm", say("asked.fork-does.cranks-axis-over-the-ground"), "mm", 0],
  ["trail_mm", "trail", "mm", 1],
  ["stack_mm", "stack", "mm", 0],
  ["reach_mm", "reach", "mm", 0],
  ["wheelbase_mm", "wheelbase", "mm", 0],
] as const;

function toeWords(r: Reckoned): readonly string[] {
  if (r.toe.kind !== "known") return [];
  const bare =
    r.toe.toGuard && r.toe.bareMm !== undefined
      ? say("asked.fork-does.to-the-bare-tyre", { bareMm: showNumber(r.toe.bareMm, 0) })
      : "";
  return [
    say("asked.fork-does.toe-to-mm-100-is-asked", {
      guardOrTyre: r.toe.toGuard ? "guard" : "tyre",
      clearanceMm: showNumber(r.toe.mm, 0),
      bare,
    }),
  ];
}

/** No fork is chosen, or a number of the new parts is missing: the figures of today, so that there is something to hold against. */
function asItStands(r: Reckoned, j4: JointAnswer): BoardRow {
  const today = r.geometry.before?.figures;
  const fork = r.resolved.at.fork;
  const trail = today?.value.trail_mm ?? Number.NaN;
  const why =
    fork === undefined
      ? say("asked.fork-does.no-other-fork-is-chosen")
      : say("asked.fork-does.not-known-yet-a-number-of");
  const next = j4.next ?? {
    kind: "decide" as const,
    what: say("asked.fork-does.choose-the-wheels-and-their-tyres"),
    at: "build.chosen.tyre_front",
  };
  return row(HEAD, {
    answer: say("asked.fork-does.today-the-trail-is-mm", { why, trail: showNumber(trail, 0) }),
    verdict: next.kind === "measure" ? "measure first" : "not checked yet",
    figure: figure(say("asked.fork-does.trail-today"), trail, "mm", 1, today?.bands.trail_mm),
    next,
    words: setAsideWords(r),
    figures: NAMES.flatMap(([key, name, unit, decimals]) =>
      today === undefined
        ? []
        : [figure(say("asked.fork-does.today", { name }), today.value[key], unit, decimals, today.bands[key])],
    ),
    joints: [j4],
    sources: today?.sources ?? [],
    cautions: today?.cautions ?? [],
  });
}

/** A fork whose steerer does not go in the head tube is out, however well the rest of it suits. */
function decides(f: Reckoned["forks"][number]) {
  const of = (id: string) => f.answer.joints.find((j) => j.id === id);
  const steerer = of("J3");
  return steerer?.verdict === "will not fit" && steerer.remedies.every((o) => o.refused !== undefined || o.replacesPart)
    ? steerer
    : of("J4");
}

export const forkDoes: Question = (r) => {
  const j4 = joint(r, "J4");
  const before = r.geometry.before?.figures.value;
  const after = r.after?.figures;
  const step = sideViewStep(r);
  if (step !== undefined || before === undefined)
    return row(HEAD, {
      answer: say("asked.fits-rider.not-known-yet-the-side-view"),
      verdict: "measure first",
      next: step ?? spareReading(r),
      joints: [j4],
    });
  if (after === undefined) return asItStands(r, j4);
  const v = after.value;
  const lower = before.bb_height_mm - v.bb_height_mm;
  const trail = v.trail_mm - before.trail_mm;
  const steers =
    Math.abs(trail) < 3
      ? say("asked.fork-does.steers-as-before")
      : trail > 0
        ? say("asked.fork-does.steers-slower")
        : say("asked.fork-does.steers-quicker");
  const half = (key: (typeof NAMES)[number][0]) => {
    const b = after.bands[key];
    return b === undefined ? "" : ` ± ${showNumber((b.high - b.low) / 2, 1)}`;
  };
  return row(HEAD, {
    answer: `${j4.verdict === "will not fit" || j4.verdict === "fits with work" ? `${j4.reason} ` : ""}${Math.abs(lower) < 1 ? say("asked.fork-does.as-high-as-before") : say("asked.fork-does.mm-at-the-cranks", { byMm: showNumber(Math.abs(lower), 0), lowerOrHigher: lower > 0 ? "lower" : "higher" })}, ${steers}.`,
    verdict: j4.verdict,
    about: r.resolved.at.fork?.id,
    also: r.forks.flatMap((f) => {
      const a = decides(f);
      return f.chosen || a === undefined || a.verdict === "fits" ? [] : [{ verdict: a.verdict, about: f.part.id }];
    }),
    figure: figure("trail", v.trail_mm, "mm", 1, after.bands.trail_mm, {
      against: say("asked.fork-does.was", { trailMm: showNumber(before.trail_mm, 1) }),
    }),
    next: j4.next,
    words: [
      Math.abs(v.rotation_nose_up_deg) < 0.05
        ? say("asked.fork-does.the-frame-stands-as-level-as")
        : say("asked.fork-does.the-frame-turns-until-both-tyres", {
            rotationNoseUpDeg: showNumber(Math.abs(v.rotation_nose_up_deg), 1),
            rotationNoseUpDeg2:
              v.rotation_nose_up_deg >= 0 ? say("asked.fork-does.nose-up") : say("asked.fork-does.nose-down"),
          }),
      ...toeWords(r),
      ...setAsideWords(r),
    ],
    figures: NAMES.map(([key, name, unit, decimals]) =>
      figure(name, v[key], unit, decimals, after.bands[key], {
        against: say("asked.fork-does.was-2", { before: showNumber(before[key], decimals) }),
      }),
    ),
    tables: [
      {
        title: say("asked.fork-does.forks-side-by-side-with-the"),
        columns: [
          "Fork",
          "Turn",
          say("asked.fork-does.head-angle"),
          say("asked.fork-does.seat-angle"),
          say("asked.fork-does.cranks-axis"),
          "Trail",
          say("asked.fork-does.toe-to-tyre"),
          say("asked.fork-does.toe-to-guard"),
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
            const verdict = decides(f);
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
        title: say("asked.fork-does.bands-95"),
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
