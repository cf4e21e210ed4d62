/**
 * J35: does the ring bolt to this spider?
 * One bolt circle, and teeth enough for the chain to pass over the bolts: 130/38, 110/33 to 34, 104/30 to 32, 94/29, 74/24,
 * 64/22. Source: fit-bolt-circles.
 */

import { CRANK_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { partAt } from "../view.js";

const head = { id: "J35", title: "ring – spider", between: ["ring", "ring_inner", "crank"] } as const;

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
  attributes: [
    "crank.ports.bolt_circle",
    "crank.ports.bolt_circle_inner",
    "ring.ports.bolt_circle",
    "ring.ports.teeth",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const crank = partAt(view, "crank", "crank");
    if (crank === undefined) return notChosen(head, "crank");
    const ring = partAt(view, "ring", "ring");
    if (
      ring === undefined &&
      crank.ports.ring === undefined &&
      crank.ports.rings === undefined &&
      crank.ports.ring_chainlines !== undefined
    )
      return closeJoint(head, {
        settled: settle([]),
        words: { fits: say("fit-drive.j35-ring-on-spider.the-rings-are-riveted-to-the"), fails: "" },
        sources: ["fit-bolt-circles"],
      });
    if (ring === undefined && crank.ports.rings !== undefined)
      return closeJoint(head, {
        settled: settle([]),
        words: {
          fits: say("fit-drive.j35-ring-on-spider.the-rings-that-are-on-the", {
            rings: crank.ports.rings.join(" and "),
          }),
          fails: "",
        },
        sources: ["fit-bolt-circles"],
      });
    if (ring === undefined && crank.ports.ring === undefined) return notChosen(head, "ring");
    const own = ring === undefined;
    const spider = crank.ports.bolt_circle;
    const teeth = own ? crank.ports.ring : ring.ports.teeth;
    const circle = own ? spider : ring.ports.bolt_circle;
    const spiderAt = {
      what: say("fit-drive.j35-ring-on-spider.measure-the-spider-s-bolt-circle"),
      at: `bin.parts.${crank.id}.ports.bolt_circle`,
      tool: "calliper",
      how: say("fit-drive.j35-ring-on-spider.between-two-neighbouring-bolts-divided-by"),
    } as const;
    const row = BOLT_CIRCLES.find((r) => spider !== undefined && Math.abs(r.circle - spider) <= CIRCLE_WITHIN_MM);
    const checks: Check[] = [
      {
        name: say("fit-drive.j35-ring-on-spider.ring-s-bolt-circle-minus-the"),
        unit: "mm",
        value: minus(span(circle), span(spider)),
        limit: { low: -CIRCLE_WITHIN_MM, high: CIRCLE_WITHIN_MM, kind: "hard", words: "equal" },
        measure:
          spider === undefined || own
            ? spiderAt
            : {
                ...spiderAt,
                what: say("fit-drive.j35-ring-on-spider.measure-the-ring-s-bolt-circle"),
                at: `bin.parts.${ring.id}.ports.bolt_circle`,
              },
      },
    ];
    const cautions: Caution[] = [];
    if (row !== undefined) {
      checks.push({
        name: "teeth",
        unit: "count",
        value: span(teeth),
        limit: {
          low: row.least,
          kind: "hard",
          words: say("fit-drive.j35-ring-on-spider.is-the-smallest-on", { least: row.least, circle: row.circle }),
        },
        measure: {
          what: say("fit-drive.ring-on-crank.count-the-ring-s-teeth"),
          at: own ? `bin.parts.${crank.id}.ports.ring` : `bin.parts.${ring.id}.ports.teeth`,
          tool: "eye",
        },
      });
      if (teeth !== undefined && teeth >= row.least && teeth < row.usual) {
        cautions.push({
          code: "ring-at-smallest",
          message: say("fit-drive.j35-ring-on-spider.is-the-usual-smallest-on-look", {
            usual: row.usual,
            circle: row.circle,
          }),
        });
      }
    } else if (spider !== undefined) {
      cautions.push({
        code: "bolt-circle-not-listed",
        at: spiderAt.at,
        message: say("fit-drive.j35-ring-on-spider.a-bolt-circle-of-is-not", { spider: plain(spider) }),
      });
    }
    const inner = partAt(view, "ring_inner", "ring");
    if (inner !== undefined) checks.push(...innerRing(crank, inner));
    const settled = settle(checks);
    const small = settled.failed.some((check) => check.name === "teeth");
    return closeJoint(head, {
      settled,
      words: {
        fits: own
          ? say("fit-drive.j35-ring-on-spider.the-ring-that-is-on-the", { teeth: plain(teeth ?? 0) })
          : say("fit-drive.j35-ring-on-spider.ring-on-a-bolt-circle", {
              teeth: plain(teeth ?? 0),
              spider: plain(spider ?? 0),
              inner:
                inner === undefined
                  ? ""
                  : say("fit-drive.j35-ring-on-spider.on", {
                      teeth: plain(inner.ports.teeth ?? 0),
                      boltCircle: plain(inner.ports.bolt_circle ?? 0),
                    }),
            }),
        fails:
          settled.failed[0]?.name.startsWith("small ring") === true
            ? say("fit-drive.j35-ring-on-spider.the-small-ring-is-for-the", {
                boltCircle: plain(inner?.ports.bolt_circle ?? 0),
                boltCircleInner: plain(crank.ports.bolt_circle_inner ?? 0),
              })
            : small
              ? say("fit-drive.j35-ring-on-spider.a-ring-is-too-small-for", {
                  teeth: plain(teeth ?? 0),
                  spider: plain(spider ?? 0),
                })
              : say("fit-drive.j35-ring-on-spider.ring-for-spider-for", {
                  circle: plain(circle ?? 0),
                  spider: plain(spider ?? 0),
                }),
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

/** The small ring has a bolt circle of its own on the spider. */
function innerRing(crank: PartOfKind<"crank">, ring: PartOfKind<"ring">): readonly Check[] {
  const spider = crank.ports.bolt_circle_inner;
  const row = BOLT_CIRCLES.find((r) => spider !== undefined && Math.abs(r.circle - spider) <= CIRCLE_WITHIN_MM);
  const measure = {
    what:
      spider === undefined
        ? say("fit-drive.j35-ring-on-spider.measure-the-spider-s-small-bolt")
        : say("fit-drive.j35-ring-on-spider.measure-the-small-ring-s-bolt"),
    at:
      spider === undefined ? `bin.parts.${crank.id}.ports.bolt_circle_inner` : `bin.parts.${ring.id}.ports.bolt_circle`,
    tool: "calliper",
  } as const;
  return [
    {
      name: say("fit-drive.j35-ring-on-spider.small-ring-s-bolt-circle-minus"),
      unit: "mm",
      value: minus(span(ring.ports.bolt_circle), span(spider)),
      limit: { low: -CIRCLE_WITHIN_MM, high: CIRCLE_WITHIN_MM, kind: "hard", words: "equal" },
      measure,
    },
    ...(row === undefined
      ? []
      : [
          {
            name: say("fit-drive.j35-ring-on-spider.small-ring-s-teeth"),
            unit: "count" as const,
            value: span(ring.ports.teeth),
            limit: {
              low: row.least,
              kind: "hard" as const,
              words: say("fit-drive.j35-ring-on-spider.is-the-smallest-on", { least: row.least, circle: row.circle }),
            },
            measure: {
              what: say("fit-drive.j35-ring-on-spider.count-the-small-ring-s-teeth"),
              at: `bin.parts.${ring.id}.ports.teeth`,
              tool: "eye" as const,
            },
          },
        ]),
  ];
}
