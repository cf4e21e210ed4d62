/** Question 7: may I spread this frame to that hub, and how far do I push? */
import { type Head, joint, jointFigure, type Question, row } from "../question.js";

const HEAD: Head = { n: 7, question: "May I spread this frame to that hub, and how far do I push?", stake: "hurt" };

export const maySpread: Question = (r) => {
  const j9 = joint(r, "J9");
  const wall = r.resolved.donor.tube.chainstay_wall;
  const reckoned = r.joints.reckoned.get("J9");
  /** By the ruling: without the stay's own wall and taper the push is a first guess, so the question stays open. */
  const guessed =
    j9.verdict === "fits with work" && reckoned?.needs.includes("cold_set") === true && wall === undefined;
  const tube = r.resolved.donor.tube.class.replaceAll("_", " ").replace("chromoly", "chrome-moly");
  const each = j9.numbers.find((n) => n.name === "set per side");
  const refused = r.rules.find((f) => (f.rule === "S1" || f.rule === "S2") && f.level === "refuse");
  return row(HEAD, {
    answer:
      refused !== undefined && j9.verdict !== "fits"
        ? refused.here
        : guessed
          ? `Yes: ${tube}. ${each === undefined ? "How" : `${each.value.toFixed(1)} mm each side; how`} far to push is only a first guess.`
          : j9.reason,
    verdict: refused !== undefined && j9.verdict !== "fits" ? "refuse" : guessed ? "measure first" : j9.verdict,
    about: refused !== undefined ? refused.rule : guessed ? "push" : undefined,
    figure: jointFigure(
      j9,
      guessed
        ? Math.max(
            0,
            j9.numbers.findIndex((n) => n.name.startsWith("push")),
          )
        : 0,
    ),
    next: j9.next,
    words: [
      j9.reason,
      // Nobody is told how to push what must not be pushed.
      ...(refused !== undefined && j9.verdict !== "fits"
        ? [`${refused.why} Instead: ${refused.insteadDo}`]
        : [
            "Creep up in steps, release, measure, and write down push and what stayed. Both sides alike by the string. Never in one go, and never with the hub as a wedge.",
          ]),
    ],
    figures: j9.numbers.flatMap((_, i) => jointFigure(j9, i) ?? []),
    notChecked: ["The exact push by the stay's own taper and wall: not in this version yet."],
    joints: [j9],
  });
};
