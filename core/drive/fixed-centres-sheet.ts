/** The sheet `chain-on-fixed-centres`: every ring with every sprocket on one chainstay. */
import { outOfRange } from "../position/out-of-range.js";
import { type Answer, type Refusal, refused } from "../quantity/index.js";
import type { Field, Sheet } from "../sheet/index.js";
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
    label: "Chainrings at hand, teeth",
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
    label: "Sprockets at hand, teeth",
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
    help: "Rear axle to BB axis, straight.",
  },
  {
    kind: "number",
    unit: "mm",
    key: "chainstay_sd_mm",
    label: "Chainstay, standard deviation",
    min: 0,
    max: 25,
    start: 1.2,
    optional: true,
    help: "From the survey. Leave out where the accuracy is given.",
  },
  {
    kind: "number",
    unit: "mm",
    key: "chainstay_accuracy_mm",
    label: "Chainstay, known within ±",
    min: 0,
    max: 50,
    start: 0.3,
    optional: true,
    leftOutAtStart: true,
    help: "Half-width of the 95 % band. Leave out where the standard deviation is given.",
  },
  {
    kind: "number",
    unit: "mm",
    key: "slack_least_mm",
    label: "Least slack of centre distance",
    min: -5,
    max: 5,
    start: 0,
    optional: true,
  },
  {
    kind: "number",
    unit: "mm",
    key: "slack_most_mm",
    label: "Most slack of centre distance",
    min: -5,
    max: 10,
    start: 0.8,
    optional: true,
  },
  {
    kind: "number",
    unit: "mm",
    key: "accuracy_needed_mm",
    label: "Accuracy a decision needs, ±",
    min: 0.01,
    max: 5,
    start: 0.3,
    optional: true,
  },
  {
    kind: "number",
    unit: "percent",
    key: "wear_percent",
    label: "Wear at which the chain is changed",
    min: 0,
    max: 3,
    start: 0.5,
    optional: true,
  },
  {
    kind: "boolean",
    key: "half_link",
    label: "Half link allowed",
    start: false,
    optional: true,
  },
  {
    kind: "number",
    unit: "ratio",
    key: "least_ring_over_sprocket",
    label: "Least ring over sprocket the hub allows",
    min: 0.1,
    max: 10,
    start: 1.8,
    optional: true,
    help: "From the hub gear's own sheet.",
  },
  {
    kind: "number",
    unit: "count",
    integer: true,
    key: "least_sprocket",
    label: "Smallest sprocket the hub allows",
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
      allowed: "either the standard deviation or the accuracy",
      message: "Give either chainstay_sd_mm or chainstay_accuracy_mm, not both.",
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
  question: "Which ring and sprocket make a chain fit without a tensioner?",
  notes:
    "Hub gear or single speed in vertical dropouts. Slack is the centre distance at which the links are tight minus the " +
    "chainstay; 0 to 0.8 mm is usual. A chainstay not known to ± 0.3 mm cannot decide: then the answer is measure first. " +
    "Wear opens every fixed-centre drive, so plan a tensioner or an eccentric anyway.",
  fields: chainOnFixedCentresFields,
  gives: [
    { key: "verdict", means: "over all pairs that the hub allows" },
    { key: "pairs", means: "links, centre distance, slack new and worn, range of chainstays in mm, chance, verdict" },
    { key: "chance_that_any_fits", means: "0 to 1; left out where the chainstay's band is not known" },
    { key: "accuracy_needed_mm", means: "half-width that a decision needs, mm" },
    { key: "next", means: "what to measure first, or null" },
  ],
  run: chainOnFixedCentres,
};
