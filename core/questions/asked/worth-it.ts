/** Question 19: is it worth it, and when do I stop? */
import { figure, type Head, type Question, row, showNumber } from "../question.js";

const HEAD: Head = { n: 19, question: "Is it worth it, and when do I stop?", stake: "money" };

export const worthIt: Question = (r) => {
  const { money, alternatives, hours, mass } = r.ledger;
  if (money.kind === "refused")
    return row(HEAD, {
      answer: "The sum cannot be made as entered.",
      verdict: "measure first",
      next: { kind: "measure", what: money.refusals[0]?.message ?? "Prices" },
      words: money.refusals.map((x) => x.message),
    });
  const m = money.value;
  const way = alternatives
    .filter((a) => a.toSpare !== undefined && a.toSpare >= 0)
    .sort((a, b) => (b.total ?? 0) - (a.total ?? 0))[0];
  const verdict = m.verdict ?? "measure first";
  return row(HEAD, {
    answer:
      verdict === "over"
        ? `Over the budget by ${showNumber(m.overBy, m.overBy % 1 === 0 ? 0 : 2)}.${way === undefined ? "" : ` A way that leaves ${showNumber(way.toSpare ?? 0, 0)}: ${way.name}.`}`
        : verdict === "within"
          ? `Within the budget: ${showNumber(m.toSpare, m.toSpare % 1 === 0 ? 0 : 2)} left.`
          : m.budget === undefined
            ? `${showNumber(m.total, 0)} in all; no budget is entered.`
            : `Not known yet: the price of ${m.priceNotKnown.join(", ")}.`,
    verdict,
    about: verdict === "over" ? "the budget" : undefined,
    figure: figure(
      "money",
      m.total,
      "",
      0,
      undefined,
      m.budget === undefined
        ? {}
        : {
            against: `budget ${showNumber(m.budget, 0)}`,
            limit: { high: m.budget, words: `budget ${showNumber(m.budget, 0)}` },
          },
    ),
    next:
      verdict === "over"
        ? {
            kind: "decide",
            what:
              way === undefined
                ? `Find ${showNumber(m.overBy, 0)} to save, or raise the budget`
                : `Take ${way.name}; or raise the budget by ${showNumber(m.overBy, 0)}`,
          }
        : m.next[0],
    words: [
      `Spent ${showNumber(m.spent, 0)}, to spend ${showNumber(m.toSpend, 0)}. What is spent is gone either way; only what is still to spend can be decided.`,
      ...(m.work === undefined
        ? []
        : [`Your own work at the shop's rate would be ${showNumber(m.work, 0)}; it is not in the sum.`]),
      ...(m.dearerThanReadyBicycleBy === undefined
        ? [
            "What a used bicycle of that kind costs is not entered (same_bike_used in the price list); it would stand here beside the sum.",
          ]
        : [
            `Against a used bicycle of that kind: ${m.dearerThanReadyBicycleBy > 0 ? `${showNumber(m.dearerThanReadyBicycleBy, 0)} dearer` : `${showNumber(-m.dearerThanReadyBicycleBy, 0)} cheaper`}.`,
          ]),
      ...(hours.kind === "answered"
        ? [
            `Work: ${showNumber(hours.value.handsOnH, 1)} h${hours.value.hoursMax === undefined ? "" : ` of ${showNumber(hours.value.hoursMax, 0)} h, ${hours.value.verdict}`}.`,
          ]
        : []),
      ...(mass.kind === "answered"
        ? [
            `Mass: ${showNumber(mass.value.massG / 1000, 2)} kg ± ${showNumber(mass.value.halfWidthG / 1000, 2)}, without what is not entered${mass.value.massNotKnown.length > 0 ? ` (not weighed: ${mass.value.massNotKnown.join(", ")})` : ""}.`,
          ]
        : []),
    ],
    tables: [
      {
        title: "Ways tried",
        columns: ["Change", "Sum", "Against the budget"],
        rows: alternatives.map((a) => [
          a.name,
          a.total === undefined ? "price not known" : showNumber(a.total, 0),
          a.toSpare === undefined
            ? ""
            : a.toSpare >= 0
              ? `${showNumber(a.toSpare, 0)} to spare`
              : `${showNumber(-a.toSpare, 0)} over`,
        ]),
      },
      {
        title: "Where it goes",
        columns: ["Line", "Sum"],
        rows: Object.entries(m.byKind)
          .filter(([, v]) => v > 0)
          .map(([k, v]) => [k.replaceAll("_", " "), showNumber(v, 0)]),
      },
    ],
    sources: money.sources,
    cautions: money.cautions,
  });
};
