/** Question 9: where exactly does the brake tab go? */
import { type Head, joint, jointFigure, type Question, row } from "../question.js";

const HEAD: Head = { n: 9, question: "Where exactly does the brake tab go?", stake: "hurt" };

export const brakeTab: Question = (r) => {
  const j23 = joint(r, "J23");
  const gate = r.rules.find((f) => f.rule === "S6" && f.onChosen);
  const tabThere =
    r.resolved.donor.interfaces.rear_tab !== undefined && r.resolved.donor.interfaces.rear_tab !== "none";
  const shut = gate?.open && !tabThere;
  const refused = r.rules.find((f) => f.about === "J23" && f.level === "refuse" && f.onChosen);
  const near = jointFigure(j23);
  return row(HEAD, {
    answer:
      refused !== undefined && !tabThere
        ? `Nowhere: ${refused.here.charAt(0).toLowerCase()}${refused.here.slice(1)} No tab is made on it.`
        : j23.verdict === "fits with work"
          ? `${j23.reason}${shut ? " No cut before the gate is signed." : ""}`
          : j23.reason,
    verdict: refused !== undefined && !tabThere ? "refuse" : shut ? "gate" : j23.verdict,
    about: refused !== undefined && !tabThere ? refused.rule : shut ? "S6" : undefined,
    figure:
      refused !== undefined && !tabThere
        ? undefined
        : near === undefined || tabThere
          ? near
          : { ...near, against: "± 0.1, to be made" },
    next:
      refused !== undefined && !tabThere
        ? { kind: "decide", what: refused.insteadDo.replace(/\.$/, "") }
        : shut
          ? {
              kind: "do",
              what: "Dry fit, then have a qualified welder look at the place and sign",
              at: "build.evidence",
            }
          : j23.next,
    words:
      refused !== undefined && !tabThere
        ? [`${refused.why} Instead: ${refused.insteadDo}`]
        : [
            "Hole distances are the published ones for the 51 mm tab. Which turn about the axle clears both stays is for the traced caliper to decide.",
            "Weld quality, hidden cracks and life cannot be known from your measurements.",
          ],
    notChecked: ["The window of turn, the template and the load on tab and weld: not in this version yet."],
    joints: [j23, joint(r, "J20"), joint(r, "J22"), joint(r, "J19")],
  });
};
