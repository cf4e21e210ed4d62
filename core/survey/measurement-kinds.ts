/**
 * What can be measured on a frame in the stand, under which name, how, and how surely?
 *
 * The names are those of the `survey` sheet. `sd` is one standard deviation of a careful workshop measurement
 * (method M2 of the trade's page: common practice, no source): angles 0.3 degrees; head tube and the two joint offsets
 * 1 mm; down tube, wheelbase, BB height and axle-to-crown 2 mm; every other length 1.5 mm. M2 holds the tyre radii
 * fixed; here they are measurements with 0.1 mm.
 */
import { say } from "../texts/say.js";

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

const LEVEL = say("survey.measurement-kinds.bicycle-upright-on-a-level-floor");
const TRAMMEL = say("survey.measurement-kinds.trammel-or-long-calliper-between-turned");
const HEIGHT = say("survey.measurement-kinds.square-on-the-level-floor-rider");

export const MEASUREMENT_KINDS: readonly MeasurementKind[] = [
  kind(
    "seat_tube_cc_mm",
    say("survey.measurement-kinds.seat-tube-bb-centre-to-top"),
    "mm",
    1.5,
    say("survey.measurement-kinds.along-the-seat-tube-from-the"),
  ),
  kind(
    "top_tube_actual_mm",
    say("survey.measurement-kinds.top-tube-centre-to-centre"),
    "mm",
    1.5,
    say("survey.measurement-kinds.along-the-top-tube-from-seat"),
  ),
  kind("top_tube_slope_deg", say("survey.measurement-kinds.slope-of-the-top-tube"), "deg", 0.3, LEVEL),
  kind("head_angle_deg", say("survey.measurement-kinds.head-angle"), "deg", 0.3, LEVEL),
  kind("seat_angle_deg", say("survey.measurement-kinds.seat-angle"), "deg", 0.3, LEVEL),
  kind(
    "head_tube_mm",
    say("survey.measurement-kinds.head-tube-face-to-face"),
    "mm",
    1,
    say("survey.measurement-kinds.calliper-over-both-faces-with-the"),
  ),
  kind(
    "axle_to_crown_mm",
    say("survey.measurement-kinds.fork-axle-to-crown"),
    "mm",
    2,
    say("survey.measurement-kinds.straight-from-the-middle-of-the"),
  ),
  kind(
    "rake_mm",
    say("survey.measurement-kinds.fork-rake"),
    "mm",
    1.5,
    say("survey.measurement-kinds.steerer-in-v-blocks-level-height"),
  ),
  kind("bb_height_mm", say("survey.measurement-kinds.bb-height-above-the-floor"), "mm", 2, HEIGHT),
  kind("rear_axle_height_mm", say("survey.measurement-kinds.rear-axle-height-loaded-tyre-radius"), "mm", 0.1, HEIGHT),
  kind("front_axle_height_mm", say("survey.measurement-kinds.front-axle-height-loaded-tyre-radius"), "mm", 0.1, HEIGHT),
  kind("chainstay_mm", say("survey.measurement-kinds.chainstay-bb-centre-to-rear-axle"), "mm", 1.5, TRAMMEL),
  kind("wheelbase_mm", "wheelbase", "mm", 2, say("survey.measurement-kinds.axle-to-axle-along-the-floor")),
  kind("front_centre_mm", say("survey.measurement-kinds.bb-centre-to-front-axle"), "mm", 1.5, TRAMMEL),
  kind(
    "bb_to_head_tube_top_mm",
    say("survey.measurement-kinds.bb-centre-to-head-tube-top"),
    "mm",
    1.5,
    say("survey.measurement-kinds.trammel-from-the-bb-centre-to"),
  ),
  kind(
    "bb_to_head_tube_bottom_mm",
    say("survey.measurement-kinds.bb-centre-to-head-tube-bottom"),
    "mm",
    1.5,
    say("survey.measurement-kinds.trammel-from-the-bb-centre-to-2"),
  ),
  kind(
    "rear_axle_to_seat_cluster_mm",
    say("survey.measurement-kinds.rear-axle-to-seat-cluster"),
    "mm",
    1.5,
    say("survey.measurement-kinds.trammel-from-the-rear-axle-to"),
  ),
  kind(
    "rear_axle_to_head_tube_top_mm",
    say("survey.measurement-kinds.rear-axle-to-head-tube-top"),
    "mm",
    1.5,
    say("survey.measurement-kinds.tape-or-trammel-from-the-rear"),
  ),
  kind(
    "front_axle_to_seat_cluster_mm",
    say("survey.measurement-kinds.front-axle-to-seat-cluster"),
    "mm",
    1.5,
    say("survey.measurement-kinds.tape-or-trammel-from-the-front"),
  ),
  kind(
    "front_axle_to_head_tube_top_mm",
    say("survey.measurement-kinds.front-axle-to-head-tube-top"),
    "mm",
    1.5,
    say("survey.measurement-kinds.tape-or-trammel-from-the-front-2"),
  ),
  kind(
    "down_tube_cc_mm",
    say("survey.measurement-kinds.down-tube-bb-centre-to-head"),
    "mm",
    2,
    say("survey.measurement-kinds.along-the-down-tube-from-the"),
  ),
  kind(
    "top_tube_below_head_tube_top_mm",
    say("survey.measurement-kinds.top-tube-joint-below-the-head"),
    "mm",
    1,
    say("survey.measurement-kinds.along-the-head-tube-from-its"),
  ),
  kind(
    "down_tube_joint_above_head_tube_bottom_mm",
    say("survey.measurement-kinds.down-tube-joint-above-the-head"),
    "mm",
    1,
    say("survey.measurement-kinds.along-the-head-tube-from-its-2"),
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
