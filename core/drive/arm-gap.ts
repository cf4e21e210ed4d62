/**
 * Do the crank arm and the rings clear the chainstay once it has been set?
 * Inputs: the numbers of `armGapFields`. The stay's outer face is measured from the centre plane at distances r from the
 *   BB axis, before any setting. Q, the arm's inner face at the spindle and the ring chainlines hold on the spindle the
 *   chainset was made for; another spindle moves them here.
 * Answer: smallest gap of the arm from r = 50 to the crank's length, where it lies, and the gap of each ring at its
 *   outside radius; after and before setting. Each within ±1 mm until the dry fit.
 * Formula: arm inner face z(r) = z0 + (Q/2 - end thickness - z0) r / crank; a spindle longer by d adds d to Q and d/2 to
 *   z0 and to every chainline; a right-hand cup spacer w adds w on the right and takes it from the left arm.
 *   Setting adds s (r - root) / L per side beyond the root, root = chainstay - L, L = chainstay bridge to axle, else 340.
 *   Ring: outside radius = p / (2 sin(180/N)) + 4; inner face = chainline - 1.05 (3/32) or - 1.5 (1/8).
 * Limits: straight lines between the stations; nothing is guessed beyond them. Arm: 4 wanted, 3 the least, frame flex
 *   takes 1 to 2; ring: 3 wanted. An arm is never filed. Source: drive-arm-gap.
 */

