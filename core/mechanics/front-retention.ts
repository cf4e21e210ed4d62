/**
 * Can the disc brake push the front wheel out of its slots?
 *
 * Brake force at the tyre F_b = m a. The pads pull the rotor with F_c = F_b R / r_e, r_e about rotor radius - 8. With the
 * caliper `bearing` above straight back, the pads push the rotor by (-sin b, -cos b) F_c (x forward, y up). The slot
 * opens along u = (sin g, -cos g), g forward from straight down. Force out of the slots, positive = pushed out:
 *   E = (F_c cos b - N) cos g - (F_b + F_c sin b) sin g,  N = load share x m g carried by the front wheel.
 * The rotor sits on the left, so the left end takes (z_d + z_r) / (2 z_d) of the pad force and half of the rest.
 * A clamp holds by friction at two faces an end: 2 mu F.
 * Limits: one steady stop at `decel`, no bumps, no bending of blade or axle; the clamp's force is as entered, not as
 * it is after shaking. A warning, never a proof. Sources: M17 (derived); pull-out test 2300 N shared by both ends:
 * ISO 4210-2 / EN 14764 family (from memory, not re-read).
 */

import { type Answer, answered, type Caution, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";

const STANDARD_GRAVITY = 9.80665;
const RAD = Math.PI / 180;
/** What one end sees in the pull-out test of new bicycles, N. */
const TEST_PER_END_N = 1150;

export interface FrontRetentionInput {
  /** Rider, load and bicycle, kg. */
  readonly total_mass_kg: number;
  /** Braking, parts of g; near the pitch limit all of it is at the front. Usual 0.6. */
  readonly decel_g: number;
  /** Part of the weight on the front wheel in this stop, 0 to 1. */
  readonly front_load_share: number;
  readonly front_radius_mm: number;
  readonly rotor_diameter_mm: number;
  /** Pads from straight behind the axle, up, degrees. */
  readonly caliper_bearing_deg: number;
  /** Slot opening from straight down, forward, degrees: 0 opens down, 90 forward. */
  readonly slot_forward_deg: number;
  /** Dropout and rotor from the centre plane, mm. */
  readonly dropout_from_centre_mm: number;
  readonly rotor_from_centre_mm: number;
  /** Clamp force of the axle, N, and friction at its faces. Left out = grip not judged. */
  readonly clamp_n?: number;
  readonly friction?: number;
}

export interface FrontRetentionValue {
  readonly brake_force_n: number;
  readonly pad_force_n: number;
  readonly wheel_load_n: number;
  /** Force out of the slots: both ends together, left (rotor side) and right; negative = seats itself. */
  readonly out_total_n: number;
  readonly out_left_n: number;
  readonly out_right_n: number;
  readonly grip_per_end_n?: number;
  /** Seats itself, held by the clamp alone, or more than the entered clamp holds. */
  readonly judgement: "seats itself" | "held by the clamp only" | "clamp cannot hold it" | "clamp not stated";
}

export function frontRetention(input: FrontRetentionInput): Answer<FrontRetentionValue> {
  const refusals = retentionProblems(input);
  if (refusals.length > 0) return refused(refusals);
  const b = input.caliper_bearing_deg * RAD;
  const g = input.slot_forward_deg * RAD;
  const weight = input.total_mass_kg * STANDARD_GRAVITY;
  const brake = weight * input.decel_g;
  const load = weight * input.front_load_share;
  const pads = (brake * input.front_radius_mm) / (input.rotor_diameter_mm / 2 - 8);
  const padsOut = pads * (Math.cos(b) * Math.cos(g) - Math.sin(b) * Math.sin(g));
  const restOut = -load * Math.cos(g) - brake * Math.sin(g);
  const leftShare = (input.dropout_from_centre_mm + input.rotor_from_centre_mm) / (2 * input.dropout_from_centre_mm);
  const left = padsOut * leftShare + restOut / 2;
  const right = padsOut * (1 - leftShare) + restOut / 2;
  const worst = Math.max(left, right);
  const grip = input.clamp_n === undefined ? undefined : 2 * (input.friction ?? 0.15) * input.clamp_n;
  const judgement = judge(worst, grip);
  const value: FrontRetentionValue = {
    brake_force_n: brake,
    pad_force_n: pads,
    wheel_load_n: load,
    out_total_n: padsOut + restOut,
    out_left_n: left,
    out_right_n: right,
    ...(grip === undefined ? {} : { grip_per_end_n: grip }),
    judgement,
  };
  return answered(value, {
    sources: ["m17-front-retention", "iso-4210-2-retention"],
    cautions: retentionCautions(value, worst),
  });
}

function judge(worstN: number, gripN: number | undefined): FrontRetentionValue["judgement"] {
  if (worstN <= 0) return "seats itself";
  if (gripN === undefined) return "clamp not stated";
  return worstN > gripN ? "clamp cannot hold it" : "held by the clamp only";
}

function retentionCautions(value: FrontRetentionValue, worst: number): Caution[] {
  const cautions: Caution[] = [
    {
      code: "warning-not-proof",
      message: say("mechanics.front-retention.this-is-a-warning-not-a"),
    },
  ];
  if (worst <= 0) return cautions;
  const side = value.out_left_n >= value.out_right_n ? "rotor-side" : "right";
  cautions.push({
    code: "wheel-pushed-out",
    at: "slot_forward_deg",
    message: say("mechanics.front-retention.braking-pushes-the-end-of-the", { side, worst: worst.toFixed(0) }),
  });
  if (value.judgement === "clamp cannot hold it") {
    cautions.push({
      code: "clamp-too-weak",
      at: "clamp_n",
      message: say("mechanics.front-retention.that-is-more-than-the-n", {
        gripPerEndN: (value.grip_per_end_n ?? 0).toFixed(0),
      }),
    });
  }
  if (worst > TEST_PER_END_N) {
    cautions.push({
      code: "over-pull-out-test",
      message: say("mechanics.front-retention.the-usual-pull-out-test-gives"),
    });
  }
  return cautions;
}

function retentionProblems(input: FrontRetentionInput): Refusal[] {
  const refusals: Refusal[] = [];
  const need = (at: keyof FrontRetentionInput, fits: (x: number) => boolean, allowed: string): void => {
    const given = input[at];
    if (given === undefined || (Number.isFinite(given) && fits(given))) return;
    refusals.push({
      code: "out-of-range",
      at,
      given,
      allowed,
      message: say("mechanics.front-retention.is-allowed-is", { at, given, allowed }),
    });
  };
  need("total_mass_kg", (x) => x > 0 && x <= 400, say("mechanics.front-retention.more-than-0-to-400-kg"));
  need("decel_g", (x) => x > 0 && x <= 1.2, say("mechanics.front-retention.more-than-0-to-1-2"));
  need("front_load_share", (x) => x >= 0 && x <= 1, say("mechanics.front-retention.0-to-1"));
  need("front_radius_mm", (x) => x > 0, say("mechanics.front-retention.more-than-0-mm"));
  need("rotor_diameter_mm", (x) => x >= 100 && x <= 300, say("mechanics.front-retention.100-to-300-mm"));
  need("caliper_bearing_deg", (x) => x >= -180 && x <= 180, "-180 to 180 deg");
  need("slot_forward_deg", (x) => x >= -180 && x <= 180, "-180 to 180 deg");
  need("dropout_from_centre_mm", (x) => x > 0, say("mechanics.front-retention.more-than-0-mm"));
  need(
    "rotor_from_centre_mm",
    (x) => x >= 0 && x < input.dropout_from_centre_mm,
    say("mechanics.front-retention.0-to-under-dropout-from-centre"),
  );
  need("clamp_n", (x) => x >= 0, say("mechanics.front-retention.0-n-or-more"));
  need("friction", (x) => x > 0 && x <= 1, say("mechanics.front-retention.more-than-0-to-1"));
  return refusals;
}
