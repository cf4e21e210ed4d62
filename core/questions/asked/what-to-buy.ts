/** Question 14: what do I buy, exactly, and by when? */

import { portWords } from "../port-words.js";
import { figure, type Head, type Question, row, showNumber } from "../question.js";

const HEAD: Head = { n: 14, question: "What do I buy, exactly, and by when?", stake: "money" };

export const whatToBuy: Question = (r) => {
  const buy = r.ledger.lines.filter((l) => l.cost === undefined || l.cost > 0);
  const owned = r.ledger.lines.filter((l) => l.cost === 0);
  const unpriced = buy.filter((l) => l.cost === undefined);
  const unsettled = r.joints.joints.filter((j) => j.verdict === "measure first" || j.verdict === "will not fit");
  const plan = r.plan.plan.kind === "answered" ? r.plan.plan.value : undefined;
  const first = plan?.orders.reduce<number | undefined>(
    (least, o) => (least === undefined || o.orderByDay < least ? o.orderByDay : least),
    undefined,
  );
  return row(HEAD, {
    answer: `${buy.length} lines to buy${owned.length > 0 ? `, ${owned.length} on hand` : ""}${first === undefined ? "" : `; the first order goes out by day ${Math.floor(first)}`}.`,
    verdict: unsettled.length > 0 || unpriced.length > 0 ? "measure first" : "within",
    about: unsettled.length > 0 ? `${unsettled.length} ${unsettled.length === 1 ? "joint" : "joints"}` : undefined,
    figure: figure(
      "still to spend",
      buy.reduce((s, l) => s + (l.cost ?? 0), 0),
      "",
      0,
    ),
    next:
      unsettled[0]?.next ??
      (unpriced[0] === undefined
        ? undefined
        : {
            kind: "measure",
            what: `Ask the price of ${unpriced[0].part.id}`,
            at: `bin.parts.${unpriced[0].part.id}.cost`,
          }),
    words: [
      "Buy by these numbers, not by a name. A part whose joint still says measure first is not ordered before that is settled.",
      ...(unsettled.length === 0 ? [] : [`Not settled yet: ${unsettled.map((j) => `${j.id} ${j.title}`).join("; ")}.`]),
    ],
    tables: [
      {
        title: "Buy list",
        columns: ["Part", "How many", "By its numbers", "Sum", "Order by"],
        rows: buy.map((l) => {
          const order = plan?.orders.find((o) => o.part === l.part.id);
          return [
            `${l.part.id} ${l.part.kind.replaceAll("_", " ")}`,
            `${l.qty}`,
            portWords(l.part),
            l.cost === undefined ? "price not known" : showNumber(l.cost, l.cost % 1 === 0 ? 0 : 2),
            order === undefined ? "" : `day ${Math.floor(order.orderByDay)}`,
          ];
        }),
      },
      {
        title: "On hand",
        columns: ["Part", "How many", "By its numbers"],
        rows: owned.map((l) => [`${l.part.id} ${l.part.kind.replaceAll("_", " ")}`, `${l.qty}`, portWords(l.part)]),
      },
    ],
    notChecked: ["Grease, cables' ends, pads, tape and other wear parts: not listed unless you enter them."],
  });
};
