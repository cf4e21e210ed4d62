/** Question 9: where exactly does the brake tab go? */
import { type Head, joint, jointFigure, type Question, row } from "../question.js";

const HEAD: Head = { n: 9, question: "Where exactly does the brake tab go?", stake: "hurt" };

export const brakeTab: Question = (r) => {
  const j23 = joint(r, "J23");
  const gate = r.rules.find((f) => f.rule === "S6" && f.onChosen);
  const tabThere =
    r.resolved.donor.interfaces.rear_tab !== undefined && r.resolved.donor.interfaces.rear_tab !== "none";
  const shut = gate?.open && !tabThere;
  return row(HEAD, {
    answer:
      j23.verdict === "fits with work"
        ? `${j23.reason}${shut ? " No cut before the gate is signed." : ""}`
        : j23.reason,
    verdict: shut ? "gate" : j23.verdict,
    about: shut ? "S6" : undefined,
    figure: jointFigure(j23),
    next: shut
      ? { kind: "do", what: "Dry fit, then have a qualified welder look at the place and sign", at: "build.evidence" }
      : j23.next,
    words: [
      "Hole distances are the published ones for the 51 mm tab. Which turn about the axle clears both stays is for the traced caliper to decide.",
      "Weld quality, hidden cracks and life cannot be known from your measurements.",
    ],
    notChecked: ["The window of turn, the template and the load on tab and weld: not in yet."],
    joints: [j23, joint(r, "J20"), joint(r, "J22"), joint(r, "J19")],
  });
};
