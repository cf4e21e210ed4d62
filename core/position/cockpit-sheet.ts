/** The sheet `cockpit`: the door to `cockpit` for the page, the command and the HTTP call. */

import type { Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { type CockpitAnswer, type CockpitInput, cockpit, cockpitFields } from "./cockpit.js";

export const cockpitSheet: Sheet<CockpitInput, CockpitAnswer> = {
  id: "cockpit",
  question: say("position.cockpit-sheet.which-stem-and-spacers-put-the"),
  notes: say("position.cockpit-sheet.x-forward-y-up-from-the"),
  fields: cockpitFields,
  gives: [
    {
      key: "best",
      means: say("position.cockpit-sheet.the-combination-whose-hand-is-nearest"),
    },
    { key: "next_best", means: say("position.cockpit-sheet.up-to-ten-that-follow-nearest") },
    {
      key: "exact_for_each_angle",
      means: say("position.cockpit-sheet.stem-length-and-spacer-sum-in"),
    },
    { key: "combinations", means: say("position.cockpit-sheet.how-many-different-combinations-were-tried") },
    { key: "reachable_within_10_mm", means: say("position.cockpit-sheet.true-when-the-best-leaves-the") },
  ],
  run: cockpit,
};
