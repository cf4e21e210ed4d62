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
  /** What is left of each column below the rows that are done, squared. */
  const left = new Float64Array(n);
  const steps = Math.min(m, n);
  let first = 0;
  let rank = 0;
  for (let j = 0; j < n; j++) {
    perm[j] = j;
    let sum = 0;
    for (let i = j * m; i < j * m + m; i++) sum += (a[i] as number) * (a[i] as number);
    left[j] = sum;
  }
  for (let k = 0; k < steps; k++) {
    let best = k;
    let bestNorm = -1;
    for (let j = k; j < n; j++) {
      const sum = left[j] as number;
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
        const swap = a[k * m + i] as number;
        a[k * m + i] = a[best * m + i] as number;
        a[best * m + i] = swap;
      }
      const swap = perm[k] as number;
      perm[k] = perm[best] as number;
      perm[best] = swap;
      left[best] = left[k] as number;
    }
    const own = k * m;
    const diagonal = a[own + k] as number;
    const alpha = diagonal > 0 ? -norm : norm;
    const v0 = diagonal - alpha;
    const b = -1 / (alpha * v0);
    head[k] = v0;
    beta[k] = b;
    a[own + k] = alpha;
    let j = k + 1;
    // Two columns at a time: their sums do not wait for each other.
    for (; j + 1 < n; j += 2) {
      const c = j * m;
      const d = c + m;
      let dotC = v0 * (a[c + k] as number);
      let dotD = v0 * (a[d + k] as number);
      for (let i = k + 1; i < m; i++) {
        const v = a[own + i] as number;
        dotC += v * (a[c + i] as number);
        dotD += v * (a[d + i] as number);
      }
      const factorC = b * dotC;
      const factorD = b * dotD;
      a[c + k] = (a[c + k] as number) - factorC * v0;
      a[d + k] = (a[d + k] as number) - factorD * v0;
      let leftC = 0;
      let leftD = 0;
      for (let i = k + 1; i < m; i++) {
        const v = a[own + i] as number;
        const x = (a[c + i] as number) - factorC * v;
        const y = (a[d + i] as number) - factorD * v;
        a[c + i] = x;
        a[d + i] = y;
        leftC += x * x;
        leftD += y * y;
      }
      left[j] = leftC;
      left[j + 1] = leftD;
    }
    if (j < n) {
      const c = j * m;
      let dot = v0 * (a[c + k] as number);
      for (let i = k + 1; i < m; i++) dot += (a[own + i] as number) * (a[c + i] as number);
      const factor = b * dot;
      a[c + k] = (a[c + k] as number) - factor * v0;
      let sum = 0;
      for (let i = k + 1; i < m; i++) {
        const x = (a[c + i] as number) - factor * (a[own + i] as number);
        a[c + i] = x;
        sum += x * x;
      }
      left[j] = sum;
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
  const v0 = qr.head[k] as number;
  let dot = v0 * (b[k] as number);
  for (let i = k + 1; i < m; i++) dot += (a[own + i] as number) * (b[i] as number);
  const factor = (qr.beta[k] as number) * dot;
  b[k] = (b[k] as number) - factor * v0;
  for (let i = k + 1; i < m; i++) b[i] = (b[i] as number) - factor * (a[own + i] as number);
}

/** Which x brings A x nearest to b? For full rank; b is overwritten. Unknowns in the order of the given columns. */
export function solveQr(qr: PivotedQr, b: Float64Array): Float64Array {
  const { a, m, rank } = qr;
  applyQt(qr, b);
  const x = new Float64Array(qr.n);
  const y = new Float64Array(rank);
  for (let i = rank - 1; i >= 0; i--) {
    let sum = b[i] as number;
    for (let j = i + 1; j < rank; j++) sum -= (a[j * m + i] as number) * (y[j] as number);
    y[i] = sum / (a[i * m + i] as number);
    x[qr.perm[i] as number] = y[i] as number;
  }
  return x;
}

/** The inverse of the upper triangle R (rank × rank, row after row). For full rank. */
export function inverseR(qr: PivotedQr): Float64Array {
  const { a, m, rank: n } = qr;
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    inverse[j * n + j] = 1 / (a[j * m + j] as number);
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum -= (a[k * m + i] as number) * (inverse[k * n + j] as number);
      inverse[i * n + j] = sum / (a[i * m + i] as number);
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
      let sum = -(a[free * m + i] as number);
      for (let j = i + 1; j < rank; j++) sum -= (a[j * m + i] as number) * (y[j] as number);
      y[i] = sum / (a[i * m + i] as number);
      vector[perm[i] as number] = y[i] as number;
    }
    vector[perm[free] as number] = 1;
    vectors.push(vector);
  }
  return vectors;
}
