/** The sheet `chainline`: the door to `chainline` for the page, the command and the HTTP call. */

import type { Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { type ChainlineAnswer, type ChainlineInput, chainline, chainlineFields } from "./chainline.js";

export const chainlineSheet: Sheet<ChainlineInput, ChainlineAnswer> = {
  id: "chainline",
  question: say("drive.chainline-sheet.how-straight-does-the-chain-run"),
  notes: say("drive.chainline-sheet.from-the-frame-centre-to-the"),
  fields: chainlineFields,
  gives: [
    { key: "ring_chainlines_mm", means: say("drive.chainline-sheet.each-ring-inner-first-mm-from") },
    { key: "rear_chainline_mm", means: say("drive.chainline-sheet.middle-of-the-cogs-mm") },
    { key: "smallest_cog_mm", means: say("drive.chainline-sheet.smallest-cog-mm") },
    { key: "largest_cog_mm", means: say("drive.chainline-sheet.largest-cog-mm") },
    {
      key: "chainline_error_front_minus_rear_mm",
      means: say("drive.chainline-sheet.crank-s-chainline-minus-rear-chainline"),
    },
    { key: "chain_angles_deg", means: say("drive.chainline-sheet.angle-of-the-chain-per-pair") },
    { key: "largest_angle_deg", means: say("drive.chainline-sheet.the-greatest-of-them-without-its") },
    { key: "largest_angle_on", means: say("drive.chainline-sheet.the-pair-it-stands-on") },
    { key: "judgement", means: say("drive.chainline-sheet.good-acceptable-with-a-derailleur-or") },
  ],
  run: chainline,
};
