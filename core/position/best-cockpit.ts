/**
 * Which real stem and bar from the bin, which way up and how high, bring the hands nearest to where they belong?
 * Inputs: the frame as in `cockpit`; for unthreaded stems the headset's upper stack and the spacer sums allowed, for quill
 *   stems the stack up to the top of the locknut; stems and bars, mm and degrees. A quill stem's raise goes from lowest to
 *   highest (its mark) in steps of 5. An unthreaded stem is tried both ways up. A stem and a bar meet only when their
 *   clamp diameters are equal within 0.1.
 * Answer: the ten nearest, nearest first, and every pair that was left out, with the reason. `best` is null where nothing
 *   could be tried. The sheet `cockpit` is run once per real stem and bar, because it joins every length with every angle.
 * Limits: steerer length and quill diameter are other joints. Sources: position-contact-points, position-clamp-equal.
 */

import { type Answer, answered, type Caution, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { COCKPIT_WITHIN_MM, cockpit } from "./cockpit.js";

export type StemCandidate = {
  readonly id: string;
  readonly lengthMm: number;
  readonly angleDeg: number;
  readonly clampHeightMm: number;
  /** Diameter of bar it clamps; left out = not measured. */
  readonly barClampMm?: number;
} & (
  | { readonly kind: "unthreaded" }
  | { readonly kind: "quill"; readonly raiseMm: { readonly lowest: number; readonly highest: number } }
);

export interface BarCandidate {
  readonly id: string;
  readonly handForwardMm: number;
  readonly handUpMm: number;
  readonly clampMm?: number;
}

export interface BestCockpitInput {
  readonly stackMm: number;
  readonly reachMm: number;
  readonly headAngleDeg: number;
  readonly targetXMm: number;
  readonly targetYMm: number;
  /** Unthreaded headset above the head tube; left out = none chosen. */
  readonly upperStackMm?: number;
  /** Threaded headset up to the top of its locknut; left out = none chosen. */
  readonly locknutStackMm?: number;
  readonly spacerSumsMm: readonly number[];
  readonly stems: readonly StemCandidate[];
  readonly bars: readonly BarCandidate[];
}

export interface CockpitChoice {
  readonly stemId: string;
  readonly barId: string;
  /** True: the stem sits turned over from the way it is listed. */
  readonly turnedOver: boolean;
  readonly stemAngleDeg: number;
  readonly stemLengthMm: number;
  /** Spacers below the stem, or how far the quill is raised. */
  readonly spacersMm: number;
  readonly errorMm: number;
  readonly errorXMm: number;
  readonly errorYMm: number;
  readonly handXMm: number;
  readonly handYMm: number;
}

export interface BestCockpit {
  readonly best: CockpitChoice | null;
  readonly ranked: readonly CockpitChoice[];
  readonly leftOut: readonly { readonly stemId: string; readonly barId: string; readonly reason: string }[];
}

/** Bar and stem clamp are equal within this (trade J6). */
export const CLAMP_EQUAL_MM = 0.1;
/** A quill stem is raised in steps of this. */
export const QUILL_STEP_MM = 5;
const SHOWN = 10;

export function bestCockpit(q: BestCockpitInput): Answer<BestCockpit> {
  const refusals: Refusal[] = [];
  const choices: CockpitChoice[] = [];
  const leftOut: { stemId: string; barId: string; reason: string }[] = [];
  const cautions: Caution[] = [];
  for (const stem of q.stems) {
    const upper = stem.kind === "quill" ? q.locknutStackMm : q.upperStackMm;
    for (const bar of q.bars) {
      const pair = { stemId: stem.id, barId: bar.id };
      if (upper === undefined) {
        const headset = stem.kind === "quill" ? "threaded" : "unthreaded";
        leftOut.push({ ...pair, reason: say("position.best-cockpit.no-headset-with-a-known-upper", { headset }) });
        continue;
      }
      if (stem.barClampMm === undefined || bar.clampMm === undefined) {
        cautions.push({
          code: "clamp-not-measured",
          at: `${stem.id}+${bar.id}`,
          message: say("position.best-cockpit.measure-the-clamp-of-and-before", { stem: stem.id, bar: bar.id }),
        });
      } else if (Math.abs(stem.barClampMm - bar.clampMm) > CLAMP_EQUAL_MM + 1e-9) {
        leftOut.push({
          ...pair,
          reason: say("position.best-cockpit.a-bar-does-not-belong-in", {
            clampMm: bar.clampMm,
            barClampMm: stem.barClampMm,
          }),
        });
        continue;
      }
      const angles = stem.kind === "quill" || stem.angleDeg === 0 ? [stem.angleDeg] : [stem.angleDeg, -stem.angleDeg];
      const answer = cockpit({
        stack_mm: q.stackMm,
        reach_mm: q.reachMm,
        head_angle_deg: q.headAngleDeg,
        upper_stack_mm: upper,
        clamp_height_mm: stem.clampHeightMm,
        hand_forward_mm: bar.handForwardMm,
        hand_up_mm: bar.handUpMm,
        target_x_mm: q.targetXMm,
        target_y_mm: q.targetYMm,
        stem_lengths_mm: [stem.lengthMm],
        stem_angles_deg: angles,
        spacers_mm: stem.kind === "quill" ? quillSteps(stem.raiseMm) : q.spacerSumsMm,
      });
      if (answer.kind === "refused") {
        refusals.push(...answer.refusals.map((r) => ({ ...r, at: `${stem.id}+${bar.id}.${r.at}` })));
        continue;
      }
      for (const row of [answer.value.best, ...answer.value.next_best]) {
        choices.push({
          ...pair,
          turnedOver: row.stem_angle_deg !== stem.angleDeg,
          stemAngleDeg: row.stem_angle_deg,
          stemLengthMm: row.stem_length_mm,
          spacersMm: row.spacers_mm,
          errorMm: row.error_mm,
          errorXMm: row.error_x_mm,
          errorYMm: row.error_y_mm,
          handXMm: row.hand_x_mm,
          handYMm: row.hand_y_mm,
        });
      }
    }
  }
  if (refusals.length > 0) return refused(refusals);
  choices.sort((a, b) => a.errorMm - b.errorMm);
  const best = choices[0] ?? null;
  if (best === null || best.errorMm > COCKPIT_WITHIN_MM) {
    cautions.push({
      code: best === null ? "nothing-to-try" : "hands-not-on-target",
      at: "best",
      message:
        best === null
          ? say("position.best-cockpit.no-stem-and-bar-of-the")
          : say("position.best-cockpit.the-nearest-pair-leaves-the-hands", { errorMm: best.errorMm.toFixed(1) }),
    });
  }
  return answered(
    { best, ranked: choices.slice(0, SHOWN), leftOut },
    { sources: ["position-contact-points", "position-clamp-equal"], cautions },
  );
}

/** Heights of a quill stem from lowest to highest in steps of 5; the highest is the mark and always stands in it. */
export function quillSteps(raise: { readonly lowest: number; readonly highest: number }): readonly number[] {
  const steps: number[] = [];
  for (let at = raise.lowest; at < raise.highest - 1e-9; at += QUILL_STEP_MM) steps.push(at);
  steps.push(raise.highest);
  return steps;
}
