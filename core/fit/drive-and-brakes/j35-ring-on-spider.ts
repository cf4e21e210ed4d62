/**
 * J35: does the ring bolt to this spider?
 * One bolt circle, and teeth enough for the chain to pass over the bolts: 130/38, 110/33 to 34, 104/30 to 32, 94/29, 74/24,
 * 64/22. Source: fit-bolt-circles.
 */
import { CRANK_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import type { Caution } from "../../quantity/index.js";
import { closeJoint } from "../close-joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { partAt } from "../view.js";

const head = { id: "J35", title: "ring – spider", between: ["ring", "crank"] } as const;

/** Bolt circle with the smallest ring that can be had for it and the smallest usual one. */
export const BOLT_CIRCLES = [
  { circle: 130, least: 38, usual: 38 },
  { circle: 110, least: 33, usual: 34 },
  { circle: 104, least: 30, usual: 32 },
  { circle: 94, least: 29, usual: 29 },
  { circle: 74, least: 24, usual: 24 },
  { circle: 64, least: 22, usual: 22 },
] as const;
const CIRCLE_WITHIN_MM = 0.3;

export const j35RingOnSpider: JointDefinition = {
  ...head,
  attributes: ["crank.ports.bolt_circle", "ring.ports.bolt_circle", "ring.ports.teeth"],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const crank = partAt(view, "crank", "crank");
    if (crank === undefined) return notChosen(head, "crank");
    const ring = partAt(view, "ring", "ring");
    if (ring === undefined && crank.ports.ring === undefined) return notChosen(head, "ring");
    const own = ring === undefined;
    const spider = crank.ports.bolt_circle;
    const teeth = own ? crank.ports.ring : ring.ports.teeth;
    const circle = own ? spider : ring.ports.bolt_circle;
    const spiderAt = {
      what: "Measure the spider's bolt circle",
      at: `bin.parts.${crank.id}.ports.bolt_circle`,
      tool: "calliper",
      how: "between two neighbouring bolts, divided by sin(180/arms)",
    } as const;
    const row = BOLT_CIRCLES.find((r) => spider !== undefined && Math.abs(r.circle - spider) <= CIRCLE_WITHIN_MM);
    const checks: Check[] = [
      {
        name: "ring's bolt circle minus the spider's",
        unit: "mm",
        value: minus(span(circle), span(spider)),
        limit: { low: -CIRCLE_WITHIN_MM, high: CIRCLE_WITHIN_MM, kind: "hard", words: "equal" },
        measure:
          spider === undefined || own
            ? spiderAt
            : { ...spiderAt, what: "Measure the ring's bolt circle", at: `bin.parts.${ring.id}.ports.bolt_circle` },
      },
    ];
    const cautions: Caution[] = [];
    if (row !== undefined) {
      checks.push({
        name: "teeth",
        unit: "count",
        value: span(teeth),
        limit: { low: row.least, kind: "hard", words: `${row.least} is the smallest on ${row.circle}` },
        measure: {
          what: "Count the ring's teeth",
          at: own ? `bin.parts.${crank.id}.ports.ring` : `bin.parts.${ring.id}.ports.teeth`,
          tool: "eye",
        },
      });
      if (teeth !== undefined && teeth >= row.least && teeth < row.usual) {
        cautions.push({
          code: "ring-at-smallest",
          message: `${row.usual} is the usual smallest on ${row.circle}: look whether the chain clears the bolts.`,
        });
      }
    } else if (spider !== undefined) {
      cautions.push({
        code: "bolt-circle-not-listed",
        at: spiderAt.at,
        message: `A bolt circle of ${plain(spider)} is not in the list: look whether the chain clears the bolts.`,
      });
    }
    const settled = settle(checks);
    const small = settled.failed.some((check) => check.name === "teeth");
    return closeJoint(head, {
      settled,
      words: {
        fits: own
          ? `The ${plain(teeth ?? 0)} ring that is on the crank stays.`
          : `${plain(teeth ?? 0)} ring on a ${plain(spider ?? 0)} bolt circle.`,
        fails: small
          ? `A ${plain(teeth ?? 0)} ring is too small for a ${plain(spider ?? 0)} bolt circle.`
          : `Ring for ${plain(circle ?? 0)}, spider for ${plain(spider ?? 0)}.`,
      },
      remedies:
        settled.outcome === "fails"
          ? [
              offerRemedy(CRANK_REMEDIES.ring_for_spider, view, {
                values: { circle: spider ?? 0, least: row?.least ?? "enough" },
              }),
              ...(small
                ? []
                : [offerRemedy(CRANK_REMEDIES.other_spider, view, { values: { ring_circle: circle ?? 0 } })]),
            ]
          : [],
      sources: ["fit-bolt-circles"],
      cautions,
    });
  },
};
