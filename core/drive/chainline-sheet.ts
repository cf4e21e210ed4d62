/** The sheet `chainline`: the door to `chainline` for the page, the command and the HTTP call. */
import type { Sheet } from "../sheet/index.js";
import { type ChainlineAnswer, type ChainlineInput, chainline, chainlineFields } from "./chainline.js";

export const chainlineSheet: Sheet<ChainlineInput, ChainlineAnswer> = {
  id: "chainline",
  question: "How straight does the chain run?",
  notes:
    "From the frame centre to the middle of the rings, of one ring or of one cog, in mm. Rings count from the inner one, " +
    "cogs from the smallest. An angle is positive where the ring stands further out than the cog. " +
    "Common practice: up to 2 mm good, to 4 mm acceptable with a derailleur, one ring and one cog up to 1.5 mm.",
  fields: chainlineFields,
  gives: [
    { key: "ring_chainlines_mm", means: "each ring, inner first, mm from the frame centre" },
    { key: "rear_chainline_mm", means: "middle of the cogs, mm" },
    { key: "smallest_cog_mm", means: "smallest cog, mm" },
    { key: "largest_cog_mm", means: "largest cog, mm" },
    { key: "chainline_error_front_minus_rear_mm", means: "crank's chainline minus rear chainline, mm" },
    { key: "chain_angles_deg", means: "angle of the chain per pair, ring<i>_cog<j>, deg" },
    { key: "largest_angle_deg", means: "the greatest of them without its sign, deg" },
    { key: "largest_angle_on", means: "the pair it stands on" },
    { key: "judgement", means: "good, acceptable with a derailleur, or too far off (common practice)" },
  ],
  run: chainline,
};
