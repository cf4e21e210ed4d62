/** The sheet `arm-gap`: the door to `armGap` for the page, the command and the HTTP call. */
import type { Sheet } from "../sheet/index.js";
import { type ArmGapAnswer, type ArmGapInput, armGap } from "./arm-gap.js";
import { armGapFields } from "./arm-gap-fields.js";

export const armGapSheet: Sheet<ArmGapInput, ArmGapAnswer> = {
  id: "arm-gap",
  question: "Do the crank arm and the rings clear the chainstay once it has been set?",
  notes:
    "The stay's outer face is measured from the centre plane at distances from the BB axis, before any setting. Q, arm and " +
    "chainlines hold on the spindle the chainset was made for. Gaps are ± 1 mm until the dry fit. " +
    "Arm: 4 mm wanted, 3 the least; ring: 3 wanted. An arm is never filed.",
  fields: armGapFields,
  gives: [
    { key: "arm_gap_mm", means: "smallest gap of the right arm after setting, mm" },
    { key: "arm_gap_at_radius_mm", means: "where it lies, mm from the BB axis" },
    { key: "arm_gap_before_setting_mm", means: "the smallest gap before setting, mm" },
    { key: "left_arm_gap_mm", means: "left arm, both stays alike, mm" },
    { key: "q_fitted_mm", means: "Q on the fitted spindle, mm" },
    { key: "ring_gaps", means: "per ring: outside radius, stay there after setting and gap in mm, verdict" },
    { key: "verdict", means: "of the arms" },
  ],
  run: armGap,
};
