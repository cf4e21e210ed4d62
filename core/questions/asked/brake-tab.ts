/** Question 9: where exactly does the brake tab go? */

import { discAt } from "../../fit/front-and-wheels/brakes-wanted.js";
import { say } from "../../texts/say.js";
import { type Head, joint, jointFigure, type Question, row } from "../question.js";

const HEAD: Head = { n: 9, question: say("asked.brake-tab.where-exactly-does-the-brake-tab"), stake: "hurt" };

export const brakeTab: Question = (r) => {
  const j23 = joint(r, "J23");
  if (r.resolved.donor.tube.stay_filler === "silver" && j23.verdict === "will not fit")
    return row(HEAD, {
      answer: say("asked.brake-tab.nowhere-no-tab-is-made-on", {
        reason: j23.reason.charAt(0).toLowerCase(),
        reason2: j23.reason.slice(1),
      }),
      verdict: "refuse",
      about: say("asked.brake-tab.silver-joints"),
      next: { kind: "decide", what: say("asked.brake-tab.keep-the-rim-brake-at-the"), at: "intent.brakes" },
      words: [say("asked.brake-tab.silver-flows-at-600-to-700")],
      notChecked: [say("asked.brake-tab.how-near-a-builder-could-work")],
      joints: [j23, joint(r, "J20"), joint(r, "J22"), joint(r, "J19")],
    });
  const gate = r.rules.find((f) => f.rule === "S6" && f.onChosen);
  const tabThere =
    r.resolved.donor.interfaces.rear_tab !== undefined && r.resolved.donor.interfaces.rear_tab !== "none";
  const shut = gate?.open && !tabThere;
  const refused = r.rules.find((f) => f.about === "J23" && f.level === "refuse" && f.onChosen);
  const near = jointFigure(j23);
  if (discAt(r.view, "rear") === false)
    return row(HEAD, {
      answer: say("asked.brake-tab.nowhere-the-rear-brake-stays-on"),
      verdict: "no problem found",
      about: say("asked.brake-tab.rim-brake"),
      words: [say("asked.brake-tab.no-disc-brake-is-planned-at")],
      notChecked: [say("asked.brake-tab.whether-the-rim-brake-reaches-the")],
      joints: [j23, joint(r, "J15")],
    });
  return row(HEAD, {
    answer:
      refused !== undefined && !tabThere
        ? say("asked.brake-tab.nowhere-no-tab-is-made-on-2", {
            firstLetter: refused.here.charAt(0).toLowerCase(),
            rest: refused.here.slice(1),
          })
        : j23.verdict === "fits with work"
          ? `${j23.reason}${shut ? say("asked.brake-tab.no-cut-before-the-gate-is") : ""}`
          : j23.reason,
    verdict: refused !== undefined && !tabThere ? "refuse" : shut ? "gate" : j23.verdict,
    about: refused !== undefined && !tabThere ? refused.rule : shut ? "S6" : undefined,
    figure:
      refused !== undefined && !tabThere
        ? undefined
        : near === undefined || tabThere
          ? near
          : { ...near, against: say("asked.brake-tab.0-1-to-be-made") },
    next:
      refused !== undefined && !tabThere
        ? { kind: "decide", what: refused.insteadDo.replace(/\.$/, "") }
        : shut
          ? {
              kind: "do",
              what: say("asked.brake-tab.dry-fit-then-have-a-qualified"),
              at: "build.evidence",
            }
          : j23.next,
    words:
      refused !== undefined && !tabThere
        ? [say("asked.brake-tab.instead", { why: refused.why, insteadDo: refused.insteadDo })]
        : [
            say("asked.brake-tab.hole-distances-are-the-published-ones"),
            say("asked.brake-tab.weld-quality-hidden-cracks-and-life"),
          ],
    notChecked: [say("asked.brake-tab.the-window-of-turn-the-template")],
    joints: [j23, joint(r, "J20"), joint(r, "J22"), joint(r, "J19")],
  });
};
