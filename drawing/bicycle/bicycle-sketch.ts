import type { Caution, Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { Point } from "../model/index.js";

/**
 * What must be known of a bicycle to draw it to scale from the side? Points in mm, x forward, y up, origin at the bottom bracket.
 * Everything that is optional is left out of the drawing when it is not known; it is never guessed.
 * The widths of tubes are only for the eye: one that is not given is drawn 28.6 (head 36, chainstay 19, seat stay 15), and says so.
 */
export interface BicycleSketch {
  readonly bb: Point;
  readonly rearAxle: Point;
  readonly frontAxle: Point;
  /** Crossing of seat-tube and top-tube centre lines. */
  readonly seatCluster: Point;
  /** Crossing of top-tube and head-tube centre lines. */
  readonly headCrossing: Point;
  readonly headTop: Point;
  readonly headBottom: Point;
  /** On the steering axis. */
  readonly crownSeat: Point;
  /** Crossing of down-tube and head-tube centre lines; without it a point a quarter up the head tube is used. */
  readonly downCrossing?: Point;
  /** Upper end of the seat tube. */
  readonly seatTubeTop?: Point;
  /** Tyre, outside (loaded), and the bead seat of the rim. */
  readonly rearRadiusMm: number;
  readonly frontRadiusMm: number;
  readonly rearBeadMm: number;
  readonly frontBeadMm: number;
  /** Height of the ground in the same coordinates, so below zero. */
  readonly groundY: number;
  /** Reference point: top, over the middle of the rails. */
  readonly saddle?: Point;
  readonly steererTop?: Point;
  /** Centre of the bar clamp. */
  readonly barClamp?: Point;
  /** Middle of the palm. */
  readonly palm?: Point;
  readonly crankLengthMm?: number;
  readonly chainringRadiusMm?: number;
  readonly rotorRadiusMm?: { readonly front?: number; readonly rear?: number };
  readonly guards?: boolean;
  /** Parts of the build that this drawing leaves out, in words. */
  readonly notDrawn?: readonly string[];
  /** A drop bar is drawn with its hook; its depth is only for the eye. */
  readonly dropBar?: boolean;
  /** Rim brakes at the crown and at the seat stays. */
  readonly rimBrakes?: { readonly front?: boolean; readonly rear?: boolean };
  readonly tubesMm?: {
    readonly seat?: number;
    readonly top?: number;
    readonly down?: number;
    readonly head?: number;
    readonly chainstay?: number;
    readonly seatstay?: number;
    readonly fork?: number;
  };
}

const DRAWN_WIDTHS_MM = { seat: 28.6, top: 28.6, down: 31.8, head: 36, chainstay: 19, seatstay: 15, fork: 25 } as const;
export type TubeName = keyof typeof DRAWN_WIDTHS_MM;

/** How wide is this tube drawn, mm? */
export function drawnWidthMm(sketch: BicycleSketch, tube: TubeName): number {
  return sketch.tubesMm?.[tube] ?? DRAWN_WIDTHS_MM[tube];
}

/** Which coordinates of this sketch cannot be drawn? All of them at once. */
export function sketchRefusals(sketch: BicycleSketch, where: string): readonly Refusal[] {
  const found: Refusal[] = [];
  const visit = (value: unknown, path: string) => {
    if (typeof value === "number" && !Number.isFinite(value)) {
      found.push({
        code: "not-a-number",
        at: path,
        given: value,
        allowed: say("drawing.bicycle-sketch.a-number-in-mm"),
        message: say("drawing.bicycle-sketch.is-not-a-number-so-the", { path }),
      });
    } else if (typeof value === "object" && value !== null) {
      for (const [key, inner] of Object.entries(value)) visit(inner, `${path}.${key}`);
    }
  };
  visit(sketch, where);
  for (const key of ["rearRadiusMm", "frontRadiusMm", "rearBeadMm", "frontBeadMm"] as const) {
    if (sketch[key] <= 0 || sketch[key] > 600) {
      found.push({
        code: "radius-out-of-range",
        at: `${where}.${key}`,
        given: sketch[key],
        allowed: say("drawing.bicycle-sketch.more-than-0-at-most-600"),
        message: say("drawing.bicycle-sketch.is-no-wheels-radius", { where, key, given: sketch[key] }),
      });
    }
  }
  if (sketch.frontAxle.x <= sketch.rearAxle.x) {
    found.push({
      code: "axles-swapped",
      at: `${where}.frontAxle`,
      given: sketch.frontAxle.x,
      allowed: say("drawing.bicycle-sketch.more-than-the-rear-axle-s", { rearAxleX: sketch.rearAxle.x }),
      message: say("drawing.bicycle-sketch.the-front-axle-must-lie-in", { where }),
    });
  }
  return found;
}

/** Which widths are drawn without having been measured? */
export function widthCautions(sketch: BicycleSketch, where: string): readonly Caution[] {
  const missing = (Object.keys(DRAWN_WIDTHS_MM) as TubeName[]).filter((tube) => sketch.tubesMm?.[tube] === undefined);
  if (missing.length === 0) return [];
  return [
    {
      code: "tube-width-not-measured",
      at: where,
      message: say("drawing.bicycle-sketch.the-width-of-these-tubes-is", { missing: missing.join(", ") }),
    },
  ];
}

/** Which parts of the build does the drawing leave out? A bicycle drawn without its child seat says so. */
export function notDrawnCautions(sketch: BicycleSketch, where: string): readonly Caution[] {
  if (sketch.notDrawn === undefined || sketch.notDrawn.length === 0) return [];
  return [
    {
      code: "not-drawn",
      at: where,
      message: say("drawing.bicycle-sketch.not-drawn", { notDrawn: sketch.notDrawn.join(", ") }),
    },
  ];
}

/** Does a tyre hang over the ground line, or sink into it, in the points given? More than 1 mm is said. */
export function groundCautions(sketch: BicycleSketch, where: string): readonly Caution[] {
  const off = [
    ["rear", sketch.rearAxle.y - sketch.rearRadiusMm - sketch.groundY],
    ["front", sketch.frontAxle.y - sketch.frontRadiusMm - sketch.groundY],
  ] as const;
  return off
    .filter(([, mm]) => Math.abs(mm) > 1)
    .map(([end, mm]) => ({
      code: "tyre-off-the-ground",
      at: where,
      message: say("drawing.bicycle-sketch.in-these-points-the-tyre-stands", {
        end,
        byMm: Math.abs(mm).toFixed(1),
        aboveOrBelow: mm > 0 ? "above" : "below",
      }),
    }));
}
