/** Question 11: which of my odd levers, calipers and derailleurs work together? */
import { type Head, heaviest, joint, type Question, row } from "../question.js";

const HEAD: Head = { n: 11, question: "Which of my odd levers, calipers and shifters work together?", stake: "money" };

export const oddPartsWork: Question = (r) => {
  const joints = ["J7", "J22", "J28", "J29"].map((id) => joint(r, id));
  const hydraulic = r.resolved.at.lever?.kind === "lever_pair" && r.resolved.at.lever.ports.acts === "hydraulic";
  const key = joint(r, hydraulic ? "J29" : "J28");
  const worst = key.verdict === "not checked yet" ? key : heaviest(joints);
  const refused = r.others.flatMap((o) =>
    o.answer.joints.flatMap((j) => j.rules.filter((x) => x.rule === "S9" || x.rule === "S10").map((x) => ({ o, x }))),
  );
  const barred = [...new Map(refused.map((x) => [x.o.part.id, x])).values()];
  return row(HEAD, {
    answer: worst?.verdict === "fits" ? key.reason : (worst?.reason ?? "Not checked yet."),
    verdict: worst?.verdict ?? "not checked yet",
    about: worst?.verdict === "fits" ? undefined : worst?.title,
    also: barred.map(({ o }) => ({ verdict: "refuse" as const, about: o.part.id })),
    next: worst?.next,
    words: barred.map(({ o, x }) => `${o.part.id}: refused with this lever. ${x.why}`),
    notChecked: ["Derailleur indexing is not in this version yet."],
    joints,
  });
};
