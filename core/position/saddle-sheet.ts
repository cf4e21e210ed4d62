/** The sheet `saddle`: the door to `saddle` for the page, the command and the HTTP call. */

import type { Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { type SaddleAnswer, type SaddleInput, saddle, saddleFields } from "./saddle.js";

export const saddleSheet: Sheet<SaddleInput, SaddleAnswer> = {
  id: "saddle",
  question: say("position.saddle-sheet.which-seatpost-setback-and-extension-put"),
  notes: say("position.saddle-sheet.x-forward-y-up-from-the"),
  fields: saddleFields,
  gives: [
    {
      key: "per_setback",
      means: say("position.saddle-sheet.extension-in-mm-push-of-the"),
    },
    {
      key: "best_setback_mm",
      means: say("position.saddle-sheet.the-setback-that-needs-the-least"),
    },
    { key: "reachable", means: say("position.saddle-sheet.true-when-the-best-lies-inside") },
    { key: "setback_for_centred_rails_mm", means: say("position.saddle-sheet.setback-in-mm-that-would-leave") },
    { key: "bb_to_saddle_top_mm", means: say("position.saddle-sheet.straight-line-from-the-bb-to") },
  ],
  run: saddle,
};
