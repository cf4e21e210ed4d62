/** Question 4: will it fit the rider, with a normal stem? */

import type { JointAnswer } from "../../fit/index.js";
import { saddleHeight } from "../../position/index.js";
import type { Caution, NextStep } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { BoardRow } from "../board.js";
import { figure, type Head, joint, type Question, type Reckoned, row, setAsideWords, showNumber } from "../question.js";
import { sideViewStep } from "../side-view-step.js";

const HEAD: Head = { n: 4, question: say("asked.fits-rider.will-it-fit-the-rider-with"), stake: "money" };
const WITHIN_MM = 10;

/** Without a stem or a bar: where the hands are wanted, seen from the frame as it stands. */
function notChosen(r: Reckoned, joints: readonly JointAnswer[]): BoardRow {
  const { cockpit } = r;
  const step = sideViewStep(r);
  const missing = cockpit.missing[0] ?? say("asked.fits-rider.the-chosen-stem-meets-no-bar");
  const guess = saddleWords(r);
  const words = [
    ...guess.words,
    ...cockpit.missing.map((m) => say("asked.fits-rider.missing", { missing: m })),
    ...setAsideWords(r),
  ];
  const rest = { joints, sources: guess.sources, cautions: guess.cautions };
  if (step !== undefined)
    return row(HEAD, {
      answer: say("asked.fits-rider.not-known-yet-the-side-view"),
      verdict: "measure first",
      next: step,
      words,
      ...rest,
    });
  const hand = r.resolved.rider.hand_xy;
  if (hand === undefined)
    return row(HEAD, {
      answer: say("asked.fits-rider.not-known-yet-where-the-rider"),
      verdict: "measure first",
      next: {
        kind: "measure",
        what: say("asked.fits-rider.measure-where-the-hands-lie-on"),
        at: "rider.hand_xy",
        tool: say("asked.fits-rider.tape-and-plumb-line"),
        accuracy: "± 5 mm",
      },
      words,
      ...rest,
    });
  const today = (r.after ?? r.geometry.before)?.figures;
  const measured = missing.startsWith("length, angle") || missing.startsWith("where the hand lies");
  const off = (key: "reach_mm" | "stack_mm", i: 0 | 1) => {
    const band = today?.bands[key];
    const wanted = hand[i];
    return figure(
      i === 0
        ? say("asked.fits-rider.hands-before-the-head-tube-s")
        : say("asked.fits-rider.hands-above-the-head-tube-s"),
      wanted - (today?.value[key] ?? Number.NaN),
      "mm",
      0,
      band === undefined ? undefined : { low: wanted - band.high, high: wanted - band.low, means: band.means },
    );
  };
  const forward = off("reach_mm", 0);
  const up = off("stack_mm", 1);
  return row(HEAD, {
    answer: say("asked.fits-rider.no-stem-and-bar-yet-they", {
      forwardMm: showNumber(forward.value, 0),
      upMm: showNumber(Math.abs(up.value), 0),
      aboveOrBelow: up.value < 0 ? "below" : "above",
    }),
    verdict: measured ? "measure first" : "not checked yet",
    figure: forward,
    next: measured
      ? {
          kind: "measure",
          what: say("asked.fits-rider.measure", { missing }),
          at: "bin.parts",
          tool: say("asked.fits-rider.rule-and-digital-level"),
        }
      : choiceOf(missing),
    words,
    figures: [forward, up],
    ...rest,
  });
}

function choiceOf(missing: string): NextStep {
  const what = /side view/.test(missing) ? "fork" : (/bar|stem|headset/.exec(missing)?.[0] ?? "stem");
  return { kind: "decide", what: say("asked.fits-rider.choose-a", { what }), at: `build.chosen.${what}` };
}

/** What the inside leg alone says of the saddle. */
function saddleWords(r: Reckoned): {
  readonly words: readonly string[];
  readonly sources: readonly string[];
  readonly cautions: readonly Caution[];
} {
  const { inseam, saddle_xy } = r.resolved.rider;
  const guess = inseam === undefined || saddle_xy !== undefined ? undefined : saddleHeight({ inseamMm: inseam });
  if (guess?.kind !== "answered") return { words: [], sources: [], cautions: [] };
  return {
    words: [
      say("asked.fits-rider.from-the-inside-leg-alone-the", {
        saddleHeightMm: showNumber(guess.value.saddle_height_mm, 0),
      }),
    ],
    sources: guess.sources,
    cautions: guess.cautions,
  };
}

