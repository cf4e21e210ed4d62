/** The sheet `steerer`: the door to `steerer` for the page, the command and the HTTP call. */
import type { Sheet } from "../sheet/index.js";
import { type SteererAnswer, type SteererInput, steerer, steererFields } from "./steerer.js";

export const steererSheet: Sheet<SteererInput, SteererAnswer> = {
  id: "steerer",
  question: "Is the steerer long enough and where do I cut it?",
  notes:
    "All along the steering axis in mm; the steerer is measured from the crown seat of the fork. Unthreaded steerers. " +
    "The clamped length is given for the steerer as it will be cut, or as it is where it is too short. " +
    "Put the real parts on the fork, mark, measure again, then cut. A steerer is never lengthened.",
  fields: steererFields,
  gives: [
    { key: "steerer_needed_mm", means: "crown seat to the steerer's end, mm" },
    { key: "spare_mm", means: "available minus needed, mm; negative is too short" },
    { key: "long_enough", means: "true when nothing is missing" },
    { key: "cut_from_top_mm", means: "how much to cut off, mm; 0 when too short" },
    { key: "most_spacers_below_mm", means: "most spacer below the stem with the same parts, within the limit, mm" },
    { key: "stem_centre_above_crown_seat_mm", means: "middle of the stem clamp above the crown seat, mm" },
    { key: "stem_clamped_on_steerer_mm", means: "how much of the clamp's height has steerer inside it, mm" },
    { key: "carries_the_stem_without_spacers", means: "false: too short even with no spacer below the stem" },
  ],
  run: steerer,
};
