/**
 * Between which values does this number lie? A measured number with the half-width of its tool, or not known at all.
 * Widths add at their worst corners: half-widths of tools are no bell curves, and a joint is judged on its worst case.
 */
export type Span =
  | { readonly kind: "known"; readonly mid: number; readonly half: number }
  | { readonly kind: "unknown" };

export const UNKNOWN: Span = { kind: "unknown" };

/** What is read as this span? `undefined` stays unknown: it is never a zero. Half-width >= 0. */
export function span(value: number | undefined, half = 0): Span {
  return value === undefined || !Number.isFinite(value) ? UNKNOWN : { kind: "known", mid: value, half: Math.abs(half) };
}

/** What is k times this span? Spreads grow with |k|. */
export function times(a: Span, k: number): Span {
  return a.kind === "unknown" ? a : { kind: "known", mid: a.mid * k, half: a.half * Math.abs(k) };
}

/** What is the sum? Unknown if one of both is. */
export function plus(a: Span, b: Span): Span {
  return a.kind === "unknown" || b.kind === "unknown"
    ? UNKNOWN
    : { kind: "known", mid: a.mid + b.mid, half: a.half + b.half };
}

/** What is a - b? Unknown if one of both is; the half-widths add. */
export function minus(a: Span, b: Span): Span {
  return plus(a, times(b, -1));
}

/** The same span, wider by `more` on each side. */
export function widened(a: Span, more: number): Span {
  return a.kind === "unknown" ? a : { ...a, half: a.half + Math.abs(more) };
}
