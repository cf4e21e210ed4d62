/** The answer of findRoot: a root, or why there is none to be had. */
export type RootAnswer =
  | { readonly kind: "root"; readonly x: number; readonly iterations: number }
  | { readonly kind: "not-bracketed"; readonly atLow: number; readonly atHigh: number }
  | { readonly kind: "not-finite"; readonly x: number };

/**
 * Where does this function cross zero between two places?
 *
 * Brent's method: inverse quadratic or secant steps, with halving whenever they gain too little, so the bracket never
 * grows and the root is never lost.
 *
 * @param f continuous on [low, high], with values of opposite sign at the two ends.
 * @param tolerance width of the bracket at which the search ends (in the unit of x).
 * @returns the root; or `not-bracketed` where both ends have the same sign; or `not-finite` where f gave no number.
 * Limits: it finds one crossing; where the function jumps over zero it finds the jump.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4 (from memory, not re-read).
 */
export function findRoot(f: (x: number) => number, low: number, high: number, tolerance = 1e-12): RootAnswer {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (!Number.isFinite(fa)) return { kind: "not-finite", x: a };
  if (!Number.isFinite(fb)) return { kind: "not-finite", x: b };
  if (fa === 0) return { kind: "root", x: a, iterations: 0 };
  if (fb === 0) return { kind: "root", x: b, iterations: 0 };
  if (fa > 0 === fb > 0) return { kind: "not-bracketed", atLow: fa, atHigh: fb };
  let c = a;
  let fc = fa;
  let step = b - a;
  let before = step;
  for (let i = 1; i <= 200; i++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      before = step;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const reach = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= reach || fb === 0) return { kind: "root", x: b, iterations: i };
    if (Math.abs(before) >= reach && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const t = fa / fc;
        const r = fb / fc;
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      p = Math.abs(p);
      if (2 * p < Math.min(3 * half * q - Math.abs(reach * q), Math.abs(before * q))) {
        before = step;
        step = p / q;
      } else {
        step = half;
        before = half;
      }
    } else {
      step = half;
      before = half;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > reach ? step : Math.sign(half) * reach;
    fb = f(b);
    if (!Number.isFinite(fb)) return { kind: "not-finite", x: b };
  }
  return { kind: "root", x: b, iterations: 200 };
}
