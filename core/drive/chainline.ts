/**
 * How straight does the chain run?
 * Inputs: the numbers of `chainlineFields`. Chainline = frame centre to the middle of the rings, or to one ring or cog.
 * Answer: where each ring and the outer cogs stand, front minus rear, and the angle of the chain on every pair
 *   (positive: the ring stands further out than the cog). Rings count from the inner one, cogs from the smallest.
 * Formula: ring i of n = crank chainline + (i - (n + 1) / 2) ring pitch; cog j = OLN / 2 - locknut to smallest -
 *   (j - 1) cog pitch; rear chainline = the middle of the cogs; angle = atan((ring - cog) / chainstay).
 * Limits: straight frame, wheel in the middle. Judgement by common practice: up to 2 mm good, to 4 mm acceptable with a
 *   derailleur; one ring and one cog up to 1.5 mm. Sources: drive-chainline.
 */

import { outOfRange } from "../position/out-of-range.js";
import { type Answer, answered, type Caution, type Refusal, refused } from "../quantity/index.js";
import type { Field } from "../sheet/index.js";
import { say } from "../texts/say.js";

export interface ChainlineInput {
  readonly crank_chainline_mm: number;
  readonly ring_count: number;
  readonly ring_pitch_mm: number;
  readonly OLN_mm: number;
  readonly locknut_to_smallest_cog_mm: number;
  readonly cog_count: number;
  readonly cog_pitch_mm: number;
  readonly chainstay_mm: number;
}

export type ChainlineJudgement = "good" | "acceptable with a derailleur" | "too far off";

export interface ChainlineAnswer {
  readonly ring_chainlines_mm: readonly number[];
  readonly rear_chainline_mm: number;
  readonly smallest_cog_mm: number;
  readonly largest_cog_mm: number;
  readonly chainline_error_front_minus_rear_mm: number;
  readonly chain_angles_deg: Readonly<Record<string, number>>;
  /** The greatest of the angles without its sign. */
  readonly largest_angle_deg: number;
  readonly largest_angle_on: string;
  readonly judgement: ChainlineJudgement;
}

export const chainlineFields: readonly Field[] = [
  {
    kind: "number",
    unit: "mm",
    key: "crank_chainline_mm",
    label: say("drive.chainline.crank-s-chainline"),
    min: 5,
    max: 120,
    start: 47.5,
    help: say("drive.chainline.frame-centre-to-the-middle-of"),
  },
  {
    kind: "number",
    unit: "count",
    integer: true,
    key: "ring_count",
    label: "Chainrings",
    min: 1,
    max: 5,
    start: 1,
  },
  {
    kind: "number",
    unit: "mm",
    key: "ring_pitch_mm",
    label: say("drive.chainline.ring-to-ring"),
    min: 0,
    max: 25,
    start: 0,
    help: say("drive.chainline.centre-to-centre-7-5-to"),
  },
  {
    kind: "number",
    unit: "mm",
    key: "OLN_mm",
    label: say("drive.chainline.hub-over-locknuts"),
    min: 60,
    max: 260,
    start: 135,
  },
  {
    kind: "number",
    unit: "mm",
    key: "locknut_to_smallest_cog_mm",
    label: say("drive.chainline.locknut-to-smallest-cog"),
    min: -10,
    max: 80,
    start: 21,
    help: say("drive.chainline.right-locknut-s-outer-face-to"),
  },
  {
    kind: "number",
    unit: "count",
    integer: true,
    key: "cog_count",
    label: "Cogs",
    min: 1,
    max: 16,
    start: 1,
  },
  {
    kind: "number",
    unit: "mm",
    key: "cog_pitch_mm",
    label: say("drive.chainline.cog-to-cog"),
    min: 0,
    max: 15,
    start: 0,
    help: say("drive.chainline.centre-to-centre-0-with-one"),
  },
  {
    kind: "number",
    unit: "mm",
    key: "chainstay_mm",
    label: "Chainstay",
    min: 100,
    max: 2000,
    start: 442,
    help: say("drive.arm-gap-fields.bb-axis-to-rear-axle-straight"),
  },
];

export const CHAINLINE_GOOD_MM = 2;
export const CHAINLINE_ACCEPTABLE_MM = 4;
export const CHAINLINE_SINGLE_MM = 1.5;
const DEG = 180 / Math.PI;

/** A limit as a builder reads it, without the tail of binary arithmetic. */
const tidy = (mm: number): string => String(Math.round(mm * 1000) / 1000);

