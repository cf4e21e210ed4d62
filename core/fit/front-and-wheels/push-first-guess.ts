/**
 * How far must one stay be pushed, before anybody knows its wall? A first guess only.
 * Elastic limit of a cantilevered stay: yield x root^2 / (3 E c), c = half the stay's outside diameter; push = set + that.
 * Stay pair, taper and wall make it ± 40 % of the elastic part. Source: fit-m11-push (M11).
 */

import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { TubeClass } from "../../workshop/index.js";
import type { DecidingNumber } from "../joint.js";

const E_STEEL_MPA = 205_000;
/** Yield that M11's worked figures use. */
const YIELD_MPA: Partial<Record<TubeClass, number>> = { plain_steel: 350, plain_chromoly: 450 };
/** Stay width in M11's worked figures, where none is measured. */
const USUAL_STAY_MM = 22;
const DOUBT = 0.4;

export interface PushGuess {
  readonly number: DecidingNumber;
  readonly cautions: readonly Caution[];
}

/** undefined for a tube class that M11 has no yield for. rootMm, chainstayOdMm, setMm in mm. */
export function pushFirstGuess(q: {
  readonly rootMm: number;
  readonly tubeClass: TubeClass;
  readonly chainstayOdMm: number | undefined;
  readonly setMm: number;
}): PushGuess | undefined {
  const yieldMPa = YIELD_MPA[q.tubeClass];
  if (yieldMPa === undefined) return undefined;
  const od = q.chainstayOdMm ?? USUAL_STAY_MM;
  const elastic = (yieldMPa * q.rootMm ** 2) / (3 * E_STEEL_MPA * (od / 2));
  return {
    number: {
      name: say("fit-front.push-first-guess.push-per-side-first-guess"),
      value: q.setMm + elastic,
      unit: "mm",
      band: {
        low: q.setMm + elastic * (1 - DOUBT),
        high: q.setMm + elastic * (1 + DOUBT),
        means: say("fit-front.push-first-guess.40-of-the-elastic-part-first"),
      },
    },
    cautions: [
      {
        code: "push-is-a-guess",
        at: "donor.tube.chainstay_wall",
        message: say("fit-front.push-first-guess.how-far-to-push-is-a"),
      },
      ...(q.chainstayOdMm === undefined
        ? [
            {
              code: "stay-width-assumed",
              at: "donor.stays.chainstay_od",
              message: say("fit-front.push-first-guess.the-chainstay-s-outside-diameter-is", {
                usualStayMm: USUAL_STAY_MM,
              }),
            },
          ]
        : []),
    ],
  };
}