export const fitsRider: Question = (r) => {
  const { cockpit } = r;
  const joints = ["J3", "J5", "J6", "J8", "J43"].map((id) => joint(r, id));
  const chosen = cockpit.chosen;
  if (chosen === undefined) return notChosen(r, joints);
  const reached = chosen.errorMm <= WITHIN_MM;
  const quill = r.resolved.at.stem?.kind === "quill_stem";
  const best = cockpit.ranked?.kind === "answered" ? cockpit.ranked.value.best : null;
  const better = best !== null && best !== undefined && best.stemId !== chosen.stemId ? best : undefined;
  const band =
    cockpit.handHalfWidthMm === undefined
      ? undefined
      : {
          low: Math.max(0, chosen.errorMm - cockpit.handHalfWidthMm),
          high: chosen.errorMm + cockpit.handHalfWidthMm,
          means: say("asked.fits-rider.95-from-the-survey"),
        };
  const saddleRow = cockpit.post;
  const jointWorst =
    joints.find((j) => j.verdict === "will not fit") ?? joints.find((j) => j.verdict === "measure first");
  const verdict = !reached
    ? "will not fit"
    : jointWorst?.verdict === "will not fit"
      ? "will not fit"
      : jointWorst !== undefined
        ? "measure first"
        : "fits";
  return row(HEAD, {
    answer: reached
      ? say("asked.fits-rider.yes-stem-by", {
          stemLengthMm: chosen.stemLengthMm,
          stemAngleDeg: chosen.stemAngleDeg > 0 ? "+" : "",
          stemAngleDeg2: showNumber(chosen.stemAngleDeg, 0),
          quill: quill
            ? say("asked.fits-rider.raised-by-mm", { spacersMm: chosen.spacersMm })
            : say("asked.fits-rider.on-mm-of-spacers", { spacersMm: chosen.spacersMm }),
        })
      : say("asked.fits-rider.no-the-hands-stay-mm-from", {
          errorMm: showNumber(chosen.errorMm, 0),
          better:
            better === undefined
              ? ""
              : say("asked.fits-rider.comes-to-mm", { stemId: better.stemId, errorMm: showNumber(better.errorMm, 1) }),
        }),
    verdict,
    about: verdict === "measure first" ? jointWorst?.title : undefined,
    figure: figure(say("asked.fits-rider.hand-from-its-target"), chosen.errorMm, "mm", 1, band, {
      against: say("asked.fits-rider.10-or-less"),
      limit: { high: WITHIN_MM, words: say("asked.fits-rider.10-or-less") },
    }),
    next: reached
      ? jointWorst?.next
      : {
          kind: "decide",
          what:
            better === undefined
              ? say("asked.fits-rider.another-stem-or-bar")
              : say("asked.fits-rider.take", { stemId: better.stemId }),
        },
    words: [
      say("asked.fits-rider.the-hand-comes-to-mm-forward", {
        handXMm: showNumber(chosen.handXMm, 0),
        handYMm: showNumber(chosen.handYMm, 0),
        handXy: r.resolved.rider.hand_xy?.join(" and "),
      }),
      ...(cockpit.points === undefined
        ? []
        : [
            say("asked.fits-rider.bar-mm-the-saddle-s-top", {
              barMinusSaddleMm: showNumber(Math.abs(cockpit.points.barMinusSaddleMm), 0),
              barMinusSaddleMm2: cockpit.points.barMinusSaddleMm < 0 ? "below" : "above",
              yMm: showNumber(cockpit.points.saddleTop.yMm, 0),
            }),
          ]),
      ...(saddleRow === undefined
        ? []
        : [
            say("asked.fits-rider.seatpost-mm-along-the-seat-tube", {
              saddleRow: saddleRow.id,
              extensionMm: showNumber(saddleRow.extensionMm, 0),
              railShiftBackMm: showNumber(Math.abs(saddleRow.railShiftBackMm), 0),
              railShiftBackMm2: saddleRow.railShiftBackMm < 0 ? "forward" : "back",
              withinRails: saddleRow.withinRails ? "" : say("asked.fits-rider.beyond-the-rails"),
            }),
          ]),
      ...setAsideWords(r),
    ],
    tables: [
      ...(cockpit.ranked?.kind === "answered"
        ? [
            {
              title: say("asked.fits-rider.stems-tried-best-first"),
              columns: [
                "Stem",
                "Way",
                quill ? say("asked.fits-rider.raised-or-spacers") : "Spacers",
                say("asked.fits-rider.hand-off-by"),
                "Forward",
                "Up",
              ],
              rows: cockpit.ranked.value.ranked
                .slice(0, 8)
                .map((c) => [
                  c.stemId,
                  `${c.stemAngleDeg > 0 ? "+" : ""}${showNumber(c.stemAngleDeg, 0)}°${c.turnedOver ? say("asked.fits-rider.turned-over") : ""}`,
                  `${c.spacersMm}`,
                  `${showNumber(c.errorMm, 1)} mm`,
                  showNumber(c.errorXMm, 1),
                  showNumber(c.errorYMm, 1),
                ]),
            },
          ]
        : []),
      ...(cockpit.otherBars.length > 0
        ? [
            {
              title: say("asked.fits-rider.other-bars-each-at-its-best"),
              columns: [
                "Bar",
                "Stem",
                quill ? say("asked.fits-rider.raised-or-spacers") : "Spacers",
                say("asked.fits-rider.hand-off-by"),
                "Forward",
                "Up",
              ],
              rows: cockpit.otherBars.map(({ id, best: b }) =>
                b === null
                  ? [id, say("asked.fits-rider.no-stem-here-takes-it"), "", "", "", ""]
                  : [
                      id,
                      b.stemId,
                      `${b.spacersMm}`,
                      `${showNumber(b.errorMm, 1)} mm`,
                      showNumber(b.errorXMm, 1),
                      showNumber(b.errorYMm, 1),
                    ],
              ),
            },
          ]
        : []),
      ...(cockpit.saddle?.kind === "answered"
        ? [
            {
              title: say("asked.fits-rider.seatpost-setback"),
              columns: [
                "Setback",
                "Extension",
                say("asked.fits-rider.rails-moved-back"),
                say("asked.fits-rider.within-the-rails"),
              ],
              rows: cockpit.saddle.value.per_setback.map((s) => [
                `${s.setback_mm} mm`,
                `${showNumber(s.extension_along_seat_tube_mm, 1)} mm`,
                `${showNumber(s.rail_shift_back_mm, 1)} mm`,
                s.within_rail_range ? "yes" : "no",
              ]),
            },
          ]
        : []),
    ],
    notChecked: [
      quill ? say("asked.fits-rider.how-the-rider-feels-on-it") : say("asked.fits-rider.how-the-rider-feels-on-it-2"),
    ],
    joints,
    sources: ["position-contact-points"],
    cautions: [
      ...(cockpit.ranked?.kind === "answered" ? cockpit.ranked.cautions : []),
      ...(cockpit.saddle?.kind === "answered" ? cockpit.saddle.cautions : []),
    ],
  });
};
