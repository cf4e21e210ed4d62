import { element } from "./element.js";

/** A matrix split into an orthogonal part Q and an upper triangle R, columns sorted by what they add. */
export interface PivotedQr {
  readonly m: number;
  readonly n: number;
  /** Column after column: R on and above the diagonal, the Householder vectors below it. */
  readonly a: Float64Array;
  readonly beta: Float64Array;
  readonly head: Float64Array;
  /** perm[k] is the column of the given matrix that stands at place k. */
  readonly perm: Int32Array;
  /** How many columns say something of their own. */
  readonly rank: number;
}

/**
 * How is this matrix split into Q and R, and how many of its columns are independent?
 *
 * Householder reflections with column pivoting. A column counts as dependent where what is left of it is below
 * `rankTolerance` times the largest first one; scale the columns first where their units differ.
 *
 * @param columns m × n, column after column; it is overwritten and kept by the answer.
 * Source: Golub and Van Loan, Matrix Computations, sections 5.1 and 5.4 (from memory, not re-read).
 */
export function factorQr(columns: Float64Array, m: number, n: number, rankTolerance = 1e-12): PivotedQr {
  const a = columns;
  const beta = new Float64Array(n);
  const head = new Float64Array(n);
  const perm = new Int32Array(n);
  const steps = Math.min(m, n);
  let first = 0;
  let rank = 0;
  for (let j = 0; j < n; j++) perm[j] = j;
  for (let k = 0; k < steps; k++) {
    let best = k;
    let bestNorm = -1;
    for (let j = k; j < n; j++) {
      let sum = 0;
      const column = j * m;
      for (let i = k; i < m; i++) {
        const value = element(a, column + i);
        sum += value * value;
      }
      if (sum > bestNorm) {
        bestNorm = sum;
        best = j;
      }
    }
    const norm = Math.sqrt(bestNorm);
    if (k === 0) first = norm;
    if (!(norm > rankTolerance * first) || norm === 0) break;
    if (best !== k) {
      for (let i = 0; i < m; i++) {
        const swap = element(a, k * m + i);
        a[k * m + i] = element(a, best * m + i);
        a[best * m + i] = swap;
      }
      const swap = element(perm, k);
      perm[k] = element(perm, best);
      perm[best] = swap;
    }
    const own = k * m;
    const diagonal = element(a, own + k);
    const alpha = diagonal > 0 ? -norm : norm;
    const v0 = diagonal - alpha;
    head[k] = v0;
    beta[k] = -1 / (alpha * v0);
    a[own + k] = alpha;
    for (let j = k + 1; j < n; j++) {
      const column = j * m;
      let dot = v0 * element(a, column + k);
      for (let i = k + 1; i < m; i++) dot += element(a, own + i) * element(a, column + i);
      const factor = element(beta, k) * dot;
      a[column + k] = element(a, column + k) - factor * v0;
      for (let i = k + 1; i < m; i++) a[column + i] = element(a, column + i) - factor * element(a, own + i);
    }
    rank = k + 1;
  }
  return { m, n, a, beta, head, perm, rank };
}

/** Multiplies b (length m) in place by Qᵀ. */
export function applyQt(qr: PivotedQr, b: Float64Array): void {
  for (let k = 0; k < qr.rank; k++) reflect(qr, k, b);
}

/** Multiplies b (length m) in place by Q. */
export function applyQ(qr: PivotedQr, b: Float64Array): void {
  for (let k = qr.rank - 1; k >= 0; k--) reflect(qr, k, b);
}

function reflect(qr: PivotedQr, k: number, b: Float64Array): void {
  const { a, m } = qr;
  const own = k * m;
  const v0 = element(qr.head, k);
  let dot = v0 * element(b, k);
  for (let i = k + 1; i < m; i++) dot += element(a, own + i) * element(b, i);
  const factor = element(qr.beta, k) * dot;
  b[k] = element(b, k) - factor * v0;
  for (let i = k + 1; i < m; i++) b[i] = element(b, i) - factor * element(a, own + i);
}

/** Which x brings A x nearest to b? For full rank; b is overwritten. Unknowns in the order of the given columns. */
export function solveQr(qr: PivotedQr, b: Float64Array): Float64Array {
  const { a, m, rank } = qr;
  applyQt(qr, b);
  const x = new Float64Array(qr.n);
  const y = new Float64Array(rank);
  for (let i = rank - 1; i >= 0; i--) {
    let sum = element(b, i);
    for (let j = i + 1; j < rank; j++) sum -= element(a, j * m + i) * element(y, j);
    y[i] = sum / element(a, i * m + i);
    x[element(qr.perm, i)] = element(y, i);
  }
  return x;
}

/** The inverse of the upper triangle R (rank × rank, row after row). For full rank. */
export function inverseR(qr: PivotedQr): Float64Array {
  const { a, m, rank: n } = qr;
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    inverse[j * n + j] = 1 / element(a, j * m + j);
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum -= element(a, k * m + i) * element(inverse, k * n + j);
      inverse[i * n + j] = sum / element(a, i * m + i);
    }
  }
  return inverse;
}

/** Which changes of the unknowns change nothing? One vector of length n for each missing rank. */
export function nullVectors(qr: PivotedQr): Float64Array[] {
  const { a, m, n, rank, perm } = qr;
  const vectors: Float64Array[] = [];
  for (let free = rank; free < n; free++) {
    const y = new Float64Array(rank);
    const vector = new Float64Array(n);
    for (let i = rank - 1; i >= 0; i--) {
      let sum = -element(a, free * m + i);
      for (let j = i + 1; j < rank; j++) sum -= element(a, j * m + i) * element(y, j);
      y[i] = sum / element(a, i * m + i);
      vector[element(perm, i)] = element(y, i);
    }
    vector[element(perm, free)] = 1;
    vectors.push(vector);
  }
  return vectors;
}
