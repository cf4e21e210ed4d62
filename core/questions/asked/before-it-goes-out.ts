/** Question 20: what must I check before it goes out, and what do I write down? */

import { capital } from "../../quantity/index.js";
import { standingRefusals } from "../../safety/index.js";
import { say } from "../../texts/say.js";
import { carriesChild } from "../../workshop/index.js";
import type { Working } from "../board.js";
import { loadOfBuild } from "../load-of-build.js";
import { figure, type Head, type Question, type Reckoned, row, settleFirst, showNumber } from "../question.js";

const HEAD: Head = {
  n: 20,
  question: say("asked.before-it-goes-out.what-must-i-check-before-it"),
  stake: "hurt",
};

/** With a child on board the last check has more to look at. */
function withChild(r: Reckoned): Pick<Working, "words" | "notChecked" | "tables"> {
  if (!carriesChild(r.resolved.intent, r.resolved.at)) return { words: [], notChecked: [], tables: [] };
  const load = loadOfBuild(r);
  const flag = r.rules.find((f) => f.rule === "S13" && f.onChosen && f.level === "flag");
  return {
    tables:
      load === undefined || load.rows.length === 0
        ? []
        : [
            {
              title: say("mechanics.brake-end-sheets.weight-on-the-front-wheel"),
              columns: [
                "Load",
                say("asked.before-it-goes-out.in-all"),
                say("asked.before-it-goes-out.front-wheel-carries"),
                say("asked.before-it-goes-out.front-lifts-on-a-slope-of"),
              ],
              rows: load.rows.map(({ what, share }) => [
                what,
                `${showNumber(share.totalKg, 0)} kg`,
                `${showNumber(100 * share.frontShare, 0)} %`,
                say("asked.before-it-goes-out.or-a-hard-pull", {
                  liftsAtGrade: showNumber(100 * share.liftsAtGrade, 0),
                }),
              ]),
            },
          ],
    words: [
      say("asked.before-it-goes-out.with-a-child-fix-the-seat"),
      ...(flag === undefined ? [] : [`${flag.here} (${flag.rule})`]),
    ],
    notChecked: [
      load === undefined || load.rows.length === 0
        ? say("asked.before-it-goes-out.how-much-weight-is-left-on")
        : say("asked.before-it-goes-out.how-it-steers-with-so-much"),
      ...(load === undefined || load.missing.length === 0
        ? []
        : [say("asked.before-it-goes-out.not-entered", { missing: load.missing.join("; ") })]),
    ],
  };
}

export const beforeItGoesOut: Question = (r) => {
  const child = withChild(r);
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
        ? say("asked.before-it-goes-out.no-gate-is-entered-add-the")
        : shut === 0
          ? say("asked.before-it-goes-out.every-gate-entered-is-signed")
          : say("asked.before-it-goes-out.shut-none-opens-by-itself", {
              shut,
              gatesAre:
                shut === 1 ? say("asked.before-it-goes-out.gate-is") : say("asked.before-it-goes-out.gates-are"),
            }),
    verdict: shut > 0 || gates.length === 0 ? "gate" : "no problem found",
    figure: figure("signed", signed, "", 0, undefined, {
      against: say("asked.before-it-goes-out.of", { gatesCount: gates.length }),
    }),
    next:
      refused !== undefined
        ? settleFirst(refused)
        : shut > 0
          ? {
              kind: "do",
              what: say("asked.before-it-goes-out.then-sign-it", {
                what: capital(
                  gates.find((g) => g.shown === undefined)?.what ?? say("asked.before-it-goes-out.dry-fit"),
                ),
              }),
              at: "build.evidence",
            }
          : undefined,
    words: [say("asked.before-it-goes-out.a-gate-opens-with-a-name"), ...child.words],
    tables: [
      ...child.tables,
      {
        title: "Gates",
        columns: [
          "Gate",
          "What",
          say("asked.before-it-goes-out.signed-by"),
          "On",
          say("asked.before-it-goes-out.what-was-seen"),
        ],
        rows: gates.map((g) => [g.id, g.what, g.shown?.by ?? "", g.shown?.on ?? "", g.shown?.what ?? ""]),
      },
    ],
    notChecked: [say("asked.before-it-goes-out.the-list-of-torques-and-the"), ...child.notChecked],
  });
};
