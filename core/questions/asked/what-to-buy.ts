/** Question 14: what do I buy, exactly, and by when? */

import { say } from "../../texts/say.js";
import { portWords } from "../port-words.js";
import { figure, type Head, type Question, row, showNumber } from "../question.js";
import { noCable } from "./no-cable.js";

const HEAD: Head = { n: 14, question: say("asked.what-to-buy.what-do-i-buy-exactly-and"), stake: "money" };

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
  const sum = buy.reduce((s, l) => s + (l.cost ?? 0), 0);
  if (r.ledger.lines.length === 0)
    return row(HEAD, {
      answer: say("asked.what-to-buy.no-part-is-chosen-yet-so"),
      verdict: "not checked yet",
      next: { kind: "decide", what: say("asked.what-to-buy.choose-the-first-part"), at: "build.chosen.fork" },
      notChecked: [say("asked.what-to-buy.what-the-old-bicycle-itself-needs")],
    });
  return row(HEAD, {
    answer: say("asked.what-to-buy.to-buy", {
      buyCount: buy.length,
      buyCount2: buy.length === 1 ? "line" : "lines",
      ownedCount: owned.length > 0 ? say("asked.what-to-buy.on-hand", { ownedCount: owned.length }) : "",
      first:
        first === undefined ? "" : say("asked.what-to-buy.the-first-order-goes-out-by", { first: Math.floor(first) }),
    }),
    verdict: unsettled.length > 0 || unpriced.length > 0 ? "measure first" : "within",
    about: unsettled.length > 0 ? `${unsettled.length} ${unsettled.length === 1 ? "joint" : "joints"}` : undefined,
    // A sum of which no price is known says nothing; one that is not whole says what it leaves out.
    figure:
      unpriced.length > 0 && unpriced.length === buy.length
        ? undefined
        : figure(
            say("asked.what-to-buy.still-to-spend"),
            sum,
            "",
            0,
            undefined,
            unpriced.length === 0
              ? {}
              : {
                  against: say("asked.what-to-buy.without-whose-price-is-not-known", {
                    unpricedCount: unpriced.length,
                  }),
                },
          ),
    next:
      unsettled[0]?.next ??
      (unpriced[0] === undefined
        ? undefined
        : {
            kind: "measure",
            what: say("asked.what-to-buy.ask-the-price-of", { part: unpriced[0].part.id }),
            at: `bin.parts.${unpriced[0].part.id}.cost`,
            tool: say("asked.what-to-buy.advert-or-shop"),
          }),
    words: [
      ...noCable(r),
      say("asked.what-to-buy.buy-by-these-numbers-not-by"),
      ...(unsettled.length === 0
        ? []
        : [
            say("asked.what-to-buy.not-settled-yet", {
              unsettled: unsettled.map((j) => `${j.id} ${j.title}`).join("; "),
            }),
          ]),
    ],
    tables: [
      {
        title: say("asked.what-to-buy.buy-list"),
        columns: [
          "Part",
          say("asked.what-to-buy.how-many"),
          say("asked.what-to-buy.by-its-numbers"),
          "Sum",
          say("asked.what-to-buy.order-by"),
        ],
        rows: buy.map((l) => {
          const order = plan?.orders.find((o) => o.part === l.part.id);
          return [
            `${l.part.id} ${l.part.kind.replaceAll("_", " ")}`,
            `${l.qty}`,
            portWords(l.part),
            l.cost === undefined
              ? say("asked.what-to-buy.price-not-known")
              : showNumber(l.cost, l.cost % 1 === 0 ? 0 : 2),
            order === undefined ? "" : say("asked.what-to-buy.day", { orderByDay: Math.floor(order.orderByDay) }),
          ];
        }),
      },
      {
        title: say("asked.what-to-buy.on-hand-2"),
        columns: ["Part", say("asked.what-to-buy.how-many"), say("asked.what-to-buy.by-its-numbers")],
        rows: owned.map((l) => [`${l.part.id} ${l.part.kind.replaceAll("_", " ")}`, `${l.qty}`, portWords(l.part)]),
      },
    ],
    notChecked: [say("asked.what-to-buy.grease-cables-ends-pads-tape-and")],
  });
};
