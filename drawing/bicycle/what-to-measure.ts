/**
 * Where is the tape held for this reading? A line drawing to scale of a bicycle, with the one dimension in the accent.
 * The bicycle is an example; its lengths are not yours.
 */
import { say } from "@coldset/core/texts";
import { at, type Drawing, type Item, type Point, rectangle } from "../model/index.js";
import { inkBicycle } from "./bicycle-parts.js";
import type { BicycleSketch } from "./bicycle-sketch.js";
import { SAMPLE_AFTER, SAMPLE_BEFORE } from "./sample-bicycle.js";

interface Shown {
  readonly sketch: BicycleSketch;
  /** Drawn in the accent. */
  readonly items: (pxMm: number) => readonly Item[];
  /** Only the front end is drawn, larger: the reading is short. */
  readonly near?: true;
}

const s = SAMPLE_BEFORE;

const span = (from: Point, to: Point, text: string, offsetPx = 0, sketch: BicycleSketch = s): Shown => ({
  sketch,
  items: (pxMm) => [{ kind: "dimension", role: "accent", from, to, offsetMm: offsetPx * pxMm, text }],
});
const near = (shown: Shown): Shown => ({ ...shown, near: true });
const floor = (p: Point) => at(p.x, s.groundY);

/** Foot of the square from the front axle on the steering axis. */
function onSteeringAxis(): Point {
  const { headTop, headBottom, frontAxle } = s;
  const dx = headBottom.x - headTop.x;
  const dy = headBottom.y - headTop.y;
  const t = ((frontAxle.x - headTop.x) * dx + (frontAxle.y - headTop.y) * dy) / (dx * dx + dy * dy);
  return at(headTop.x + t * dx, headTop.y + t * dy);
}

const rings = (points: readonly Point[], radiusMm: number): Shown => ({
  sketch: s,
  items: () => points.map((centre) => ({ kind: "circle", role: "accent", centre, radiusMm })),
});

/** Forward and up from the cranks' axis. */
const forwardAndUp = (to: Point): Shown => ({
  sketch: SAMPLE_AFTER,
  items: (pxMm) => {
    const { bb } = SAMPLE_AFTER;
    return [
      {
        kind: "dimension",
        role: "accent",
        from: at(to.x, bb.y),
        to,
        offsetMm: (to.x < bb.x ? 18 : -18) * pxMm,
        text: "up",
      },
      {
        kind: "dimension",
        role: "accent",
        from: to.x < bb.x ? at(to.x, bb.y) : bb,
        to: to.x < bb.x ? bb : at(to.x, bb.y),
        offsetMm: -22 * pxMm,
        text: "forward",
      },
    ];
  },
});

