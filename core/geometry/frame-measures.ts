/**
 * Which lengths and angles describe a frame and fork from the side? The names are those of the sheets; every
 * length is in mm, every angle in degrees to level ground, measured behind the tube.
 */

import type { NumberField } from "../sheet/index.js";
import { say } from "../texts/say.js";

/** The fourteen measures that lay out a frame, its fork and its wheels without any others. */
export const FRAME_KEYS = [
  "seat_tube_cc_mm",
  "top_tube_actual_mm",
  "top_tube_slope_deg",
  "head_angle_deg",
  "seat_angle_deg",
  "head_tube_mm",
  "top_tube_below_head_tube_top_mm",
  "lower_stack_mm",
  "axle_to_crown_mm",
  "rake_mm",
  "chainstay_mm",
  "bb_drop_mm",
  "rear_radius_mm",
  "front_radius_mm",
] as const;

/** Four more that are easy to take on a whole bicycle. */
export const WHOLE_BICYCLE_KEYS = [
  "wheelbase_mm",
  "front_centre_mm",
  "bb_height_mm",
  "bb_to_head_tube_top_mm",
] as const;

export const SIDE_VIEW_KEYS = [...FRAME_KEYS, ...WHOLE_BICYCLE_KEYS] as const;

export type FrameKey = (typeof FRAME_KEYS)[number];
export type SideViewKey = (typeof SIDE_VIEW_KEYS)[number];
export type FrameMeasures = Readonly<Record<FrameKey, number>>;
export type SideViewInput = Readonly<Partial<Record<SideViewKey, number>>>;

export interface NewParts {
  readonly axle_to_crown_mm?: number;
  readonly rake_mm?: number;
  readonly front_radius_mm?: number;
  readonly rear_radius_mm?: number;
  readonly lower_stack_mm?: number;
}

/**
 * How far does one careful workshop measurement stray (one standard deviation, mm or degrees)?
 * M2: angles 0.3; head tube and joint offset 1; wheelbase, BB height, axle-to-crown 2; other lengths 1.5.
 * Wheel radii and the lower headset stack are held fixed there; 0.05 does that and keeps the arithmetic smooth.
 * Source: common practice, no source (M2).
 */
export const USUAL_SD: Readonly<Record<SideViewKey, number>> = {
  seat_tube_cc_mm: 1.5,
  top_tube_actual_mm: 1.5,
  top_tube_slope_deg: 0.3,
  head_angle_deg: 0.3,
  seat_angle_deg: 0.3,
  head_tube_mm: 1,
  top_tube_below_head_tube_top_mm: 1,
  lower_stack_mm: 0.05,
  axle_to_crown_mm: 2,
  rake_mm: 1.5,
  chainstay_mm: 1.5,
  bb_drop_mm: 1.5,
  rear_radius_mm: 0.05,
  front_radius_mm: 0.05,
  wheelbase_mm: 2,
  front_centre_mm: 1.5,
  bb_height_mm: 2,
  bb_to_head_tube_top_mm: 1.5,
};

const field = (
  key: SideViewKey,
  label: string,
  help: string,
  min: number,
  max: number,
  start: number,
): NumberField & { readonly key: SideViewKey } => ({
  kind: "number",
  key,
  label,
  help,
  unit: key.endsWith("_deg") ? "deg" : "mm",
  min,
  max,
  start,
});

/** Fields of the sheets. Start values: the worked bicycle of M4 (slope and top tube computed so that it closes). */
export const MEASURE_FIELDS: readonly (NumberField & { readonly key: SideViewKey })[] = [
  field(
    "seat_tube_cc_mm",
    say("geometry.frame-measures.seat-tube-centre-to-centre"),
    say("geometry.frame-measures.bb-centre-to-where-the-centre"),
    50,
    900,
    491,
  ),
  field(
    "top_tube_actual_mm",
    say("geometry.frame-measures.top-tube-along-the-tube"),
    say("geometry.frame-measures.between-the-crossings-with-the-seat"),
    100,
    1500,
    550.8,
  ),
  field(
    "top_tube_slope_deg",
    say("geometry.frame-measures.top-tube-slope"),
    say("geometry.frame-measures.to-level-ground-positive-when-the"),
    -60,
    70,
    5.98,
  ),
  field(
    "head_angle_deg",
    say("geometry.frame-measures.head-angle"),
    say("geometry.frame-measures.steering-axis-to-level-ground-measured"),
    40,
    90,
    71,
  ),
  field(
    "seat_angle_deg",
    say("geometry.frame-measures.seat-angle"),
    say("geometry.frame-measures.seat-tube-to-level-ground-measured"),
    40,
    100,
    73,
  ),
  field(
    "head_tube_mm",
    say("geometry.frame-measures.head-tube"),
    say("geometry.frame-measures.bottom-face-to-top-face-no"),
    20,
    500,
    145,
  ),
  field(
    "top_tube_below_head_tube_top_mm",
    say("geometry.frame-measures.top-tube-below-head-tube-top"),
    say("geometry.frame-measures.along-the-head-tube-from-its"),
    -100,
    450,
    35,
  ),
  field(
    "lower_stack_mm",
    say("geometry.frame-measures.lower-headset-stack"),
    say("geometry.frame-measures.bottom-face-of-the-head-tube"),
    0,
    150,
    12,
  ),
  field(
    "axle_to_crown_mm",
    say("geometry.frame-measures.axle-to-crown"),
    say("geometry.frame-measures.straight-from-the-front-axle-centre"),
    50,
    900,
    392,
  ),
  field(
    "rake_mm",
    say("geometry.frame-measures.fork-rake"),
    say("geometry.frame-measures.front-axle-to-the-steering-axis"),
    -150,
    250,
    45,
  ),
  field("chainstay_mm", "Chainstay", say("geometry.frame-measures.straight-bb-centre-to-rear-axle"), 100, 1500, 442),
  field(
    "bb_drop_mm",
    say("geometry.frame-measures.bb-drop"),
    say("geometry.frame-measures.rear-axle-height-minus-bb-height"),
    -300,
    300,
    58,
  ),
  field(
    "rear_radius_mm",
    say("geometry.frame-measures.rear-tyre-radius"),
    say("geometry.frame-measures.ground-to-axle-under-load"),
    50,
    600,
    346,
  ),
  field(
    "front_radius_mm",
    say("geometry.frame-measures.front-tyre-radius"),
    say("geometry.frame-measures.ground-to-axle-under-load"),
    50,
    600,
    346,
  ),
  field(
    "wheelbase_mm",
    "Wheelbase",
    say("geometry.frame-measures.level-distance-between-the-axles"),
    300,
    3500,
    1051.4,
  ),
  field(
    "front_centre_mm",
    "Front-centre",
    say("geometry.frame-measures.straight-bb-centre-to-front-axle"),
    150,
    3000,
    616,
  ),
  field(
    "bb_height_mm",
    say("geometry.frame-measures.bb-height"),
    say("geometry.frame-measures.ground-to-bb-centre"),
    20,
    800,
    288,
  ),
  field(
    "bb_to_head_tube_top_mm",
    say("geometry.frame-measures.bb-to-head-tube-top"),
    say("geometry.frame-measures.straight-bb-centre-to-the-centre"),
    100,
    1500,
    684,
  ),
];

/** The word for a measure in a sentence. */
export function measureLabel(key: SideViewKey): string {
  const found = MEASURE_FIELDS.find((f) => f.key === key);
  const label = found ? found.label : key;
  return label.startsWith("BB") ? label : label.charAt(0).toLowerCase() + label.slice(1);
}
