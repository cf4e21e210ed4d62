const LANCZOS = [
  0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
] as const;

/** What is the natural logarithm of the gamma function at x > 0? Lanczos sum with g = 7, good to about 14 digits. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.abs(Math.sin(Math.PI * x))) - logGamma(1 - x);
  const z = x - 1;
  let sum: number = LANCZOS[0];
  for (let i = 1; i < LANCZOS.length; i++) sum += (LANCZOS[i] as number) / (z + i);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
 * What shares of the gamma integral with shape a lie below and above x?
 *
 * Series for x < a + 1, continued fraction beyond, so the small one of the two keeps its digits.
 *
 * @param a shape, > 0. @param x place, >= 0.
 * @returns `lower` = P(a, x), `upper` = Q(a, x) = 1 - P; NaN outside the range.
 * Source: NIST Digital Library of Mathematical Functions, 8.7.1 and 8.9.2 (from memory, not re-read).
 */
export function incompleteGamma(a: number, x: number): { readonly lower: number; readonly upper: number } {
  if (!(a > 0) || !(x >= 0)) return { lower: Number.NaN, upper: Number.NaN };
  if (x === 0) return { lower: 0, upper: 1 };
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  const scale = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < 10000; n++) {
      term *= x / (a + n);
      sum += term;
      if (term < sum * 1e-17) break;
    }
    const lower = Math.min(1, sum * scale);
    return { lower, upper: 1 - lower };
  }
  // Continued fraction, evaluated forwards with the ratios of its numerators and denominators.
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n < 10000; n++) {
    const an = -n * (n - a);
    b += 2;
    d = an * d + b;
    if (Math.abs(d) < tiny) d = tiny;
    c = b + an / c;
    if (Math.abs(c) < tiny) c = tiny;
    d = 1 / d;
    const ratio = d * c;
    h *= ratio;
    if (Math.abs(ratio - 1) < 1e-16) break;
  }
  const upper = Math.min(1, scale * h);
  return { lower: 1 - upper, upper };
}
