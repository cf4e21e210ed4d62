/**
 * How uncertain is the place of each joint of the donor, seen from the cranks' axis? First order, from the survey's covariance:
 * one standard deviation along and across, mm. Empty where the survey does not settle the frame.
 */

import type { Reckoning } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import type { BeforeAfterInput } from "../bicycle/index.js";

type Dust = NonNullable<BeforeAfterInput["dust"]>;
type Rings = NonNullable<BeforeAfterInput["rings"]>;
const RAD = Math.PI / 180;

export function dustOfDonor(r: Reckoning): Dust {
  const { before, frame } = r.geometry;
  if (before === undefined || frame.kind === "refused") return [];
  const { keys, covariance, frame: f, frame_std: std, shape_std: shape } = frame.value;
  type Key = (typeof keys)[number];
  const cov = (a: Key, b: Key) => covariance[keys.indexOf(a)]?.[keys.indexOf(b)] ?? 0;
  /** sd of something with these slopes by two figures of the frame. */
  const sd = (a: Key, slopeA: number, b: Key, slopeB: number) =>
    Math.sqrt(Math.max(0, slopeA ** 2 * cov(a, a) + 2 * slopeA * slopeB * cov(a, b) + slopeB ** 2 * cov(b, b)));
  const { points } = before;
  const seat = f.seat_angle_deg * RAD;
  const long = f.seat_tube_cc_mm;
  const level = Math.sqrt(Math.max(1, f.chainstay_mm ** 2 - f.bb_drop_mm ** 2));
  const dust: Dust = [
    // Seat cluster at (−L cos A, L sin A).
    {
      name: say("drawing.dust-of-donor.seat-cluster"),
      at: points.seatCluster,
      sdXMm: sd("seat_tube_cc_mm", -Math.cos(seat), "seat_angle_deg", long * Math.sin(seat) * RAD),
      sdYMm: sd("seat_tube_cc_mm", Math.sin(seat), "seat_angle_deg", long * Math.cos(seat) * RAD),
    },
    {
      name: say("drawing.dust-of-after.head-tube-s-top"),
      at: points.headTop,
      sdXMm: shape.reach_mm,
      sdYMm: shape.stack_mm,
    },
    // Rear axle at (−√(chainstay² − drop²), drop).
    {
      name: say("drawing.dust-of-donor.rear-axle"),
      at: points.rearAxle,
      sdXMm: sd("chainstay_mm", f.chainstay_mm / level, "bb_drop_mm", -f.bb_drop_mm / level),
      sdYMm: std.bb_drop_mm,
    },
    {
      name: say("drawing.dust-of-donor.front-axle"),
      at: points.frontAxle,
      sdXMm: shape.front_centre_horizontal_mm,
      sdYMm: std.bb_drop_mm,
    },
  ];
  return dust.filter((d) => d.sdXMm > 0 && d.sdYMm > 0);
}

/** How surely are the radii of the donor's tyres known? By the survey, from the axles' heights over the floor. */
export function ringsOfDonor(r: Reckoning): Rings {
  const { before, frame } = r.geometry;
  if (before === undefined || frame.kind === "refused") return [];
  const { points } = before;
  const { frame_std: std } = frame.value;
  const rings: Rings = [
    {
      name: say("drawing.dust-of-after.rear-tyre"),
      at: points.rearAxle,
      radiusMm: points.rearRadiusMm,
      sdMm: std.rear_radius_mm,
    },
    {
      name: say("drawing.dust-of-after.front-tyre"),
      at: points.frontAxle,
      radiusMm: points.frontRadiusMm,
      sdMm: std.front_radius_mm,
    },
  ];
  return rings.filter((ring) => ring.sdMm > 0);
}
