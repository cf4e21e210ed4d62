/** May the chainstay be dimpled here? At most 2 deep, once, cold, in bare plain steel, 30 from a joint (ruling). */
import { say } from "../../texts/say.js";
import type { FitView } from "../view.js";

export const DIMPLE_DEEPEST_MM = 2;
const FROM_JOINT_MM = 30;
/** From the BB axis to the end of the shell's joint with the stay (common practice, no source). */
const SHELL_JOINT_MM = 25;

/** The reason against it; undefined: it may be done. */
export function dimpleRefused(view: FitView, deepMm: number, atRadiusMm: number): string | undefined {
  const tube = view.resolved.donor.tube.class;
  if (tube !== "plain_steel" && tube !== "plain_chromoly")
    return say("fit-drive.dimple.only-bare-plain-steel-is-dimpled");
  if (deepMm > DIMPLE_DEEPEST_MM)
    return say("fit-drive.dimple.a-dimple-is-deep-at-most", { dimpleDeepestMm: DIMPLE_DEEPEST_MM });
  return atRadiusMm < SHELL_JOINT_MM + FROM_JOINT_MM
    ? say("fit-drive.dimple.too-near-the-shell-s-joint", { fromJointMm: FROM_JOINT_MM })
    : undefined;
}
