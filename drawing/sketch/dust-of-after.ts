/**
 * How uncertain is each place of the bicycle as it will be, seen from the cranks' axis? The survey's covariance carried through the
 * swap by central differences, as the figures' bands are; the new parts' own measures are taken as exact there, and so here. The hand
 * has the band of the cockpit, the tyres that of their estimated radius. Empty where nothing is settled.
 */

import {
  type BicyclePoints,
  bicyclePoints,
  type FrameMeasures,
  type NewParts,
  SAGGED_RADIUS_HALF_BAND_MM,
} from "@coldset/core/geometry";
import type { Reckoning } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import type { BeforeAfterInput } from "../bicycle/index.js";

type Dust = NonNullable<BeforeAfterInput["dust"]>;
type Rings = NonNullable<BeforeAfterInput["rings"]>;

/** 95 % of a band each way, and of a cloud in two directions, in standard deviations. */
const TWO_SIDED_95 = 1.96;
const ELLIPSE_95 = Math.sqrt(-2 * Math.log(0.05));
const STEP = 1e-3;

const PLACES = [
  ["seat cluster", "seatCluster"],
  [say("drawing.dust-of-after.head-tube-s-top"), "headTop"],
  ["rear axle", "rearAxle"],
  ["front axle", "frontAxle"],
] as const satisfies readonly (readonly [string, keyof BicyclePoints])[];

export function dustOfAfter(r: Reckoning): Dust {
  const { after, geometry, cockpit } = r;
  if (after === undefined || geometry.frame.kind === "refused") return [];
  const { frame, keys, covariance } = geometry.frame.value;
  const parts = partsOf(r, after.points);
  const moved = keys.map((key) => {
    const at = (by: number) =>
      bicyclePoints({ ...frame, [key]: (frame[key] ?? Number.NaN) + by } as FrameMeasures, parts);
    return { high: at(STEP), low: at(-STEP) };
  });
  const sd = (place: (typeof PLACES)[number][1], axis: "x" | "y") => {
    const slopes = moved.map(({ high, low }) => (high[place][axis] - low[place][axis]) / (2 * STEP));
    let variance = 0;
    for (const [i, a] of slopes.entries())
      for (const [j, b] of slopes.entries()) variance += a * b * (covariance[i]?.[j] ?? Number.NaN);
    return Math.sqrt(Math.max(0, variance));
  };
  const joints: Dust = PLACES.map(([name, place]) => ({
    name,
    at: after.points[place],
    sdXMm: sd(place, "x"),
    sdYMm: sd(place, "y"),
  }));
  return [...joints, ...hand(cockpit)].filter((d) => d.sdXMm > 0 && d.sdYMm > 0);
}

/** The cockpit gives one radius for both directions, so the cloud is round. */
function hand({ points, handHalfWidthMm }: Reckoning["cockpit"]): Dust {
  if (points === undefined || handHalfWidthMm === undefined) return [];
  const sd = handHalfWidthMm / ELLIPSE_95;
  return [{ name: "hand", at: { x: points.hand.xMm, y: points.hand.yMm }, sdXMm: sd, sdYMm: sd }];
}

export function ringsOfAfter(r: Reckoning): Rings {
  if (r.after === undefined) return [];
  const { rearAxle, rearRadiusMm, frontAxle, frontRadiusMm } = r.after.points;
  // M6: bead seat and width give the loaded radius to so much, here read as 95 %.
  const sdMm = SAGGED_RADIUS_HALF_BAND_MM / TWO_SIDED_95;
  return [
    { name: say("drawing.dust-of-after.rear-tyre"), at: rearAxle, radiusMm: rearRadiusMm, sdMm },
    { name: say("drawing.dust-of-after.front-tyre"), at: frontAxle, radiusMm: frontRadiusMm, sdMm },
  ];
}

/** The parts that were reckoned with: of the chosen fork and headset, and the radii that came of the tyres. */
function partsOf(r: Reckoning, points: BicyclePoints): NewParts {
  const { fork, headset } = r.resolved.at;
  const ports = fork?.kind === "fork" ? fork.ports : undefined;
  const stack = headset?.kind === "headset" ? headset.ports.lower_stack : undefined;
  return {
    front_radius_mm: points.frontRadiusMm,
    rear_radius_mm: points.rearRadiusMm,
    ...(ports?.axle_to_crown === undefined ? {} : { axle_to_crown_mm: ports.axle_to_crown }),
    ...(ports?.rake === undefined ? {} : { rake_mm: ports.rake }),
    ...(stack === undefined ? {} : { lower_stack_mm: stack }),
  };
}
