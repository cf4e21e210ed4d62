/**
 * Is the steerer long enough and where do I cut it?
 * Inputs: the numbers of `steererFields`, all along the steering axis, mm; the steerer's length from the crown seat.
 * Answer: length needed, what is to spare (negative: too short), what to cut off the top, the most spacer below the stem
 *   that this steerer carries with the same parts, and how much of the stem's clamp sits on the steerer once it is cut.
 * Formula: needed = lower stack + head tube - faced off + upper stack + spacers below + clamp + spacers above - gap.
 *   The steerer ends `gap` below the top of the last part, so that the cap can load the bearings.
 *   most spacers below = spacers below + spare, at most the limit, at least 0.
 * Limits: unthreaded steerers. Never lengthen a steerer. Measure twice, with the real parts on the fork, and cut once.
 *   Sources: position-steerer.
 */

import { type Answer, answered, type Caution, type Refusal, refused } from "../quantity/index.js";
import type { Field } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { outOfRange } from "./out-of-range.js";

export interface SteererInput {
  readonly head_tube_mm: number;
  readonly faced_off_mm: number;
  readonly lower_stack_mm: number;
  readonly upper_stack_mm: number;
  readonly spacers_below_mm: number;
  readonly stem_clamp_mm: number;
  readonly spacers_above_mm: number;
  readonly gap_mm: number;
  readonly steerer_available_mm: number;
  readonly limit_spacers_mm: number;
}

export interface SteererAnswer {
  readonly steerer_needed_mm: number;
  readonly spare_mm: number;
  readonly long_enough: boolean;
  readonly cut_from_top_mm: number;
  readonly most_spacers_below_mm: number;
  readonly stem_centre_above_crown_seat_mm: number;
  readonly stem_clamped_on_steerer_mm: number;
  /** False: too short even with no spacer below the stem. */
  readonly carries_the_stem_without_spacers: boolean;
}

const mm = (key: string, label: string, min: number, max: number, start: number, help?: string): Field => ({
  kind: "number",
  unit: "mm",
  key,
  label,
  min,
  max,
  start,
  ...(help === undefined ? {} : { help }),
});

export const steererFields: readonly Field[] = [
  mm("head_tube_mm", say("position.steerer.head-tube"), 30, 500, 145),
  mm("faced_off_mm", say("position.steerer.taken-off-by-facing"), 0, 50, 0, say("position.steerer.both-ends-together")),
  mm(
    "lower_stack_mm",
    say("position.steerer.headset-below-the-head-tube"),
    0,
    120,
    12,
    say("position.steerer.crown-seat-to-the-head-tube"),
  ),
  mm(
    "upper_stack_mm",
    say("position.cockpit.headset-above-the-head-tube"),
    0,
    150,
    10,
    say("position.steerer.head-tube-s-top-face-to"),
  ),
  mm("spacers_below_mm", say("position.steerer.spacers-below-the-stem"), 0, 300, 20),
  mm("stem_clamp_mm", say("position.cockpit.stem-clamp-height"), 5, 200, 40),
  mm("spacers_above_mm", say("position.steerer.spacers-above-the-stem"), 0, 200, 0),
  mm(
    "gap_mm",
    say("position.steerer.steerer-end-below-the-top-of"),
    0,
    50,
    3,
    say("position.steerer.so-that-the-cap-can-load"),
  ),
  mm(
    "steerer_available_mm",
    say("position.steerer.steerer-of-the-fork"),
    0,
    800,
    240,
    say("position.steerer.from-the-crown-seat-to-its"),
  ),
  mm(
    "limit_spacers_mm",
    say("position.steerer.most-spacers-below-the-stem-allowed"),
    0,
    300,
    40,
    say("position.steerer.the-fork-s-sheet-wins-30"),
  ),
];

export function steerer(q: SteererInput): Answer<SteererAnswer> {
  const refusals: Refusal[] = [...outOfRange(steererFields, q)];
  if (q.faced_off_mm >= q.head_tube_mm) {
    refusals.push({
      code: "nothing-left",
      at: "faced_off_mm",
      given: q.faced_off_mm,
      allowed: say("position.steerer.less-than-the-head-tube-s", { headTubeMm: q.head_tube_mm }),
      message: say("position.steerer.facing-takes-off-mm-faced-off", {
        facedOffMm: q.faced_off_mm,
        headTubeMm: q.head_tube_mm,
      }),
    });
  }
  if (q.gap_mm >= q.stem_clamp_mm + q.spacers_above_mm) {
    refusals.push({
      code: "stem-off-the-steerer",
      at: "gap_mm",
      given: q.gap_mm,
      allowed: say("position.steerer.less-than-stem-clamp-and-spacers", {
        stemClampMm: q.stem_clamp_mm + q.spacers_above_mm,
      }),
      message: say("position.steerer.with-a-gap-of-mm-gap", { gapMm: q.gap_mm }),
    });
  }
  if (refusals.length > 0) return refused(refusals);

  const clampBottom = q.lower_stack_mm + q.head_tube_mm - q.faced_off_mm + q.upper_stack_mm + q.spacers_below_mm;
  const needed = clampBottom + q.stem_clamp_mm + q.spacers_above_mm - q.gap_mm;
  const spare = q.steerer_available_mm - needed;
  const end = Math.min(needed, q.steerer_available_mm);
  const clamped = Math.min(q.stem_clamp_mm, Math.max(0, end - clampBottom));
  const carries = q.spacers_below_mm + spare;
  const cautions: Caution[] = [];
  if (spare < 0) {
    cautions.push({
      code: "steerer-too-short",
      at: "spare_mm",
      message:
        carries < 0
          ? say("position.steerer.the-steerer-is-mm-too-short", {
              spare: (-spare).toFixed(1),
              carries: (-carries).toFixed(1),
            })
          : say("position.steerer.the-steerer-is-mm-too-short-2", {
              spare: (-spare).toFixed(1),
              carries: carries.toFixed(1),
            }),
    });
  }
  if (clamped < q.stem_clamp_mm) {
    cautions.push({
      code: "stem-not-fully-on-steerer",
      at: "stem_clamped_on_steerer_mm",
      message: say("position.steerer.of-the-clamp-s-mm-sit", {
        clamped: clamped.toFixed(1),
        stemClampMm: q.stem_clamp_mm,
      }),
    });
  }
  if (q.spacers_below_mm > q.limit_spacers_mm) {
    cautions.push({
      code: "more-spacers-than-allowed",
      at: "spacers_below_mm",
      message: say("position.steerer.mm-of-spacers-below-the-stem", {
        spacersBelowMm: q.spacers_below_mm,
        limitSpacersMm: q.limit_spacers_mm,
      }),
    });
  }
  return answered(
    {
      steerer_needed_mm: needed,
      spare_mm: spare,
      long_enough: spare >= 0,
      cut_from_top_mm: Math.max(0, spare),
      most_spacers_below_mm: Math.max(0, Math.min(q.limit_spacers_mm, carries)),
      stem_centre_above_crown_seat_mm: clampBottom + q.stem_clamp_mm / 2,
      stem_clamped_on_steerer_mm: clamped,
      carries_the_stem_without_spacers: carries >= 0,
    },
    { sources: ["position-steerer"], cautions },
  );
}
