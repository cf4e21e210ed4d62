import { describe, expect, test } from "vitest";
import { dustDots, normalQuantile } from "./dust-dots.js";

describe("dust", () => {
  test("quantiles of the normal law are those of the tables", () => {
    // Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1 (values from memory): 1.960 at 0.975, 2.576 at 0.995, 3.090 at 0.999.
    expect(normalQuantile(0.5)).toBeCloseTo(0, 12);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959964, 5);
    expect(normalQuantile(0.995)).toBeCloseTo(2.575829, 5);
    expect(normalQuantile(0.001)).toBeCloseTo(-3.090232, 5);
  });

  test.each([1, 2, 77])("95 of 100 dots of a strip lie inside the band, seed %i", (seed) => {
    const dots = dustDots({ kind: "dust", shape: "strip", at: { x: 10, y: 5 }, sdXMm: 2, sdYMm: 8, seed, dots: 200 });
    const inside = dots.filter((p) => Math.abs(p.x - 10) <= 1.959964 * 2).length;
    expect(inside).toBe(190);
    expect(dots.every((p) => Math.abs(p.y - 5) <= 4)).toBe(true);
  });

  test("95 of 100 dots of an ellipse lie inside its 95 % ellipse", () => {
    // chi-square with 2 degrees of freedom: 5.991 at 95 %, by hand -2 ln 0.05 = 5.9915.
    const dots = dustDots({
      kind: "dust",
      shape: "ellipse",
      at: { x: 0, y: 0 },
      sdXMm: 3,
      sdYMm: 1,
      rotateDeg: 30,
      seed: 4,
      dots: 200,
    });
    const c = Math.cos(Math.PI / 6);
    const s = Math.sin(Math.PI / 6);
    const inside = dots.filter((p) => ((p.x * c + p.y * s) / 3) ** 2 + (-p.x * s + p.y * c) ** 2 <= 5.9915).length;
    expect(inside).toBe(190);
  });

  test("the same seed gives the same dots, another seed others", () => {
    const dust = { kind: "dust", shape: "strip", at: { x: 0, y: 0 }, sdXMm: 1, sdYMm: 1, seed: 3 } as const;
    expect(dustDots(dust)).toEqual(dustDots(dust));
    expect(dustDots(dust)).not.toEqual(dustDots({ ...dust, seed: 4 }));
  });
});

test("a ring has 95 % of its dots inside 1.96 sd of its radius, all the way round", () => {
  const dots = dustDots({ kind: "dust", shape: "ring", at: { x: 5, y: -3 }, sdXMm: 2, sdYMm: 100, seed: 4, dots: 200 });
  const off = dots.map((p) => Math.hypot(p.x - 5, p.y + 3) - 100);
  expect(off.filter((d) => Math.abs(d) <= 1.96 * 2)).toHaveLength(190);
  for (const [sx, sy] of [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ] as const)
    expect(dots.filter((p) => (p.x - 5) * sx > 0 && (p.y + 3) * sy > 0).length).toBe(50);
});