const SHOWN: Readonly<Record<string, Shown>> = {
  cracks: rings([s.headBottom, s.headCrossing, s.bb, s.seatCluster, s.rearAxle, s.crownSeat], 52),
  radius: span(floor(s.rearAxle), s.rearAxle, "height", 26),
  bb_height: span(floor(s.bb), s.bb, "height", 26),
  chainstay: span(s.rearAxle, s.bb, "chainstay", 26),
  wheelbase: span(
    at(s.rearAxle.x, s.rearAxle.y),
    at(s.frontAxle.x, s.frontAxle.y),
    say("drawing.what-to-measure.axle-to-axle"),
    -36,
  ),
  head_tube: near(span(s.headBottom, s.headTop, say("drawing.what-to-measure.head-tube"), -40)),
  bb_to_head_top: span(s.bb, s.headTop, say("drawing.what-to-measure.cranks-to-head-tube")),
  front_axle_to_head_top: span(s.headTop, s.frontAxle, say("drawing.what-to-measure.axle-to-head-tube"), 30),
  fork_rake: near({
    sketch: s,
    items: (pxMm) => {
      const foot = onSteeringAxis();
      const beyond = at(foot.x + (foot.x - s.headTop.x) * 0.18, foot.y + (foot.y - s.headTop.y) * 0.18);
      const above = at(s.headTop.x + (s.headTop.x - foot.x) * 0.1, s.headTop.y + (s.headTop.y - foot.y) * 0.1);
      return [
        { kind: "line", role: "cut", from: above, to: beyond },
        {
          kind: "text",
          role: "note",
          at: above,
          text: "lath",
          anchor: "end",
          shiftPx: [-8, 0],
          halo: true,
        },
        {
          kind: "dimension",
          role: "accent",
          from: foot,
          to: s.frontAxle,
          offsetMm: -30 * pxMm,
          text: "rake",
          place: "outside",
        },
      ];
    },
  }),
  lower_stack: near({
    ...span(s.crownSeat, s.headBottom, say("drawing.what-to-measure.this-gap"), -40),
    items: (pxMm) => [
      {
        kind: "dimension",
        role: "accent",
        from: s.crownSeat,
        to: s.headBottom,
        offsetMm: -40 * pxMm,
        text: say("drawing.what-to-measure.this-gap"),
        place: "outside",
      },
    ],
  }),
  seat_tube_cc: span(s.bb, s.seatCluster, say("drawing.what-to-measure.up-the-seat-tube"), 24),
  seat_cluster_to_rear_axle: span(s.rearAxle, s.seatCluster, say("drawing.what-to-measure.to-the-rear-axle"), 26),
  top_tube_joint_below_head_top: near({
    sketch: s,
    items: (pxMm) => [
      {
        kind: "dimension",
        role: "accent",
        from: s.headCrossing,
        to: s.headTop,
        offsetMm: -40 * pxMm,
        text: say("drawing.what-to-measure.down-to-its-middle"),
        place: "outside",
      },
    ],
  }),
  rear_axle_to_head_top: span(s.rearAxle, s.headTop, say("drawing.what-to-measure.rear-axle-to-head-tube")),
  top_tube_cc: span(s.seatCluster, s.headCrossing, say("drawing.sketch-dimensions.top-tube"), 24),
  tyre_now: rings([s.rearAxle, s.frontAxle], s.rearRadiusMm),
  tyre_wanted: rings([s.rearAxle, s.frontAxle], s.rearRadiusMm),
  saddle_xy: forwardAndUp(SAMPLE_AFTER.saddle ?? s.seatCluster),
  hand_xy: forwardAndUp(SAMPLE_AFTER.palm ?? s.headTop),
};

/** undefined: there is nothing on the bicycle's side to show for this entry. */
export function whatToMeasure(key: string, label: string, version: "wide" | "narrow"): Drawing | undefined {
  const shown = SHOWN[key];
  if (shown === undefined) return undefined;
  const { sketch } = shown;
  const nominalWidthPx = version === "wide" ? 620 : 350;
  const full = {
    left: sketch.rearAxle.x - sketch.rearRadiusMm - 40,
    right: sketch.frontAxle.x + sketch.frontRadiusMm + 40,
    low: sketch.groundY - 40,
    high: Math.max(sketch.headTop.y, sketch.saddle?.y ?? 0, sketch.palm?.y ?? 0) + 90,
  };
  const box =
    shown.near === true
      ? {
          left: sketch.headTop.x - 260,
          right: sketch.frontAxle.x + 240,
          low: sketch.frontAxle.y - 150,
          high: sketch.headTop.y + 90,
        }
      : full;
  const pxMm = (box.right - box.left) / nominalWidthPx;
  return {
    label,
    view: { xMm: box.left, yMm: box.low, widthMm: box.right - box.left, heightMm: box.high - box.low },
    widthMm: version === "wide" ? 120 : 86,
    nominalWidthPx,
    items: [
      {
        kind: "group",
        name: "ground",
        items: [
          {
            kind: "hatch",
            hatch: "ground",
            path: rectangle(full.left, sketch.groundY - 12 * pxMm, full.right - full.left, 12 * pxMm),
          },
          { kind: "line", role: "ground", from: at(full.left, sketch.groundY), to: at(full.right, sketch.groundY) },
        ],
      },
      { kind: "group", name: "after", items: inkBicycle(sketch) },
      { kind: "group", name: "reading", items: shown.items(pxMm) },
    ],
  };
}
