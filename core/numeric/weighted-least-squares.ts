import { applyQ, factorQr, inverseR, nullVectors, type PivotedQr, solveQr } from "./householder-qr.js";
import type { LeastSquaresAnswer, LeastSquaresFit, LeastSquaresProblem } from "./least-squares-problem.js";

type Problem = LeastSquaresProblem & { readonly measured: Float64Array; readonly sd: Float64Array };

const RANK_TOLERANCE = 1e-9;
/** Below this redundancy nothing checks a measurement. */
export const NOTHING_CHECKS = 1e-16;

/**
 * Which unknowns agree best with all measurements, how surely, and how does each measurement stand to the rest?
 *
 * Smallest sum of ((measured − predicted)/sd)². Gauss–Newton steps by Householder QR; where a step does not make the
 * sum smaller, or some unknown is open, Levenberg's damping with Marquardt's scaling takes over.
 *
 * @returns a fit with covariance, residuals, redundancy numbers and normalised residuals; or `rank-deficient` with the
 *   open directions (never a silent number); or `no-convergence`.
 * Limits: it finds the nearest minimum to the start. The covariance is that of the model taken straight at the answer,
 *   and it is not scaled by chi-square: multiply by chi-square/degrees of freedom where sd is only relative.
 * Sources: Ghilani, Adjustment Computations, chapters 11, 16 and 21; Marquardt 1963 (both from memory, not re-read).
 */
export function weightedLeastSquares(given: LeastSquaresProblem): LeastSquaresAnswer {
  // Copies of one kind, so that the loops below always read the same kind of list.
  const problem = { ...given, measured: Float64Array.from(given.measured), sd: Float64Array.from(given.sd) };
  const m = problem.measured.length;
  const n = problem.start.length;
  const tolerance = problem.tolerance ?? 1e-8;
  const maxIterations = problem.maxIterations ?? 120;
  let unknowns = Float64Array.from(problem.start);
  let trial = new Float64Array(n);
  let predicted = new Float64Array(m);
  let trialPredicted = new Float64Array(m);
  const jacobian = new Float64Array(m * n);
  const scale = new Float64Array(n);
  const room = new Float64Array((m + n) * n);
  const roomAside = new Float64Array(m + n);
  let chiSquare = Number.POSITIVE_INFINITY;
  let damping = 0;
  let iterations = 0;
  let converged = false;

  if (!problem.model(unknowns, predicted, jacobian)) return { kind: "no-convergence", iterations, chiSquare };
  chiSquare = sumOfSquares(problem, predicted);
  if (!Number.isFinite(chiSquare)) return { kind: "no-convergence", iterations, chiSquare };

  while (iterations < maxIterations) {
    iterations++;
    growScale(problem, jacobian, m, n, scale);
    let moved = false;
    while (!moved && !converged) {
      const rows = damping > 0 ? m + n : m;
      const columns = rows === m ? room.subarray(0, m * n) : room;
      const rhs = rows === m ? roomAside.subarray(0, m) : roomAside;
      if (rows > m) columns.fill(0);
      fillColumns(problem, jacobian, m, n, rows, scale, columns);
      for (let j = 0; damping > 0 && j < n; j++) columns[j * rows + m + j] = Math.sqrt(damping);
      if (rows > m) rhs.fill(0, m);
      for (let i = 0; i < m; i++) {
        rhs[i] = ((problem.measured[i] as number) - (predicted[i] as number)) / (problem.sd[i] as number);
      }
      // Damped steps creep where the residuals are large; there the bottom is known by the slope alone.
      if (damping > 1e-5 && steepest(columns, rhs, m, n, rows) <= 1e-7 * Math.sqrt(chiSquare)) {
        converged = true;
        continue;
      }
      const qr = factorQr(columns, rows, n, 1e-13);
      if (qr.rank < n && damping === 0) {
        damping = 1e-6;
        continue;
      }
      const step = solveQr(qr, rhs);
      let length = 0;
      let size = 0;
      for (let j = 0; j < n; j++) {
        length += (step[j] as number) ** 2;
        size += ((unknowns[j] as number) * (scale[j] as number)) ** 2;
        trial[j] = (unknowns[j] as number) + (step[j] as number) / (scale[j] as number);
      }
      const small = Math.sqrt(length) <= tolerance + 1e-12 * Math.sqrt(size);
      // Rounding of the predictions hides changes of chi-square below this.
      const rounding = 1e-14 * Math.sqrt(size);
      const unseen = rounding * (Math.sqrt(chiSquare) + rounding);
      const inside = problem.model(trial, trialPredicted, undefined);
      const trialChi = inside ? sumOfSquares(problem, trialPredicted) : Number.POSITIVE_INFINITY;
      if (trialChi <= chiSquare + unseen) {
        [unknowns, trial] = [trial, unknowns];
        [predicted, trialPredicted] = [trialPredicted, predicted];
        chiSquare = trialChi;
        moved = true;
        converged = small && damping <= 1e-5;
        damping = damping < 1e-6 ? 0 : damping / 10;
      } else if (small && damping <= 1e-5) {
        converged = true;
      } else {
        damping = damping === 0 ? 1e-4 : damping * 8;
        if (damping > 1e14) return { kind: "no-convergence", iterations, chiSquare };
      }
    }
    if (moved && !problem.model(unknowns, predicted, jacobian)) {
      return { kind: "no-convergence", iterations, chiSquare };
    }
    if (converged) return finish(problem, unknowns, predicted, jacobian, chiSquare, iterations);
  }
  return { kind: "no-convergence", iterations, chiSquare };
}

