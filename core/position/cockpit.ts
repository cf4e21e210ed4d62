/**
 * Which stem and spacers put the hands where they belong?
 * Inputs: the numbers of `cockpitFields`, BB = origin, x forward, y up, ground level, mm and degrees. Every stem length
 *   goes with every angle and every spacer sum.
 * Answer: the combination whose hand comes nearest to the target, the ten that follow, and for each stem angle the
 *   length and spacer sum that would hit the target exactly. error_x and error_y are hand minus target: positive =
 *   too far forward, too high.
 * Formula: hand = head top + (upper stack + spacers + clamp / 2) up the axis + stem length along the stem + bar to hand.
 *   For the exact stem the two unknowns solve two equations; the determinant is the cosine of the stem angle.
 * Limits: a stem that may be turned over needs both signs of its angle in the list. Whether the steerer is long enough
 *   is the sheet `steerer`. Sources: position-contact-points, position-reach-step.
 */

import { type Answer, answered, type Caution, refused } from "../quantity/index.js";
import type { Field } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { outOfRange } from "./out-of-range.js";

export interface CockpitInput {
  readonly stack_mm: number;
  readonly reach_mm: number;
  readonly head_angle_deg: number;
  readonly upper_stack_mm: number;
  readonly clamp_height_mm: number;
  readonly hand_forward_mm: number;
  readonly hand_up_mm: number;
  readonly target_x_mm: number;
  readonly target_y_mm: number;
  readonly stem_lengths_mm: readonly number[];
  readonly stem_angles_deg: readonly number[];
  readonly spacers_mm: readonly number[];
}

export interface CockpitCombination {
  readonly stem_length_mm: number;
  readonly stem_angle_deg: number;
  readonly spacers_mm: number;
  readonly error_mm: number;
  /** Hand minus target, positive forward. */
  readonly error_x_mm: number;
  /** Hand minus target, positive up. */
  readonly error_y_mm: number;
  readonly hand_x_mm: number;
  readonly hand_y_mm: number;
}

export interface ExactStem {
  readonly stem_angle_deg: number;
  readonly exact_stem_length_mm: number;
  readonly exact_spacers_mm: number;
  /** False where length or spacers come out negative: no such stem can be had. */
  readonly can_exist: boolean;
}

export interface CockpitAnswer {
  readonly best: CockpitCombination;
  readonly next_best: readonly CockpitCombination[];
  readonly exact_for_each_angle: readonly ExactStem[];
  readonly combinations: number;
  readonly reachable_within_10_mm: boolean;
}

/** Two errors nearer than this count as a tie. */
export const COCKPIT_TIE_MM = 0.05;
/** "On target" in the trade: the hands within a centimetre of where they are wanted (common practice). */
export const COCKPIT_WITHIN_MM = 10;
const KEPT = 11;

const mm = (key: string, label: string, min: number, max: number, start: number, help: string): Field => ({
  kind: "number",
  unit: "mm",
  key,
  label,
  min,
  max,
  start,
  help,
});

export const cockpitFields: readonly Field[] = [
  mm("stack_mm", "Stack", 100, 1200, 561.1, say("position.cockpit.centre-of-the-head-tube-s")),
  mm("reach_mm", "Reach", -200, 1000, 391.3, say("position.cockpit.centre-of-the-head-tube-s-2")),
  {
    kind: "number",
    unit: "deg",
    key: "head_angle_deg",
    label: say("position.cockpit.head-angle"),
    min: 40,
    max: 100,
    start: 70.84,
    help: say("position.cockpit.steering-axis-to-level-ground-90"),
  },
  mm(
    "upper_stack_mm",
    say("position.cockpit.headset-above-the-head-tube"),
    0,
    150,
    10,
    say("position.cockpit.quill-stem-up-to-the-top"),
  ),
  mm(
    "clamp_height_mm",
    say("position.cockpit.stem-clamp-height"),
    0,
    200,
    40,
    say("position.cockpit.the-stem-s-centre-line-leaves"),
  ),
  mm(
    "hand_forward_mm",
    say("position.cockpit.bar-clamp-to-hand-forward"),
    -500,
    500,
    -95,
    say("position.cockpit.negative-for-a-swept-bar"),
  ),
  mm(
    "hand_up_mm",
    say("position.cockpit.bar-clamp-to-hand-up"),
    -500,
    500,
    10,
    say("position.cockpit.in-ground-axes-bar-turned-as"),
  ),
  mm(
    "target_x_mm",
    say("position.cockpit.hand-wanted-forward-of-the-bb"),
    -500,
    1500,
    345,
    say("position.cockpit.middle-of-the-palm"),
  ),
  mm(
    "target_y_mm",
    say("position.cockpit.hand-wanted-above-the-bb"),
    -200,
    1800,
    672,
    say("position.cockpit.middle-of-the-palm"),
  ),
  {
    kind: "numbers",
    unit: "mm",
    key: "stem_lengths_mm",
    label: say("position.cockpit.stem-lengths-at-hand"),
    min: 0,
    max: 300,
    minItems: 1,
    maxItems: 60,
    start: [80],
    help: say("position.cockpit.steering-axis-to-bar-clamp-centre"),
  },
  {
    kind: "numbers",
    unit: "deg",
    key: "stem_angles_deg",
    label: say("position.cockpit.stem-angles-at-hand"),
    min: -80,
    max: 80,
    minItems: 1,
    maxItems: 60,
    start: [-17, 17],
    help: say("position.cockpit.to-the-perpendicular-of-the-steering"),
  },
  {
    kind: "numbers",
    unit: "mm",
    key: "spacers_mm",
    label: say("position.cockpit.spacer-sums-allowed-below-the-stem"),
    min: 0,
    max: 300,
    minItems: 1,
    maxItems: 60,
    start: [0, 10, 20],
    help: say("position.cockpit.each-is-a-whole-stack-quill"),
  },
];

