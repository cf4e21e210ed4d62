import type { Caution, Refusal } from "@coldset/core/quantity";
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
        allowed: "a number in mm",
        message: `${path} is not a number, so the bicycle cannot be drawn. Measure it first.`,
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
        allowed: "more than 0, at most 600 mm",
        message: `${where}.${key} is ${sketch[key]} mm; a wheel's radius lies between 0 and 600 mm.`,
      });
    }
  }
  if (sketch.frontAxle.x <= sketch.rearAxle.x) {
    found.push({
      code: "axles-swapped",
      at: `${where}.frontAxle`,
      given: sketch.frontAxle.x,
      allowed: `more than the rear axle's ${sketch.rearAxle.x}`,
      message: `${where}: the front axle must lie in front of the rear axle (x runs forward).`,
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
      message: `The width of these tubes is drawn by habit, not measured: ${missing.join(", ")}. Do not take it from the drawing.`,
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
      message: `In these points the ${end} tyre stands ${Math.abs(mm).toFixed(1)} mm ${mm > 0 ? "above" : "below"} the ground line. The drawing shows it so.`,
    }));
}
