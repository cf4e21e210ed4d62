/**
 * Can this rear derailleur take up the chain of these rings and cogs?
 * Inputs: teeth of all rings and cogs; what the cage can take up and the largest cog it clears, in teeth.
 * Answer: teeth needed, teeth over (0 or more), and a verdict. Up to 4 teeth over is "fits with work": the gears named in
 *   `bars` must never be used, the chain is sized largest on largest, and the rider agrees in writing.
 * Formula: (largest - smallest ring) + (largest - smallest cog). Largest cog: up to 4 over with a longer hanger link,
 *   which costs precision. Limits: common practice; the derailleur's sheet wins. Source: drive-capacity.
 */

import { type Answer, answered, type Caution, type JointVerdict, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";

export interface DerailleurCapacityInput {
  readonly rings: readonly number[];
  readonly cogs: readonly number[];
  /** Left out = not known. */
  readonly cageCapacityTeeth?: number;
  readonly largestCogTeeth?: number;
}

export interface DerailleurCapacity {
  readonly needed_teeth: number;
  readonly over_teeth: number | null;
  readonly largest_cog_over_teeth: number | null;
  /** Small ring with these cogs hangs slack and must not be used. */
  readonly bars: readonly { readonly ring: number; readonly cog: number }[];
  readonly verdict: JointVerdict;
}

export const CAPACITY_OVER_WITH_CONSENT = 4;

export function derailleurCapacity(q: DerailleurCapacityInput): Answer<DerailleurCapacity> {
  const refusals: Refusal[] = [];
  const teeth = (at: string, values: readonly number[]): void => {
    if (values.length > 0 && values.every((v) => Number.isInteger(v) && v >= 6 && v <= 150)) return;
    const message = say("drive.derailleur-capacity.must-be-at-least-one-whole", { at });
    refusals.push({
      code: "out-of-range",
      at,
      given: values,
      allowed: say("drive.derailleur-capacity.whole-numbers-6-to-150"),
      message,
    });
  };
  teeth("rings", q.rings);
  teeth("cogs", q.cogs);
  if (q.cageCapacityTeeth !== undefined) teeth("cageCapacityTeeth", [q.cageCapacityTeeth]);
  if (q.largestCogTeeth !== undefined) teeth("largestCogTeeth", [q.largestCogTeeth]);
  if (refusals.length > 0) return refused(refusals);

  const smallRing = Math.min(...q.rings);
  const bigRing = Math.max(...q.rings);
  const bigCog = Math.max(...q.cogs);
  const needed = bigRing - smallRing + bigCog - Math.min(...q.cogs);
  const over = q.cageCapacityTeeth === undefined ? null : Math.max(0, needed - q.cageCapacityTeeth);
  const cogOver = q.largestCogTeeth === undefined ? null : Math.max(0, bigCog - q.largestCogTeeth);
  // With the chain sized largest on largest, ring + cog may fall short of it by no more than the cage takes up.
  const capacity = q.cageCapacityTeeth ?? Number.POSITIVE_INFINITY;
  const bars = q.rings.flatMap((ring) =>
    q.cogs.filter((cog) => bigRing - ring + bigCog - cog > capacity).map((cog) => ({ ring, cog })),
  );
  const worst = Math.max(over ?? 0, cogOver ?? 0);
  const verdict: JointVerdict =
    worst > CAPACITY_OVER_WITH_CONSENT
      ? "will not fit"
      : over === null || cogOver === null
        ? "measure first"
        : worst > 0
          ? "fits with work"
          : "fits";
  const cautions: Caution[] = [];
  if (over !== null && over > 0 && over <= CAPACITY_OVER_WITH_CONSENT) {
    const named = bars.map((gear) => `${gear.ring}/${gear.cog}`).join(", ");
    cautions.push({
      code: "capacity-exceeded",
      at: "over_teeth",
      message: say("drive.derailleur-capacity.teeth-over-what-the-cage-takes", { over, named }),
    });
  }
  if (cogOver !== null && cogOver > 0 && cogOver <= CAPACITY_OVER_WITH_CONSENT) {
    cautions.push({
      code: "largest-cog-exceeded",
      at: "largest_cog_over_teeth",
      message: say("drive.derailleur-capacity.the-largest-cog-is-teeth-over", { cogOver }),
    });
  }
  return answered(
    { needed_teeth: needed, over_teeth: over, largest_cog_over_teeth: cogOver, bars, verdict },
    { sources: ["drive-capacity"], cautions },
  );
}
