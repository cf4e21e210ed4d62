/**
 * How far must the rim move when the axle is re-spaced?
 * Inputs: the numbers of `dishFields`; spacers added under each locknut, negative where some are taken out.
 * Answer: new width over the locknuts and the way the rim must move to stay in the middle of the frame, right positive.
 * Formula: new = old + left + right; the hub's middle moves (right - left) / 2 to the right. Source: drive-dish.
 */

import { outOfRange } from "../position/out-of-range.js";
import { type Answer, answered, refused } from "../quantity/index.js";
import type { Field, Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";

export interface DishInput {
  readonly OLN_old_mm: number;
  readonly add_left_mm: number;
  readonly add_right_mm: number;
}

export interface DishAnswer {
  readonly OLN_new_mm: number;
  readonly rim_shift_mm_positive_right: number;
}

const mm = (key: string, label: string, min: number, max: number, start: number): Field => ({
  kind: "number",
  unit: "mm",
  key,
  label,
  min,
  max,
  start,
});

export const dishFields: readonly Field[] = [
  mm("OLN_old_mm", say("drive.dish.hub-over-locknuts-now"), 60, 260, 126),
  mm("add_left_mm", say("drive.dish.spacers-added-on-the-left"), -40, 60, 0),
  mm("add_right_mm", say("drive.dish.spacers-added-on-the-right"), -40, 60, 4),
];

export function dish(q: DishInput): Answer<DishAnswer> {
  const refusals = outOfRange(dishFields, q);
  if (refusals.length > 0) return refused(refusals);
  return answered(
    {
      OLN_new_mm: q.OLN_old_mm + q.add_left_mm + q.add_right_mm,
      rim_shift_mm_positive_right: (q.add_right_mm - q.add_left_mm) / 2,
    },
    { sources: ["drive-dish"] },
  );
}

export const dishSheet: Sheet<DishInput, DishAnswer> = {
  id: "dish",
  question: say("drive.dish.how-far-must-the-rim-move"),
  notes: say("drive.dish.spacers-under-the-locknuts-move-the"),
  fields: dishFields,
  gives: [
    { key: "OLN_new_mm", means: say("drive.dish.new-width-over-the-locknuts-mm") },
    { key: "rim_shift_mm_positive_right", means: say("drive.dish.way-of-the-rim-over-the") },
  ],
  run: dish,
};
