/** Where in the donor's document is a reading of the survey entered? */
const PATHS: Readonly<Record<string, string>> = {
  top_tube_actual_mm: "top_tube_cc",
  top_tube_below_head_tube_top_mm: "top_tube_joint_below_head_top",
  down_tube_joint_above_head_tube_bottom_mm: "down_tube_joint_above_head_bottom",
  axle_to_crown_mm: "fork_ac",
  rake_mm: "fork_rake",
  rear_axle_to_head_tube_top_mm: "rear_axle_to_head_top",
  front_axle_to_head_tube_top_mm: "front_axle_to_head_top",
  bb_to_head_tube_top_mm: "bb_to_head_top",
  bb_to_head_tube_bottom_mm: "bb_to_head_bottom",
  rear_axle_to_seat_cluster_mm: "seat_cluster_to_rear_axle",
  front_axle_to_seat_cluster_mm: "seat_cluster_to_front_axle",
};

/** Where this reading is entered in the donor's document. */
export function donorPath(surveyName: string): string {
  return `donor.measured.${PATHS[surveyName] ?? surveyName.replace(/_(mm|deg)$/, "")}`;
}
