/** Which figures of a chain on fixed centres are shown: slack with its band, chainstay with its window, chance, other pairs. */
import type { FixedCentresPair } from "../../drive/index.js";
import type { DecidingNumber } from "../joint.js";
import { plain } from "../settle.js";
import type { ChainstayLength } from "./chainstay-length.js";

export function chainNumbers(
  numbers: readonly DecidingNumber[],
  name: string,
  half: number | undefined,
  pairs: readonly FixedCentresPair[],
  chainstay: ChainstayLength | undefined,
): readonly DecidingNumber[] {
  const first = pairs[0];
  const shown = numbers.map((n) =>
    n.name === name && half !== undefined
      ? { ...n, band: { low: n.value - half, high: n.value + half, means: "95 %" } }
      : n,
  );
  if (first === undefined || chainstay === undefined) return shown;
  return [
    ...shown,
    {
      name: `chainstay, ${chainstay.from === "survey" ? "from the survey" : "as measured"}`,
      value: chainstay.mm,
      unit: "mm",
      ...(half === undefined ? {} : { band: { low: chainstay.mm - half, high: chainstay.mm + half, means: "95 %" } }),
      limit: {
        low: first.fits_if_chainstay_from_mm,
        high: first.fits_if_chainstay_to_mm,
        kind: "wanted",
        words: `${plain(first.fits_if_chainstay_from_mm)} to ${plain(first.fits_if_chainstay_to_mm)} for ${first.ring}/${first.cog}`,
      },
    },
    ...(first.chance === undefined
      ? []
      : [{ name: `chance that ${first.ring}/${first.cog} fits`, value: first.chance, unit: "ratio" as const }]),
    ...pairs.slice(1).map((pair) => ({
      name: `slack of ${pair.ring}/${pair.cog} on ${pair.links} links`,
      value: pair.slack_mm,
      unit: "mm" as const,
    })),
  ];
}
