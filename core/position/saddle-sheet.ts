/** The sheet `saddle`: the door to `saddle` for the page, the command and the HTTP call. */
import type { Sheet } from "../sheet/index.js";
import { type SaddleAnswer, type SaddleInput, saddle, saddleFields } from "./saddle.js";

export const saddleSheet: Sheet<SaddleInput, SaddleAnswer> = {
  id: "saddle",
  question: "Which seatpost setback and extension put the saddle where it belongs?",
  notes:
    "x forward, y up, from the BB centre, ground level. Clamp centre = extension up the seat tube axis, then setback square " +
    "to it, rearwards and down. Saddle = clamp centre + its height straight up + rails pushed back. " +
    "Read how deep the post then sits before you cut or ride: at least to its mark and twice its diameter.",
  fields: saddleFields,
  gives: [
    {
      key: "per_setback",
      means: "extension in mm, push of the rails in mm (back is positive), inside the range or not",
    },
    {
      key: "best_setback_mm",
      means: "the setback that needs the least push of the rails; the nearest if none reaches",
    },
    { key: "reachable", means: "true when the best lies inside the rail range" },
    { key: "setback_for_centred_rails_mm", means: "setback in mm that would leave the rails in the middle" },
    { key: "bb_to_saddle_top_mm", means: "straight line from the BB to the saddle's reference point, mm" },
  ],
  run: saddle,
};
