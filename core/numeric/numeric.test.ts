import { describe, expect, it } from "vitest";
import { chiSquareCdf, chiSquareQuantile } from "./chi-square.js";
import { choleskyFactor, choleskySolve } from "./cholesky.js";
import { findRoot } from "./find-root.js";
import { applyQ, factorQr, nullVectors, solveQr } from "./householder-qr.js";
import { incompleteGamma, logGamma } from "./incomplete-gamma.js";
import { normalCdf, normalQuantile, normalTwoSided } from "./normal.js";
import { weightedLeastSquares } from "./weighted-least-squares.js";

describe("chi-square", () => {
  // Usual table of upper limits, 95 % (from memory, not re-read): freedom, limit.
  const TABLE = [
    [1, 3.841],
    [2, 5.991],
    [5, 11.07],
    [7, 14.067],
    [10, 18.307],
    [30, 43.773],
    [100, 124.342],
  ] as const;
  for (const [freedom, limit] of TABLE) {
    it(`95 % limit with ${freedom} degrees of freedom is ${limit}`, () => {
      expect(chiSquareQuantile(0.95, freedom)).toBeCloseTo(limit, 3);
    });
  }
  it("agrees with the closed form for two degrees: -2 ln(1 - p)", () => {
    for (const p of [0.001, 0.5, 0.95, 0.9999]) expect(chiSquareQuantile(p, 2)).toBeCloseTo(-2 * Math.log(1 - p), 9);
  });
  it("gives no number outside its range", () => {
    expect(chiSquareQuantile(1, 3)).toBeNaN();
    expect(chiSquareQuantile(0.95, 0)).toBeNaN();
    expect(chiSquareCdf(-1, 3)).toBeNaN();
  });
});

describe("normal distribution", () => {
  it("has the limits of the usual table (from memory): 1.6449, 1.9600, 2.5758, 3.2905", () => {
    expect(normalQuantile(0.95)).toBeCloseTo(1.6448536, 6);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959964, 6);
    expect(normalQuantile(0.995)).toBeCloseTo(2.5758293, 6);
    expect(normalQuantile(0.9995)).toBeCloseTo(3.2905267, 6);
    expect(normalTwoSided(3.2905267)).toBeCloseTo(0.001, 9);
  });
  it("keeps its digits far in the lower tail: Phi(-10) = 7.6199e-24 (from memory)", () => {
    expect(normalCdf(-10) / 7.619853024160527e-24).toBeCloseTo(1, 9);
  });
  it("Baarda's delta0 4.13: limit at 0.1 % plus the quantile of the power 80 %", () => {
    expect(normalQuantile(0.9995) + normalQuantile(0.8)).toBeCloseTo(4.13, 2);
  });
  it("comes back to p", () => {
    for (const p of [1e-9, 0.01, 0.3, 0.5, 0.9, 1 - 1e-9]) expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 11);
    expect(normalQuantile(0)).toBeNaN();
  });
});

describe("gamma function", () => {
  it("ln Gamma(5) = ln 24, ln Gamma(1/2) = ln sqrt(pi)", () => {
    expect(logGamma(5)).toBeCloseTo(Math.log(24), 12);
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 12);
  });
  it("P(1, x) = 1 - exp(-x) on both sides of the switch", () => {
    for (const x of [0.1, 1.9, 2.1, 30]) expect(incompleteGamma(1, x).upper / Math.exp(-x)).toBeCloseTo(1, 10);
  });
});

describe("findRoot", () => {
  it("finds cos x = x at 0.7390851332151607 (from memory)", () => {
    const root = findRoot((x) => Math.cos(x) - x, 0, 1);
    expect(root.kind === "root" && root.x).toBeCloseTo(0.7390851332151607, 11);
  });
  it("finds a flat root and a root at an end", () => {
    const flat = findRoot((x) => (x - 1) ** 9, 0, 3);
    expect(flat.kind === "root" && Math.abs(flat.x - 1)).toBeLessThan(1e-2);
    expect(findRoot((x) => x, 0, 3)).toMatchObject({ kind: "root", x: 0 });
  });
  it("says so where there is no bracket or no number", () => {
    expect(findRoot((x) => x * x + 1, -1, 1).kind).toBe("not-bracketed");
    expect(findRoot((x) => Math.log(x), -1, 3).kind).toBe("not-finite");
  });
});

