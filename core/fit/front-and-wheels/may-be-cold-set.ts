/**
 * May this rear triangle be set cold, and by whom? By the tube's class, the way the joints are made, and the wall.
 * An unknown tube counts as heat-treated and thin until it is identified (ruling). Stainless is not named by the rules;
 * it is treated like a heat-treated tube, because its class and temper cannot be seen. Rules S1 and S2.
 */

import { THIN_WALL_MM } from "../../safety/index.js";
import { say } from "../../texts/say.js";
import type { DonorDoc, TubeClass } from "../../workshop/index.js";

export type SettingLeave =
  | { readonly kind: "here" }
  | { readonly kind: "builder"; readonly rule: "S2"; readonly why: string; readonly identify: boolean }
  | { readonly kind: "never"; readonly rule: "S1"; readonly why: string };

const NEVER: readonly TubeClass[] = ["aluminium", "magnesium", "carbon"];
const BUILDER: readonly TubeClass[] = ["titanium", "heat_treated", "air_hardening", "stainless"];

export function mayBeColdSet(tube: DonorDoc["tube"]): SettingLeave {
  if (NEVER.includes(tube.class))
    return {
      kind: "never",
      rule: "S1",
      why: say("fit-front.may-be-cold-set.is-never-set-it-cracks-or", { class: tube.class }),
    };
  if (tube.joints === "bonded")
    return { kind: "never", rule: "S1", why: say("fit-front.may-be-cold-set.bonded-joints-come-apart-when-the") };
  if (tube.class === "unknown") {
    return {
      kind: "builder",
      rule: "S2",
      why: say("fit-front.may-be-cold-set.the-tube-is-not-identified-it"),
      identify: true,
    };
  }
  if (BUILDER.includes(tube.class)) {
    return {
      kind: "builder",
      rule: "S2",
      why: say("fit-front.may-be-cold-set.tube-is-set-by-a-frame", { class: tube.class.replace("_", "-") }),
      identify: false,
    };
  }
  if (tube.chainstay_wall !== undefined && tube.chainstay_wall < THIN_WALL_MM) {
    return {
      kind: "builder",
      rule: "S2",
      why: say("fit-front.may-be-cold-set.a-wall-of-mm-is-under", {
        chainstayWall: tube.chainstay_wall,
        thinWallMm: THIN_WALL_MM,
      }),
      identify: false,
    };
  }
  return { kind: "here" };
}
