/**
 * J42: does a chain of whole links fit between ring and hub gear in vertical dropouts?
 * Slack of centre distance 0 to 0.8 (M26, `fixedCentres`); the chainstay must be known to 0.3. Ring over sprocket and the
 * smallest sprocket as the hub gear asks. Wear opens every such drive: a tensioner is planned. A hub gear or one sprocket
 * in horizontal slots is tightened by the axle. Sources: iso-606, drive-fixed-centres.
 */

import { type FixedCentresPair, fixedCentres } from "../../drive/index.js";
import type { Caution, NextStep } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { type Check, rounded, settle } from "../settle.js";
import { minus, span, UNKNOWN } from "../span.js";
import { partAt } from "../view.js";
import { chainNumbers } from "./chain-numbers.js";
import { chainRemedies, SLACK_LEAST_MM, SLACK_MOST_MM } from "./chain-remedies.js";
import { CHAINSTAY_NEEDED_MM, chainstayLength } from "./chainstay-length.js";
import { ringHere, sprocketHere } from "./ring-on-crank.js";

const head = {
  id: "J42",
  title: say("fit.joint-titles.hub-gear-vertical-dropouts"),
  between: ["wheel_rear", "frame", "ring", "crank", "sprocket", "chain", "tensioner"],
} as const;

const TWO_PINS = say("fit-drive.j42-chain-on-fixed-centres.rear-axle-to-bb-axis-along");

