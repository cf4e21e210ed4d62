/**
 * Question 3: which of these adverts should I drive to? Adverts beside each other are not compared here; for the one
 * bicycle that is entered it says what a tape must read at the door, and what is known of it.
 */
import { say } from "../../texts/say.js";
import { figure, type Head, notIn, type Question, row, showNumber } from "../question.js";
import { doorReadings } from "../side-view-step.js";

const HEAD: Head = { n: 3, question: say("asked.which-advert.which-of-these-adverts-should-i"), stake: "money" };
const NOT_COMPARED = say("asked.which-advert.comparing-adverts-is-not-in-this");

export const whichAdvert: Question = (r) => {
  // Once parts are chosen the bicycle stands in the workshop: nobody drives to it any more.
  if (Object.keys(r.resolved.build.chosen).length > 0) return notIn(HEAD, NOT_COMPARED);
  const figures = r.geometry.before?.figures;
  if (figures === undefined) {
    const steps = doorReadings(r);
    const [first, ...more] = steps;
    return row(HEAD, {
      answer: say("asked.which-advert.not-known-yet-whether-this-one"),
      verdict: "measure first",
      about: say("asked.which-advert.at-the-door"),
      next: first,
      words: [
        say("asked.which-advert.ask-the-seller-for-these-or", {
          readings: [first, ...more.slice(0, 2)].map((s) => s?.what.replace(/^Measure the /, "")).join("; "),
        }),
        say("asked.which-advert.look-behind-the-head-tube-for"),
      ],
      notChecked: [NOT_COMPARED],
    });
  }
  const { stack_mm, reach_mm } = figures.value;
  const half = (key: "stack_mm" | "reach_mm") => {
    const band = figures.bands[key];
    return band === undefined ? "" : ` ± ${showNumber((band.high - band.low) / 2, 0)}`;
  };
  return row(HEAD, {
    answer: say("asked.which-advert.this-one-is-measured-reach-stack", {
      reachMm: showNumber(reach_mm, 0),
      reachBand: half("reach_mm"),
      stackMm: showNumber(stack_mm, 0),
      stackBand: half("stack_mm"),
    }),
    verdict: "not checked yet",
    about: say("asked.which-advert.other-adverts"),
    figure: figure("reach", reach_mm, "mm", 0, figures.bands.reach_mm),
    figures: [figure("stack", stack_mm, "mm", 0, figures.bands.stack_mm)],
    words: [say("asked.which-advert.with-the-position-that-the-rider")],
    notChecked: [NOT_COMPARED],
    sources: figures.sources,
    cautions: figures.cautions,
  });
};
