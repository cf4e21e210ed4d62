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
  mm("head_tube_mm", "Head tube", 30, 500, 145),
  mm("faced_off_mm", "Taken off by facing", 0, 50, 0, "Both ends together."),
  mm("lower_stack_mm", "Headset below the head tube", 0, 120, 12, "Crown seat to the head tube's bottom face."),
  mm("upper_stack_mm", "Headset above the head tube", 0, 150, 10, "Head tube's top face to the first spacer."),
  mm("spacers_below_mm", "Spacers below the stem", 0, 300, 20),
  mm("stem_clamp_mm", "Stem clamp height", 5, 200, 40),
  mm("spacers_above_mm", "Spacers above the stem", 0, 200, 0),
  mm("gap_mm", "Steerer end below the top of the last part", 0, 50, 3, "So that the cap can load the bearings."),
  mm("steerer_available_mm", "Steerer of the fork", 0, 800, 240, "From the crown seat to its end."),
  mm(
    "limit_spacers_mm",
    "Most spacers below the stem allowed",
    0,
    300,
    40,
    "The fork's sheet wins; 30 to 40 is usual.",
  ),
];

export function steerer(q: SteererInput): Answer<SteererAnswer> {
  const refusals: Refusal[] = [...outOfRange(steererFields, q)];
  if (q.faced_off_mm >= q.head_tube_mm) {
    refusals.push({
      code: "nothing-left",
      at: "faced_off_mm",
      given: q.faced_off_mm,
      allowed: `less than the head tube's ${q.head_tube_mm} mm`,
      message: `Facing takes off ${q.faced_off_mm} mm (faced_off_mm), but the head tube is only ${q.head_tube_mm} mm long.`,
    });
  }
  if (q.gap_mm >= q.stem_clamp_mm + q.spacers_above_mm) {
    refusals.push({
      code: "stem-off-the-steerer",
      at: "gap_mm",
      given: q.gap_mm,
      allowed: `less than stem clamp and spacers above it, ${q.stem_clamp_mm + q.spacers_above_mm} mm`,
      message: `With a gap of ${q.gap_mm} mm (gap_mm) the steerer would end below the stem.`,
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
          ? `The steerer is ${(-spare).toFixed(1)} mm too short, and still ${(-carries).toFixed(1)} mm with no spacer at all. Another fork or a lower headset; a steerer is never lengthened.`
          : `The steerer is ${(-spare).toFixed(1)} mm too short for these spacers; it carries ${carries.toFixed(1)} mm below the stem. A steerer is never lengthened.`,
    });
  }
  if (clamped < q.stem_clamp_mm) {
    cautions.push({
      code: "stem-not-fully-on-steerer",
      at: "stem_clamped_on_steerer_mm",
      message: `${clamped.toFixed(1)} of the clamp's ${q.stem_clamp_mm} mm sit on the steerer. A spacer of 3 mm or more above the stem lets it be clamped over its whole height; read the stem's sheet.`,
    });
  }
  if (q.spacers_below_mm > q.limit_spacers_mm) {
    cautions.push({
      code: "more-spacers-than-allowed",
      at: "spacers_below_mm",
      message: `${q.spacers_below_mm} mm of spacers below the stem are over the limit of ${q.limit_spacers_mm} mm.`,
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
