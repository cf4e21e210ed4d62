/** The sheets `toe-clearance` and `tyre-gap`. Start values: the worked bicycle of M8 and Quayside's rear triangle. */

import type { NumberField, Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { type ToeClearanceInput, type ToeClearanceValue, toeClearance } from "./toe-clearance.js";
import { type TyreGapInput, type TyreGapValue, tyreGap } from "./tyre-gap.js";

const mm = (
  key: string,
  label: string,
  min: number,
  max: number,
  start: number,
  rest: Partial<NumberField> = {},
): NumberField => ({
  kind: "number",
  unit: "mm",
  key,
  label,
  min,
  max,
  start,
  ...rest,
});

export const toeClearanceSheet: Sheet<ToeClearanceInput, ToeClearanceValue> = {
  id: "toe-clearance",
  question: say("geometry.clearance-sheets.how-far-is-the-toe-from"),
  notes: say("geometry.clearance-sheets.measured-straight-forward-from-the-pedal"),
  fields: [
    mm("front_centre_horizontal_mm", say("geometry.clearance-sheets.front-axle-ahead-of-the-bb"), 150, 3000, 613.3),
    mm("front_axle_above_bb_mm", say("geometry.clearance-sheets.front-axle-above-the-bb"), -300, 400, 58, {
      help: say("geometry.clearance-sheets.bb-drop-front-radius-rear-radius"),
    }),
    { ...mm("head_angle_deg", say("geometry.frame-measures.head-angle"), 40, 90, 71), unit: "deg" },
    mm("rake_mm", say("geometry.frame-measures.fork-rake"), -150, 250, 45),
    mm("front_radius_mm", say("geometry.frame-measures.front-tyre-radius"), 50, 600, 346),
    mm("tyre_width_mm", say("geometry.clearance-sheets.tyre-width"), 10, 150, 35),
    mm("guard_over_tyre_mm", say("geometry.clearance-sheets.guard-stands-over-the-tyre-by"), 0, 60, 14, {
      optional: true,
      help: say("geometry.clearance-sheets.leave-out-without-a-guard"),
    }),
    mm("crank_mm", say("geometry.clearance-sheets.crank-length"), 50, 250, 170),
    mm("pedal_from_centre_mm", say("geometry.clearance-sheets.pedal-centre-from-the-centre-plane"), 50, 300, 137, {
      help: say("geometry.clearance-sheets.usually-half-the-q-plus-50"),
    }),
  ],
  gives: [
    { key: "toe_clearance_mm", means: say("geometry.clearance-sheets.straight-forward-negative-where-they-overlap") },
    { key: "at_steer_deg", means: say("geometry.clearance-sheets.turn-of-the-bar-at-which") },
    { key: "shortest_line_mm", means: say("geometry.clearance-sheets.shortest-line-in-any-direction") },
    { key: "shortest_at_steer_deg", means: say("geometry.clearance-sheets.turn-of-the-bar-at-which-2") },
  ],
  run: toeClearance,
};

export const tyreGapSheet: Sheet<TyreGapInput, TyreGapValue> = {
  id: "tyre-gap",
  question: say("geometry.clearance-sheets.does-this-tyre-pass-between-the"),
  notes: say("geometry.clearance-sheets.side-gap-at-the-tyre-s"),
  fields: [
    mm("bsd_mm", say("geometry.clearance-sheets.bead-seat-diameter"), 200, 700, 584),
    mm("tyre_width_mm", say("geometry.clearance-sheets.tyre-width-as-named"), 15, 130, 47),
    mm("rim_inner_mm", say("geometry.clearance-sheets.inner-rim-width"), 8, 100, 23, { optional: true }),
    mm("radius_mm", say("geometry.clearance-sheets.loaded-radius-if-measured"), 100, 450, 339, { optional: true }),
    {
      kind: "list",
      key: "stations",
      label: say("geometry.clearance-sheets.inner-gaps"),
      help: say("geometry.clearance-sheets.distance-from-the-axle-and-the"),
      of: [
        mm("radius_mm", say("geometry.clearance-sheets.from-the-axle"), 50, 600, 315.5),
        mm("inner_gap_mm", say("geometry.clearance-sheets.inner-gap"), 5, 250, 60),
      ],
      minItems: 1,
      maxItems: 40,
      start: [
        { radius_mm: 300, inner_gap_mm: 64 },
        { radius_mm: 315.5, inner_gap_mm: 60 },
        { radius_mm: 329.5, inner_gap_mm: 55 },
        { radius_mm: 345, inner_gap_mm: 49 },
      ],
    },
    {
      kind: "list",
      key: "constrictions",
      label: say("geometry.clearance-sheets.bridges-and-crown"),
      optional: true,
      of: [
        {
          kind: "text",
          key: "name",
          label: "Which",
          maxLength: 60,
          start: say("geometry.clearance-sheets.brake-bridge"),
        },
        mm("from_axle_mm", say("geometry.clearance-sheets.nearest-face-from-the-axle"), 50, 700, 366),
      ],
      minItems: 0,
      maxItems: 20,
      start: [{ name: say("geometry.clearance-sheets.brake-bridge"), from_axle_mm: 366 }],
    },
    mm("guard_width_mm", say("geometry.clearance-sheets.guard-width"), 15, 150, 60, { optional: true }),
    mm("guard_over_tyre_mm", say("geometry.clearance-sheets.guard-stands-over-the-tyre-by"), 0, 60, 14, {
      optional: true,
    }),
  ],
  gives: [
    { key: "side_gap_mm", means: say("geometry.clearance-sheets.air-on-each-side-to-the") },
    { key: "radial_gaps", means: say("geometry.clearance-sheets.air-to-each-bridge-or-crown") },
    { key: "least_gap_mm", means: say("geometry.clearance-sheets.the-least-of-them") },
    { key: "judgement", means: say("geometry.clearance-sheets.refuse-under-4-flag-from-4") },
    { key: "tyre_width_on_rim_mm", means: say("geometry.clearance-sheets.width-on-this-rim") },
    { key: "radius_mm", means: say("geometry.clearance-sheets.loaded-radius-used") },
    { key: "widest_radius_mm", means: say("geometry.clearance-sheets.where-the-tyre-is-widest-from") },
    { key: "inner_gap_there_mm", means: say("geometry.clearance-sheets.clear-width-there") },
  ],
  run: tyreGap,
};

export const clearanceSheets = [toeClearanceSheet, tyreGapSheet] as const;
