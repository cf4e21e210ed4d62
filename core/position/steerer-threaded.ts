/**
 * How long must a threaded steerer be and how much thread does it need?
 * Inputs: the numbers of `steererThreadedFields`, along the steering axis, mm.
 * Answer: length from the crown seat and thread downwards from the steerer's end, mm.
 * Formula: needed = lower stack + head tube + threaded upper stack - locknut cover; thread = threaded upper stack -
 *   locknut cover - unthreaded part of the upper cup.
 * Limits: more thread is not better: a quill's wedge must grip below the last thread. Source: position-steerer.
 */
import { type Answer, answered, type Refusal, refused } from "../quantity/index.js";
import type { Field, Sheet } from "../sheet/index.js";
import { outOfRange } from "./out-of-range.js";

export interface SteererThreadedInput {
  readonly head_tube_mm: number;
  readonly lower_stack_mm: number;
  readonly threaded_upper_stack_mm: number;
  readonly locknut_cover_mm: number;
  readonly unthreaded_upper_mm: number;
}

export interface SteererThreadedAnswer {
  readonly steerer_needed_mm: number;
  readonly thread_needed_mm: number;
}

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

export const steererThreadedFields: readonly Field[] = [
  mm("head_tube_mm", "Head tube", 30, 500, 145, "Face to face, as it is now."),
  mm("lower_stack_mm", "Headset below the head tube", 0, 120, 12, "Crown seat to the head tube's bottom face."),
  mm("threaded_upper_stack_mm", "Headset above the head tube", 1, 150, 25, "Up to the top of the locknut."),
  mm("locknut_cover_mm", "Steerer end below the top of the locknut", 0, 50, 2, "So that the locknut's lip closes it."),
  mm("unthreaded_upper_mm", "Unthreaded part", 0, 100, 8, "Upper cup below the screwed race."),
];

export function steererThreaded(q: SteererThreadedInput): Answer<SteererThreadedAnswer> {
  const refusals: Refusal[] = [...outOfRange(steererThreadedFields, q)];
  const thread = q.threaded_upper_stack_mm - q.locknut_cover_mm - q.unthreaded_upper_mm;
  if (thread <= 0) {
    refusals.push({
      code: "no-thread-left",
      at: "unthreaded_upper_mm",
      given: q.unthreaded_upper_mm,
      allowed: `less than ${q.threaded_upper_stack_mm - q.locknut_cover_mm} mm, the stack without the locknut's cover`,
      message: "Locknut cover and unthreaded part together leave no thread in the upper stack.",
    });
  }
  if (refusals.length > 0) return refused(refusals);
  return answered(
    {
      steerer_needed_mm: q.lower_stack_mm + q.head_tube_mm + q.threaded_upper_stack_mm - q.locknut_cover_mm,
      thread_needed_mm: thread,
    },
    {
      sources: ["position-steerer"],
      cautions: [
        {
          code: "wedge-below-the-thread",
          at: "thread_needed_mm",
          message: "The quill's wedge must grip below the last thread. Where it cannot, do not cut more thread.",
        },
      ],
    },
  );
}

export const steererThreadedSheet: Sheet<SteererThreadedInput, SteererThreadedAnswer> = {
  id: "steerer-threaded",
  question: "How long must a threaded steerer be and how much thread does it need?",
  notes: "All along the steering axis in mm; the steerer is measured from the crown seat of the fork.",
  fields: steererThreadedFields,
  gives: [
    { key: "steerer_needed_mm", means: "crown seat to the steerer's end, mm" },
    { key: "thread_needed_mm", means: "thread downwards from the steerer's end, mm" },
  ],
  run: steererThreaded,
};