export function chainline(q: ChainlineInput): Answer<ChainlineAnswer> {
  const refusals: Refusal[] = [...outOfRange(chainlineFields, q)];
  if (refusals.length > 0) return refused(refusals);
  const needPitch = (at: "ring_pitch_mm" | "cog_pitch_mm", count: number, what: string): void => {
    if (count < 2 || q[at] > 0) return;
    const message = say("drive.chainline.cannot-stand-0-mm-apart", { count, what, at });
    refusals.push({ code: "no-pitch", at, given: q[at], allowed: say("drive.chainline.over-0-mm"), message });
  };
  needPitch("ring_pitch_mm", q.ring_count, "rings");
  needPitch("cog_pitch_mm", q.cog_count, "cogs");
  const rings = Array.from(
    { length: q.ring_count },
    (_, i) => q.crank_chainline_mm + (i + 1 - (q.ring_count + 1) / 2) * q.ring_pitch_mm,
  );
  const smallest = q.OLN_mm / 2 - q.locknut_to_smallest_cog_mm;
  const cogs = Array.from({ length: q.cog_count }, (_, i) => smallest - i * q.cog_pitch_mm);
  const largest = cogs.at(-1) ?? smallest;
  if (largest <= 0) {
    refusals.push({
      code: "cog-past-the-middle",
      at: "locknut_to_smallest_cog_mm",
      given: q.locknut_to_smallest_cog_mm,
      allowed: say("drive.chainline.under-mm-with-these-cogs", {
        oLNMm: tidy(q.OLN_mm / 2 - (q.cog_count - 1) * q.cog_pitch_mm),
      }),
      message: say("drive.chainline.the-largest-cog-would-stand-mm", { largest: largest.toFixed(1) }),
    });
  }
  if ((rings[0] ?? 0) <= 0) {
    refusals.push({
      code: "ring-past-the-middle",
      at: "crank_chainline_mm",
      given: q.crank_chainline_mm,
      allowed: say("drive.chainline.over-mm-with-these-rings", {
        ringCount: tidy(((q.ring_count - 1) * q.ring_pitch_mm) / 2),
      }),
      message: say("drive.chainline.the-inner-ring-would-stand-on"),
    });
  }
  if (refusals.length > 0) return refused(refusals);

  const rear = smallest - ((q.cog_count - 1) * q.cog_pitch_mm) / 2;
  const error = q.crank_chainline_mm - rear;
  const angles: Record<string, number> = {};
  let largestAngle = -1;
  let largestOn = "";
  rings.forEach((ring, i) => {
    cogs.forEach((cog, j) => {
      const key = `ring${i + 1}_cog${j + 1}`;
      const angle = Math.atan((ring - cog) / q.chainstay_mm) * DEG;
      angles[key] = angle;
      if (Math.abs(angle) > largestAngle) {
        largestAngle = Math.abs(angle);
        largestOn = key;
      }
    });
  });
  const single = q.ring_count === 1 && q.cog_count === 1;
  const judgement = judgeChainline(error, single);
  const cautions: Caution[] = [];
  if (judgement !== "good") {
    const side = error > 0 ? "outside" : "inside";
    const most = single ? CHAINLINE_SINGLE_MM : CHAINLINE_GOOD_MM;
    cautions.push({
      code: "chainline-off",
      at: "chainline_error_front_minus_rear_mm",
      message: say("drive.chainline.the-rings-stand-mm-of-the", { error: Math.abs(error).toFixed(1), side, most }),
    });
  }
  return answered(
    {
      ring_chainlines_mm: rings,
      rear_chainline_mm: rear,
      smallest_cog_mm: smallest,
      largest_cog_mm: largest,
      chainline_error_front_minus_rear_mm: error,
      chain_angles_deg: angles,
      largest_angle_deg: largestAngle,
      largest_angle_on: largestOn,
      judgement,
    },
    { sources: ["drive-chainline"], cautions },
  );
}

/** How good is a chainline error in mm? `single`: hub gear or single speed, one ring and one cog. */
export function judgeChainline(errorMm: number, single: boolean): ChainlineJudgement {
  const off = Math.abs(errorMm) - 1e-9;
  if (off <= (single ? CHAINLINE_SINGLE_MM : CHAINLINE_GOOD_MM)) return "good";
  return !single && off <= CHAINLINE_ACCEPTABLE_MM ? "acceptable with a derailleur" : "too far off";
}
