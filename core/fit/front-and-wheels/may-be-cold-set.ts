/**
 * May this rear triangle be set cold, and by whom? By the tube's class, the way the joints are made, and the wall.
 * An unknown tube counts as heat-treated and thin until it is identified (ruling). Stainless is not named by the rules;
 * it is treated like a heat-treated tube, because its class and temper cannot be seen. Rules S1 and S2.
 */
import { THIN_WALL_MM } from "../../safety/index.js";
import type { DonorDoc, TubeClass } from "../../workshop/index.js";

export type SettingLeave =
  | { readonly kind: "here" }
  | { readonly kind: "builder"; readonly rule: "S2"; readonly why: string; readonly identify: boolean }
  | { readonly kind: "never"; readonly rule: "S1"; readonly why: string };

const NEVER: readonly TubeClass[] = ["aluminium", "magnesium", "carbon"];
const BUILDER: readonly TubeClass[] = ["titanium", "heat_treated", "air_hardening", "stainless"];

export function mayBeColdSet(tube: DonorDoc["tube"]): SettingLeave {
  if (NEVER.includes(tube.class))
    return { kind: "never", rule: "S1", why: `${tube.class} is never set: it cracks or comes apart.` };
  if (tube.joints === "bonded")
    return { kind: "never", rule: "S1", why: "Bonded joints come apart when the stays are set." };
  if (tube.class === "unknown") {
    return {
      kind: "builder",
      rule: "S2",
      why: "The tube is not identified: it counts as heat-treated and thin until it is.",
      identify: true,
    };
  }
  if (BUILDER.includes(tube.class)) {
    return {
      kind: "builder",
      rule: "S2",
      why: `${tube.class.replace("_", "-")} tube is set by a frame builder only.`,
      identify: false,
    };
  }
  if (tube.chainstay_wall !== undefined && tube.chainstay_wall < THIN_WALL_MM) {
    return {
      kind: "builder",
      rule: "S2",
      why: `A wall of ${tube.chainstay_wall} mm is under ${THIN_WALL_MM}: a frame builder only.`,
      identify: false,
    };
  }
  return { kind: "here" };
}
