/**
 * Which lengths and angles describe a frame and fork from the side? The names are those of the sheets; every
 * length is in mm, every angle in degrees to level ground, measured behind the tube.
 */
import type { NumberField } from "../sheet/index.js";

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
 * Source: common practice, no source (trade page M2).
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
    "Seat tube, centre to centre",
    "BB centre to where the centre lines of seat tube and top tube cross.",
    50,
    900,
    491,
  ),
  field(
    "top_tube_actual_mm",
    "Top tube, along the tube",
    "Between the crossings with the seat-tube and head-tube centre lines.",
    100,
    1500,
    550.8,
  ),
  field(
    "top_tube_slope_deg",
    "Top-tube slope",
    "To level ground; positive when the front end is higher.",
    -60,
    70,
    5.98,
  ),
  field("head_angle_deg", "Head angle", "Steering axis to level ground, measured behind the tube.", 40, 90, 71),
  field("seat_angle_deg", "Seat angle", "Seat tube to level ground, measured behind the tube.", 40, 100, 73),
  field("head_tube_mm", "Head tube", "Bottom face to top face, no headset.", 20, 500, 145),
  field(
    "top_tube_below_head_tube_top_mm",
    "Top tube below head-tube top",
    "Along the head tube, from its top face down to the crossing of the centre lines.",
    -100,
    450,
    35,
  ),
  field("lower_stack_mm", "Lower headset stack", "Bottom face of the head tube to the fork's crown seat.", 0, 150, 12),
  field(
    "axle_to_crown_mm",
    "Axle to crown",
    "Straight, from the front-axle centre to the crown seat on the steering axis.",
    50,
    900,
    392,
  ),
  field(
    "rake_mm",
    "Fork rake",
    "Front axle to the steering axis, square to the axis; positive ahead of it.",
    -150,
    250,
    45,
  ),
  field("chainstay_mm", "Chainstay", "Straight, BB centre to rear-axle centre.", 100, 1500, 442),
  field("bb_drop_mm", "BB drop", "Rear-axle height minus BB height; negative where the BB is higher.", -300, 300, 58),
  field("rear_radius_mm", "Rear tyre radius", "Ground to axle, under load.", 50, 600, 346),
  field("front_radius_mm", "Front tyre radius", "Ground to axle, under load.", 50, 600, 346),
  field("wheelbase_mm", "Wheelbase", "Level distance between the axles.", 300, 3500, 1051.4),
  field("front_centre_mm", "Front-centre", "Straight, BB centre to front-axle centre.", 150, 3000, 616),
  field("bb_height_mm", "BB height", "Ground to BB centre.", 20, 800, 288),
  field(
    "bb_to_head_tube_top_mm",
    "BB to head-tube top",
    "Straight, BB centre to the centre of the head tube's top face.",
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
