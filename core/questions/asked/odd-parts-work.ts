/** Question 11: which of my odd levers, calipers and derailleurs work together? */

import { discAt } from "../../fit/front-and-wheels/brakes-wanted.js";
import { say } from "../../texts/say.js";
import type { WorkingTable } from "../board.js";
import { type Head, heaviest, joint, type Question, type Reckoned, row } from "../question.js";

const HEAD: Head = { n: 11, question: say("asked.odd-parts-work.which-of-my-odd-levers-calipers"), stake: "money" };

export const oddPartsWork: Question = (r) => {
  const joints = ["J7", "J22", "J28", "J29"].map((id) => joint(r, id));
  const hydraulic = r.resolved.at.lever?.kind === "lever_pair" && r.resolved.at.lever.ports.acts === "hydraulic";
  const key = joint(r, hydraulic ? "J29" : "J28");
  const worst = key.verdict === "not checked yet" ? key : heaviest(joints);
  const refused = r.others.flatMap((o) =>
    o.answer.joints.flatMap((j) => j.rules.filter((x) => x.rule === "S9" || x.rule === "S10").map((x) => ({ o, x }))),
  );
  const barred = [...new Map(refused.map((x) => [x.o.part.id, x])).values()];
  const rim = discAt(r.view, "front") === false || discAt(r.view, "rear") === false;
  const derailleur = r.resolved.at.derailleur_rear !== undefined || r.resolved.at.sprocket?.kind === "cassette";
  return row(HEAD, {
    answer:
      worst?.verdict === "fits"
        ? rim || derailleur
          ? say("asked.odd-parts-work.levers-and-brakes", { reason: lower(key.reason) })
          : key.reason
        : (worst?.reason ?? say("asked.all-clear.not-checked-yet")),
    verdict: worst?.verdict ?? "not checked yet",
    about:
      worst?.verdict === "fits"
        ? rim || derailleur
          ? say("asked.odd-parts-work.levers-and-brakes-2")
          : undefined
        : worst?.title,
    also: barred.map(({ o }) => ({ verdict: "refuse" as const, about: o.part.id })),
    next: worst?.next,
    words: barred.map(({ o, x }) =>
      say("asked.odd-parts-work.refused-with-this", {
        part: o.part.id,
        place: o.place === "lever" ? "caliper" : "lever",
        why: x.why,
      }),
    ),
    tables: others(r),
    notChecked: [
      say("asked.odd-parts-work.derailleur-indexing-is-not-in-this"),
      ...(derailleur ? [say("asked.odd-parts-work.shifter-derailleur-and-cassette-together-j39")] : []),
      ...(rim ? [say("asked.odd-parts-work.whether-the-rim-brakes-reach-the")] : []),
    ],
    joints,
  });
};

const lower = (words: string) => words.replace(/^[A-Z](?=[a-z])/, (c) => c.toLowerCase());

const BRAKE_PLACES = ["lever", "caliper", "caliper_front", "caliper_rear"];

/** Levers and calipers of the comparison, each with the rest as it is chosen. */
function others(r: Reckoned): readonly WorkingTable[] {
  const rows = r.others
    .filter((o) => BRAKE_PLACES.includes(o.place))
    .map((o) => {
      const judged = o.answer.joints.filter((j) => ["J7", "J22", "J28", "J29"].includes(j.id));
      const worst = heaviest(judged);
      return [
        `${o.part.id} ${o.part.kind.replaceAll("_", " ")}`,
        worst?.verdict ?? "not checked yet",
        worst?.reason ?? "",
      ];
    });
  return rows.length === 0
    ? []
    : [
        {
          title: say("asked.odd-parts-work.others-in-their-place"),
          columns: ["Part", say("asked.odd-parts-work.with-the-rest-as-chosen"), "Why"],
          rows,
        },
      ];
}