function sumOfSquares(problem: Problem, predicted: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < predicted.length; i++) {
    const part = ((problem.measured[i] as number) - (predicted[i] as number)) / (problem.sd[i] as number);
    sum += part * part;
  }
  return Number.isFinite(sum) ? sum : Number.POSITIVE_INFINITY;
}

function growScale(p: Problem, jacobian: Float64Array, m: number, n: number, scale: Float64Array): void {
  for (let j = 0; j < n; j++) {
    let sum = 0;
    for (let i = 0; i < m; i++) sum += ((jacobian[i * n + j] as number) / (p.sd[i] as number)) ** 2;
    scale[j] = Math.max(scale[j] as number, Math.sqrt(sum)) || 1;
  }
}

function fillColumns(
  problem: Problem,
  jacobian: Float64Array,
  m: number,
  n: number,
  rows: number,
  scale: Float64Array,
  columns: Float64Array,
): void {
  for (let i = 0; i < m; i++) {
    const weight = 1 / (problem.sd[i] as number);
    for (let j = 0; j < n; j++)
      columns[j * rows + i] = ((jacobian[i * n + j] as number) * weight) / (scale[j] as number);
  }
}

/** The steepest slope of half chi-square along any scaled unknown. */
function steepest(columns: Float64Array, rhs: Float64Array, m: number, n: number, rows: number): number {
  let largest = 0;
  for (let j = 0; j < n; j++) {
    let sum = 0;
    for (let i = 0; i < m; i++) sum += (columns[j * rows + i] as number) * (rhs[i] as number);
    largest = Math.max(largest, Math.abs(sum));
  }
  return largest;
}

/**
 * Which changes of the unknowns does no measurement notice? From rows and columns of even size, so that a very sure
 * measurement cannot hide an open unknown.
 * @param jacobian m × n, row after row. @returns directions of length n, each scaled to its largest part.
 */
export function openDirections(jacobian: Float64Array, m: number, n: number): Float64Array[] {
  const columns = new Float64Array(m * n);
  const scale = new Float64Array(n);
  for (let i = 0; i < m; i++) {
    let row = 0;
    for (let j = 0; j < n; j++) row += (jacobian[i * n + j] as number) ** 2;
    row = Math.sqrt(row) || 1;
    for (let j = 0; j < n; j++) {
      const value = (jacobian[i * n + j] as number) / row;
      columns[j * m + i] = value;
      scale[j] = (scale[j] as number) + value * value;
    }
  }
  for (let j = 0; j < n; j++) {
    scale[j] = Math.sqrt(scale[j] as number) || 1;
    for (let i = 0; i < m; i++) columns[j * m + i] = (columns[j * m + i] as number) / (scale[j] as number);
  }
  const vectors = nullVectors(factorQr(columns, m, n, RANK_TOLERANCE));
  for (const vector of vectors) {
    let largest = 0;
    for (let j = 0; j < n; j++) {
      vector[j] = (vector[j] as number) / (scale[j] as number);
      largest = Math.max(largest, Math.abs(vector[j] as number));
    }
    for (let j = 0; j < n; j++) vector[j] = (vector[j] as number) / largest;
  }
  return vectors;
}

