/**
 * What does every calculation, rule and plan end in? An answer: a value with its bands, sources and cautions,
 * or a refusal that lists all its reasons at once. Command line, page, drawing and book show the same answers.
 * Units are in the names of the keys of `value` (`stack_mm`, `head_angle_deg`).
 */

/** The id of a row in core/data/sources.ts. */
export type SourceId = string;

/** A range around a number, and what the range means ("95 %", "worst corners of the stated tolerances"). */
export interface Band {
  readonly low: number;
  readonly high: number;
  /** "95 %" unless another word is right. An invented width is not allowed; leave the band out instead. */
  readonly means: string;
}

/** A notice that travels with a number. `code` stands in the list of core/data/cautions.ts. */
export interface Caution {
  readonly code: string;
  /** Field or place it speaks of, e.g. "measurements[2].value". */
  readonly at?: string;
  /** The sentence for the builder. */
  readonly message: string;
}

/** Why a question cannot be answered as put: bad input, or a safety rule. */
export interface Refusal {
  readonly code: string;
  /** Field or place, e.g. "new.rake_mm"; "" for the whole input. */
  readonly at: string;
  /** What was given (as the person wrote it). */
  readonly given: unknown;
  /** What is allowed, in words. */
  readonly allowed: string;
  /** One sentence for the builder, naming field, value and limit. */
  readonly message: string;
}

export interface Answered<T> {
  readonly kind: "answered";
  readonly value: T;
  /** Keyed by the key in `value`; nested keys joined by dots. */
  readonly bands: Readonly<Record<string, Band>>;
  readonly sources: readonly SourceId[];
  readonly cautions: readonly Caution[];
}

export interface Refused {
  readonly kind: "refused";
  readonly refusals: readonly Refusal[];
}

export type Answer<T> = Answered<T> | Refused;

export function answered<T>(
  value: T,
  rest: {
    readonly bands?: Readonly<Record<string, Band>>;
    readonly sources?: readonly SourceId[];
    readonly cautions?: readonly Caution[];
  } = {},
): Answered<T> {
  return {
    kind: "answered",
    value,
    bands: rest.bands ?? {},
    sources: rest.sources ?? [],
    cautions: rest.cautions ?? [],
  };
}

export function refused(refusals: readonly Refusal[]): Refused {
  return { kind: "refused", refusals };
}
