import type { DustItem, Point } from "./drawing.js";

/**
 * Where do the dots of a cloud stand? Taken at even steps of probability, not at random, so that the share inside the band is
 * right for every cloud and not only on average: in a strip 95 % of the dots lie within 1.96 sd of the value, in a ring within
 * 1.96 sd of its radius, in an ellipse 95 % within 2.45 sd. The seed only shuffles them, so the same drawing is the same each time.
 * Quantile of the normal law: P. J. Acklam's rational approximation (relative error under 1.2e-9; coefficients from memory,
 * checked in the test against published quantiles).
 */
export function dustDots(dust: DustItem): readonly Point[] {
  const count = Math.max(8, Math.round(dust.dots ?? 100));
  const next = seeded(dust.seed);
  const turnRad = ((dust.rotateDeg ?? 0) * Math.PI) / 180;
  const dots: Point[] = [];
  const across = shuffled(count, next);
  for (let i = 0; i < count; i++) {
    const share = (i + 0.5) / count;
    let x: number;
    let y: number;
    if (dust.shape === "strip") {
      x = dust.sdXMm * normalQuantile(share);
      y = dust.sdYMm * (((across[i] ?? 0) + next()) / count - 0.5);
    } else if (dust.shape === "ring") {
      const radius = dust.sdYMm + dust.sdXMm * normalQuantile(share);
      const angleRad = (2 * Math.PI * ((across[i] ?? 0) + next())) / count;
      x = radius * Math.cos(angleRad);
      y = radius * Math.sin(angleRad);
    } else {
      const radius = Math.sqrt(-2 * Math.log(1 - share));
      const angleRad = i * GOLDEN_RAD + (next() - 0.5);
      x = dust.sdXMm * radius * Math.cos(angleRad);
      y = dust.sdYMm * radius * Math.sin(angleRad);
    }
    dots.push({
      x: dust.at.x + x * Math.cos(turnRad) - y * Math.sin(turnRad),
      y: dust.at.y + x * Math.sin(turnRad) + y * Math.cos(turnRad),
    });
  }
  return dots;
}

const GOLDEN_RAD = Math.PI * (3 - Math.sqrt(5));

function seeded(seed: number): () => number {
  let state = (Math.trunc(seed) ^ 0x9e3779b9) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function shuffled(count: number, next: () => number): number[] {
  const order = Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(next() * (i + 1));
    const a = order[i] ?? 0;
    order[i] = order[j] ?? 0;
    order[j] = a;
  }
  return order;
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((sum, c) => sum * x + c, 0);
}

const A = [
  -3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.38357751867269e2, -3.066479806614716e1,
  2.506628277459239,
];
const B = [
  -5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1, -1.328068155288572e1, 1,
];
const C = [
  -7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734, 4.374664141464968,
  2.938163982698783,
];
const D = [7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416, 1];

/** Below which value, in standard deviations, lies this share (0 to 1) of a normal law? */
export function normalQuantile(share: number): number {
  if (share < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(share));
    return polynomial(C, q) / polynomial(D, q);
  }
  if (share > 1 - 0.02425) return -normalQuantile(1 - share);
  const q = share - 0.5;
  const r = q * q;
  return (polynomial(A, r) * q) / polynomial(B, r);
}