function finish(
  problem: Problem,
  unknowns: Float64Array,
  predicted: Float64Array,
  jacobian: Float64Array,
  chiSquare: number,
  iterations: number,
): LeastSquaresAnswer {
  const m = predicted.length;
  const n = unknowns.length;
  const open = openDirections(jacobian, m, n);
  if (open.length > 0) return { kind: "rank-deficient", unknowns, openDirections: open, jacobian, chiSquare };
  const scale = new Float64Array(n);
  growScale(problem, jacobian, m, n, scale);
  const columns = new Float64Array(m * n);
  fillColumns(problem, jacobian, m, n, m, scale, columns);
  const qr = factorQr(columns, m, n, 1e-15);
  if (qr.rank < n) {
    return { kind: "rank-deficient", unknowns, openDirections: nullVectors(qr), jacobian, chiSquare };
  }
  const covariance = covarianceOf(qr, scale);
  const projection = projectionOf(qr);
  const residuals = new Float64Array(m);
  const redundancy = new Float64Array(m);
  const normalised = new Float64Array(m);
  const raw = new Float64Array(m);
  for (let i = 0; i < m; i++) {
    raw[i] = ((problem.measured[i] as number) - (predicted[i] as number)) / (problem.sd[i] as number);
  }
  for (let i = 0; i < m; i++) {
    const r = Math.min(1, Math.max(0, projection[i * m + i] as number));
    // Projected once more: takes away what rounding left, which matters where r is tiny.
    let sum = 0;
    for (let j = 0; j < m; j++) sum += (projection[i * m + j] as number) * (raw[j] as number);
    residuals[i] = sum * (problem.sd[i] as number);
    redundancy[i] = r;
    normalised[i] =
      r < NOTHING_CHECKS ? Number.NaN : (residuals[i] as number) / ((problem.sd[i] as number) * Math.sqrt(r));
  }
  const fit: LeastSquaresFit = {
    kind: "converged",
    unknowns,
    predicted,
    residuals,
    chiSquare,
    degreesOfFreedom: m - n,
    covariance,
    redundancy,
    normalised,
    projection,
    jacobian,
    iterations,
  };
  return fit;
}

function covarianceOf(qr: PivotedQr, scale: Float64Array): Float64Array {
  const { n, perm } = qr;
  const inverse = inverseR(qr);
  const covariance = new Float64Array(n * n);
  for (let a = 0; a < n; a++) {
    for (let b = a; b < n; b++) {
      let sum = 0;
      for (let k = b; k < n; k++) sum += (inverse[a * n + k] as number) * (inverse[b * n + k] as number);
      const i = perm[a] as number;
      const j = perm[b] as number;
      const value = sum / ((scale[i] as number) * (scale[j] as number));
      covariance[i * n + j] = value;
      covariance[j * n + i] = value;
    }
  }
  return covariance;
}

/** I − QQᵀ from the columns of Q that the measurements do not use, so that small redundancies keep their digits. */
function projectionOf(qr: PivotedQr): Float64Array {
  const { m, n } = qr;
  const projection = new Float64Array(m * m);
  const column = new Float64Array(m);
  for (let k = n; k < m; k++) {
    column.fill(0);
    column[k] = 1;
    applyQ(qr, column);
    for (let i = 0; i < m; i++) {
      const own = column[i] as number;
      for (let j = i; j < m; j++)
        projection[i * m + j] = (projection[i * m + j] as number) + own * (column[j] as number);
    }
  }
  for (let i = 0; i < m; i++) for (let j = 0; j < i; j++) projection[i * m + j] = projection[j * m + i] as number;
  return projection;
}
