/** Which figures of a chain on fixed centres are shown: slack with its band, chainstay with its window, chance, other pairs. */

import type { FixedCentresPair } from "../../drive/index.js";
import { say } from "../../texts/say.js";
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
      name: say("fit-drive.chain-numbers.chainstay", {
        from:
          chainstay.from === "survey"
            ? say("fit-drive.chain-numbers.from-the-survey")
            : say("fit-drive.chain-numbers.as-measured"),
      }),
      value: chainstay.mm,
      unit: "mm",
      ...(half === undefined ? {} : { band: { low: chainstay.mm - half, high: chainstay.mm + half, means: "95 %" } }),
      limit: {
        low: first.fits_if_chainstay_from_mm,
        high: first.fits_if_chainstay_to_mm,
        kind: "wanted",
        words: say("fit-drive.chain-numbers.to-for", {
          fitsIfChainstayFromMm: plain(first.fits_if_chainstay_from_mm),
          fitsIfChainstayToMm: plain(first.fits_if_chainstay_to_mm),
          ring: first.ring,
          cog: first.cog,
        }),
      },
    },
    ...(first.chance === undefined
      ? []
      : [
          {
            name: say("fit-drive.chain-numbers.chance-that-fits", { ring: first.ring, cog: first.cog }),
            value: first.chance,
            unit: "ratio" as const,
          },
        ]),
    ...pairs.slice(1).map((pair) => ({
      name: say("fit-drive.chain-numbers.slack-of-on-links", { ring: pair.ring, cog: pair.cog, links: pair.links }),
      value: pair.slack_mm,
      unit: "mm" as const,
    })),
  ];
}
