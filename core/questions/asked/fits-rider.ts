/** Question 4: will it fit the rider, with a normal stem? */
import { figure, type Head, joint, type Question, row, setAsideWords, showNumber } from "../question.js";

const HEAD: Head = { n: 4, question: "Will it fit the rider with a normal stem?", stake: "money" };
const WITHIN_MM = 10;

export const fitsRider: Question = (r) => {
  const { cockpit } = r;
  const joints = ["J3", "J5", "J6", "J8", "J43"].map((id) => joint(r, id));
  const chosen = cockpit.chosen;
  if (chosen === undefined) {
    return row(HEAD, {
      answer: `Not known yet: ${cockpit.missing[0] ?? "the chosen stem meets no bar"}.`,
      verdict: "measure first",
      next:
        r.after === undefined && cockpit.missing[0]?.includes("side view") === true
          ? (r.geometry.missing[0] ?? joint(r, "J4").next)
          : { kind: "measure", what: `Enter ${cockpit.missing[0] ?? "a stem and a bar that go together"}` },
      words: cockpit.missing.map((m) => `Missing: ${m}.`),
      joints,
    });
  }
  const reached = chosen.errorMm <= WITHIN_MM;
  const best = cockpit.ranked?.kind === "answered" ? cockpit.ranked.value.best : null;
  const better = best !== null && best !== undefined && best.stemId !== chosen.stemId ? best : undefined;
  const band =
    cockpit.handHalfWidthMm === undefined
      ? undefined
      : {
          low: Math.max(0, chosen.errorMm - cockpit.handHalfWidthMm),
          high: chosen.errorMm + cockpit.handHalfWidthMm,
          means: "95 %, from the survey",
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
      ? `Yes: stem ${chosen.stemLengthMm} by ${chosen.stemAngleDeg > 0 ? "+" : ""}${showNumber(chosen.stemAngleDeg, 0)}°, on ${chosen.spacersMm} mm of spacers.`
      : `No: the hands stay ${showNumber(chosen.errorMm, 0)} mm from where they belong${better === undefined ? "" : `; ${better.stemId} comes to ${showNumber(better.errorMm, 1)} mm`}.`,
    verdict,
    about: verdict === "measure first" ? jointWorst?.title : undefined,
    figure: figure("hand from its target", chosen.errorMm, "mm", 1, band, {
      against: "10 or less",
      limit: { high: WITHIN_MM, words: "10 or less" },
    }),
    next: reached
      ? jointWorst?.next
      : { kind: "decide", what: better === undefined ? "Another stem or bar" : `Take ${better.stemId}` },
    words: [
      `The hand comes to ${showNumber(chosen.handXMm, 0)} mm forward and ${showNumber(chosen.handYMm, 0)} up from the cranks' axis; wanted ${r.resolved.rider.hand_xy?.join(" and ")}.`,
      ...(cockpit.points === undefined
        ? []
        : [
            `Bar ${showNumber(Math.abs(cockpit.points.barMinusSaddleMm), 0)} mm ${cockpit.points.barMinusSaddleMm < 0 ? "below" : "above"} the saddle's top, which stands ${showNumber(cockpit.points.saddleTop.yMm, 0)} over the cranks' axis.`,
          ]),
      ...(saddleRow === undefined
        ? []
        : [
            `Seatpost ${saddleRow.id}: ${showNumber(saddleRow.extensionMm, 0)} mm along the seat tube, rails ${showNumber(Math.abs(saddleRow.railShiftBackMm), 0)} ${saddleRow.railShiftBackMm < 0 ? "forward" : "back"} of the middle${saddleRow.withinRails ? "" : ": beyond the rails"}.`,
          ]),
      ...setAsideWords(r),
    ],
    tables: [
      ...(cockpit.ranked?.kind === "answered"
        ? [
            {
              title: "Stems tried, best first",
              columns: ["Stem", "Way", "Spacers", "Hand off by", "Forward", "Up"],
              rows: cockpit.ranked.value.ranked
                .slice(0, 8)
                .map((c) => [
                  c.stemId,
                  `${c.stemAngleDeg > 0 ? "+" : ""}${showNumber(c.stemAngleDeg, 0)}°${c.turnedOver ? " turned over" : ""}`,
                  `${c.spacersMm}`,
                  `${showNumber(c.errorMm, 1)} mm`,
                  showNumber(c.errorXMm, 1),
                  showNumber(c.errorYMm, 1),
                ]),
            },
          ]
        : []),
      ...(cockpit.saddle?.kind === "answered"
        ? [
            {
              title: "Seatpost setback",
              columns: ["Setback", "Extension", "Rails moved back", "Within the rails"],
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
    notChecked: ["How the rider feels on it: sit on it before the steerer is cut."],
    joints,
    sources: ["position-contact-points"],
    cautions: [
      ...(cockpit.ranked?.kind === "answered" ? cockpit.ranked.cautions : []),
      ...(cockpit.saddle?.kind === "answered" ? cockpit.saddle.cautions : []),
    ],
  });
};
