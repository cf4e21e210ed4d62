/**
 * Does a span lie inside its limits? `inside` and `outside` only when the whole span says so; a span that reaches
 * across a limit `straddles`; a number that nobody has measured is `unknown`.
 */
import type { Span } from "./span.js";

export interface Limits {
  /** Inclusive. */
  readonly low?: number;
  /** Inclusive. */
  readonly high?: number;
}

export type Judged = "inside" | "outside" | "straddles" | "unknown";

/** Decimal inputs such as 10.1 - 10 must not fail a limit of 0.1 by the last binary digit. */
const DECIMAL_SLACK = 1e-9;

/** How does the span lie to the limits? A wider span of the same middle never turns straddles into inside. */
export function judgeSpan(value: Span, limits: Limits): Judged {
  if (value.kind === "unknown") return "unknown";
  const low = limits.low ?? Number.NEGATIVE_INFINITY;
  const high = limits.high ?? Number.POSITIVE_INFINITY;
  const from = value.mid - value.half;
  const to = value.mid + value.half;
  if (from >= low - DECIMAL_SLACK && to <= high + DECIMAL_SLACK) return "inside";
  if (to < low - DECIMAL_SLACK || from > high + DECIMAL_SLACK) return "outside";
  return "straddles";
}
