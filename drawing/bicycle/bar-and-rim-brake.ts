/** How does a drop bar look from the side, and a rim brake at its rim? Lines for the eye; only clamp, palm and rim are to scale. */
import { at, type Item, type Point } from "../model/index.js";

/** How deep the hook of a drop bar goes under its clamp, and how far back its end comes; for the eye. */
const HOOK_MM = { deep: 128, back: 20 } as const;

/** Clamp, ramp to the hood under the palm, hook and lever. */
export function dropBar(clamp: Point, palm: Point): readonly Item[] {
  const hood = at(palm.x - 18, palm.y - 16);
  const front = at(palm.x - 4, palm.y - 52);
  const end = at(clamp.x + HOOK_MM.back, clamp.y - HOOK_MM.deep);
  return [
    {
      kind: "tube",
      role: "after",
      outsideMm: 23.8,
      roundEnds: true,
      path: [
        { op: "move", to: clamp },
        { op: "line", to: at(clamp.x + 0.6 * (hood.x - clamp.x), clamp.y + 2) },
        { op: "quad", control: at(front.x + 4, clamp.y), to: front },
        { op: "cubic", control1: at(front.x + 6, front.y - 52), control2: at(front.x - 40, end.y), to: end },
      ],
    },
    {
      kind: "path",
      role: "after",
      fill: "sheet",
      path: [
        { op: "move", to: at(hood.x - 34, clamp.y + 12) },
        { op: "quad", control: at(hood.x, hood.y + 18), to: at(palm.x + 6, palm.y + 14) },
        { op: "quad", control: at(palm.x + 26, palm.y + 12), to: at(palm.x + 20, palm.y - 14) },
        { op: "line", to: at(front.x - 8, front.y + 8) },
        { op: "close" },
      ],
    },
    {
      kind: "tube",
      role: "after",
      outsideMm: 9,
      roundEnds: true,
      path: [
        { op: "move", to: at(palm.x + 16, palm.y - 10) },
        { op: "quad", control: at(palm.x + 22, palm.y - 66), to: at(palm.x - 2, palm.y - 104) },
      ],
    },
  ];
}

/** Arm from the bolt to the rim, and the pad along it. `ahead`: mm in front of the line from axle to bolt. */
export function rimBrake(axle: Point, towards: Point, beadMm: number, ahead: number): readonly Item[] {
  const length = Math.hypot(towards.x - axle.x, towards.y - axle.y);
  const u = at((towards.x - axle.x) / length, (towards.y - axle.y) / length);
  const on = (mm: number, along: number) => at(axle.x + u.x * mm - u.y * along, axle.y + u.y * mm + u.x * along);
  // Positive along the rim is against the clock, so forwards over the top is negative.
  const shift = -ahead;
  return [
    {
      kind: "tube",
      role: "after",
      outsideMm: 11,
      roundEnds: true,
      path: [
        { op: "move", to: on(beadMm + 66, shift) },
        { op: "line", to: on(beadMm + 2, shift) },
      ],
    },
    {
      kind: "tube",
      role: "after",
      outsideMm: 10,
      path: [
        { op: "move", to: on(beadMm - 2, shift - 26) },
        { op: "line", to: on(beadMm - 2, shift + 26) },
      ],
    },
  ];
}
