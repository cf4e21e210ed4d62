/** What comes of reading what a person wrote? A value in the base unit, or a reason and three ways to write it. */
import type { NumberDimension } from "./dimension.js";

export interface ThreadSize {
  /** Outer diameter of the bolt thread, mm. */
  readonly majorMm: number;
  /** Pitch in mm. Absent where it was not written ("M5"): look it up or ask, it is not zero. */
  readonly pitchMm?: number;
  /** Threads per inch, where written so. */
  readonly tpi?: number;
  /** Written with M or with a pitch in mm, or with threads per inch. */
  readonly form: "metric" | "threads per inch";
  /** Absent where it was not written. */
  readonly hand?: "left" | "right";
}

interface ReadBase {
  readonly kind: "read";
  /** In the base unit of the dimension (mm, deg, kg, Nm, N, MPa, h ...), or in the unit asked for with `into`. */
  readonly value: number;
  /** What the person wrote, trimmed. */
  readonly written: string;
  /** The unit as written; "" for a bare number; parts joined by a space ("lb oz"). */
  readonly unit: string;
}

export interface QuantityRead extends ReadBase {
  readonly dimension: NumberDimension;
  /** From "442 ± 0.3": half-width in the same unit as `value`. */
  readonly plusMinus?: number;
}

export interface ThreadRead extends ReadBase {
  readonly dimension: "thread";
  readonly thread: ThreadSize;
}

export const UNREADABLE_CODES = [
  "empty",
  "too-long",
  "not-text",
  "hidden-character",
  "not-a-number",
  "two-decimal-signs",
  "ambiguous-thousands",
  "bad-fraction",
  "unknown-unit",
  "wrong-dimension",
  "other-currency",
  "parts-do-not-fit",
  "trailing-text",
  "bad-plus-minus",
  "not-whole",
  "too-large",
  "bad-thread",
  "ambiguous-thread",
] as const;
export type UnreadableCode = (typeof UNREADABLE_CODES)[number];

export interface Unreadable {
  readonly kind: "unreadable";
  /** What was written, shortened and without signs that could upset a screen. */
  readonly written: string;
  readonly code: UnreadableCode;
  /** One sentence for the builder. */
  readonly reason: string;
  /** What is allowed, in words. */
  readonly allowed: string;
  /** Three ways to write it. */
  readonly ways: readonly [string, string, string];
}

export type Reading = QuantityRead | ThreadRead | Unreadable;

/** A refusal inside the parser, before the text and the ways are put to it. */
export interface Fault {
  readonly kind: "fault";
  readonly code: UnreadableCode;
  readonly reason: string;
  readonly ways?: readonly [string, string, string];
}

export function fault(code: UnreadableCode, reason: string, ways?: readonly [string, string, string]): Fault {
  return ways === undefined ? { kind: "fault", code, reason } : { kind: "fault", code, reason, ways };
}
