/** May the chainstay be dimpled here? At most 2 deep, once, cold, in bare plain steel, 30 from a joint (ruling). */
import type { FitView } from "../view.js";

export const DIMPLE_DEEPEST_MM = 2;
const FROM_JOINT_MM = 30;
/** From the BB axis to the end of the shell's joint with the stay (common practice, no source). */
const SHELL_JOINT_MM = 25;

/** The reason against it; undefined: it may be done. */
export function dimpleRefused(view: FitView, deepMm: number, atRadiusMm: number): string | undefined {
  const tube = view.resolved.donor.tube.class;
  if (tube !== "plain_steel" && tube !== "plain_chromoly") return "Only bare plain steel is dimpled.";
  if (deepMm > DIMPLE_DEEPEST_MM) return `A dimple is ${DIMPLE_DEEPEST_MM} deep at most.`;
  return atRadiusMm < SHELL_JOINT_MM + FROM_JOINT_MM
    ? `Too near the shell's joint: ${FROM_JOINT_MM} is the least.`
    : undefined;
}
