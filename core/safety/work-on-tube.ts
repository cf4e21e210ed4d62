/**
 * May this tube be bent or heated at all? Asked before anything is reckoned.
 * Inputs: tube class of the donor (unknown counts as heat-treated and thin until identified), joints, wall where known.
 * Answer: the rules that fire, S1 to S3, with their level; none for plain steel.
 * Source: common practice, no source.
 */

import type { SafetyLevel } from "../quantity/index.js";
import { say } from "../texts/say.js";
import type { DonorDoc, TubeClass } from "../workshop/index.js";

export interface TubeRule {
  readonly rule: "S1" | "S2" | "S3";
  readonly level: SafetyLevel;
  readonly here: string;
}

const NAMES: Readonly<Record<TubeClass, string>> = {
  plain_steel: say("safety.work-on-tube.plain-steel"),
  plain_chromoly: say("safety.work-on-tube.plain-chrome-moly"),
  heat_treated: say("safety.work-on-tube.heat-treated-steel"),
  air_hardening: say("safety.work-on-tube.air-hardening-steel"),
  stainless: say("safety.work-on-tube.stainless-steel"),
  aluminium: "aluminium",
  titanium: "titanium",
  carbon: "carbon",
  magnesium: "magnesium",
  unknown: say("safety.work-on-tube.unknown-tube-counts-as-heat-treated"),
};

/** Wall under which steel counts as very thin, mm. */
export const THIN_WALL_MM = 0.6;

export function workOnTube(tube: DonorDoc["tube"], work: "bend" | "heat"): readonly TubeRule[] {
  const name = NAMES[tube.class];
  const doing = work === "bend" ? say("safety.work-on-tube.cold-setting") : "heat";
  if (tube.class === "aluminium" || tube.class === "magnesium" || tube.class === "carbon") {
    return [{ rule: "S1", level: "refuse", here: say("safety.work-on-tube.the-frame-is-no", { name, doing }) }];
  }
  if (tube.joints === "bonded")
    return [{ rule: "S1", level: "refuse", here: say("safety.work-on-tube.the-joints-are-bonded-no", { doing }) }];
  const hardened = tube.class === "heat_treated" || tube.class === "air_hardening" || tube.class === "unknown";
  if (work === "bend") {
    if (tube.class === "titanium" || hardened) {
      return [
        {
          rule: "S2",
          level: "refuse",
          here: say("safety.work-on-tube.the-frame-is-cold-setting-is", { name }),
        },
      ];
    }
    if (tube.chainstay_wall !== undefined && tube.chainstay_wall < THIN_WALL_MM) {
      return [
        {
          rule: "S2",
          level: "refuse",
          here: say("safety.work-on-tube.the-chainstay-wall-is-under-cold", {
            chainstayWall: tube.chainstay_wall,
            thinWallMm: THIN_WALL_MM,
          }),
        },
      ];
    }
    return [];
  }
  if (hardened || tube.class === "stainless" || tube.class === "titanium") {
    return [{ rule: "S3", level: "gate", here: say("safety.work-on-tube.the-frame-is-no-heat-before", { name }) }];
  }
  return [];
}
