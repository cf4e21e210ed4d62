/** The sheet `fork-swap`: the door to `forkSwap` for page, command and call. */

import type { Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";
import type { ForkSwapInput, ForkSwapValue } from "./fork-swap.js";
import { forkSwapWithBands } from "./fork-swap-bands.js";
import { FRAME_KEYS, MEASURE_FIELDS, type SideViewKey } from "./frame-measures.js";

const NEW_KEYS: readonly SideViewKey[] = [
  "axle_to_crown_mm",
  "rake_mm",
  "front_radius_mm",
  "rear_radius_mm",
  "lower_stack_mm",
];
const NEW_START: Partial<Record<SideViewKey, number>> = {
  axle_to_crown_mm: 440,
  front_radius_mm: 353,
  rear_radius_mm: 353,
};
const FRAME: ReadonlySet<string> = new Set(FRAME_KEYS);

export const forkSwapSheet: Sheet<ForkSwapInput, ForkSwapValue> = {
  id: "fork-swap",
  question: say("geometry.fork-swap-sheet.what-do-another-fork-other-wheels"),
  notes: say("geometry.fork-swap-sheet.side-view-x-forward-y-up"),
  fields: [
    {
      kind: "group",
      key: "frame",
      label: say("geometry.fork-swap-sheet.frame-fork-and-wheels-as-they"),
      fields: MEASURE_FIELDS.filter((f) => FRAME.has(f.key)),
    },
    {
      kind: "group",
      key: "new",
      label: say("geometry.fork-swap-sheet.new-parts"),
      fields: NEW_KEYS.flatMap((key) =>
        MEASURE_FIELDS.filter((f) => f.key === key).map((f) => ({
          ...f,
          optional: true,
          start: NEW_START[key] ?? f.start,
        })),
      ),
    },
  ],
  gives: [
    { key: "rotation_nose_up_deg", means: say("geometry.fork-swap-sheet.turn-of-the-whole-bicycle-positive") },
    { key: "head_angle_deg", means: say("geometry.fork-swap-sheet.head-angle-after-the-swap") },
    { key: "seat_angle_deg", means: say("geometry.fork-swap-sheet.seat-angle-after-the-swap") },
    { key: "bb_height_mm", means: say("geometry.fork-swap-sheet.bb-centre-above-the-ground") },
    { key: "bb_drop_mm", means: say("geometry.fork-swap-sheet.rear-axle-height-minus-bb-height") },
    { key: "stack_mm", means: say("geometry.fork-swap-sheet.height-of-the-head-tube-top") },
    { key: "reach_mm", means: say("geometry.fork-swap-sheet.level-distance-of-the-head-tube") },
    { key: "effective_top_tube_mm", means: say("geometry.fork-swap-sheet.level-from-the-head-tube-top") },
    { key: "effective_top_tube_at_crossing_mm", means: say("geometry.fork-swap-sheet.the-same-from-the-crossing-of") },
    { key: "front_centre_mm", means: say("geometry.fork-swap-sheet.straight-bb-to-front-axle") },
    { key: "front_centre_horizontal_mm", means: say("geometry.fork-swap-sheet.its-level-part") },
    { key: "wheelbase_mm", means: say("geometry.fork-swap-sheet.level-distance-between-the-axles") },
    { key: "trail_mm", means: say("geometry.fork-swap-sheet.trail-on-the-ground") },
    { key: "mechanical_trail_mm", means: say("geometry.fork-swap-sheet.trail-square-to-the-steering-axis") },
    { key: "wheel_flop_mm", means: say("geometry.fork-swap-sheet.trail-sin-h-cos-h") },
  ],
  run: (input) => forkSwapWithBands(input.frame, input.new),
};
