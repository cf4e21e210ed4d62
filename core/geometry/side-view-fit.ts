/**
 * Which layout fits these measures best? Damped Gauss-Newton on M1's equations.
 * With as many independent measures as unknowns it lands on them exactly; with more, weighted by their spread, it is
 * the least-squares fit. Unknowns that no measure touches stay at their start.
 */
import { at, layout, ROW_SD, ROWS, rowValue, UNIT, UNKNOWNS } from "./side-view-model.js";

/** Keeps the equations solvable where nothing fixes an unknown; small against every real pivot. */
const RIDGE = 1e-8;
/** Longest step: 40 units are 60 mm or 12 deg. */
const LONGEST = 40;

export interface Fit {
  readonly p: Float64Array;
  /** Sum of squared residuals, each over its standard deviation. */
  readonly cost: number;
  readonly settled: boolean;
}

export const ALL_UNKNOWNS: readonly number[] = Array.from({ length: UNKNOWNS }, (_, i) => i);

/**
 * `rows`: which rows to meet; `given`: reading of each row (radians or mm; 0 for the level row); `free`: the unknowns
 * that may move; `sd`: spread of each row, EVEN_SD where the readings shall be met exactly, ROW_SD for an adjustment.
 */
export function fitLayout(
  rows: readonly number[],
  given: Float64Array,
  start: Float64Array,
  free: readonly number[],
  sd: Float64Array,
  mostRounds = 60,
): Fit {
  const n = free.length;
  const p = Float64Array.from(start);
  const next = Float64Array.from(start);
  const normal = new Float64Array(n * n);
  const slope = new Float64Array(n);
  const factor = new Float64Array(n * n);
  const step = new Float64Array(n);
  let damping = RIDGE;
  let cost = assemble(rows, given, p, free, sd, normal, slope);
  for (let round = 0; round < mostRounds; round++) {
    let taken = false;
    let size = 0;
    for (let attempt = 0; attempt < 12 && !taken; attempt++) {
      if (factorise(normal, n, damping, factor)) {
        for (let i = 0; i < n; i++) step[i] = -at(slope, i);
        solveFactored(factor, n, step);
        size = 0;
        for (let i = 0; i < n; i++) size = Math.max(size, Math.abs(at(step, i)));
        const shorten = size > LONGEST ? LONGEST / size : 1;
        size *= shorten;
        for (let i = 0; i < n; i++) {
          const k = at(free, i);
          next[k] = at(p, k) + at(step, i) * shorten * at(UNIT, k);
        }
        const nextCost = costOf(rows, given, next, sd);
        taken = nextCost <= cost || (size < 1e-7 && nextCost < cost + 1e-12);
      }
      damping = taken ? Math.max(damping / 30, RIDGE) : Math.max(damping * 10, 1e-5);
    }
    if (!taken) return { p, cost, settled: size < 1e-4 };
    p.set(next);
    const before = cost;
    cost = assemble(rows, given, p, free, sd, normal, slope);
    if (size < 1e-9 || (size < 1e-3 && before - cost <= 1e-14 * before && cost > 1e-12))
      return { p, cost, settled: true };
  }
  return { p, cost, settled: false };
}

function costOf(rows: readonly number[], given: Float64Array, p: Float64Array, sds: Float64Array): number {
  const l = layout(p);
  let cost = 0;
  for (const row of rows) {
    const v = (at(given, row) - rowValue(row, p, l)) / at(sds, row);
    cost += v * v;
  }
  return Number.isFinite(cost) ? cost : Number.POSITIVE_INFINITY;
}

/** Fills the normal matrix (lower half) and the slope of half the cost; gives the cost. */
function assemble(
  rows: readonly number[],
  given: Float64Array,
  p: Float64Array,
  free: readonly number[],
  sds: Float64Array,
  normal: Float64Array,
  slope: Float64Array,
): number {
  const n = free.length;
  normal.fill(0);
  slope.fill(0);
  const l = layout(p);
  const d = new Float64Array(UNKNOWNS);
  const scaled = new Float64Array(n);
  let cost = 0;
  for (const row of rows) {
    const sd = at(sds, row);
    const v = (rowValue(row, p, l, d) - at(given, row)) / sd;
    cost += v * v;
    for (let i = 0; i < n; i++) {
      const k = at(free, i);
      const di = (at(d, k) * at(UNIT, k)) / sd;
      scaled[i] = di;
      if (di === 0) continue;
      slope[i] = at(slope, i) + di * v;
      for (let j = 0; j <= i; j++) normal[i * n + j] = at(normal, i * n + j) + di * at(scaled, j);
    }
  }
  return Number.isFinite(cost) ? cost : Number.POSITIVE_INFINITY;
}

/** Lower Cholesky factor of normal + ridge; false where it is not positive. */
function factorise(normal: Float64Array, n: number, ridge: number, factor: Float64Array): boolean {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = at(normal, i * n + j) + (i === j ? ridge : 0);
      for (let k = 0; k < j; k++) sum -= at(factor, i * n + k) * at(factor, j * n + k);
      if (i === j) {
        if (!(sum > 0)) return false;
        factor[i * n + i] = Math.sqrt(sum);
      } else factor[i * n + j] = sum / at(factor, j * n + j);
    }
  }
  return true;
}

function solveFactored(factor: Float64Array, n: number, x: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = at(x, i);
    for (let k = 0; k < i; k++) sum -= at(factor, i * n + k) * at(x, k);
    x[i] = sum / at(factor, i * n + i);
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = at(x, i);
    for (let k = i + 1; k < n; k++) sum -= at(factor, k * n + i) * at(x, k);
    x[i] = sum / at(factor, i * n + i);
  }
}

/** How surely does this set of rows fix each of these slopes' figures? Standard deviations; huge where it does not. */
export function figureSd(rows: readonly number[], p: Float64Array, slopes: readonly Float64Array[]): number[] {
  const n = UNKNOWNS;
  const normal = new Float64Array(n * n);
  const factor = new Float64Array(n * n);
  assemble(rows, new Float64Array(ROWS), p, ALL_UNKNOWNS, ROW_SD, normal, new Float64Array(n));
  if (!factorise(normal, n, RIDGE, factor)) return slopes.map(() => Number.POSITIVE_INFINITY);
  const y = new Float64Array(n);
  return slopes.map((g) => {
    // variance = |F^-1 g|^2 with normal = F F^T
    let variance = 0;
    for (let i = 0; i < n; i++) {
      let sum = at(g, i) * at(UNIT, i);
      for (let k = 0; k < i; k++) sum -= at(factor, i * n + k) * at(y, k);
      y[i] = sum / at(factor, i * n + i);
      variance += at(y, i) ** 2;
    }
    return Math.sqrt(variance);
  });
}
