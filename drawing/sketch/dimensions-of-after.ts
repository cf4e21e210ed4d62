/** Which figures of the bicycle to be stand on its drawing? Each with its band, and what it was. */

import type { ForkSwapValue } from "@coldset/core/geometry";
import { type Reckoning, showNumber } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import type { DimensionWish } from "../bicycle/index.js";

const DIMENSIONS = [
  ["head-angle", "head_angle_deg", "head", "°", 1],
  ["trail", "trail_mm", "trail", "", 0],
  ["bb-height", "bb_height_mm", "", "", 0],
  ["wheelbase", "wheelbase_mm", "wheelbase", "", 0],
] as const satisfies readonly (readonly [DimensionWish["name"], keyof ForkSwapValue, string, string, number])[];

export function dimensionsOfAfter(r: Reckoning): readonly DimensionWish[] {
  const after = r.after?.figures;
  if (after === undefined) return [];
  const was = r.geometry.before?.figures.value;
  return DIMENSIONS.map(([name, key, words, sign, decimals]): DimensionWish => {
    const band = after.bands[key];
    const half = band === undefined ? "" : ` ± ${showNumber((band.high - band.low) / 2, decimals)}`;
    return {
      name,
      text: `${words === "" ? "" : `${words} `}${showNumber(after.value[key], decimals)}${sign}${half}`,
      ...(was === undefined
        ? {}
        : { was: say("drawing.dimensions-of-after.was", { was: showNumber(was[key], decimals), sign }) }),
    };
  });
}
