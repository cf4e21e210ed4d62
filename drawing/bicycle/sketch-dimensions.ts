import { say } from "@coldset/core/texts";
import { at, type Item, type Point } from "../model/index.js";
import type { BicycleSketch } from "./bicycle-sketch.js";

export const DIMENSION_NAMES = [
  "wheelbase",
  "bb-height",
  "stack",
  "reach",
  "trail",
  "head-angle",
  "seat-angle",
  "top-tube",
  "seat-tube",
  "chainstay",
] as const;
export type DimensionName = (typeof DIMENSION_NAMES)[number];

/** Which dimension is drawn? `text` as it shall stand there, with band; without it the drawn length, whole mm, no band. */
export interface DimensionWish {
  readonly name: DimensionName;
  readonly text?: string;
  /** The value before, with its word: "was 1042". */
  readonly was?: string;
  /** The one that somebody is to look at again. */
  readonly accent?: boolean;
}

function angleDeg(from: Point, to: Point): number {
  return (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
}

function between(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** Where does the steering axis meet the ground? */
export function steeringAxisOnGround(sketch: BicycleSketch): Point {
  const { headTop, headBottom, groundY } = sketch;
  const t = (groundY - headTop.y) / (headBottom.y - headTop.y);
  return at(headTop.x + (headBottom.x - headTop.x) * t, groundY);
}

/** How long, or how steep, is it in the sketch itself? mm or degrees. */
export function drawnValue(sketch: BicycleSketch, name: DimensionName): number {
  switch (name) {
    case "wheelbase":
      return sketch.frontAxle.x - sketch.rearAxle.x;
    case "bb-height":
      return sketch.bb.y - sketch.groundY;
    case "stack":
      return sketch.headTop.y - sketch.bb.y;
    case "reach":
      return sketch.headTop.x - sketch.bb.x;
    case "trail":
      return steeringAxisOnGround(sketch).x - sketch.frontAxle.x;
    case "head-angle":
      return 180 - angleDeg(sketch.headBottom, sketch.headTop);
    case "seat-angle":
      return 180 - angleDeg(sketch.bb, sketch.seatCluster);
    case "top-tube":
      return between(sketch.seatCluster, sketch.headCrossing);
    case "seat-tube":
      return between(sketch.bb, sketch.seatCluster);
    case "chainstay":
      return between(sketch.bb, sketch.rearAxle);
  }
}

const WORDS: Readonly<Record<DimensionName, string>> = {
  wheelbase: "wheelbase",
  "bb-height": say("drawing.sketch-dimensions.bottom-bracket"),
  stack: "stack",
  reach: "reach",
  trail: "trail",
  "head-angle": "head",
  "seat-angle": "seat",
  "top-tube": say("drawing.sketch-dimensions.top-tube"),
  "seat-tube": say("drawing.sketch-dimensions.seat-tube"),
  chainstay: "chainstay",
};

/** What is drawn for one wished dimension? `pxMm` = world mm of one px of the look. */
export function dimensionItems(
  sketch: BicycleSketch,
  wish: DimensionWish,
  pxMm: number,
  version: "wide" | "narrow",
): readonly Item[] {
  const value = drawnValue(sketch, wish.name);
  const isAngle = wish.name.endsWith("angle");
  const text =
    wish.text ?? `${WORDS[wish.name]} ${isAngle ? `${value.toFixed(1)}°` : value.toFixed(0)}`.replace("-", "−");
  const was = wish.was === undefined ? {} : { was: wish.was };
  const line = (from: Point, to: Point, offsetMm: number, place: "middle" | "outside" = "middle"): Item => ({
    kind: "dimension",
    role: wish.accent === true ? "accent" : "dimension",
    from,
    to,
    offsetMm,
    text,
    place,
    ...was,
  });
  const { bb, headTop, groundY, rearAxle, frontAxle, seatCluster } = sketch;
  switch (wish.name) {
    case "wheelbase":
      return [line(at(rearAxle.x, groundY), at(frontAxle.x, groundY), -68 * pxMm)];
    case "bb-height":
      return [
        { kind: "line", role: "construction", from: bb, to: at(bb.x + 70 * pxMm, bb.y) },
        version === "wide"
          ? line(at(bb.x + 60 * pxMm, groundY), at(bb.x + 60 * pxMm, bb.y), 0)
          : line(at(bb.x + 60 * pxMm, bb.y), at(bb.x + 60 * pxMm, groundY), 0, "outside"),
      ];
    case "top-tube":
      return [line(seatCluster, sketch.headCrossing, 34 * pxMm)];
    case "seat-tube":
      return [line(bb, seatCluster, -26 * pxMm)];
    case "chainstay":
      return [line(rearAxle, bb, -46 * pxMm)];
    case "stack":
      return [line(bb, at(bb.x, headTop.y), 0)];
    case "reach":
      return [
        { kind: "line", role: "construction", from: at(bb.x, headTop.y), to: at(bb.x, headTop.y + 28 * pxMm) },
        { kind: "line", role: "construction", from: headTop, to: at(headTop.x, headTop.y + 28 * pxMm) },
        line(at(bb.x, headTop.y + 22 * pxMm), at(headTop.x, headTop.y + 22 * pxMm), 0),
      ];
    case "trail": {
      const hit = steeringAxisOnGround(sketch);
      const contact = at(frontAxle.x, groundY);
      const [back, front] = value < 0 ? [hit, contact] : [contact, hit];
      return [
        { kind: "line", role: "axis", from: headTop, to: hit },
        { kind: "line", role: "axis", from: frontAxle, to: contact },
        // The letters stand to the right of a wide drawing's line, to the left of a narrow one's, where there is room.
        version === "wide" ? line(back, front, -30 * pxMm, "outside") : line(front, back, 30 * pxMm, "outside"),
      ];
    }
    case "head-angle": {
      const hit = steeringAxisOnGround(sketch);
      const radiusMm = (version === "wide" ? 84 : 60) * pxMm;
      return [
        { kind: "line", role: "axis", from: headTop, to: hit },
        {
          kind: "angle",
          centre: hit,
          radiusMm,
          startDeg: 180 - value,
          endDeg: 180,
          text,
          anchor: "end",
          // Clear of tyre and spokes: under the ground, left of the trail.
          textAt: at(Math.min(hit.x, frontAxle.x) - 12 * pxMm, groundY - 30 * pxMm),
          ...was,
        },
      ];
    }
    case "seat-angle": {
      const radiusMm = (version === "wide" ? 96 : 60) * pxMm;
      return [
        { kind: "line", role: "axis", from: bb, to: at(bb.x - radiusMm * 1.1, bb.y) },
        { kind: "line", role: "axis", from: bb, to: seatCluster },
        {
          kind: "angle",
          centre: bb,
          radiusMm,
          startDeg: 180 - value,
          endDeg: 180,
          text,
          anchor: "end",
          textAt: at(bb.x - radiusMm * 0.98, bb.y + 60 * pxMm),
          ...was,
        },
      ];
    }
  }
}
