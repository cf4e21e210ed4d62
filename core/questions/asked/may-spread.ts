/** Question 7: may I spread this frame to that hub, and how far do I push? */
import { say } from "../../texts/say.js";
import { type Head, joint, jointFigure, type Question, row } from "../question.js";

const HEAD: Head = { n: 7, question: say("asked.may-spread.may-i-spread-this-frame-to"), stake: "hurt" };

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
          ? say("asked.may-spread.yes-far-to-push-is-only", {
              tube,
              each:
                each === undefined ? "How" : say("asked.may-spread.mm-each-side-how", { each: each.value.toFixed(1) }),
            })
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
        ? [say("asked.brake-tab.instead", { why: refused.why, insteadDo: refused.insteadDo })]
        : j9.verdict === "fits"
          ? []
          : [say("asked.may-spread.creep-up-in-steps-release-measure")]),
    ],
    figures: j9.numbers.flatMap((_, i) => jointFigure(j9, i) ?? []),
    notChecked: j9.verdict === "fits" ? [] : [say("asked.may-spread.the-exact-push-by-the-stay")],
    joints: [j9],
  });
};
