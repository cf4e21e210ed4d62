/** Question 20: what must I check before it goes out, and what do I write down? */
import { capital } from "../../quantity/index.js";
import { standingRefusals } from "../../safety/index.js";
import { figure, type Head, type Question, row, settleFirst } from "../question.js";

const HEAD: Head = {
  n: 20,
  question: "What must I check before it goes out, and what do I write down?",
  stake: "hurt",
};

export const beforeItGoesOut: Question = (r) => {
  const operations = r.resolved.build.operations.filter((o) => o.gate === true);
  const evidence = r.resolved.build.evidence ?? [];
  const rules = r.rules.filter((f) => f.level === "gate" && f.onChosen);
  const gates = [
    ...operations.map((o) => ({ id: o.id, what: o.what, shown: evidence.find((e) => e.gate === o.id) })),
    ...rules.map((f) => ({ id: f.rule, what: f.here, shown: f.evidence })),
  ];
  const refused = standingRefusals(r.rules)[0];
  const signed = gates.filter((g) => g.shown !== undefined).length;
  const shut = gates.length - signed;
  return row(HEAD, {
    answer:
      gates.length === 0
        ? "No gate is entered: add the dry fit and the last check to the operations."
        : shut === 0
          ? "Every gate entered is signed."
          : `${shut} ${shut === 1 ? "gate is" : "gates are"} shut. None opens by itself.`,
    verdict: shut > 0 || gates.length === 0 ? "gate" : "no problem found",
    figure: figure("signed", signed, "", 0, undefined, { against: `of ${gates.length}` }),
    next:
      refused !== undefined
        ? settleFirst(refused)
        : shut > 0
          ? {
              kind: "do",
              what: `${capital(gates.find((g) => g.shown === undefined)?.what ?? "Dry fit")}, then sign it`,
              at: "build.evidence",
            }
          : undefined,
    words: [
      "A gate opens with a name, a day and what was seen, typed by the person who saw it. A second person signs the last check.",
    ],
    tables: [
      {
        title: "Gates",
        columns: ["Gate", "What", "Signed by", "On", "What was seen"],
        rows: gates.map((g) => [g.id, g.what, g.shown?.by ?? "", g.shown?.on ?? "", g.shown?.what ?? ""]),
      },
    ],
    notChecked: ["The list of torques and the hand-over sheet: not in this version yet."],
  });
};