const RAD = Math.PI / 180;

export function cockpit(q: CockpitInput): Answer<CockpitAnswer> {
  const refusals = outOfRange(cockpitFields, q);
  if (refusals.length > 0) return refused(refusals);
  const lengths = ascending(q.stem_lengths_mm);
  const angles = [...new Set(q.stem_angles_deg)];
  const spacers = ascending(q.spacers_mm);
  const cosHead = Math.cos(q.head_angle_deg * RAD);
  const sinHead = Math.sin(q.head_angle_deg * RAD);
  const directions = angles.map((angle) => {
    const toGround = (90 - q.head_angle_deg + angle) * RAD;
    return { angle, x: Math.cos(toGround), y: Math.sin(toGround) };
  });
  // Hand minus target with a stem of no length and no spacers.
  const fromAxis = q.upper_stack_mm + q.clamp_height_mm / 2;
  const baseX = q.reach_mm - fromAxis * cosHead + q.hand_forward_mm - q.target_x_mm;
  const baseY = q.stack_mm + fromAxis * sinHead + q.hand_up_mm - q.target_y_mm;

  const kept: CockpitCombination[] = [];
  let worstKept = Number.POSITIVE_INFINITY;
  for (const spacer of spacers) {
    const atX = baseX - spacer * cosHead;
    const atY = baseY + spacer * sinHead;
    for (const direction of directions) {
      for (const length of lengths) {
        const errorX = atX + length * direction.x;
        const errorY = atY + length * direction.y;
        const error = Math.hypot(errorX, errorY);
        if (error >= worstKept) continue;
        const place = kept.findIndex((other) => error < other.error_mm);
        kept.splice(place < 0 ? kept.length : place, 0, {
          stem_length_mm: length,
          stem_angle_deg: direction.angle,
          spacers_mm: spacer,
          error_mm: error,
          error_x_mm: errorX,
          error_y_mm: errorY,
          hand_x_mm: q.target_x_mm + errorX,
          hand_y_mm: q.target_y_mm + errorY,
        });
        if (kept.length > KEPT) kept.pop();
        if (kept.length === KEPT) worstKept = kept.at(-1)?.error_mm ?? worstKept;
      }
    }
  }
  const [best, ...nextBest] = kept;
  if (best === undefined) return refused([]);

  const exact = directions.map(({ angle, x, y }): ExactStem => {
    // base + s (-cosHead, sinHead) + L (x, y) = 0; the determinant -cosHead y - sinHead x is -cos(stem angle).
    const determinant = -cosHead * y - sinHead * x;
    const spacer = (-baseX * y + baseY * x) / determinant;
    const length = (cosHead * baseY + sinHead * baseX) / determinant;
    return {
      stem_angle_deg: angle,
      exact_stem_length_mm: length,
      exact_spacers_mm: spacer,
      can_exist: length >= 0 && spacer >= 0,
    };
  });

  const cautions: Caution[] = [];
  const reachable = best.error_mm <= COCKPIT_WITHIN_MM;
  if (!reachable) {
    cautions.push({
      code: "hands-not-on-target",
      at: "best",
      message: say("position.cockpit.the-nearest-of-these-stems-leaves", {
        errorMm: best.error_mm.toFixed(1),
        cockpitWithinMm: COCKPIT_WITHIN_MM,
      }),
    });
  }
  const second = nextBest[0];
  if (second !== undefined && second.error_mm - best.error_mm < COCKPIT_TIE_MM) {
    cautions.push({
      code: "tie",
      at: "next_best[0]",
      message: say("position.cockpit.the-next-combination-is-as-good"),
    });
  }
  if (exact.every((stem) => !stem.can_exist)) {
    cautions.push({
      code: "no-exact-stem",
      at: "exact_for_each_angle",
      message: say("position.cockpit.with-none-of-these-angles-is"),
    });
  }
  return answered(
    {
      best,
      next_best: nextBest,
      exact_for_each_angle: exact,
      combinations: lengths.length * angles.length * spacers.length,
      reachable_within_10_mm: reachable,
    },
    { sources: ["position-contact-points", "position-reach-step"], cautions },
  );
}

function ascending(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}
