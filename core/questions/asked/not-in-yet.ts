/** Which of the twenty questions can this program not answer yet? They stand on the board and say so. */
import { say } from "../../texts/say.js";
import { type Head, notIn, type Question, type Reckoned, row } from "../question.js";
import { noCable } from "./no-cable.js";

const WELD: Head = { n: 10, question: say("asked.not-in-yet.will-my-weld-spoil-the-braze"), stake: "money" };

/** Does any work entered, or any remedy reckoned with, bring heat to the frame? */
function heats(r: Reckoned): boolean {
  const flame = (needs: readonly string[]) => needs.includes("weld") || needs.includes("braze");
  return (
    r.resolved.build.operations.some((o) => o.irreversible === "heat" || flame(o.needs ?? [])) ||
    [...r.joints.reckoned.values()].some((offer) => flame(offer.needs))
  );
}

export const weldNearBraze: Question = (r) =>
  r.resolved.build.operations.length > 0 && !heats(r)
    ? row(WELD, {
        answer: say("asked.not-in-yet.no-heat-is-planned-on-this"),
        verdict: "no problem found",
        about: say("asked.not-in-yet.no-heat"),
        words: [say("asked.not-in-yet.no-operation-entered-and-no-remedy")],
        notChecked: [say("asked.not-in-yet.a-flame-to-free-a-stuck")],
      })
    : notIn(WELD, say("asked.not-in-yet.heat-reach-is-not-in-this"));
export const mendOrReject: Question = () =>
  notIn(
    { n: 16, question: say("asked.not-in-yet.is-this-used-part-worth-mending"), stake: "money" },
    say("asked.not-in-yet.mending-or-rejecting-used-parts-is"),
  );
export const looksIntended: Question = () =>
  notIn(
    { n: 17, question: say("asked.not-in-yet.how-do-i-make-it-look"), stake: "money" },
    say("asked.not-in-yet.paint-and-masks-are-not-in"),
  );
export const hoseAndCable: Question = (r) =>
  notIn(
    { n: 18, question: say("asked.not-in-yet.how-do-i-route-hose-and"), stake: "time" },
    [say("asked.not-in-yet.routes-of-hose-and-cable-are"), ...noCable(r)].join(" "),
  );
