/** The sheet `cockpit`: the door to `cockpit` for the page, the command and the HTTP call. */
import type { Sheet } from "../sheet/index.js";
import { type CockpitAnswer, type CockpitInput, cockpit, cockpitFields } from "./cockpit.js";

export const cockpitSheet: Sheet<CockpitInput, CockpitAnswer> = {
  id: "cockpit",
  question: "Which stem and spacers put the hands where they belong?",
  notes:
    "x forward, y up, from the BB centre, ground level. Up the steering axis from the head tube: headset, spacers, stem; " +
    "the stem's centre line leaves the axis at half its clamp height, at 90 - head angle + stem angle to the ground. " +
    "Every length is tried with every angle and every spacer sum. Errors in x and y are hand minus target. " +
    "Whether the steerer is long enough is the sheet steerer.",
  fields: cockpitFields,
  gives: [
    {
      key: "best",
      means: "the combination whose hand is nearest to the target: stem, spacers, error, hand; mm and deg",
    },
    { key: "next_best", means: "up to ten that follow, nearest first" },
    {
      key: "exact_for_each_angle",
      means: "stem length and spacer sum in mm that would hit the target, for each angle",
    },
    { key: "combinations", means: "how many different combinations were tried" },
    { key: "reachable_within_10_mm", means: "true when the best leaves the hands within 10 mm of the target" },
  ],
  run: cockpit,
};