describe("small dense systems", () => {
  // Hand calculation: [[4,2],[2,3]] x = [8,8] gives x = (1, 2); L = [[2,0],[1,sqrt 2]].
  it("Cholesky: hand calculation", () => {
    const l = choleskyFactor([4, 2, 2, 3], 2);
    expect(l && Array.from(l)).toEqual([2, 0, 1, Math.SQRT2]);
    expect(l && Array.from(choleskySolve(l, [8, 8])).map((x) => Number(x.toFixed(12)))).toEqual([1, 2]);
  });
  it("Cholesky: a matrix that is not positive is not factored", () => {
    expect(choleskyFactor([1, 2, 2, 1], 2)).toBeUndefined();
    expect(choleskyFactor([1, 1, 1, 1], 2)).toBeUndefined();
  });
  // Hand calculation: line y = a + b x through (0,1), (1,3), (2,4): a = 7/6, b = 3/2.
  it("QR: least squares by hand", () => {
    const qr = factorQr(Float64Array.from([1, 1, 1, 0, 1, 2]), 3, 2);
    const x = solveQr(qr, Float64Array.from([1, 3, 4]));
    expect(x[0]).toBeCloseTo(7 / 6, 12);
    expect(x[1]).toBeCloseTo(1.5, 12);
  });
  it("QR: Q turns, it does not stretch", () => {
    const qr = factorQr(Float64Array.from([1, 2, 3, 4, 5, 6]), 3, 2);
    const v = Float64Array.from([0, 0, 1]);
    applyQ(qr, v);
    expect(Math.hypot(...v)).toBeCloseTo(1, 12);
    // The third column of Q stands square on both given columns.
    expect((v[0] ?? 0) + 2 * (v[1] ?? 0) + 3 * (v[2] ?? 0)).toBeCloseTo(0, 12);
    expect(4 * (v[0] ?? 0) + 5 * (v[1] ?? 0) + 6 * (v[2] ?? 0)).toBeCloseTo(0, 12);
  });
  it("QR: names the direction that nothing notices", () => {
    // Third column = first + second, so (1, 1, -1) changes nothing.
    const columns = Float64Array.from([1, 0, 0, 1, 0, 1, 0, 1, 1, 1, 0, 2]);
    const qr = factorQr(columns, 4, 3, 1e-9);
    expect(qr.rank).toBe(2);
    const [open] = nullVectors(qr);
    const scale = -(open?.[2] ?? 0);
    expect(Array.from(open ?? []).map((part) => Number((part / scale).toFixed(9)))).toEqual([1, 1, -1]);
  });
});

describe("weighted least squares", () => {
  it("mean of two readings, by hand: 10 ± 1 and 13 ± 2 give 10.6 ± sqrt(0.8), chi-square 9/5", () => {
    const fit = weightedLeastSquares({
      measured: [10, 13],
      sd: [1, 2],
      start: [0],
      model: (x, predicted, jacobian) => {
        predicted.fill(x[0] ?? 0);
        jacobian?.fill(1);
        return true;
      },
    });
    if (fit.kind !== "converged") throw new Error(fit.kind);
    expect(fit.unknowns[0]).toBeCloseTo(10.6, 12);
    expect(fit.covariance[0]).toBeCloseTo(0.8, 12);
    expect(fit.chiSquare).toBeCloseTo(1.8, 12);
    expect(Array.from(fit.redundancy)).toEqual([expect.closeTo(0.2, 12), expect.closeTo(0.8, 12)]);
    // One difference, 3 with sd sqrt 5: both readings share it.
    expect(fit.normalised[0]).toBeCloseTo(-3 / Math.sqrt(5), 12);
    expect(fit.normalised[1]).toBeCloseTo(3 / Math.sqrt(5), 12);
  });
  it("reports an unknown that nothing determines, and no number", () => {
    const answer = weightedLeastSquares({
      measured: [1, 2, 3],
      sd: [1, 1, 1e-6],
      start: [0, 0],
      model: (x, predicted, jacobian) => {
        predicted.fill((x[0] ?? 0) + (x[1] ?? 0));
        jacobian?.fill(1);
        return true;
      },
    });
    expect(answer.kind).toBe("rank-deficient");
    if (answer.kind !== "rank-deficient") return;
    expect(answer.openDirections).toHaveLength(1);
    expect((answer.openDirections[0]?.[0] ?? 0) + (answer.openDirections[0]?.[1] ?? 0)).toBeCloseTo(0, 9);
  });
  it("more unknowns than measurements are reported as open, and a broken model as not converged", () => {
    const open = weightedLeastSquares({
      measured: [1],
      sd: [1],
      start: [0, 0, 0],
      model: (x, predicted, jacobian) => {
        predicted[0] = x[0] ?? 0;
        jacobian?.set([1, 0, 0]);
        return true;
      },
    });
    expect(open.kind === "rank-deficient" && open.openDirections.length).toBe(2);
    const broken = weightedLeastSquares({
      measured: [1],
      sd: [1],
      start: [0],
      model: (_x, predicted) => {
        predicted[0] = Number.NaN;
        return true;
      },
    });
    expect(broken.kind).toBe("no-convergence");
  });
});
