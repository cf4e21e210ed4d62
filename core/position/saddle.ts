/**
 * Which seatpost setback and extension put the saddle where it belongs?
 * Inputs: the numbers of `saddleFields`; target = top of the saddle over the middle of its rails, from the BB, x forward
 *   (so it is negative), y up. Setback is square to the seat tube, rearwards and therefore a little down.
 * Answer: for each setback the extension along the seat tube (BB to clamp centre) and how far the rails must be pushed
 *   back from centred (negative: forward); the setback that needs the least push; whether any lies in the rail range.
 *   If none does, best_setback_mm is the nearest and `reachable` is false.
 * Formula: y: extension sin(SA) - setback cos(SA) + height = target y;
 *   x: -extension cos(SA) - setback sin(SA) - push = target x.
 * Limits: how deep the post then sits is `postInsertion`. Sources: position-contact-points.
 */

import { type Answer, answered, type Caution, refused } from "../quantity/index.js";
import type { Field } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { outOfRange } from "./out-of-range.js";

export interface SaddleInput {
  readonly seat_angle_deg: number;
  readonly target_x_mm: number;
  readonly target_y_mm: number;
  readonly saddle_height_above_clamp_mm: number;
  readonly setbacks_mm: readonly number[];
  readonly rail_range_plus_minus_mm: number;
}

export interface SaddleRow {
  readonly setback_mm: number;
  readonly extension_along_seat_tube_mm: number;
  readonly rail_shift_back_mm: number;
  readonly within_rail_range: boolean;
}

export interface SaddleAnswer {
  readonly per_setback: readonly SaddleRow[];
  readonly best_setback_mm: number;
  readonly reachable: boolean;
  readonly setback_for_centred_rails_mm: number;
  /** Straight from the BB to the saddle's reference point. */
  readonly bb_to_saddle_top_mm: number;
}

export const saddleFields: readonly Field[] = [
  {
    kind: "number",
    unit: "deg",
    key: "seat_angle_deg",
    label: say("position.saddle.seat-angle"),
    min: 40,
    max: 100,
    start: 72.84,
    help: say("position.saddle.seat-tube-axis-to-level-ground"),
  },
  {
    kind: "number",
    unit: "mm",
    key: "target_x_mm",
    label: say("position.saddle.saddle-wanted-forward-of-the-bb"),
    min: -1000,
    max: 1000,
    start: -220,
    help: say("position.saddle.top-of-the-saddle-over-the"),
  },
  {
    kind: "number",
    unit: "mm",
    key: "target_y_mm",
    label: say("position.saddle.saddle-wanted-above-the-bb"),
    min: 50,
    max: 1500,
    start: 692,
    help: say("position.saddle.top-of-the-saddle-over-the-2"),
  },
  {
    kind: "number",
    unit: "mm",
    key: "saddle_height_above_clamp_mm",
    label: say("position.saddle.saddle-top-above-the-clamp-centre"),
    min: 0,
    max: 250,
    start: 45,
  },
  {
    kind: "numbers",
    unit: "mm",
    key: "setbacks_mm",
    label: say("position.saddle.setbacks-of-the-posts-at-hand"),
    min: -150,
    max: 150,
    minItems: 1,
    maxItems: 60,
    start: [0, 20, 30],
    help: say("position.saddle.square-to-the-seat-tube-rearwards"),
  },
  {
    kind: "number",
    unit: "mm",
    key: "rail_range_plus_minus_mm",
    label: say("position.saddle.rails-can-be-clamped-this-far"),
    min: 0,
    max: 100,
    start: 15,
    help: say("position.saddle.to-each-side"),
  },
];

const RAD = Math.PI / 180;

export function saddle(q: SaddleInput): Answer<SaddleAnswer> {
  const refusals = outOfRange(saddleFields, q);
  if (refusals.length > 0) return refused(refusals);
  const sin = Math.sin(q.seat_angle_deg * RAD);
  const cos = Math.cos(q.seat_angle_deg * RAD);
  const clampUp = q.target_y_mm - q.saddle_height_above_clamp_mm;
  const rows = q.setbacks_mm.map((setback): SaddleRow => {
    const extension = (clampUp + setback * cos) / sin;
    const push = -q.target_x_mm - extension * cos - setback * sin;
    return {
      setback_mm: setback,
      extension_along_seat_tube_mm: extension,
      rail_shift_back_mm: push,
      within_rail_range: Math.abs(push) <= q.rail_range_plus_minus_mm + 1e-9,
    };
  });
  const highest = Math.max(...rows.map((row) => row.extension_along_seat_tube_mm));
  if (highest <= 0) {
    return refused([
      {
        code: "saddle-below-bottom-bracket",
        at: "target_y_mm",
        given: q.target_y_mm,
        allowed: say("position.saddle.above-mm-the-saddle-s-own", {
          saddleHeightAboveClampMm: q.saddle_height_above_clamp_mm,
        }),
        message: say("position.saddle.the-saddle-wanted-at-mm-would", { targetYMm: q.target_y_mm }),
      },
    ]);
  }
  const best = rows.reduce((a, b) => (Math.abs(b.rail_shift_back_mm) < Math.abs(a.rail_shift_back_mm) ? b : a));
  const centred = -q.target_x_mm * sin - clampUp * cos;
  const cautions: Caution[] = [];
  if (!best.within_rail_range) {
    const way = best.rail_shift_back_mm > 0 ? "back" : "forward";
    cautions.push({
      code: "saddle-not-reached",
      at: "best_setback_mm",
      message: say("position.saddle.no-post-puts-the-saddle-there", {
        railShiftBackMm: Math.abs(best.rail_shift_back_mm).toFixed(1),
        way,
        centred: centred.toFixed(0),
      }),
    });
  }
  return answered(
    {
      per_setback: rows,
      best_setback_mm: best.setback_mm,
      reachable: best.within_rail_range,
      setback_for_centred_rails_mm: centred,
      bb_to_saddle_top_mm: Math.hypot(q.target_x_mm, q.target_y_mm),
    },
    { sources: ["position-contact-points"], cautions },
  );
}
