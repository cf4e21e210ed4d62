/** The sheet `chain-on-fixed-centres`: every ring with every sprocket on one chainstay. */

import { outOfRange } from "../position/out-of-range.js";
import { type Answer, type Refusal, refused } from "../quantity/index.js";
import type { Field, Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { type FixedCentres, fixedCentres } from "./fixed-centres.js";

export interface ChainOnFixedCentresInput {
  readonly rings: readonly number[];
  readonly sprockets: readonly number[];
  readonly chainstay_mm: number;
  /** One standard deviation, e.g. from the survey. */
  readonly chainstay_sd_mm?: number;
  /** Half-width of the 95 % band; in place of the standard deviation. */
  readonly chainstay_accuracy_mm?: number;
  readonly slack_least_mm?: number;
  readonly slack_most_mm?: number;
  readonly accuracy_needed_mm?: number;
  readonly wear_percent?: number;
  readonly half_link?: boolean;
  readonly least_ring_over_sprocket?: number;
  readonly least_sprocket?: number;
}

export const chainOnFixedCentresFields: readonly Field[] = [
  {
    kind: "numbers",
    unit: "count",
    integer: true,
    key: "rings",
    label: say("drive.fixed-centres-sheet.chainrings-at-hand-teeth"),
    min: 6,
    max: 150,
    minItems: 1,
    maxItems: 50,
    start: [42, 38],
  },
  {
    kind: "numbers",
    unit: "count",
    integer: true,
    key: "sprockets",
    label: say("drive.fixed-centres-sheet.sprockets-at-hand-teeth"),
    min: 6,
    max: 100,
    minItems: 1,
    maxItems: 50,
    start: [22, 18],
  },
  {
    kind: "number",
    unit: "mm",
    key: "chainstay_mm",
    label: "Chainstay",
    min: 100,
    max: 2000,
    start: 442.3,
    help: say("drive.fixed-centres-sheet.rear-axle-to-bb-axis-straight"),
  },
  {
    kind: "number",
    unit: "mm",
    key: "chainstay_sd_mm",
    label: say("drive.fixed-centres-sheet.chainstay-standard-deviation"),
    min: 0,
    max: 25,
    start: 1.2,
    optional: true,
    help: say("drive.fixed-centres-sheet.from-the-survey-leave-out-where"),
  },
  {
    kind: "number",
    unit: "mm",
    key: "chainstay_accuracy_mm",
    label: say("drive.fixed-centres-sheet.chainstay-known-within"),
    min: 0,
    max: 50,
    start: 0.3,
    optional: true,
    leftOutAtStart: true,
    help: say("drive.fixed-centres-sheet.half-width-of-the-95-band"),
  },
  {
    kind: "number",
    unit: "mm",
    key: "slack_least_mm",
    label: say("drive.fixed-centres-sheet.least-slack-of-centre-distance"),
    min: -5,
    max: 5,
    start: 0,
    optional: true,
  },
  {
    kind: "number",
    unit: "mm",
    key: "slack_most_mm",
    label: say("drive.fixed-centres-sheet.most-slack-of-centre-distance"),
    min: -5,
    max: 10,
    start: 0.8,
    optional: true,
  },
  {
    kind: "number",
    unit: "mm",
    key: "accuracy_needed_mm",
    label: say("drive.fixed-centres-sheet.accuracy-a-decision-needs"),
    min: 0.01,
    max: 5,
    start: 0.3,
    optional: true,
  },
  {
    kind: "number",
    unit: "percent",
    key: "wear_percent",
    label: say("drive.fixed-centres-sheet.wear-at-which-the-chain-is"),
    min: 0,
    max: 3,
    start: 0.5,
    optional: true,
  },
  {
    kind: "boolean",
    key: "half_link",
    label: say("drive.fixed-centres-sheet.half-link-allowed"),
    start: false,
    optional: true,
  },
  {
    kind: "number",
    unit: "ratio",
    key: "least_ring_over_sprocket",
    label: say("drive.fixed-centres-sheet.least-ring-over-sprocket-the-hub"),
    min: 0.1,
    max: 10,
    start: 1.8,
    optional: true,
    help: say("drive.fixed-centres-sheet.from-the-hub-gear-s-own"),
  },
  {
    kind: "number",
    unit: "count",
    integer: true,
    key: "least_sprocket",
    label: say("drive.fixed-centres-sheet.smallest-sprocket-the-hub-allows"),
    min: 6,
    max: 100,
    start: 16,
    optional: true,
  },
];

export function chainOnFixedCentres(q: ChainOnFixedCentresInput): Answer<FixedCentres> {
  const refusals: Refusal[] = [...outOfRange(chainOnFixedCentresFields, q)];
  if (q.chainstay_sd_mm !== undefined && q.chainstay_accuracy_mm !== undefined) {
    refusals.push({
      code: "give-one",
      at: "chainstay_accuracy_mm",
      given: q.chainstay_accuracy_mm,
      allowed: say("drive.fixed-centres-sheet.either-the-standard-deviation-or-the"),
      message: say("drive.fixed-centres-sheet.give-either-chainstay-sd-mm-or"),
    });
  }
  if (refusals.length > 0) return refused(refusals);
  const half = q.chainstay_sd_mm === undefined ? q.chainstay_accuracy_mm : 1.959964 * q.chainstay_sd_mm;
  return fixedCentres({
    chainstayMm: q.chainstay_mm,
    ...(half === undefined ? {} : { chainstayHalfWidthMm: half }),
    pairs: q.rings.flatMap((ring) => q.sprockets.map((cog) => ({ ring, cog }))),
    ...(q.slack_least_mm === undefined ? {} : { slackLeastMm: q.slack_least_mm }),
    ...(q.slack_most_mm === undefined ? {} : { slackMostMm: q.slack_most_mm }),
    ...(q.accuracy_needed_mm === undefined ? {} : { accuracyNeededMm: q.accuracy_needed_mm }),
    ...(q.wear_percent === undefined ? {} : { wearPercent: q.wear_percent }),
    ...(q.least_ring_over_sprocket === undefined ? {} : { leastRingOverCog: q.least_ring_over_sprocket }),
    ...(q.least_sprocket === undefined ? {} : { leastCog: q.least_sprocket }),
    halfLinkAllowed: q.half_link === true,
  });
}

export const chainOnFixedCentresSheet: Sheet<ChainOnFixedCentresInput, FixedCentres> = {
  id: "chain-on-fixed-centres",
  question: say("drive.fixed-centres-sheet.which-ring-and-sprocket-make-a"),
  notes: say("drive.fixed-centres-sheet.hub-gear-or-single-speed-in"),
  fields: chainOnFixedCentresFields,
  gives: [
    { key: "verdict", means: say("drive.fixed-centres-sheet.over-all-pairs-that-the-hub") },
    { key: "pairs", means: say("drive.fixed-centres-sheet.links-centre-distance-slack-new-and") },
    { key: "chance_that_any_fits", means: say("drive.fixed-centres-sheet.0-to-1-left-out-where") },
    { key: "accuracy_needed_mm", means: say("drive.fixed-centres-sheet.half-width-that-a-decision-needs") },
    { key: "next", means: say("drive.fixed-centres-sheet.what-to-measure-first-or-null") },
  ],
  run: chainOnFixedCentres,
};
