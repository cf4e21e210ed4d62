/**
 * Source: C. Ghilani / P. Wolf, Adjustment Computations, example of differential levelling (from memory, not re-read;
 * the arithmetic was repeated independently, reference list 18.3). A fixed at 437.596 m.
 */
import { weightedLeastSquares } from "@coldset/core/numeric";
import { describe, expect, it } from "vitest";

// Unknowns: heights of B, C, D in m; -1 is A.
const LINES: readonly (readonly [to: number, from: number, observed: number, sdMm: number])[] = [
  [0, -1, 10.509, 6],
  [1, 0, 5.36, 4],
  [2, 1, -8.523, 5],
  [-1, 2, -7.348, 3],
  [2, 0, -3.167, 4],
  [1, -1, 15.881, 12],
];

describe("weighted level network", () => {
  const answer = weightedLeastSquares({
    measured: LINES.map((line) => line[2]),
    sd: LINES.map((line) => line[3] / 1000),
    start: [440, 440, 440],
    model: (heights, predicted, jacobian) => {
      const height = (point: number): number => (point < 0 ? 437.596 : (heights[point] ?? Number.NaN));
      LINES.forEach(([to, from], i) => {
        predicted[i] = height(to) - height(from);
        if (jacobian) for (let j = 0; j < 3; j++) jacobian[i * 3 + j] = (to === j ? 1 : 0) - (from === j ? 1 : 0);
      });
      return true;
    },
  });

  it("finds the heights of B, C and D to 0.1 mm", () => {
    if (answer.kind !== "converged") throw new Error(answer.kind);
    expect(Math.abs((answer.unknowns[0] ?? 0) - 448.1087)).toBeLessThan(1e-4);
    expect(Math.abs((answer.unknowns[1] ?? 0) - 453.4685)).toBeLessThan(1e-4);
    expect(Math.abs((answer.unknowns[2] ?? 0) - 444.9436)).toBeLessThan(1e-4);
  });

  it("finds S0 = 0.6512 and the standard deviations 2.3, 2.6, 1.8 mm", () => {
    if (answer.kind !== "converged") throw new Error(answer.kind);
    const s0 = Math.sqrt(answer.chiSquare / answer.degreesOfFreedom);
    expect(s0).toBeCloseTo(0.6512, 4);
    const sds = [0, 1, 2].map((j) => 1000 * s0 * Math.sqrt(answer.covariance[j * 4] ?? 0));
    expect(sds[0]).toBeCloseTo(2.3, 1);
    expect(sds[1]).toBeCloseTo(2.6, 1);
    expect(sds[2]).toBeCloseTo(1.8, 1);
  });
});
