/** The sheet `arm-gap`: the door to `armGap` for the page, the command and the HTTP call. */

import type { Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { type ArmGapAnswer, type ArmGapInput, armGap } from "./arm-gap.js";
import { armGapFields } from "./arm-gap-fields.js";

export const armGapSheet: Sheet<ArmGapInput, ArmGapAnswer> = {
  id: "arm-gap",
  question: say("drive.arm-gap-sheet.do-the-crank-arm-and-the"),
  notes: say("drive.arm-gap-sheet.the-stay-s-outer-face-is"),
  fields: armGapFields,
  gives: [
    { key: "arm_gap_mm", means: say("drive.arm-gap-sheet.smallest-gap-of-the-right-arm") },
    { key: "arm_gap_at_radius_mm", means: say("drive.arm-gap-sheet.where-it-lies-mm-from-the") },
    { key: "arm_gap_before_setting_mm", means: say("drive.arm-gap-sheet.the-smallest-gap-before-setting-mm") },
    { key: "left_arm_gap_mm", means: say("drive.arm-gap-sheet.left-arm-both-stays-alike-mm") },
    { key: "q_fitted_mm", means: say("drive.arm-gap-sheet.q-on-the-fitted-spindle-mm") },
    { key: "ring_gaps", means: say("drive.arm-gap-sheet.per-ring-outside-radius-stay-there") },
    { key: "verdict", means: say("drive.arm-gap-sheet.of-the-arms") },
  ],
  run: armGap,
};
