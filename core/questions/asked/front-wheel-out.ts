/** Question 1: can the front wheel come out under this brake? */

import { discAt } from "../../fit/front-and-wheels/brakes-wanted.js";
import { say } from "../../texts/say.js";
import type { BoardRow } from "../board.js";
import { figure, type Head, joint, jointFigure, type Question, type Reckoned, row, showNumber } from "../question.js";

const HEAD: Head = { n: 1, question: say("asked.front-wheel-out.can-the-front-wheel-come-out"), stake: "hurt" };

/** Rim pads push the wheel nowhere near its slots; what is left is the clamp. */
function rimBrake(r: Reckoned): BoardRow {
  const j12 = joint(r, "J12");
  const fork = r.resolved.at.fork;
  const open = fork?.kind === "fork" ? fork.ports.end : undefined;
  return row(HEAD, {
    answer: say("asked.front-wheel-out.not-by-the-brake-rim-pads"),
    verdict: "no problem found",
    about: say("asked.brake-tab.rim-brake"),
    words: [
      j12.reason,
      open === "closed"
        ? say("asked.front-wheel-out.the-fork-ends-are-closed-round")
        : open === "open_slot"
          ? say("asked.front-wheel-out.the-fork-ends-are-open-slots")
          : say("asked.front-wheel-out.whether-the-fork-ends-are-open"),
      say("asked.front-wheel-out.reckoned-like-a-disc-s-pads"),
      say("asked.front-wheel-out.do-not-add-a-disc-to"),
    ],
    notChecked: [
      say("asked.front-wheel-out.the-clamp-s-own-grip-and"),
      say("asked.front-wheel-out.whether-the-pads-reach-the-rim"),
    ],
    joints: [j12, joint(r, "J24")],
  });
}

export const frontWheelOut: Question = (r) => {
  if (discAt(r.view, "front") === false) return rimBrake(r);
  const j12 = joint(r, "J12");
  const j24 = joint(r, "J24");
  const also = r.forks.flatMap((f) => {
    if (f.chosen) return [];
    const rules = f.answer.joints.flatMap((j) => j.rules).filter((x) => x.rule === "S4" || x.rule === "S5");
    const worst = rules.find((x) => x.level === "refuse") ?? rules[0];
    return worst === undefined ? [] : [{ verdict: worst.level, about: f.part.id } as const];
  });
  const fork = r.resolved.at.fork?.id;
  const refused = [...j12.rules, ...j24.rules].find((x) => x.level === "refuse");
  const verdict = refused !== undefined ? "refuse" : j12.verdict === "fits" ? "no problem found" : j12.verdict;
  return row(HEAD, {
    answer:
      refused !== undefined
        ? say("asked.front-wheel-out.no", { why: refused.why.replace(/\.$/, "") })
        : j12.verdict === "fits"
          ? say("asked.front-wheel-out.not-with-fork-its-end-is", { fork })
          : j12.reason,
    verdict,
    about: fork,
    also,
    figure: jointFigure(
      j12,
      Math.max(
        0,
        j12.numbers.findIndex((n) => n.unit === "N"),
      ),
    ),
    open: verdict !== "no problem found",
    next: j12.next,
    words: [j12.reason, say("asked.front-wheel-out.the-push-on-the-wheel-comes")],
    figures: j12.numbers.map((n) =>
      figure(n.name, n.value, n.unit === "deg" ? "°" : n.unit, n.unit === "N" ? 0 : 1, n.band),
    ),
    tables: [
      {
        title: say("asked.front-wheel-out.forks-side-by-side"),
        columns: [
          "Fork",
          say("asked.front-wheel-out.front-wheel-held"),
          say("asked.front-wheel-out.made-for-a-disc"),
          "Push-out",
        ],
        rows: r.forks.map((f) => {
          const held = f.answer.joints.find((j) => j.id === "J12");
          const disc = f.answer.joints.find((j) => j.id === "J24");
          const push = held?.numbers.find((n) => n.unit === "N");
          return [
            `${f.part.id}${f.chosen ? " (chosen)" : ""}`,
            held === undefined ? "not checked yet" : `${held.verdict}: ${held.reason}`,
            disc === undefined ? "not checked yet" : `${disc.verdict}: ${disc.reason}`,
            push === undefined ? say("asked.front-wheel-out.not-reckoned") : `${showNumber(push.value, 0)} N`,
          ];
        }),
      },
    ],
    notChecked: [say("asked.front-wheel-out.the-clamp-s-own-grip-and")],
    joints: [j12, j24],
  });
};
