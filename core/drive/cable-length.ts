/**
 * How much outer and inner, or hose, does this route take?
 * Inputs: the route as points x, y, z in mm (any axes square to each other), bar straight; what the steering adds between
 *   lock and lock; what is left at each end for trimming; what the inner is longer than the outer.
 * Answer: lengths in mm, each ± 40, and whether what is at hand is enough.
 * Formula: route = sum of the straight pieces; outer = route + steering + 2 x trim; inner = outer + extra (150 for a
 *   brake, 50 at a gear's fixed end).
 * Limits: straight pieces cut the corners of the bends, which is what the band is for. Bends of outer stay at 60 mm
 *   radius or more, of hose at 70 to 80; look that nothing is pulled at full lock. Source: drive-cable-length.
 */

import { outOfRange } from "../position/out-of-range.js";
import { type Answer, answered, type Caution, type Refusal, refused } from "../quantity/index.js";
import type { Field, Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";

export interface CableLengthInput {
  readonly route: readonly { readonly x_mm: number; readonly y_mm: number; readonly z_mm: number }[];
  readonly steering_slack_mm?: number;
  readonly trim_each_end_mm?: number;
  readonly inner_extra_mm?: number;
  readonly outer_at_hand_mm?: number;
  readonly inner_at_hand_mm?: number;
}

export interface CableLength {
  readonly route_mm: number;
  readonly outer_mm: number;
  readonly inner_mm: number;
  /** Left out where nothing was said about what is at hand. */
  readonly enough?: boolean;
}

export const CABLE_BAND_MM = 40;

const mm = (key: string, label: string, max: number, start: number, help: string): Field => ({
  kind: "number",
  unit: "mm",
  key,
  label,
  min: 0,
  max,
  start,
  help,
  optional: true,
});

const coordinate = (key: string, label: string): Field => ({
  kind: "number",
  unit: "mm",
  key,
  label,
  min: -5000,
  max: 5000,
  start: 0,
});

export const cableLengthFields: readonly Field[] = [
  {
    kind: "list",
    key: "route",
    label: say("drive.cable-length.points-of-the-route"),
    help: say("drive.cable-length.from-the-lever-through-every-stop"),
    minItems: 2,
    maxItems: 60,
    start: [
      { x_mm: 380, y_mm: 662, z_mm: 250 },
      { x_mm: 470, y_mm: 610, z_mm: 60 },
      { x_mm: 500, y_mm: 420, z_mm: 55 },
      { x_mm: 565, y_mm: 135, z_mm: 55 },
    ],
    of: [coordinate("x_mm", "Forward"), coordinate("y_mm", "Up"), coordinate("z_mm", "Sideways")],
  },
  mm(
    "steering_slack_mm",
    say("drive.cable-length.slack-for-steering"),
    500,
    60,
    say("drive.cable-length.extra-path-when-the-bar-is"),
  ),
  mm(
    "trim_each_end_mm",
    say("drive.cable-length.left-for-trimming-each-end"),
    200,
    20,
    say("drive.cable-length.cut-off-when-all-is-in"),
  ),
  mm(
    "inner_extra_mm",
    say("drive.cable-length.inner-longer-than-outer"),
    500,
    150,
    say("drive.cable-length.150-for-a-brake-50-for"),
  ),
  mm(
    "outer_at_hand_mm",
    say("drive.cable-length.outer-or-hose-at-hand"),
    20000,
    3000,
    say("drive.cable-length.one-length"),
  ),
  mm("inner_at_hand_mm", say("drive.cable-length.inner-at-hand"), 20000, 2000, say("drive.cable-length.one-length")),
];

export function cableLength(q: CableLengthInput): Answer<CableLength> {
  const refusals: Refusal[] = [...outOfRange(cableLengthFields, q)];
  const route = Array.isArray(q.route) ? q.route : [];
  if (route.length < 2 || route.length > 60) {
    const message = say("drive.cable-length.a-route-needs-2-to-60");
    refusals.push({
      code: "wrong-count",
      at: "route",
      given: route.length,
      allowed: say("drive.cable-length.2-to-60-points"),
      message,
    });
  }
  for (const [i, point] of route.entries()) {
    for (const key of ["x_mm", "y_mm", "z_mm"] as const) {
      const given: unknown = point[key];
      if (typeof given === "number" && Math.abs(given) <= 5000) continue;
      const message = say("drive.cable-length.point-of-the-route-needs-between", { pointNumber: i + 1, key });
      refusals.push({ code: "out-of-range", at: `route[${i}].${key}`, given, allowed: "-5000 to 5000 mm", message });
    }
  }
  if (refusals.length > 0) return refused(refusals);

  let along = 0;
  for (const [i, to] of route.entries()) {
    const from = route[i - 1];
    if (from !== undefined) along += Math.hypot(to.x_mm - from.x_mm, to.y_mm - from.y_mm, to.z_mm - from.z_mm);
  }
  const outer = along + (q.steering_slack_mm ?? 60) + 2 * (q.trim_each_end_mm ?? 20);
  const inner = outer + (q.inner_extra_mm ?? 150);
  const band = (at: number) => ({
    low: at - CABLE_BAND_MM,
    high: at + CABLE_BAND_MM,
    means: say("drive.cable-length.40-mm-common-practice"),
  });
  const cautions: Caution[] = [];
  const checks = [
    { what: "outer", needed: outer, have: q.outer_at_hand_mm },
    { what: "inner", needed: inner, have: q.inner_at_hand_mm },
  ].filter((check) => check.have !== undefined);
  for (const { what, needed, have } of checks) {
    if (have === undefined || have >= needed + CABLE_BAND_MM) continue;
    cautions.push({
      code: have < needed ? "cable-too-short" : "cable-just-enough",
      at: `${what}_mm`,
      message: say("drive.cable-length.the-at-hand-is-mm-the", {
        what,
        have,
        needed: needed.toFixed(0),
        cableBandMm: CABLE_BAND_MM,
      }),
    });
  }
  return answered(
    {
      route_mm: along,
      outer_mm: outer,
      inner_mm: inner,
      ...(checks.length === 0 ? {} : { enough: checks.every((c) => c.have !== undefined && c.have >= c.needed) }),
    },
    { bands: { outer_mm: band(outer), inner_mm: band(inner) }, sources: ["drive-cable-length"], cautions },
  );
}

export const hoseLengthSheet: Sheet<CableLengthInput, CableLength> = {
  id: "hose-length",
  question: say("drive.cable-length.how-much-outer-and-inner-or"),
  notes: say("drive.cable-length.straight-pieces-from-point-to-point"),
  fields: cableLengthFields,
  gives: [
    { key: "route_mm", means: say("drive.cable-length.straight-pieces-of-the-route-mm") },
    { key: "outer_mm", means: say("drive.cable-length.outer-or-hose-mm") },
    { key: "inner_mm", means: say("drive.cable-length.inner-mm") },
    { key: "enough", means: say("drive.cable-length.true-when-what-is-at-hand") },
  ],
  run: cableLength,
};
