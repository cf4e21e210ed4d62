/** The sheets `front-retention` and `rotor-plane`. Start values: the worked examples of M17 and M15. */

import type { NumberField, Sheet, SheetUnit } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { type FrontRetentionInput, type FrontRetentionValue, frontRetention } from "./front-retention.js";
import { type RotorPlaneInput, type RotorPlaneValue, rotorPlane } from "./rotor-plane.js";

const field = (
  key: string,
  label: string,
  unit: SheetUnit,
  min: number,
  max: number,
  start: number,
  optional = false,
): NumberField => ({
  kind: "number",
  key,
  label,
  unit,
  min,
  max,
  start,
  ...(optional ? { optional } : {}),
});

export const frontRetentionSheet: Sheet<FrontRetentionInput, FrontRetentionValue> = {
  id: "front-retention",
  question: say("mechanics.brake-end-sheets.can-the-disc-brake-push-the"),
  notes: say("mechanics.brake-end-sheets.one-steady-stop-no-bumps-rotor"),
  fields: [
    field("total_mass_kg", say("mechanics.brake-end-sheets.rider-load-and-bicycle"), "kg", 1, 400, 100),
    field("decel_g", say("mechanics.brake-end-sheets.braking-parts-of-g"), "ratio", 0.01, 1.2, 0.6),
    field("front_load_share", say("mechanics.brake-end-sheets.part-of-the-weight-on-the"), "ratio", 0, 1, 0.9),
    field("front_radius_mm", say("mechanics.brake-end-sheets.front-tyre-radius"), "mm", 50, 600, 340),
    field("rotor_diameter_mm", say("mechanics.brake-end-sheets.rotor-diameter"), "mm", 100, 300, 160),
    field("caliper_bearing_deg", say("mechanics.brake-end-sheets.pads-above-straight-back"), "deg", -180, 180, 30),
    field(
      "slot_forward_deg",
      say("mechanics.brake-end-sheets.slot-opening-forward-from-straight-down"),
      "deg",
      -180,
      180,
      0,
    ),
    field("dropout_from_centre_mm", say("mechanics.brake-end-sheets.dropout-from-the-centre-plane"), "mm", 20, 150, 50),
    field("rotor_from_centre_mm", say("mechanics.brake-end-sheets.rotor-from-the-centre-plane"), "mm", 0, 149, 39.5),
    field("clamp_n", say("mechanics.brake-end-sheets.clamp-force-of-the-axle"), "N", 0, 50000, 3000, true),
    field("friction", say("mechanics.brake-end-sheets.friction-at-the-clamped-faces"), "ratio", 0.01, 1, 0.15, true),
  ],
  gives: [
    { key: "out_left_n", means: say("mechanics.brake-end-sheets.force-out-of-the-rotor-side") },
    { key: "out_right_n", means: say("mechanics.brake-end-sheets.force-out-of-the-other-slot") },
    { key: "out_total_n", means: say("mechanics.brake-end-sheets.both-together") },
    { key: "grip_per_end_n", means: say("mechanics.brake-end-sheets.what-the-clamp-holds-by-friction") },
    { key: "judgement", means: say("mechanics.brake-end-sheets.seats-itself-held-by-the-clamp") },
    { key: "brake_force_n", means: say("mechanics.brake-end-sheets.brake-force-at-the-tyre") },
    { key: "pad_force_n", means: say("mechanics.brake-end-sheets.force-of-the-pads-on-the") },
    { key: "wheel_load_n", means: say("mechanics.brake-end-sheets.weight-on-the-front-wheel") },
  ],
  run: frontRetention,
};

export const rotorPlaneSheet: Sheet<RotorPlaneInput, RotorPlaneValue> = {
  id: "rotor-plane",
  question: say("mechanics.brake-end-sheets.where-does-the-rotor-run-and"),
  notes: say("mechanics.brake-end-sheets.from-the-centre-plane-in-the"),
  fields: [
    {
      kind: "text",
      key: "end",
      label: say("mechanics.brake-end-sheets.which-end"),
      oneOf: ["rear", "front"],
      maxLength: 5,
      start: "rear",
    },
    field(
      "dropout_gap_mm",
      say("mechanics.brake-end-sheets.between-the-dropout-faces-as-set"),
      "mm",
      60,
      250,
      142,
      true,
    ),
    field("rotor_offset_mm", say("mechanics.brake-end-sheets.rotor-seat-inside-the-hub-s"), "mm", 0, 100, 15.3, true),
  ],
  gives: [
    { key: "rotor_plane_from_centre_mm", means: say("mechanics.brake-end-sheets.rotor-seat-from-the-centre-plane") },
    { key: "tab_plane_from_centre_mm", means: say("mechanics.brake-end-sheets.reference-plane-of-the-tab-from") },
    {
      key: "tab_plane_inside_dropout_face_mm",
      means: say("mechanics.brake-end-sheets.that-plane-inside-the-dropout-face"),
    },
    { key: "reference_oln_mm", means: say("mechanics.brake-end-sheets.hub-width-the-planes-are-laid") },
    { key: "dropout_gap_mm", means: say("mechanics.brake-end-sheets.gap-used") },
  ],
  run: rotorPlane,
};

export const brakeEndSheets = [frontRetentionSheet, rotorPlaneSheet] as const;
