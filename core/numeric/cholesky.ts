import { element } from "./element.js";

/**
 * What is the lower triangle L with L Lᵀ = A, for a symmetric positive matrix?
 *
 * @param a n × n, row after row; only the lower triangle is read.
 * @returns L row after row, or `undefined` where the matrix is not positive (to 1e-13 of its diagonal).
 */
export function choleskyFactor(a: ArrayLike<number>, n: number): Float64Array | undefined {
  const l = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = element(a, i * n + j);
      for (let k = 0; k < j; k++) sum -= element(l, i * n + k) * element(l, j * n + k);
      if (i === j) {
        if (!(sum > 1e-13 * Math.abs(element(a, i * n + i)))) return undefined;
        l[i * n + i] = Math.sqrt(sum);
      } else {
        l[i * n + j] = sum / element(l, j * n + j);
      }
    }
  }
  return l;
}

/** Which x solves L Lᵀ x = b? L from choleskyFactor, b of length n. */
export function choleskySolve(l: Float64Array, b: ArrayLike<number>): Float64Array {
  const n = b.length;
  const x = Float64Array.from(b);
  for (let i = 0; i < n; i++) {
    let sum = element(x, i);
    for (let k = 0; k < i; k++) sum -= element(l, i * n + k) * element(x, k);
    x[i] = sum / element(l, i * n + i);
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = element(x, i);
    for (let k = i + 1; k < n; k++) sum -= element(l, k * n + i) * element(x, k);
    x[i] = sum / element(l, i * n + i);
  }
  return x;
}
