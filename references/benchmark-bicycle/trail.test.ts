/**
 * Steering geometry of the benchmark bicycle: Meijaard, Papadopoulos, Ruina and Schwab 2007, "Linearized dynamics
 * equations for the balance and steer of a bicycle", Proc. R. Soc. A 463, Table 1 (values read in a page with the
 * journal's table): steer axis tilt pi/10 (head angle 72 deg), front radius 0.35 m, trail 0.08 m, wheelbase 1.02 m.
 */
import { rakeForTrail, trailFigures } from "@coldset/core/geometry";
import { describe, expect, it } from "vitest";

const HEAD = (72 * Math.PI) / 180;

describe("benchmark bicycle, trail", () => {
  it("has a fork offset of 32.0714 mm: 350 sin 18 - 80 cos 18", () => {
    expect(rakeForTrail(350, HEAD, 80)).toBeCloseTo(32.0714, 4);
  });
  it("gives the paper's trail of 80 mm back, and its mu = c cos(tilt) / w", () => {
    const t = trailFigures(350, HEAD, 350 * Math.sin(Math.PI / 10) - 80 * Math.cos(Math.PI / 10));
    expect(t.trailMm).toBeCloseTo(80, 10);
    // mu = 0.07459266794 recomputed from Table 1; mechanical trail = c sin H = c cos(tilt)
    expect(t.mechanicalTrailMm / 1020).toBeCloseTo(0.07459266794, 10);
  });
});

describe("guard rows (recomputed from the formula, not outside values; they only catch slips)", () => {
  const rows: readonly (readonly [number, number, number, number, number, number])[] = [
    [73, 340, 45, 56.892, 54.406, 15.907],
    [72, 336, 45, 61.857, 58.83, 18.179],
    [71, 350, 43, 75.037, 70.949, 23.099],
    [72, 350, 45, 66.406, 63.156, 19.516],
    [70, 345, 50, 72.361, 67.997, 23.256],
  ];
  it.each(rows)("head %d, R %d, rake %d", (head, radius, rake, trail, mechanical, flop) => {
    const t = trailFigures(radius, (head * Math.PI) / 180, rake);
    expect(t.trailMm).toBeCloseTo(trail, 2);
    expect(t.mechanicalTrailMm).toBeCloseTo(mechanical, 2);
    expect(t.wheelFlopMm).toBeCloseTo(flop, 2);
  });
  it("M5: R 340, head 71, rake 45 gives 69.5", () => {
    expect(trailFigures(340, (71 * Math.PI) / 180, 45).trailMm).toBeCloseTo(69.5, 1);
  });
});
