/**
 * Source: sample output of an open network-adjustment program, read in a published page (reference list 18.1): one fixed
 * height 1a = 1000.000 m, eight height differences, each with a standard deviation of 5.00 mm. There the residual is
 * adjusted − observed; here it is measured − adjusted, so its sign is turned.
 * The blunder test at the end is not from that page: 40 mm are added to observation 6 (recomputed, 18.1).
 */
import { type LeastSquaresFit, weightedLeastSquares } from "@coldset/core/numeric";
import { describe, expect, it } from "vitest";

// Unknowns: heights of 4, 3, 2 in m. -1 is the fixed point 1a.
const FIXED = 1000;
const LINES: readonly (readonly [
  from: number,
  to: number,
  observed: number,
  residualMm: number,
  standardised: number,
])[] = [
  [-1, 0, -1.225, 0.125, 0.032],
  [0, 1, -0.848, 6.125, 1.55],
  [1, 2, 1.342, -0.375, -0.095],
  [2, -1, 0.72, 5.125, 1.297],
  [-1, 2, -0.724, -1.125, -0.285],
  [2, 1, -1.335, -6.625, -1.676],
  [1, 0, 0.842, -0.125, -0.032],
  [0, -1, 1.231, -6.125, -1.55],
];

function adjust(observed: readonly number[]): LeastSquaresFit {
  const answer = weightedLeastSquares({
    measured: observed,
    sd: observed.map(() => 0.005),
    start: [0, 0, 0],
    model: (heights, predicted, jacobian) => {
      LINES.forEach(([from, to], i) => {
        const height = (point: number): number => (point < 0 ? FIXED : (heights[point] ?? Number.NaN));
        predicted[i] = height(to) - height(from);
        if (jacobian === undefined) return;
        for (let j = 0; j < 3; j++) jacobian[i * 3 + j] = (to === j ? 1 : 0) - (from === j ? 1 : 0);
      });
      return true;
    },
  });
  if (answer.kind !== "converged") throw new Error(answer.kind);
  return answer;
}

describe("level network with published output", () => {
  const fit = adjust(LINES.map((line) => line[2]));

  it("finds the published heights, to 0.01 mm", () => {
    expect(fit.unknowns[0]).toBeCloseTo(998.77513, 5);
    expect(fit.unknowns[1]).toBeCloseTo(997.93325, 5);
    expect(fit.unknowns[2]).toBeCloseTo(999.27487, 5);
  });

  it("finds the published residuals and standardised residuals, sign turned", () => {
    LINES.forEach(([, , , residualMm, standardised], i) => {
      expect((fit.residuals[i] ?? 0) * 1000).toBeCloseTo(-residualMm, 3);
      expect(fit.normalised[i]).toBeCloseTo(-standardised, 3);
    });
  });

  it("finds the published sum of squares, freedom, posterior sigma and redundancy", () => {
    expect(fit.chiSquare * 25).toBeCloseTo(146.625, 6);
    expect(fit.degreesOfFreedom).toBe(5);
    expect(5 * Math.sqrt(fit.chiSquare / 5)).toBeCloseTo(5.42, 2);
    for (const r of fit.redundancy) expect(r).toBeCloseTo(0.625, 9);
  });

  it("finds the published standard deviations 3.1, 3.5, 3.1 mm (3.062, 3.536, 3.062)", () => {
    const sdMm = [0, 1, 2].map((j) => 1000 * Math.sqrt(fit.covariance[j * 4] ?? 0));
    expect(sdMm[0]).toBeCloseTo(3.062, 3);
    expect(sdMm[1]).toBeCloseTo(3.536, 3);
    expect(sdMm[2]).toBeCloseTo(3.062, 3);
  });

  it("names observation 6 when 40 mm are added to it: 8.0006, the others at most 3.89 (recomputed)", () => {
    const spoilt = adjust(LINES.map((line, i) => line[2] + (i === 5 ? 0.04 : 0)));
    // Published sign -8.0006 is adjusted − observed.
    expect(spoilt.normalised[5]).toBeCloseTo(8.0006, 3);
    const others = Array.from(spoilt.normalised).filter((_, i) => i !== 5);
    expect(Math.max(...others.map(Math.abs))).toBeLessThan(3.9);
    expect(Math.max(...others.map(Math.abs))).toBeGreaterThan(3.88);
  });
});
