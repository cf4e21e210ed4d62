/** The sheet `steerer`: the door to `steerer` for the page, the command and the HTTP call. */

import type { Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { type SteererAnswer, type SteererInput, steerer, steererFields } from "./steerer.js";

export const steererSheet: Sheet<SteererInput, SteererAnswer> = {
  id: "steerer",
  question: say("position.steerer-sheet.is-the-steerer-long-enough-and"),
  notes: say("position.steerer-sheet.all-along-the-steering-axis-in"),
  fields: steererFields,
  gives: [
    { key: "steerer_needed_mm", means: say("position.steerer-sheet.crown-seat-to-the-steerer-s") },
    { key: "spare_mm", means: say("position.steerer-sheet.available-minus-needed-mm-negative-is") },
    { key: "long_enough", means: say("position.steerer-sheet.true-when-nothing-is-missing") },
    { key: "cut_from_top_mm", means: say("position.steerer-sheet.how-much-to-cut-off-mm") },
    { key: "most_spacers_below_mm", means: say("position.steerer-sheet.most-spacer-below-the-stem-with") },
    { key: "stem_centre_above_crown_seat_mm", means: say("position.steerer-sheet.middle-of-the-stem-clamp-above") },
    { key: "stem_clamped_on_steerer_mm", means: say("position.steerer-sheet.how-much-of-the-clamp-s") },
    { key: "carries_the_stem_without_spacers", means: say("position.steerer-sheet.false-too-short-even-with-no") },
  ],
  run: steerer,
};
