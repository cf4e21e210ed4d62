import { SURVEY_SIGMA } from "./measurement-kinds.js";
import type { SurveyInput, SurveyMeasurement } from "./survey-input.js";

/** Names of a donor's `measured` list, and under which name the survey takes each (trade's page, section 7). */
export const DONOR_NAMES: Readonly<Record<string, string>> = {
  chainstay: "chainstay_mm",
  seat_tube_cc: "seat_tube_cc_mm",
  top_tube_cc: "top_tube_actual_mm",
  top_tube_slope: "top_tube_slope_deg",
  top_tube_joint_below_head_top: "top_tube_below_head_tube_top_mm",
  down_tube_cc: "down_tube_cc_mm",
  down_tube_joint_above_head_bottom: "down_tube_joint_above_head_tube_bottom_mm",
  head_tube: "head_tube_mm",
  front_centre: "front_centre_mm",
  wheelbase: "wheelbase_mm",
  bb_height: "bb_height_mm",
  fork_ac: "axle_to_crown_mm",
  fork_rake: "rake_mm",
  head_angle: "head_angle_deg",
  seat_angle: "seat_angle_deg",
  rear_axle_to_head_top: "rear_axle_to_head_tube_top_mm",
  front_axle_to_head_top: "front_axle_to_head_tube_top_mm",
  bb_to_head_top: "bb_to_head_tube_top_mm",
  bb_to_head_bottom: "bb_to_head_tube_bottom_mm",
  seat_cluster_to_rear_axle: "rear_axle_to_seat_cluster_mm",
  seat_cluster_to_front_axle: "front_axle_to_seat_cluster_mm",
};

export interface DonorMeasured {
  /** The donor's `measured` list under its own names; unknown ones go through and are refused by the survey. */
  readonly measured: Readonly<Record<string, number>>;
  readonly lowerHeadsetStackMm: number;
  readonly rearRadiusMm: number;
  readonly frontRadiusMm: number;
  /** One standard deviation of the tyre radii; method M2 holds them fixed, so 0.1 where left out. */
  readonly radiusSdMm?: number;
}

/** Which survey do the measurements of a donor make? Standard deviations by SURVEY_SIGMA, joint offsets measured. */
export function donorSurvey(donor: DonorMeasured): SurveyInput {
  const measurements: SurveyMeasurement[] = Object.entries(donor.measured).map(([word, value]) => {
    const name = DONOR_NAMES[word] ?? word;
    return { name, value, sd: SURVEY_SIGMA[name] };
  });
  const sd = donor.radiusSdMm ?? SURVEY_SIGMA.rear_axle_height_mm;
  measurements.push({ name: "rear_axle_height_mm", value: donor.rearRadiusMm, sd });
  measurements.push({ name: "front_axle_height_mm", value: donor.frontRadiusMm, sd });
  return { constants: { lower_stack_mm: donor.lowerHeadsetStackMm }, measurements };
}
