/** Does this build have a disc at this end? The parts chosen say so first, then the intent; undefined: nobody has said. */
import type { FitView } from "../view.js";

export function discAt(view: FitView, end: "front" | "rear"): boolean | undefined {
  const caliper = view.at[end === "front" ? "caliper_front" : "caliper_rear"] ?? view.at.caliper;
  if (view.at[end === "front" ? "rotor_front" : "rotor_rear"] !== undefined) return true;
  if (caliper?.kind === "caliper" || caliper?.kind === "caliper_pair") {
    if (caliper.ports.kind !== undefined) return caliper.ports.kind === "disc";
  }
  const wanted = view.resolved.intent.brakes;
  if (wanted === "any") return undefined;
  if (wanted === "disc_both") return true;
  return wanted === (end === "front" ? "disc_front" : "disc_rear");
}
