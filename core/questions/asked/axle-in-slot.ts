/** Question 8: how do I fit a through axle in a slotted end? (Or: does the axle I have sit in the slot as it is?) */
import { type Head, joint, jointFigure, type Question, row } from "../question.js";

const HEAD: Head = { n: 8, question: "How do I fit a through axle in a slotted end?", stake: "hurt" };

export const axleInSlot: Question = (r) => {
  const j10 = joint(r, "J10");
  const rear = r.resolved.at.wheel_rear;
  const through = rear?.kind === "wheel_rear" && rear.ports.axle === "through_12";
  return row(HEAD, {
    answer:
      !through && j10.verdict === "fits"
        ? `Not needed: ${j10.reason.charAt(0).toLowerCase()}${j10.reason.slice(1)}`
        : j10.reason,
    verdict: j10.verdict,
    figure: jointFigure(j10),
    next: j10.next,
    joints: [j10, joint(r, "J21")],
    notChecked: ["Axle inserts for a through axle: drawing not in this version yet."],
  });
};
