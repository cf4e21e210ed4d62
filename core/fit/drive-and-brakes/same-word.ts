/** Are two words of two parts the same? A check that stays open while one of both is not known. */
import type { Check, Measure } from "../settle.js";
import { span, UNKNOWN } from "../span.js";

export interface SameWord<T> {
  readonly name: string;
  readonly a: T | undefined;
  readonly b: T | undefined;
  /** What the limit says: "equal". */
  readonly words: string;
  readonly measureA: Measure;
  readonly measureB: Measure;
  /** What counts as the same, where it is more than equal. */
  readonly suits?: (a: T, b: T) => boolean;
}

export function sameWord<T>(q: SameWord<T>): Check {
  const { a, b } = q;
  const same = a === undefined || b === undefined ? undefined : (q.suits ?? ((x, y) => x === y))(a, b);
  return {
    name: q.name,
    unit: "count",
    value: same === undefined ? UNKNOWN : span(same ? 1 : 0),
    limit: { low: 1, kind: "hard", words: q.words },
    measure: a === undefined ? q.measureA : q.measureB,
    shown: false,
  };
}
