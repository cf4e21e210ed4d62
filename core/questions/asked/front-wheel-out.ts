/** Question 1: can the front wheel come out under this brake? */
import { figure, type Head, joint, jointFigure, type Question, row, showNumber } from "../question.js";

const HEAD: Head = { n: 1, question: "Can the front wheel come out under this brake?", stake: "hurt" };

export const frontWheelOut: Question = (r) => {
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
        ? `No: ${refused.why.replace(/\.$/, "")}.`
        : j12.verdict === "fits"
          ? `Not with fork ${fork}: its end is closed.`
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
    words: [
      j12.reason,
      "The push on the wheel comes from the brake force at the tyre, the force of the pads on the rotor and the wheel's load, at the deceleration where the rear wheel begins to lift. A closed end holds the axle whatever the clamp does.",
    ],
    figures: j12.numbers.map((n) =>
      figure(n.name, n.value, n.unit === "deg" ? "°" : n.unit, n.unit === "N" ? 0 : 1, n.band),
    ),
    tables: [
      {
        title: "Forks side by side",
        columns: ["Fork", "Front wheel held", "Made for a disc", "Push-out"],
        rows: r.forks.map((f) => {
          const held = f.answer.joints.find((j) => j.id === "J12");
          const disc = f.answer.joints.find((j) => j.id === "J24");
          const push = held?.numbers.find((n) => n.unit === "N");
          return [
            `${f.part.id}${f.chosen ? " (chosen)" : ""}`,
            held === undefined ? "not checked yet" : `${held.verdict}: ${held.reason}`,
            disc === undefined ? "not checked yet" : `${disc.verdict}: ${disc.reason}`,
            push === undefined ? "not reckoned" : `${showNumber(push.value, 0)} N`,
          ];
        }),
      },
    ],
    notChecked: ["The clamp's own grip and the state of the axle threads: look and feel before every ride."],
    joints: [j12, j24],
  });
};
