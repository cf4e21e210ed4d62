/**
 * What can be measured on a frame in the stand, under which name, how, and how surely?
 *
 * The names are those of the `survey` sheet. `sd` is one standard deviation of a careful workshop measurement
 * (method M2 of the trade's page: common practice, no source): angles 0.3 degrees; head tube and the two joint offsets
 * 1 mm; down tube, wheelbase, BB height and axle-to-crown 2 mm; every other length 1.5 mm. M2 holds the tyre radii
 * fixed; here they are measurements with 0.1 mm.
 */
export interface MeasurementKind {
  readonly name: string;
  /** In workshop words. */
  readonly label: string;
  readonly unit: "mm" | "deg";
  /** One standard deviation where the builder gives none. */
  readonly sd: number;
  /** How it is taken. */
  readonly how: string;
}

const kind = (name: string, label: string, unit: "mm" | "deg", sd: number, how: string): MeasurementKind => ({
  name,
  label,
  unit,
  sd,
  how,
});

const LEVEL = "Bicycle upright on a level floor, digital level along the tube, both ways round, mean of the two.";
const TRAMMEL = "Trammel or long calliper between turned pins in the centres, both sides, mean of the two.";
const HEIGHT = "Square on the level floor, rider's load or the loaded radius, tyres at riding pressure.";

export const MEASUREMENT_KINDS: readonly MeasurementKind[] = [
  kind(
    "seat_tube_cc_mm",
    "seat tube, BB centre to top-tube centre",
    "mm",
    1.5,
    "Along the seat tube, from the BB centre to where the centre line of the top tube crosses it.",
  ),
  kind(
    "top_tube_actual_mm",
    "top tube, centre to centre",
    "mm",
    1.5,
    "Along the top tube, from seat-tube centre to head-tube centre: inside edge to inside edge plus half of each tube.",
  ),
  kind("top_tube_slope_deg", "slope of the top tube", "deg", 0.3, LEVEL),
  kind("head_angle_deg", "head angle", "deg", 0.3, LEVEL),
  kind("seat_angle_deg", "seat angle", "deg", 0.3, LEVEL),
  kind("head_tube_mm", "head tube, face to face", "mm", 1, "Calliper over both faces with the headset cups out."),
  kind(
    "axle_to_crown_mm",
    "fork, axle to crown",
    "mm",
    2,
    "Straight from the middle of the crown seat to the middle of the axle.",
  ),
  kind(
    "rake_mm",
    "fork rake",
    "mm",
    1.5,
    "Steerer in V-blocks, level: height of the axle centre above or below the steerer centre.",
  ),
  kind("bb_height_mm", "BB height above the floor", "mm", 2, HEIGHT),
  kind("rear_axle_height_mm", "rear axle height (loaded tyre radius)", "mm", 0.1, HEIGHT),
  kind("front_axle_height_mm", "front axle height (loaded tyre radius)", "mm", 0.1, HEIGHT),
  kind("chainstay_mm", "chainstay, BB centre to rear axle", "mm", 1.5, TRAMMEL),
  kind("wheelbase_mm", "wheelbase", "mm", 2, "Axle to axle along the floor, wheels straight, both sides."),
  kind("front_centre_mm", "BB centre to front axle", "mm", 1.5, TRAMMEL),
  kind(
    "bb_to_head_tube_top_mm",
    "BB centre to head tube top",
    "mm",
    1.5,
    "Trammel from the BB centre to the centre of the top face of the head tube.",
  ),
  kind(
    "bb_to_head_tube_bottom_mm",
    "BB centre to head tube bottom",
    "mm",
    1.5,
    "Trammel from the BB centre to the centre of the bottom face of the head tube.",
  ),
  kind(
    "rear_axle_to_seat_cluster_mm",
    "rear axle to seat cluster",
    "mm",
    1.5,
    "Trammel from the rear axle to where the centre lines of seat tube and top tube cross.",
  ),
  kind(
    "rear_axle_to_head_tube_top_mm",
    "rear axle to head tube top",
    "mm",
    1.5,
    "Tape or trammel from the rear axle to the centre of the top face of the head tube, both sides.",
  ),
  kind(
    "front_axle_to_seat_cluster_mm",
    "front axle to seat cluster",
    "mm",
    1.5,
    "Tape or trammel from the front axle to where the centre lines of seat tube and top tube cross, both sides.",
  ),
  kind(
    "front_axle_to_head_tube_top_mm",
    "front axle to head tube top",
    "mm",
    1.5,
    "Tape or trammel from the front axle to the centre of the top face of the head tube, both sides.",
  ),
  kind(
    "down_tube_cc_mm",
    "down tube, BB centre to head-tube centre line",
    "mm",
    2,
    "Along the down tube, from the BB centre to where its centre line crosses that of the head tube.",
  ),
  kind(
    "top_tube_below_head_tube_top_mm",
    "top-tube joint below the head tube top",
    "mm",
    1,
    "Along the head tube, from its top face to the centre line of the top tube.",
  ),
  kind(
    "down_tube_joint_above_head_tube_bottom_mm",
    "down-tube joint above the head tube bottom",
    "mm",
    1,
    "Along the head tube, from its bottom face to the centre line of the down tube.",
  ),
];

/** Names that a measurement of the survey may have, in the order of the list above. */
export const MEASUREMENT_NAMES: readonly string[] = MEASUREMENT_KINDS.map((k) => k.name);

const KIND_INDEX: ReadonlyMap<string, number> = new Map(MEASUREMENT_KINDS.map((k, i) => [k.name, i]));

/** At which place of MEASUREMENT_KINDS does this name stand? -1 where it is unknown. */
export function measurementKindIndex(name: string): number {
  return KIND_INDEX.get(name) ?? -1;
}

/** What is known of the measurement with this name? */
export function measurementKind(name: string): MeasurementKind | undefined {
  return MEASUREMENT_KINDS[measurementKindIndex(name)];
}

/** One standard deviation of each measurement as a careful workshop takes it (method M2; see MEASUREMENT_KINDS). */
export const SURVEY_SIGMA: Readonly<Record<string, number>> = Object.fromEntries(
  MEASUREMENT_KINDS.map((k) => [k.name, k.sd]),
);
