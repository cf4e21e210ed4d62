/** What must hold for every drive (seeded). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Answer } from "../quantity/index.js";
import { armGap, cableLength, centreForLinks, chainline, chainPitches, fixedCentres } from "./index.js";

const SEED = { seed: 20240612, numRuns: 150 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const teeth = (min: number, max: number) => fc.integer({ min, max });

function value<T>(answer: Answer<T>): T {
  if (answer.kind === "refused") throw new Error(JSON.stringify(answer.refusals));
  return answer.value;
}

describe("chain", () => {
  it("ring and cog may change places; pitch and chainstay scale together", () => {
    fc.assert(
      fc.property(teeth(20, 60), teeth(9, 50), between(350, 500), between(0.5, 3), (ring, cog, c, k) => {
        const n = chainPitches({ ring, cog, chainstayMm: c });
        expect(chainPitches({ ring: cog, cog: ring, chainstayMm: c })).toBeCloseTo(n, 10);
        expect(chainPitches({ ring, cog, chainstayMm: k * c, pitchMm: k * 12.7 })).toBeCloseTo(n, 9);
        expect(centreForLinks({ ring, cog, links: n })).toBeCloseTo(c, 7);
      }),
      SEED,
    );
  });

  it("the links chosen are the even number nearest to the middle of the window", () => {
    fc.assert(
      fc.property(teeth(28, 52), teeth(11, 24), between(380, 480), (ring, cog, c) => {
        const pair = value(fixedCentres({ chainstayMm: c, chainstayHalfWidthMm: 0.1, pairs: [{ ring, cog }] }))
          .pairs[0];
        const links = pair?.links ?? Number.NaN;
        expect(links % 2).toBe(0);
        const off = (n: number) => Math.abs(centreForLinks({ ring, cog, links: n }) - c - 0.4);
        expect(off(links)).toBeLessThanOrEqual(off(links - 2) + 1e-6);
        expect(off(links)).toBeLessThanOrEqual(off(links + 2) + 1e-6);
        const slack = pair?.slack_mm ?? Number.NaN;
        if (pair?.verdict === "fits") expect(slack > -1e-8 && slack < 0.8 + 1e-8).toBe(true);
        expect(pair?.chance).toBeGreaterThanOrEqual(0);
        expect(pair?.chance).toBeLessThanOrEqual(1);
      }),
      SEED,
    );
  });
});

describe("chainline", () => {
  it("all lengths k times as long: lines k times, angles as before; rings further out raise every angle", () => {
    fc.assert(
      fc.property(teeth(1, 3), teeth(1, 11), between(42, 55), between(1, 1.4), (rings, cogs, line, k) => {
        const q = {
          crank_chainline_mm: line,
          ring_count: rings,
          ring_pitch_mm: 7.5,
          OLN_mm: 135,
          locknut_to_smallest_cog_mm: 4,
          cog_count: cogs,
          cog_pitch_mm: 3.9,
          chainstay_mm: 430,
        };
        const once = value(chainline(q));
        const scaled = value(
          chainline(
            Object.fromEntries(Object.entries(q).map(([key, v]) => [key, key.endsWith("_mm") ? v * k : v])) as typeof q,
          ),
        );
        expect(scaled.rear_chainline_mm).toBeCloseTo(k * once.rear_chainline_mm, 9);
        const out = value(chainline({ ...q, crank_chainline_mm: line + 2 }));
        for (const [key, angle] of Object.entries(once.chain_angles_deg)) {
          expect(scaled.chain_angles_deg[key]).toBeCloseTo(angle, 9);
          expect(out.chain_angles_deg[key] ?? Number.NaN).toBeGreaterThan(angle);
        }
      }),
      SEED,
    );
  });
});

describe("arm gap", () => {
  it("a wider set never gives more room, a longer spindle gives half its length", () => {
    fc.assert(
      fc.property(between(0, 6), between(0, 4), between(0, 10), (set, more, longer) => {
        const q = {
          q_mm: 160,
          arm_inner_at_spindle_mm: 47,
          arm_end_thickness_mm: 13,
          crank_length_mm: 170,
          stay_radius_mm: [40, 80, 120, 180],
          stay_outer_mm: [33, 40, 48, 55],
          chainstay_mm: 440,
          chainstay_bridge_from_axle_mm: 370,
          rings: [{ teeth: 40, chainline_mm: 44, width: "3/32" }],
        };
        const one = value(armGap({ ...q, set_per_side_mm: set }));
        const wider = value(armGap({ ...q, set_per_side_mm: set + more }));
        expect(wider.arm_gap_mm).toBeLessThanOrEqual(one.arm_gap_mm + 1e-9);
        const spindle = value(armGap({ ...q, set_per_side_mm: set, spindle_longer_by_mm: longer }));
        expect(spindle.arm_gap_mm).toBeCloseTo(one.arm_gap_mm + longer / 2, 9);
        expect(spindle.ring_gaps[0]?.gap_mm).toBeCloseTo((one.ring_gaps[0]?.gap_mm ?? Number.NaN) + longer / 2, 9);
      }),
      SEED,
    );
  });
});

describe("cables", () => {
  it("mirrored left to right and read from the other end a route is as long", () => {
    const point = fc.record({ x_mm: between(-900, 900), y_mm: between(-100, 1100), z_mm: between(-400, 400) });
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 8 }), (route) => {
        const length = value(cableLength({ route })).route_mm;
        const mirrored = route.map((p) => ({ ...p, z_mm: -p.z_mm }));
        expect(value(cableLength({ route: mirrored })).route_mm).toBeCloseTo(length, 8);
        expect(value(cableLength({ route: [...route].reverse() })).route_mm).toBeCloseTo(length, 8);
      }),
      SEED,
    );
  });
});
