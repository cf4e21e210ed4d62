import { describe, expect, it } from "vitest";
import { type FrontRetentionInput, frontRetention } from "./front-retention.js";
import { rotorPlane } from "./rotor-plane.js";

/** M17's worked wheel. */
const M17: FrontRetentionInput = {
  total_mass_kg: 100,
  decel_g: 0.6,
  front_load_share: 0.9,
  front_radius_mm: 340,
  rotor_diameter_mm: 160,
  caliper_bearing_deg: 30,
  slot_forward_deg: 0,
  dropout_from_centre_mm: 50,
  rotor_from_centre_mm: 39.5,
  clamp_n: 3000,
};
const run = (more: Partial<FrontRetentionInput>) => {
  const answer = frontRetention({ ...M17, ...more });
  if (answer.kind !== "answered") throw new Error(JSON.stringify(answer.refusals));
  return answer;
};

describe("front retention (M17 [DER], redone by hand)", () => {
  it("slot down: E 1524, left 1713, right -189", () => {
    // W = 980.7; F_b = 588.4; F_c = 588.4 * 340/72 = 2778.6; N = 882.6
    // E = 2778.6 cos 30 - 882.6 = 2406.3 - 882.6 = 1523.7; left 0.895 * 2406.3 - 441.3 = 1712.4; right 252.7 - 441.3 = -188.6
    // 589 and 2780 come of taking g as 9.81; within 1 N
    const got = run({}).value;
    expect(Math.abs(got.brake_force_n - 589)).toBeLessThan(1);
    expect(Math.abs(got.pad_force_n - 2780)).toBeLessThan(2);
    expect(Math.abs(got.out_total_n - 1524)).toBeLessThan(1);
    expect(Math.abs(got.out_left_n - 1713)).toBeLessThan(1);
    expect(Math.abs(got.out_right_n + 189)).toBeLessThan(1);
    expect(got.judgement).toBe("clamp cannot hold it");
    expect(got.grip_per_end_n).toBeCloseTo(900, 9);
  });

  it("slot 45 forward: -321 in all, left +124; 90 forward: -1978, seats itself", () => {
    const half = run({ slot_forward_deg: 45 }).value;
    expect(Math.abs(half.out_total_n + 321)).toBeLessThan(1);
    expect(Math.abs(half.out_left_n - 124)).toBeLessThan(1);
    expect(half.judgement).toBe("held by the clamp only");
    const forward = run({ slot_forward_deg: 90 }).value;
    expect(Math.abs(forward.out_total_n + 1978)).toBeLessThan(1);
    expect(forward.judgement).toBe("seats itself");
  });

  it("always says it is no proof, and names the load that the pull-out test does not reach", () => {
    expect(run({ slot_forward_deg: 90 }).cautions.map((c) => c.code)).toEqual(["warning-not-proof"]);
    expect(run({}).cautions.map((c) => c.code)).toEqual([
      "warning-not-proof",
      "wheel-pushed-out",
      "clamp-too-weak",
      "over-pull-out-test",
    ]);
  });

  it("ends add up to the total for any slot and bearing", () => {
    for (const slot_forward_deg of [-30, 0, 20, 70, 120]) {
      for (const caliper_bearing_deg of [-20, 0, 45, 90]) {
        const got = run({ slot_forward_deg, caliper_bearing_deg }).value;
        expect(got.out_left_n + got.out_right_n).toBeCloseTo(got.out_total_n, 8);
      }
    }
  });

  it("refuses all that cannot be, at once", () => {
    const answer = frontRetention({ ...M17, total_mass_kg: 0, rotor_from_centre_mm: 60 });
    expect(answer.kind === "refused" && answer.refusals.map((r) => r.at)).toEqual([
      "total_mass_kg",
      "rotor_from_centre_mm",
    ]);
  });
});

describe("rotor plane (M15 and rulings 1b)", () => {
  const plane = (input: Parameters<typeof rotorPlane>[0]) => {
    const answer = rotorPlane(input);
    if (answer.kind !== "answered") throw new Error("refused");
    return answer;
  };
  it("rear 52.2, front 39.5; tab plane 67.5", () => {
    expect(plane({ end: "rear" }).value.rotor_plane_from_centre_mm).toBeCloseTo(52.2, 9);
    expect(plane({ end: "front" }).value.rotor_plane_from_centre_mm).toBeCloseTo(39.5, 9);
    expect(plane({ end: "rear", dropout_gap_mm: 142 }).value.tab_plane_from_centre_mm).toBe(67.5);
  });
  it("lies 3.5 inside flat faces at 142 and 5.0 inside with shoulders of 1.5 (gap 145), and says so", () => {
    const flat = plane({ end: "rear", dropout_gap_mm: 142 });
    expect(flat.value.tab_plane_inside_dropout_face_mm).toBe(3.5);
    expect(flat.cautions.some((c) => c.code === "tab-plane-not-at-dropout")).toBe(true);
    expect(plane({ end: "rear", dropout_gap_mm: 145 }).value.tab_plane_inside_dropout_face_mm).toBe(5);
    expect(plane({ end: "rear", dropout_gap_mm: 135, rotor_offset_mm: 15.3 }).cautions).toEqual([]);
  });
});
