/**
 * J42: does a chain of whole links fit between ring and hub gear in vertical dropouts?
 * Slack of centre distance 0 to 0.8 (M26, `fixedCentres`); the chainstay must be known to 0.3. Ring over sprocket and the
 * smallest sprocket as the hub gear asks. Wear opens every such drive: a tensioner is planned. A hub gear or one sprocket
 * in horizontal slots is tightened by the axle. Sources: iso-606, drive-fixed-centres.
 */
import { type FixedCentresPair, fixedCentres } from "../../drive/index.js";
import type { Caution, NextStep } from "../../quantity/index.js";
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
  title: "hub gear – vertical dropouts",
  between: ["wheel_rear", "frame", "ring", "crank", "sprocket", "chain", "tensioner"],
} as const;

const TWO_PINS =
  "rear axle to BB axis along each stay with trammel or long calliper between two turned pins, both sides, three times";

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
    if (drive === "cassette" || drive === "freewheel") return notChecked(head, "A derailleur takes up the chain.");
    const end = view.resolved.donor.interfaces.rear_end;
    if (end === "horizontal_slot")
      return notChecked(
        head,
        "The slots are horizontal: the axle tightens the chain. Look that it stays in the slot with a new and with a worn chain.",
      );
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
        name: "drive without a derailleur",
        unit: "count",
        value: span(drive === undefined ? undefined : 1),
        limit: { low: 1, kind: "hard", words: "hub gear or one sprocket" },
        shown: false,
        measure: {
          what: "Look what drives the rear hub: hub gear, cassette, freewheel or one sprocket",
          at: `${wheelAt}.drive`,
          tool: "eye",
        },
      },
      {
        name: "dropouts hold the axle in one place",
        unit: "count",
        value: span(end === undefined ? undefined : 1),
        limit: { low: 1, kind: "hard", words: "vertical slot or closed bore" },
        shown: false,
        measure: {
          what: "Look at the rear dropouts: vertical or horizontal slot",
          at: "donor.interfaces.rear_end",
          tool: "eye",
        },
      },
    ];
    const countRing = ring.readTeeth;
    const countCog = {
      what: "Count the sprocket's teeth",
      at: `bin.parts.${sprocket.id}.ports.teeth`,
      tool: "eye",
    } as const;
    if (gear) {
      checks.push(
        {
          name: "ring over sprocket",
          unit: "ratio",
          value: teeth === undefined || cog === undefined || leastRatio === undefined ? UNKNOWN : span(teeth / cog),
          limit: {
            ...(leastRatio === undefined ? {} : { low: leastRatio }),
            kind: "hard",
            words: leastRatio === undefined ? "as the hub gear asks" : `${leastRatio} or more, as the hub gear asks`,
          },
          measure:
            teeth === undefined
              ? countRing
              : cog === undefined
                ? countCog
                : {
                    what: "Read on the hub gear's sheet the least ring over sprocket",
                    at: `${wheelAt}.ring_over_sprocket_min`,
                    tool: "eye",
                  },
        },
        {
          name: "sprocket teeth",
          unit: "count",
          value: leastCog === undefined ? UNKNOWN : span(cog),
          limit: {
            ...(leastCog === undefined ? {} : { low: leastCog }),
            kind: "hard",
            words: leastCog === undefined ? "as the hub gear asks" : `${leastCog} or more, as the hub gear asks`,
          },
          measure:
            cog === undefined
              ? countCog
              : {
                  what: "Read on the hub gear's sheet the smallest sprocket",
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
    const name = mine === undefined ? "slack of the chain" : `slack of ${mine.ring}/${mine.cog} on ${mine.links} links`;
    const half = chainstay?.halfMm;
    const chainstayStep = {
      what: "Measure the chainstay, rear axle to BB axis",
      at: "donor.measured.chainstay",
      tool: "long_calliper",
      accuracy: `± ${CHAINSTAY_NEEDED_MM} mm`,
      how: TWO_PINS,
    } as const;
    checks.push({
      name,
      unit: "mm",
      value: mine === undefined ? UNKNOWN : judgedSlack(mine, half),
      limit: { low: SLACK_LEAST_MM, high: SLACK_MOST_MM, kind: "hard", words: "0 to 0.8 of centre distance" },
      measure: teeth === undefined ? countRing : cog === undefined ? countCog : chainstayStep,
    });
    const chain = partAt(view, "chain", "chain");
    const cautions: Caution[] = [];
    if (chain !== undefined) {
      checks.push({
        name: "links to spare",
        unit: "count",
        value: minus(span(chain.ports.links), span(mine?.links)),
        limit: { low: 0, kind: "hard", words: "enough links" },
        measure: { what: "Count the chain's links", at: `bin.parts.${chain.id}.ports.links`, tool: "eye" },
      });
    }
    if (answer?.kind === "refused")
      cautions.push(
        ...answer.refusals.map((refusal) => ({ code: refusal.code, at: refusal.at, message: refusal.message })),
      );
    if (mine !== undefined) {
      cautions.push({
        code: "chain-wear-opens-the-slack",
        message: `At 0.5 % of wear the slack of ${mine.ring}/${mine.cog} grows to ${rounded(mine.slack_when_worn_mm)} mm: plan a tensioner or a new chain sooner.`,
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
    const noun = mine === undefined ? "The chain" : `${mine.ring}/${mine.cog}`;
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
            : `${noun} on ${mine.links} links has ${rounded(mine.slack_mm)} mm of slack: no tensioner while the chain is new.`,
        fails: barred
          ? `The hub gear does not allow ${noun}.`
          : short
            ? "The chain has too few links."
            : `${noun} on ${mine?.links ?? 0} links: ${rounded(mine?.slack_mm ?? 0)} mm of slack, 0 to 0.8 fits.`,
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
  what: "Plan a tensioner for the worn chain",
  at: "build.chosen.tensioner",
};

function openWords(noun: string, chainstayMm: number, chance: number | undefined): string {
  const odds =
    chance === undefined ? "" : ` As it is known now, ${Math.round(100 * chance)} % that it runs without a tensioner.`;
  return `${noun}: the chainstay, ${rounded(chainstayMm)}, is not known to ± ${CHAINSTAY_NEEDED_MM} mm yet.${odds}`;
}

/**
 * The slack as the sheet judges it: a chainstay known to 0.3 settles it by its middle, and what its band reaches over the
 * limit is felt on the stand; a wider band stays open.
 */
function judgedSlack(pair: FixedCentresPair, half: number | undefined) {
  if (half === undefined) return UNKNOWN;
  return half <= CHAINSTAY_NEEDED_MM + 1e-9 ? span(pair.slack_mm) : span(pair.slack_mm, half);
}
