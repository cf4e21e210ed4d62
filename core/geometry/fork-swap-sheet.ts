/** The sheet `fork-swap`: the door to `forkSwap` for page, command and call. */
import type { Sheet } from "../sheet/index.js";
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
  question: "What do another fork, other wheels or another lower headset do to it?",
  notes:
    "Side view, x forward, y up, BB centre at the origin, level ground. The frame is rigid; the whole bicycle turns about the BB " +
    "until both tyres, taken at their loaded radii, stand on level ground. What is left out under `new` stays as before. " +
    "Bands come from the usual spread of measuring the frame; the new parts are taken as exact. Flex, tyre squash beyond the " +
    "loaded radius and the strength of the fork are not judged here.",
  fields: [
    {
      kind: "group",
      key: "frame",
      label: "Frame, fork and wheels as they are",
      fields: MEASURE_FIELDS.filter((f) => FRAME.has(f.key)),
    },
    {
      kind: "group",
      key: "new",
      label: "New parts",
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
    { key: "rotation_nose_up_deg", means: "Turn of the whole bicycle, positive when the head rises" },
    { key: "head_angle_deg", means: "Head angle after the swap" },
    { key: "seat_angle_deg", means: "Seat angle after the swap" },
    { key: "bb_height_mm", means: "BB centre above the ground" },
    { key: "bb_drop_mm", means: "Rear axle height minus BB height" },
    { key: "stack_mm", means: "Height of the head-tube top above the BB" },
    { key: "reach_mm", means: "Level distance of the head-tube top ahead of the BB" },
    { key: "effective_top_tube_mm", means: "Level, from the head-tube top back to the seat-tube centre line" },
    { key: "effective_top_tube_at_crossing_mm", means: "The same from the crossing of top tube and head tube" },
    { key: "front_centre_mm", means: "Straight, BB to front axle" },
    { key: "front_centre_horizontal_mm", means: "Its level part" },
    { key: "wheelbase_mm", means: "Level distance between the axles" },
    { key: "trail_mm", means: "Trail on the ground" },
    { key: "mechanical_trail_mm", means: "Trail square to the steering axis" },
    { key: "wheel_flop_mm", means: "trail sin H cos H" },
  ],
  run: (input) => forkSwapWithBands(input.frame, input.new),
};
