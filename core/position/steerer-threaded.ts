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
import { say } from "../texts/say.js";
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
  mm(
    "head_tube_mm",
    say("position.steerer.head-tube"),
    30,
    500,
    145,
    say("position.steerer-threaded.face-to-face-as-it-is"),
  ),
  mm(
    "lower_stack_mm",
    say("position.steerer.headset-below-the-head-tube"),
    0,
    120,
    12,
    say("position.steerer.crown-seat-to-the-head-tube"),
  ),
  mm(
    "threaded_upper_stack_mm",
    say("position.cockpit.headset-above-the-head-tube"),
    1,
    150,
    25,
    say("position.steerer-threaded.up-to-the-top-of-the"),
  ),
  mm(
    "locknut_cover_mm",
    say("position.steerer-threaded.steerer-end-below-the-top-of"),
    0,
    50,
    2,
    say("position.steerer-threaded.so-that-the-locknut-s-lip"),
  ),
  mm(
    "unthreaded_upper_mm",
    say("position.steerer-threaded.unthreaded-part"),
    0,
    100,
    8,
    say("position.steerer-threaded.upper-cup-below-the-screwed-race"),
  ),
];

export function steererThreaded(q: SteererThreadedInput): Answer<SteererThreadedAnswer> {
  const refusals: Refusal[] = [...outOfRange(steererThreadedFields, q)];
  const thread = q.threaded_upper_stack_mm - q.locknut_cover_mm - q.unthreaded_upper_mm;
  if (thread <= 0) {
    refusals.push({
      code: "no-thread-left",
      at: "unthreaded_upper_mm",
      given: q.unthreaded_upper_mm,
      allowed: say("position.steerer-threaded.less-than-mm-the-stack-without", {
        threadedUpperStackMm: q.threaded_upper_stack_mm - q.locknut_cover_mm,
      }),
      message: say("position.steerer-threaded.locknut-cover-and-unthreaded-part-together"),
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
          message: say("position.steerer-threaded.the-quill-s-wedge-must-grip"),
        },
      ],
    },
  );
}

export const steererThreadedSheet: Sheet<SteererThreadedInput, SteererThreadedAnswer> = {
  id: "steerer-threaded",
  question: say("position.steerer-threaded.how-long-must-a-threaded-steerer"),
  notes: say("position.steerer-threaded.all-along-the-steering-axis-in"),
  fields: steererThreadedFields,
  gives: [
    { key: "steerer_needed_mm", means: say("position.steerer-sheet.crown-seat-to-the-steerer-s") },
    { key: "thread_needed_mm", means: say("position.steerer-threaded.thread-downwards-from-the-steerer-s") },
  ],
  run: steererThreaded,
};
