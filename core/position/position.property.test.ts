/** What must hold for every frame, stem and saddle (seeded). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Answer } from "../quantity/index.js";
import { cockpit, saddle, steerer } from "./index.js";

const SEED = { seed: 20240611, numRuns: 150 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

function value<T>(answer: Answer<T>): T {
  if (answer.kind === "refused") throw new Error(JSON.stringify(answer.refusals));
  return answer.value;
}

const cockpits = fc.record({
  stack_mm: between(300, 550),
  reach_mm: between(200, 450),
  head_angle_deg: between(60, 80),
  upper_stack_mm: between(0, 40),
  clamp_height_mm: between(20, 60),
  hand_forward_mm: between(-120, 120),
  hand_up_mm: between(-50, 50),
  target_x_mm: between(200, 600),
  target_y_mm: between(400, 700),
  stem_lengths_mm: fc.array(between(20, 140), { minLength: 1, maxLength: 5 }),
  stem_angles_deg: fc.array(between(-40, 40), { minLength: 1, maxLength: 5 }),
  spacers_mm: fc.array(between(0, 50), { minLength: 1, maxLength: 5 }),
});

describe("cockpit", () => {
  it("all lengths twice as long make every error twice as long, angles unchanged", () => {
    fc.assert(
      fc.property(cockpits, (q) => {
        const doubled = Object.fromEntries(
          Object.entries(q).map(([key, v]) => [
            key,
            key.endsWith("_deg") ? v : Array.isArray(v) ? v.map((x) => 2 * x) : 2 * v,
          ]),
        ) as typeof q;
        const once = value(cockpit(q));
        const twice = value(cockpit(doubled));
        expect(twice.best.error_mm).toBeCloseTo(2 * once.best.error_mm, 6);
        expect(twice.best.stem_angle_deg).toBe(once.best.stem_angle_deg);
      }),
      SEED,
    );
  });

  it("the best is never worse than what follows, and moving frame and target together changes nothing", () => {
    fc.assert(
      fc.property(cockpits, between(-50, 50), (q, shift) => {
        const once = value(cockpit(q));
        let last = once.best.error_mm;
        for (const row of once.next_best) {
          expect(row.error_mm).toBeGreaterThanOrEqual(last);
          last = row.error_mm;
        }
        const moved = value(cockpit({ ...q, reach_mm: q.reach_mm + shift, target_x_mm: q.target_x_mm + shift }));
        expect(moved.best.error_mm).toBeCloseTo(once.best.error_mm, 6);
      }),
      SEED,
    );
  });

  it("an exact stem that can exist has no error once it is in the list", () => {
    fc.assert(
      fc.property(cockpits, (q) => {
        for (const exact of value(cockpit(q)).exact_for_each_angle) {
          if (!exact.can_exist || exact.exact_stem_length_mm > 300 || exact.exact_spacers_mm > 300) continue;
          const again = value(
            cockpit({
              ...q,
              stem_angles_deg: [exact.stem_angle_deg],
              stem_lengths_mm: [exact.exact_stem_length_mm],
              spacers_mm: [exact.exact_spacers_mm],
            }),
          );
          expect(again.best.error_mm).toBeLessThan(1e-8);
        }
      }),
      SEED,
    );
  });
});

describe("saddle", () => {
  it("put together again, clamp, rails and height give the target", () => {
    fc.assert(
      fc.property(
        between(65, 80),
        between(-350, -50),
        between(450, 900),
        between(30, 70),
        between(-20, 40),
        (a, x, y, h, s) => {
          const row = value(
            saddle({
              seat_angle_deg: a,
              target_x_mm: x,
              target_y_mm: y,
              saddle_height_above_clamp_mm: h,
              setbacks_mm: [s],
              rail_range_plus_minus_mm: 15,
            }),
          ).per_setback[0];
          const rad = (a * Math.PI) / 180;
          const extension = row?.extension_along_seat_tube_mm ?? Number.NaN;
          const clampX = -extension * Math.cos(rad) - s * Math.sin(rad);
          const clampY = extension * Math.sin(rad) - s * Math.cos(rad);
          expect(clampX - (row?.rail_shift_back_mm ?? Number.NaN)).toBeCloseTo(x, 7);
          expect(clampY + h).toBeCloseTo(y, 7);
        },
      ),
      SEED,
    );
  });
});

describe("steerer", () => {
  it("with the most spacers it carries, the same steerer is long enough and less than a hair over is not", () => {
    fc.assert(
      fc.property(between(90, 220), between(0, 60), between(150, 330), (headTube, below, available) => {
        const q = {
          head_tube_mm: headTube,
          faced_off_mm: 0,
          lower_stack_mm: 12,
          upper_stack_mm: 10,
          spacers_below_mm: below,
          stem_clamp_mm: 40,
          spacers_above_mm: 5,
          gap_mm: 3,
          steerer_available_mm: available,
          limit_spacers_mm: 300,
        };
        const first = value(steerer(q));
        if (!first.carries_the_stem_without_spacers) return;
        const most = first.most_spacers_below_mm;
        expect(value(steerer({ ...q, spacers_below_mm: most })).spare_mm).toBeGreaterThan(-1e-9);
        expect(value(steerer({ ...q, spacers_below_mm: most + 0.001 })).long_enough).toBe(false);
      }),
      SEED,
    );
  });
});
