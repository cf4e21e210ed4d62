import { describe, expect, it } from "vitest";
import { at, FIGURE_KEYS, figureSlopes, layout, ROWS, rowValue, sideFigures, UNKNOWNS } from "./side-view-model.js";

/** Any crooked bicycle: SA, seat tube, Tx, Ty, HA, joint, head tube, lower stack, L, rake, back, drop, radii. */
const P = Float64Array.from([1.27, 480, 381, 590, 1.24, 37, 140, 15, 380, 48, 420, 55, 335, 341]);

const moved = (i: number, by: number): Float64Array => P.map((x, k) => (k === i ? x + by : x));

describe("the slopes are those of the values (central differences, relative 1e-6)", () => {
  it("for every measure and the level ground", () => {
    for (let row = 0; row < ROWS; row++) {
      const d = new Float64Array(UNKNOWNS);
      rowValue(row, P, layout(P), d);
      for (let i = 0; i < UNKNOWNS; i++) {
        const h = 1e-5 * Math.max(1, Math.abs(at(P, i)));
        const up = moved(i, h);
        const down = moved(i, -h);
        const slope = (rowValue(row, up, layout(up)) - rowValue(row, down, layout(down))) / (2 * h);
        expect(Math.abs(at(d, i) - slope), `row ${row}, unknown ${i}`).toBeLessThan(
          1e-6 * Math.max(1, Math.abs(slope)),
        );
      }
    }
  });

  it("for every figure", () => {
    const slopes = figureSlopes(P);
    FIGURE_KEYS.forEach((key, k) => {
      for (let i = 0; i < UNKNOWNS; i++) {
        const h = 1e-5 * Math.max(1, Math.abs(at(P, i)));
        const slope = (sideFigures(moved(i, h))[key] - sideFigures(moved(i, -h))[key]) / (2 * h);
        const own = slopes[k]?.[i] ?? Number.NaN;
        expect(Math.abs(own - slope), `${key}, unknown ${i}`).toBeLessThan(1e-6 * Math.max(1, Math.abs(slope)));
      }
    });
  });
});
