/** Does a chosen part work by cable while no cable is chosen? Then neither the list nor the sum has it. */
import { say } from "../../texts/say.js";
import type { Reckoned } from "../question.js";

export function noCable(r: Reckoned): readonly string[] {
  const { lever, shifter, cable } = r.resolved.at;
  if (cable !== undefined || r.resolved.also.some((row) => row.part.kind === "cable_kit")) return [];
  const brake = lever?.kind === "lever_pair" && (lever.ports.acts === "cable" || lever.ports.pull !== undefined);
  const gears = shifter?.kind === "shifter";
  if (!brake && !gears) return [];
  const by =
    brake && gears
      ? say("asked.no-cable.brakes-and-gears-work")
      : brake
        ? say("asked.no-cable.the-brakes-work")
        : say("asked.no-cable.the-gears-work");
  return [say("asked.no-cable.by-cable-and-no-cable-is", { by })];
}
