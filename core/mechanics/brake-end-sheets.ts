/** The sheets `front-retention` and `rotor-plane`. Start values: the worked examples of M17 and M15. */
import type { NumberField, Sheet, SheetUnit } from "../sheet/index.js";
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
  question: "Can the disc brake push the front wheel out of its slots?",
  notes:
    "One steady stop, no bumps. Rotor on the left. A warning, never a proof; a fork not made for a disc stays refused.",
  fields: [
    field("total_mass_kg", "Rider, load and bicycle", "kg", 1, 400, 100),
    field("decel_g", "Braking, parts of g", "ratio", 0.01, 1.2, 0.6),
    field("front_load_share", "Part of the weight on the front wheel", "ratio", 0, 1, 0.9),
    field("front_radius_mm", "Front tyre radius", "mm", 50, 600, 340),
    field("rotor_diameter_mm", "Rotor diameter", "mm", 100, 300, 160),
    field("caliper_bearing_deg", "Pads above straight back", "deg", -180, 180, 30),
    field("slot_forward_deg", "Slot opening, forward from straight down", "deg", -180, 180, 0),
    field("dropout_from_centre_mm", "Dropout from the centre plane", "mm", 20, 150, 50),
    field("rotor_from_centre_mm", "Rotor from the centre plane", "mm", 0, 149, 39.5),
    field("clamp_n", "Clamp force of the axle", "N", 0, 50000, 3000, true),
    field("friction", "Friction at the clamped faces", "ratio", 0.01, 1, 0.15, true),
  ],
  gives: [
    { key: "out_left_n", means: "Force out of the rotor-side slot, negative = seats itself" },
    { key: "out_right_n", means: "Force out of the other slot" },
    { key: "out_total_n", means: "Both together" },
    { key: "grip_per_end_n", means: "What the clamp holds by friction at one end" },
    { key: "judgement", means: "seats itself, held by the clamp only, clamp cannot hold it, clamp not stated" },
    { key: "brake_force_n", means: "Brake force at the tyre" },
    { key: "pad_force_n", means: "Force of the pads on the rotor" },
    { key: "wheel_load_n", means: "Weight on the front wheel" },
  ],
  run: frontRetention,
};

export const rotorPlaneSheet: Sheet<RotorPlaneInput, RotorPlaneValue> = {
  id: "rotor-plane",
  question: "Where does the rotor run, and how far inside the dropout face does the tab's plane lie?",
  notes:
    "From the centre plane, in the width that the hub ends touch. Usual six-bolt hubs; a measured rotor seat wins.",
  fields: [
    { kind: "text", key: "end", label: "Which end", oneOf: ["rear", "front"], maxLength: 5, start: "rear" },
    field("dropout_gap_mm", "Between the dropout faces as set", "mm", 60, 250, 142, true),
    field("rotor_offset_mm", "Rotor seat inside the hub's face", "mm", 0, 100, 15.3, true),
  ],
  gives: [
    { key: "rotor_plane_from_centre_mm", means: "Rotor seat from the centre plane" },
    { key: "tab_plane_from_centre_mm", means: "Reference plane of the tab from the centre plane" },
    { key: "tab_plane_inside_dropout_face_mm", means: "That plane inside the dropout face" },
    { key: "reference_oln_mm", means: "Hub width the planes are laid out for" },
    { key: "dropout_gap_mm", means: "Gap used" },
  ],
  run: rotorPlane,
};

export const brakeEndSheets = [frontRetentionSheet, rotorPlaneSheet] as const;