import { outOfRange } from "../position/out-of-range.js";
import { type Answer, answered, type Band, type Caution, type JointVerdict, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { armGapFields, armGapRefusals } from "./arm-gap-fields.js";
import { CHAIN_PITCH_MM } from "./chain-length.js";

export interface ArmGapInput {
  readonly q_mm: number;
  readonly arm_inner_at_spindle_mm: number;
  readonly arm_end_thickness_mm: number;
  readonly crank_length_mm: number;
  /** What the fitted spindle is longer than the one the chainset was made for. */
  readonly spindle_longer_by_mm?: number;
  readonly right_cup_spacer_mm?: number;
  readonly stay_radius_mm: readonly number[];
  readonly stay_outer_mm: readonly number[];
  readonly chainstay_mm: number;
  /** Left out: no bridge, 340 is taken. */
  readonly chainstay_bridge_from_axle_mm?: number;
  readonly set_per_side_mm?: number;
  readonly rings?: readonly RingOnCrank[];
}

export interface RingOnCrank {
  readonly teeth: number;
  /** On the spindle the chainset was made for. */
  readonly chainline_mm: number;
  readonly width: string;
}

export interface RingGap {
  readonly teeth: number;
  readonly chainline_mm: number;
  readonly outside_radius_mm: number;
  /** Both null where the stay was not measured there. */
  readonly stay_outer_mm: number | null;
  readonly gap_mm: number | null;
  readonly verdict: JointVerdict;
}

export interface ArmGapAnswer {
  readonly arm_gap_mm: number;
  readonly arm_gap_at_radius_mm: number;
  readonly arm_gap_before_setting_mm: number;
  readonly left_arm_gap_mm: number;
  readonly q_fitted_mm: number;
  readonly ring_gaps: readonly RingGap[];
  readonly verdict: JointVerdict;
}

export const ARM_GAP_WANTED_MM = 4;
export const ARM_GAP_LEAST_MM = 3;
export const RING_GAP_WANTED_MM = 3;
export const GAP_BAND_MM = 1;
export const NO_BRIDGE_ROOT_MM = 340;
const ARM_FROM_MM = 50;
const TOOTH_ABOVE_PITCH_MM = 4;
const HALF_WIDTH: Readonly<Record<string, number>> = { "3/32": 1.05, "1/8": 1.5 };

export function armGap(q: ArmGapInput): Answer<ArmGapAnswer> {
  const refusals = [...outOfRange(armGapFields, q), ...armGapRefusals(q)];
  if (refusals.length > 0) return refused(refusals);
  const longer = q.spindle_longer_by_mm ?? 0;
  const cup = q.right_cup_spacer_mm ?? 0;
  const qFitted = q.q_mm + longer;
  const z0 = q.arm_inner_at_spindle_mm + longer / 2;
  const slope = (qFitted / 2 - q.arm_end_thickness_mm - z0) / q.crank_length_mm;
  const stay = stayProfile(q);

  const from = Math.max(ARM_FROM_MM, stay.firstMm);
  const to = Math.min(q.crank_length_mm, stay.lastMm);
  // All lines are straight between the stations, so the smallest gap lies at a station, the root or an end.
  const places = [from, to, stay.rootMm, ...q.stay_radius_mm].filter((r) => r >= from && r <= to);
  let at = from;
  let gap = Number.POSITIVE_INFINITY;
  let before = Number.POSITIVE_INFINITY;
  for (const r of places) {
    const arm = z0 + slope * r + cup;
    before = Math.min(before, arm - stay.measured(r));
    const here = arm - stay.afterSetting(r);
    if (here < gap) {
      gap = here;
      at = r;
    }
  }
  const cautions: Caution[] = [];
  const covered = stay.firstMm <= ARM_FROM_MM && stay.lastMm >= q.crank_length_mm;
  if (!covered) {
    cautions.push({
      code: "stay-not-measured-everywhere",
      at: "stay_radius_mm",
      message: say("drive.arm-gap.the-stay-is-measured-from-to", {
        firstMm: stay.firstMm,
        lastMm: stay.lastMm,
        armFromMm: ARM_FROM_MM,
        crankLengthMm: q.crank_length_mm,
      }),
    });
  }
  if (q.chainstay_bridge_from_axle_mm === undefined && (q.set_per_side_mm ?? 0) !== 0) {
    cautions.push({
      code: "bridge-not-measured",
      at: "chainstay_bridge_from_axle_mm",
      message: say("drive.arm-gap.no-chainstay-bridge-was-given-the", { noBridgeRootMm: NO_BRIDGE_ROOT_MM }),
    });
  }
  const smaller = Math.min(gap, gap - 2 * cup);
  const verdict = judgeArm(smaller, covered);
  if (verdict !== "fits" && covered) {
    cautions.push({
      code: "arm-near-stay",
      at: "arm_gap_mm",
      message: say("drive.arm-gap.the-arm-passes-the-stay-with", {
        smaller: smaller.toFixed(1),
        armGapWantedMm: ARM_GAP_WANTED_MM,
        armGapLeastMm: ARM_GAP_LEAST_MM,
      }),
    });
  }
  const rings = (q.rings ?? []).map((ring): RingGap => {
    const outside = CHAIN_PITCH_MM / 2 / Math.sin(Math.PI / ring.teeth) + TOOTH_ABOVE_PITCH_MM;
    const known = outside >= stay.firstMm && outside <= stay.lastMm;
    const chainline = ring.chainline_mm + longer / 2 + cup;
    const named = { teeth: ring.teeth, chainline_mm: chainline, outside_radius_mm: outside };
    if (!known) return { ...named, stay_outer_mm: null, gap_mm: null, verdict: "measure first" };
    const outer = stay.afterSetting(outside);
    const ringGap = chainline - (HALF_WIDTH[ring.width] ?? 0) - outer;
    const verdict = ringGap >= RING_GAP_WANTED_MM ? "fits" : "will not fit";
    return { ...named, stay_outer_mm: outer, gap_mm: ringGap, verdict };
  });
  const bands: Record<string, Band> = {
    arm_gap_mm: around(gap),
    left_arm_gap_mm: around(gap - 2 * cup),
  };
  for (const [i, ring] of rings.entries()) {
    if (ring.gap_mm === null) {
      cautions.push({
        code: "stay-not-measured-at-ring",
        at: `ring_gaps[${i}]`,
        message: say("drive.arm-gap.measure-the-stay-mm-from-the", {
          outsideRadiusMm: ring.outside_radius_mm.toFixed(0),
          teeth: ring.teeth,
        }),
      });
      continue;
    }
    bands[`ring_gaps.${i}.gap_mm`] = around(ring.gap_mm);
    if (ring.gap_mm >= RING_GAP_WANTED_MM + GAP_BAND_MM) continue;
    cautions.push({
      code: "ring-near-stay",
      at: `ring_gaps[${i}].gap_mm`,
      message: say("drive.arm-gap.the-ring-passes-the-stay-with", {
        teeth: ring.teeth,
        gapMm: ring.gap_mm.toFixed(1),
        gapBandMm: GAP_BAND_MM,
        ringGapWantedMm: RING_GAP_WANTED_MM,
      }),
    });
  }
  return answered(
    {
      arm_gap_mm: gap,
      arm_gap_at_radius_mm: at,
      arm_gap_before_setting_mm: before,
      left_arm_gap_mm: gap - 2 * cup,
      q_fitted_mm: qFitted,
      ring_gaps: rings,
      verdict,
    },
    { bands, sources: ["drive-arm-gap"], cautions },
  );
}

function around(mm: number): Band {
  return { low: mm - GAP_BAND_MM, high: mm + GAP_BAND_MM, means: say("drive.arm-gap.1-mm-until-the-dry-fit") };
}

function judgeArm(gapMm: number, covered: boolean): JointVerdict {
  if (gapMm + GAP_BAND_MM < ARM_GAP_LEAST_MM) return "will not fit";
  return covered && gapMm >= ARM_GAP_WANTED_MM ? "fits" : "measure first";
}

interface StayProfile {
  readonly firstMm: number;
  readonly lastMm: number;
  readonly rootMm: number;
  readonly measured: (r: number) => number;
  readonly afterSetting: (r: number) => number;
}

function stayProfile(q: ArmGapInput): StayProfile {
  const stations = q.stay_radius_mm
    .map((r, i) => ({ r, outer: q.stay_outer_mm[i] ?? Number.NaN }))
    .sort((a, b) => a.r - b.r);
  const rootToAxle = q.chainstay_bridge_from_axle_mm ?? NO_BRIDGE_ROOT_MM;
  const rootMm = q.chainstay_mm - rootToAxle;
  const spread = q.set_per_side_mm ?? 0;
  const measured = (r: number): number => {
    const next = stations.findIndex((station) => station.r >= r);
    const high = stations[next];
    const low = stations[next - 1];
    if (high === undefined) return Number.NaN;
    if (low === undefined) return high.r === r ? high.outer : Number.NaN;
    return low.outer + ((high.outer - low.outer) * (r - low.r)) / (high.r - low.r);
  };
  return {
    firstMm: stations[0]?.r ?? Number.NaN,
    lastMm: stations.at(-1)?.r ?? Number.NaN,
    rootMm,
    measured,
    afterSetting: (r) => measured(r) + (spread * Math.max(0, r - rootMm)) / rootToAxle,
  };
}