export const j42ChainOnFixedCentres: JointDefinition = {
  ...head,
  attributes: [
    "donor.measured.chainstay",
    "donor.interfaces.rear_end",
    "wheel_rear.ports.drive",
    "wheel_rear.ports.ring_over_sprocket_min",
    "wheel_rear.ports.sprocket_min",
    "crank.ports.ring",
    "ring.ports.teeth",
    "sprocket.ports.teeth",
    "chain.ports.links",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const wheel = partAt(view, "wheel_rear", "wheel_rear");
    if (wheel === undefined) return notChosen(head, "wheel_rear");
    const { drive, ring_over_sprocket_min: leastRatio, sprocket_min: leastCog } = wheel.ports;
    const wheelAt = `bin.parts.${wheel.id}.ports`;
    if (drive === "cassette" || drive === "freewheel")
      return notChecked(head, say("fit-drive.j42-chain-on-fixed-centres.a-derailleur-takes-up-the-chain"));
    const end = view.resolved.donor.interfaces.rear_end;
    if (end === "horizontal_slot")
      return notChecked(head, say("fit-drive.j42-chain-on-fixed-centres.the-slots-are-horizontal-the-axle"));
    const ring = ringHere(view);
    const sprocket = sprocketHere(view);
    if (ring === undefined) return notChosen(head, "crank");
    if (sprocket === undefined) return notChosen(head, "sprocket");
    const teeth = ring.teeth;
    const cog = sprocket.ports.teeth;
    const gear = drive === "hub_gear";
    const chainstay = chainstayLength(view);
    const checks: Check[] = [
      {
        name: say("fit-drive.j42-chain-on-fixed-centres.drive-without-a-derailleur"),
        unit: "count",
        value: span(drive === undefined ? undefined : 1),
        limit: { low: 1, kind: "hard", words: say("fit-drive.j42-chain-on-fixed-centres.hub-gear-or-one-sprocket") },
        shown: false,
        measure: {
          what: say("fit-drive.j36-chainline.look-what-drives-the-rear-hub"),
          at: `${wheelAt}.drive`,
          tool: "eye",
        },
      },
      {
        name: say("fit-drive.j42-chain-on-fixed-centres.dropouts-hold-the-axle-in-one"),
        unit: "count",
        value: span(end === undefined ? undefined : 1),
        limit: {
          low: 1,
          kind: "hard",
          words: say("fit-drive.j42-chain-on-fixed-centres.vertical-slot-or-closed-bore"),
        },
        shown: false,
        measure: {
          what: say("fit-drive.j42-chain-on-fixed-centres.look-at-the-rear-dropouts-vertical"),
          at: "donor.interfaces.rear_end",
          tool: "eye",
        },
      },
    ];
    const countRing = ring.readTeeth;
    const countCog = {
      what: say("fit-drive.j42-chain-on-fixed-centres.count-the-sprocket-s-teeth"),
      at: `bin.parts.${sprocket.id}.ports.teeth`,
      tool: "eye",
    } as const;
    if (gear) {
      checks.push(
        {
          name: say("fit-drive.j42-chain-on-fixed-centres.ring-over-sprocket"),
          unit: "ratio",
          value: teeth === undefined || cog === undefined || leastRatio === undefined ? UNKNOWN : span(teeth / cog),
          limit: {
            ...(leastRatio === undefined ? {} : { low: leastRatio }),
            kind: "hard",
            words:
              leastRatio === undefined
                ? say("fit-drive.j42-chain-on-fixed-centres.as-the-hub-gear-asks")
                : say("fit-drive.j42-chain-on-fixed-centres.or-more-as-the-hub-gear", { leastRatio }),
          },
          measure:
            teeth === undefined
              ? countRing
              : cog === undefined
                ? countCog
                : {
                    what: say("fit-drive.j42-chain-on-fixed-centres.read-on-the-hub-gear-s"),
                    at: `${wheelAt}.ring_over_sprocket_min`,
                    tool: "eye",
                  },
        },
        {
          name: say("fit-drive.j42-chain-on-fixed-centres.sprocket-teeth"),
          unit: "count",
          value: leastCog === undefined ? UNKNOWN : span(cog),
          limit: {
            ...(leastCog === undefined ? {} : { low: leastCog }),
            kind: "hard",
            words:
              leastCog === undefined
                ? say("fit-drive.j42-chain-on-fixed-centres.as-the-hub-gear-asks")
                : say("fit-drive.j42-chain-on-fixed-centres.or-more-as-the-hub-gear-2", { leastCog }),
          },
          measure:
            cog === undefined
              ? countCog
              : {
                  what: say("fit-drive.j42-chain-on-fixed-centres.read-on-the-hub-gear-s-2"),
                  at: `${wheelAt}.sprocket_min`,
                  tool: "eye",
                },
        },
      );
    }
    const known = chainstay !== undefined && teeth !== undefined && cog !== undefined;
    const others = view.resolved.build.ring_sprocket_pairs ?? [];
    const pairs = known
      ? [
          { ring: teeth, cog },
          ...others.filter(([r, c]) => r !== teeth || c !== cog).map(([r, c]) => ({ ring: r, cog: c })),
        ]
      : [];
    const answer = known
      ? fixedCentres({
          chainstayMm: chainstay.mm,
          ...(chainstay.halfMm === undefined ? {} : { chainstayHalfWidthMm: chainstay.halfMm }),
          pairs,
          slackLeastMm: SLACK_LEAST_MM,
          slackMostMm: SLACK_MOST_MM,
          accuracyNeededMm: CHAINSTAY_NEEDED_MM,
          ...(leastRatio === undefined || !gear ? {} : { leastRingOverCog: leastRatio }),
          ...(leastCog === undefined || !gear ? {} : { leastCog }),
        })
      : undefined;
    const mine = answer?.kind === "answered" ? answer.value.pairs[0] : undefined;
    const name =
      mine === undefined
        ? say("fit-drive.j42-chain-on-fixed-centres.slack-of-the-chain")
        : say("fit-drive.chain-numbers.slack-of-on-links", { ring: mine.ring, cog: mine.cog, links: mine.links });
    const half = chainstay?.halfMm;
    const chainstayStep = {
      what: say("fit-drive.crank-clearance.measure-the-chainstay-rear-axle-to"),
      at: "donor.measured.chainstay",
      tool: "long_calliper",
      accuracy: `± ${CHAINSTAY_NEEDED_MM} mm`,
      how: TWO_PINS,
    } as const;
    checks.push({
      name,
      unit: "mm",
      value: mine === undefined ? UNKNOWN : judgedSlack(mine, half),
      limit: {
        low: SLACK_LEAST_MM,
        high: SLACK_MOST_MM,
        kind: "hard",
        words: say("fit-drive.j42-chain-on-fixed-centres.0-to-0-8-of-centre"),
      },
      measure: teeth === undefined ? countRing : cog === undefined ? countCog : chainstayStep,
    });
    const chain = partAt(view, "chain", "chain");
    const cautions: Caution[] = [];
    if (chain !== undefined) {
      checks.push({
        name: say("fit-drive.j42-chain-on-fixed-centres.links-to-spare"),
        unit: "count",
        value: minus(span(chain.ports.links), span(mine?.links)),
        limit: { low: 0, kind: "hard", words: say("fit-drive.j42-chain-on-fixed-centres.enough-links") },
        measure: {
          what: say("fit-drive.j42-chain-on-fixed-centres.count-the-chain-s-links"),
          at: `bin.parts.${chain.id}.ports.links`,
          tool: "eye",
        },
      });
    }
    if (answer?.kind === "refused")
      cautions.push(
        ...answer.refusals.map((refusal) => ({ code: refusal.code, at: refusal.at, message: refusal.message })),
      );
    if (mine !== undefined) {
      cautions.push({
        code: "chain-wear-opens-the-slack",
        message: say("fit-drive.j42-chain-on-fixed-centres.at-0-5-of-wear-the", {
          ring: mine.ring,
          cog: mine.cog,
          slackWhenWornMm: rounded(mine.slack_when_worn_mm),
        }),
      });
      if (
        mine.verdict === "fits" &&
        half !== undefined &&
        (mine.slack_mm + half > SLACK_MOST_MM || mine.slack_mm - half < SLACK_LEAST_MM)
      )
        cautions.push({ code: "slack-at-its-limit", message: `${mine.ring}/${mine.cog}: ${mine.note}` });
    }
    const settled = settle(checks);
    const short = settled.failed.some((check) => check.name === "links to spare");
    const barred = settled.failed.some(
      (check) => check.name === "ring over sprocket" || check.name === "sprocket teeth",
    );
    const noun =
      mine === undefined ? say("fit-drive.j42-chain-on-fixed-centres.the-chain") : `${mine.ring}/${mine.cog}`;
    return closeJoint(head, {
      settled: {
        ...settled,
        numbers: chainNumbers(
          settled.numbers,
          name,
          half,
          answer?.kind === "answered" ? answer.value.pairs : [],
          chainstay,
        ),
      },
      words: {
        fits:
          mine === undefined
            ? ""
            : say("fit-drive.j42-chain-on-fixed-centres.on-links-has-mm-of-slack", {
                gear: noun,
                links: mine.links,
                slackMm: rounded(mine.slack_mm),
              }),
        fails: barred
          ? say("fit-drive.j42-chain-on-fixed-centres.the-hub-gear-does-not-allow", { gear: noun })
          : short
            ? say("fit-drive.j42-chain-on-fixed-centres.the-chain-has-too-few-links")
            : say("fit-drive.j42-chain-on-fixed-centres.on-links-mm-of-slack-0", {
                gear: noun,
                links: mine?.links ?? 0,
                slackMm: rounded(mine?.slack_mm ?? 0),
              }),
        ...(mine !== undefined && settled.open[0]?.name === name
          ? { open: openWords(noun, chainstay?.mm ?? 0, mine.chance) }
          : {}),
      },
      remedies:
        settled.outcome === "fits"
          ? []
          : chainRemedies(view, mine, barred || short, answer?.kind === "answered" ? answer.value.pairs : [], half),
      sources: ["iso-606", "drive-fixed-centres"],
      cautions,
      ...(settled.outcome === "fits" && view.at.tensioner === undefined ? { next: planTensioner } : {}),
    });
  },
};

const planTensioner: NextStep = {
  kind: "decide",
  what: say("fit-drive.j42-chain-on-fixed-centres.plan-a-tensioner-for-the-worn"),
  at: "build.chosen.tensioner",
};

function openWords(noun: string, chainstayMm: number, chance: number | undefined): string {
  const odds =
    chance === undefined
      ? ""
      : say("fit-drive.j42-chain-on-fixed-centres.as-it-is-known-now-that", { chance: Math.round(100 * chance) });
  return say("fit-drive.j42-chain-on-fixed-centres.the-chainstay-is-not-known-to", {
    gear: noun,
    chainstayMm: rounded(chainstayMm),
    chainstayNeededMm: CHAINSTAY_NEEDED_MM,
    odds,
  });
}

/**
 * The slack as the sheet judges it: a chainstay known to 0.3 settles it by its middle, and what its band reaches over the
 * limit is felt on the stand; a wider band stays open.
 */
function judgedSlack(pair: FixedCentresPair, half: number | undefined) {
  if (half === undefined) return UNKNOWN;
  return half <= CHAINSTAY_NEEDED_MM + 1e-9 ? span(pair.slack_mm) : span(pair.slack_mm, half);
}
