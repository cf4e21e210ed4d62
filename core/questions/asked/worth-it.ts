/** Question 19: is it worth it, and when do I stop? */

import type { NextStep } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { figure, type Head, type Question, row, showNumber } from "../question.js";

const HEAD: Head = { n: 19, question: say("asked.worth-it.is-it-worth-it-and-when"), stake: "money" };

/** Which sum has to be asked for first? Without any, it is the budget itself that is missing. */
function priceStep(id: string | undefined): NextStep {
  if (id === undefined)
    return {
      kind: "measure",
      what: say("asked.worth-it.enter-how-much-money-it-may"),
      at: "intent.budget",
      tool: say("asked.worth-it.pen-and-paper"),
    };
  return id === "donor"
    ? {
        kind: "measure",
        what: say("asked.worth-it.enter-what-the-old-bicycle-cost"),
        at: "donor.price",
        tool: say("asked.worth-it.advert-or-receipt"),
      }
    : {
        kind: "measure",
        what: say("asked.worth-it.ask-the-price-of", { id }),
        at: `bin.parts.${id}.cost`,
        tool: say("asked.what-to-buy.advert-or-shop"),
      };
}

export const worthIt: Question = (r) => {
  const { money, alternatives, hours, mass } = r.ledger;
  if (money.kind === "refused")
    return row(HEAD, {
      answer: say("asked.worth-it.the-sum-cannot-be-made-as"),
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
        ? say("asked.worth-it.over-the-budget-by", {
            overBy: showNumber(m.overBy, m.overBy % 1 === 0 ? 0 : 2),
            way:
              way === undefined
                ? ""
                : say("asked.worth-it.a-way-that-leaves", { toSpare: showNumber(way.toSpare ?? 0, 0), way: way.name }),
          })
        : verdict === "within"
          ? say("asked.worth-it.within-the-budget-left", {
              toSpare: showNumber(m.toSpare, m.toSpare % 1 === 0 ? 0 : 2),
            })
          : m.budget === undefined
            ? say("asked.worth-it.in-all-no-budget-is-entered", { total: showNumber(m.total, 0) })
            : say("asked.worth-it.not-known-yet-the-price-of", {
                priceNotKnown: m.priceNotKnown
                  .map((id) => (id === "donor" ? say("asked.worth-it.the-old-bicycle") : id))
                  .join(", "),
              }),
    verdict,
    about: verdict === "over" ? say("asked.worth-it.the-budget") : undefined,
    figure:
      m.total === 0 && m.priceNotKnown.length > 0
        ? undefined
        : figure(
            "money",
            m.total,
            "",
            0,
            undefined,
            m.budget === undefined
              ? {}
              : {
                  against: say("asked.worth-it.budget", { budget: showNumber(m.budget, 0) }),
                  limit: { high: m.budget, words: say("asked.worth-it.budget", { budget: showNumber(m.budget, 0) }) },
                },
          ),
    next:
      verdict === "over"
        ? {
            kind: "decide",
            what:
              way === undefined
                ? say("asked.worth-it.find-to-save-or-raise-the", { overBy: showNumber(m.overBy, 0) })
                : say("asked.worth-it.take-or-raise-the-budget-by", { way: way.name, overBy: showNumber(m.overBy, 0) }),
          }
        : verdict === "measure first"
          ? priceStep(m.priceNotKnown[0])
          : m.next[0],
    words: [
      say("asked.worth-it.spent-to-spend-what-is-spent", {
        spent: showNumber(m.spent, 0),
        toSpend: showNumber(m.toSpend, 0),
      }),
      ...(m.work === undefined
        ? []
        : [say("asked.worth-it.your-own-work-at-the-shop", { work: showNumber(m.work, 0) })]),
      ...(m.dearerThanReadyBicycleBy === undefined
        ? [say("asked.worth-it.what-a-used-bicycle-of-that")]
        : [
            say("asked.worth-it.against-a-used-bicycle-of-that", {
              dearerThanReadyBicycleBy:
                m.dearerThanReadyBicycleBy > 0
                  ? say("asked.worth-it.dearer", {
                      dearerThanReadyBicycleBy: showNumber(m.dearerThanReadyBicycleBy, 0),
                    })
                  : say("asked.worth-it.cheaper", {
                      dearerThanReadyBicycleBy: showNumber(-m.dearerThanReadyBicycleBy, 0),
                    }),
            }),
          ]),
      ...(hours.kind === "answered"
        ? [
            say("asked.worth-it.work-h", {
              handsOnH: showNumber(hours.value.handsOnH, 1),
              hoursMax:
                hours.value.hoursMax === undefined
                  ? ""
                  : say("asked.worth-it.of-h", {
                      hoursMax: showNumber(hours.value.hoursMax, 0),
                      verdict: hours.value.verdict,
                    }),
            }),
          ]
        : []),
      ...(mass.kind === "answered" && mass.value.massG > 0
        ? [
            say("asked.worth-it.mass-kg-without-what-is-not", {
              massG: showNumber(mass.value.massG / 1000, 2),
              halfWidthG: showNumber(mass.value.halfWidthG / 1000, 2),
              massNotKnownCount:
                mass.value.massNotKnown.length > 0
                  ? say("asked.worth-it.not-weighed", { massNotKnown: mass.value.massNotKnown.join(", ") })
                  : "",
            }),
          ]
        : []),
    ],
    tables: [
      {
        title: say("asked.worth-it.ways-tried"),
        columns: ["Change", "Sum", say("asked.worth-it.against-the-budget")],
        rows: alternatives.map((a) => [
          a.name,
          a.total === undefined ? say("asked.what-to-buy.price-not-known") : showNumber(a.total, 0),
          a.toSpare === undefined
            ? ""
            : a.toSpare >= 0
              ? say("asked.worth-it.to-spare", { toSpare: showNumber(a.toSpare, 0) })
              : `${showNumber(-a.toSpare, 0)} over`,
        ]),
      },
      {
        title: say("asked.worth-it.where-it-goes"),
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
