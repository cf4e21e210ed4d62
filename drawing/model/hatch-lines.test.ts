import { describe, expect, test } from "vitest";
import { hatchLines } from "./hatch-lines.js";
import { at, pathOf, rectangle } from "./path.js";

const length = (strokes: readonly (readonly [{ x: number; y: number }, { x: number; y: number }])[]) =>
  strokes.reduce((sum, [a, b]) => sum + Math.hypot(a.x - b.x, a.y - b.y), 0);

describe("hatching", () => {
  test("lines at one pitch cover their area: length times pitch is the area", () => {
    // By hand: 400 x 300 = 120 000 mm²; pitch 6, so about 20 000 mm of line. Edge effects stay under 1 %.
    const { strokes } = hatchLines(rectangle(0, 0, 400, 300), "short", 1);
    expect(length(strokes) * 6).toBeGreaterThan(120_000 * 0.99);
    expect(length(strokes) * 6).toBeLessThan(120_000 * 1.01);
  });

  test("every stroke ends on the edge and runs at 45 degrees", () => {
    const { strokes } = hatchLines(rectangle(3, 4, 50, 20), "tight", 1);
    expect(strokes.length).toBeGreaterThan(3);
    for (const [a, b] of strokes) {
      expect(Math.abs(b.y - a.y)).toBeCloseTo(Math.abs(b.x - a.x), 9);
      for (const p of [a, b]) {
        const edge = Math.min(Math.abs(p.x - 3), Math.abs(p.x - 53), Math.abs(p.y - 4), Math.abs(p.y - 24));
        expect(edge).toBeLessThan(1e-9);
      }
    }
  });

  test("a hole stays blank (even-odd)", () => {
    const ring = [...rectangle(0, 0, 100, 100), ...rectangle(40, 40, 20, 20)];
    const whole = length(hatchLines(rectangle(0, 0, 100, 100), "ground", 1).strokes);
    const holed = length(hatchLines(ring, "ground", 1).strokes);
    expect((whole - holed) * 10).toBeGreaterThan(400 * 0.7);
    expect((whole - holed) * 10).toBeLessThan(400 * 1.3);
  });

  test("the keep side is dots inside the area", () => {
    const { strokes, dots } = hatchLines(pathOf([at(0, 0), at(90, 0), at(0, 90)], true), "keep", 1);
    expect(strokes).toHaveLength(0);
    // Two dots in each 8 by 8: 4050 / 64 * 2 = 127.
    expect(dots.length).toBeGreaterThan(110);
    expect(dots.length).toBeLessThan(140);
    for (const p of dots) expect(p.x >= -1e-9 && p.y >= -1e-9 && p.x + p.y <= 90 + 1e-9).toBe(true);
  });
});
