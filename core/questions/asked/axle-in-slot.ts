/** Question 8: how do I fit a through axle in a slotted end? (Or: does the axle I have sit in the slot as it is?) */
import { say } from "../../texts/say.js";
import { type Head, joint, jointFigure, type Question, row } from "../question.js";

const HEAD: Head = { n: 8, question: say("asked.axle-in-slot.how-do-i-fit-a-through"), stake: "hurt" };

export const axleInSlot: Question = (r) => {
  const j10 = joint(r, "J10");
  const rear = r.resolved.at.wheel_rear;
  const through = rear?.kind === "wheel_rear" && rear.ports.axle === "through_12";
  const slot = r.resolved.donor.interfaces.rear_end;
  return row(HEAD, {
    answer:
      !through && j10.verdict === "fits"
        ? say("asked.axle-in-slot.not-needed", {
            reason: j10.reason.charAt(0).toLowerCase(),
            reason2: j10.reason.slice(1),
          })
        : !through && rear?.kind === "wheel_rear" && rear.ports.axle !== undefined && j10.verdict === "measure first"
          ? say("asked.axle-in-slot.no-through-axle-here", { reason: j10.reason })
          : rear?.kind === "wheel_rear" && rear.ports.axle === undefined
            ? say("asked.axle-in-slot.not-known-yet-which-axle-the")
            : j10.reason,
    verdict: j10.verdict,
    figure: jointFigure(j10),
    next: j10.next,
    joints: [j10, joint(r, "J21")],
    notChecked: [
      ...(slot === "horizontal_slot" && !through ? [say("asked.axle-in-slot.whether-the-clamp-holds-the-axle")] : []),
      say("asked.axle-in-slot.axle-inserts-for-a-through-axle"),
    ],
  });
};
