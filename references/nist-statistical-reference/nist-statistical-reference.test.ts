/**
 * Source: NIST Statistical Reference Datasets. Misra1a (nonlinear): data, certified values and deviations read in several
 * published test suites. DanWood (nonlinear): certified parameters read there, data and deviations from memory. Norris
 * (linear): from memory. All three re-run independently (reference list 18.4). Certified sd = sqrt(covariance) × residual
 * sd, because the data have no standard deviations of their own (sd = 1 here).
 */
import { type LeastSquaresFit, weightedLeastSquares, withNumericJacobian } from "@coldset/core/numeric";
import { describe, expect, it } from "vitest";

type Curve = (b: Float64Array, x: number) => number;

function fitCurve(curve: Curve, x: readonly number[], y: readonly number[], start: readonly number[]): LeastSquaresFit {
  const answer = weightedLeastSquares({
    measured: y,
    sd: y.map(() => 1),
    start,
    model: withNumericJacobian((b, predicted) => {
      x.forEach((value, i) => {
        predicted[i] = curve(b, value);
      });
      return true;
    }),
  });
  if (answer.kind !== "converged") throw new Error(answer.kind);
  return answer;
}

function residualSd(fit: LeastSquaresFit): number {
  return Math.sqrt(fit.chiSquare / fit.degreesOfFreedom);
}

function sd(fit: LeastSquaresFit, j: number): number {
  return Math.sqrt(fit.covariance[j * fit.unknowns.length + j] ?? 0) * residualSd(fit);
}

/** Equal to so many significant digits. */
function digits(value: number | undefined, certified: number, count: number): void {
  expect(Math.abs(((value ?? Number.NaN) - certified) / certified)).toBeLessThan(0.5 * 10 ** (1 - count));
}

describe("NIST Misra1a", () => {
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
  const curve: Curve = (b, value) => (b[0] ?? 0) * (1 - Math.exp(-(b[1] ?? 0) * value));

  for (const start of [
    [500, 0.0001],
    [250, 0.0005],
  ]) {
    it(`from the start ${start.join(", ")}`, () => {
      const fit = fitCurve(curve, x, y, start);
      digits(fit.unknowns[0], 2.3894212918e2, 8);
      digits(fit.unknowns[1], 5.5015643181e-4, 8);
      digits(sd(fit, 0), 2.7070075241, 6);
      digits(sd(fit, 1), 7.2668688436e-6, 6);
      digits(fit.chiSquare, 1.2455138894e-1, 8);
      digits(residualSd(fit), 1.018787633e-1, 8);
      expect(fit.degreesOfFreedom).toBe(12);
    });
  }
});

describe("NIST DanWood", () => {
  it("from the start 1, 5", () => {
    const x = [1.309, 1.471, 1.49, 1.565, 1.611, 1.68];
    const y = [2.138, 3.421, 3.597, 4.34, 4.882, 5.66];
    const fit = fitCurve((b, value) => (b[0] ?? 0) * value ** (b[1] ?? 0), x, y, [1, 5]);
    digits(fit.unknowns[0], 7.6886226176e-1, 8);
    digits(fit.unknowns[1], 3.8604055871, 8);
    digits(sd(fit, 0), 1.828197386e-2, 6);
    digits(sd(fit, 1), 5.1726610913e-2, 6);
    digits(fit.chiSquare, 4.3173084083e-3, 8);
    digits(residualSd(fit), 3.2853114039e-2, 8);
  });
});

describe("NIST Norris", () => {
  it("the straight line", () => {
    const pairs =
      "0.1,0.2; 338.8,337.4; 118.1,118.2; 888.0,884.6; 9.2,10.1; 228.1,226.5; 668.5,666.3; 998.5,996.3; 449.1,448.6; 778.9,777.0; 559.2,558.2; 0.3,0.4; 0.1,0.6; 778.1,775.5; 668.8,666.9; 339.3,338.0; 448.9,447.5; 10.8,11.6; 557.7,556.0; 228.3,228.1; 998.0,995.8; 888.8,887.6; 119.6,120.2; 0.3,0.3; 0.6,0.3; 557.6,556.8; 339.3,339.1; 888.0,887.2; 998.5,999.0; 778.9,779.0; 10.2,11.1; 117.6,118.3; 228.9,229.2; 668.4,669.1; 449.2,448.9; 0.2,0.5"
        .split(";")
        .map((pair) => pair.split(",").map(Number));
    const y = pairs.map((pair) => pair[0] ?? Number.NaN);
    const x = pairs.map((pair) => pair[1] ?? Number.NaN);
    const fit = fitCurve((b, value) => (b[0] ?? 0) + (b[1] ?? 0) * value, x, y, [0, 0]);
    digits(fit.unknowns[0], -0.262323073774029, 7);
    digits(fit.unknowns[1], 1.00211681802045, 9);
    digits(sd(fit, 0), 0.232818234301152, 7);
    digits(sd(fit, 1), 0.429796848199937e-3, 7);
    digits(residualSd(fit), 0.884796396144373, 9);
  });
});
