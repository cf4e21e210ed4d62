/**
 * What figure did the builder write? Reads lengths, angles, masses, torques, times, money, threads and more as people
 * write them, and refuses with a reason and three better ways. Never throws for any text.
 * Inputs: what was written (at most 64 signs, figures within ± 1e9); the sort of figure that is wanted; `bareUnit`, the
 *   unit of a bare number (default: the base unit); `into`, the unit of the answer (default: the base unit);
 *   `currency`, where money in another one must be refused.
 * Answer: value in the base unit (mm, deg, kg, Nm, N, MPa, h ...), the text and the unit as written; "442 ± 0.3" gives
 *   `plusMinus` too. Factors are exact and rounding comes last, so 1 1/8 in is 28.575 mm.
 * Sources: yard-and-pound-1959, standard-gravity-1901, pound-force-derived, si-brochure-9; see core/data/sources-quantity.ts.
 */
import { say } from "../texts/say.js";
import { BASE_UNITS, DIMENSION_NAMES, type Dimension, type NumberDimension, WAYS_TO_WRITE } from "./dimension.js";
import { type Exact, exactBelow, exactFromDecimal, exactOver, exactTimes, exactToNumber } from "./exact-number.js";
import { type Parts, readParts } from "./read-parts.js";
import { readThread } from "./read-thread.js";
import { type Fault, fault, type QuantityRead, type Reading, type ThreadRead, type Unreadable } from "./reading.js";
import { hasHiddenSigns, showable, tidyText } from "./tidy-text.js";
import { findUnit, type Unit } from "./unit-table.js";

export const MAX_WRITTEN_LENGTH = 64;
/** Larger figures are a slip of the keyboard. */
const MAX_EXACT = exactFromDecimal("1e9");
const ONE = exactFromDecimal("1");

export interface ReadOptions {
  readonly bareUnit?: string;
  readonly into?: string;
  readonly currency?: string;
}

export function readQuantity(text: string | number, want: "thread", options?: ReadOptions): ThreadRead | Unreadable;
export function readQuantity(
  text: string | number,
  want: NumberDimension,
  options?: ReadOptions,
): QuantityRead | Unreadable;
export function readQuantity(text: string | number, want: Dimension, options?: ReadOptions): Reading;
export function readQuantity(text: string | number, want: Dimension, options: ReadOptions = {}): Reading {
  const given: unknown = text;
  const bare = unitFactor(options.bareUnit, want);
  const into = unitFactor(options.into, want);
  const refuse = (f: Fault): Unreadable => ({
    kind: "unreadable",
    written: typeof given === "string" || typeof given === "number" ? showable(String(given).trim()) : typeof given,
    code: f.code,
    reason: `${f.reason}.`,
    allowed: say("quantity.read-quantity.at-most-signs-within-1-000", {
      dimensionNames: DIMENSION_NAMES[want],
      maxWrittenLength: MAX_WRITTEN_LENGTH,
    }),
    ways: waysOf(f, want),
  });

  if (typeof given === "number") {
    if (want === "thread") return refuse(fault("bad-thread", say("quantity.read-quantity.a-bare-number-is-no-thread")));
    if (!Number.isFinite(given))
      return refuse(fault("not-a-number", say("quantity.read-quantity.is-not-a-number", { given })));
    const amount = exactFromDecimal(String(given));
    return numberAnswer({ kind: "parts", amount: exactTimes(amount, bare), unit: "" }, String(given));
  }
  if (typeof given !== "string")
    return refuse(
      fault("not-text", say("quantity.read-quantity.is-neither-text-nor-a-number", { given: typeof given })),
    );
  const written = given.trim();
  if (written === "") return refuse(fault("empty", say("quantity.read-quantity.nothing-is-written-here")));
  if (given.length > MAX_WRITTEN_LENGTH) {
    return refuse(
      fault("too-long", say("quantity.read-quantity.signs-are-too-many-for-one", { givenCount: given.length })),
    );
  }
  if (hasHiddenSigns(written))
    return refuse(fault("hidden-character", say("quantity.read-quantity.the-text-holds-signs-that-cannot")));
  // A diameter sign before a length says what is measured, not how long it is.
  const tidy = want === "length" ? tidyText(written).replace(/^[Øø⌀∅] ?/u, "") : tidyText(written);

  if (want === "thread") {
    const hit = readThread(tidy);
    if (hit.kind === "fault") return refuse(hit);
    return {
      kind: "read",
      dimension: "thread",
      value: hit.thread.majorMm,
      written,
      unit: hit.unit,
      thread: hit.thread,
    };
  }
  const parts = readParts(tidy, want, bare);
  return parts.kind === "fault" ? refuse(parts) : numberAnswer(parts, written);

  function numberAnswer(parts: Parts, as: string): Reading {
    if (want === "thread") throw new Error("readQuantity: a thread is no plain number");
    const size: Exact = parts.amount.num < 0n ? { num: -parts.amount.num, den: parts.amount.den } : parts.amount;
    if (exactBelow(MAX_EXACT, size) || (parts.plusMinus !== undefined && exactBelow(MAX_EXACT, parts.plusMinus))) {
      return refuse(
        fault(
          "too-large",
          say("quantity.read-quantity.the-figure-lies-outside-1-000", { baseUnits: BASE_UNITS[want] }).trimEnd(),
        ),
      );
    }
    if (want === "count" && parts.amount.num % parts.amount.den !== 0n) {
      return refuse(fault("not-whole", say("quantity.read-quantity.a-count-is-a-whole-number")));
    }
    if (want === "money" && options.currency !== undefined && parts.unit !== "") {
      const wrote = findUnit(parts.unit, "money")?.name;
      const wanted = findUnit(options.currency, "money")?.name ?? options.currency;
      if (wrote !== wanted) {
        return refuse(
          fault(
            "other-currency",
            say("quantity.read-quantity.the-sum-is-in-wanted-is", { wrote: wrote ?? parts.unit, wanted }),
          ),
        );
      }
    }
    const value = exactToNumber(exactOver(parts.amount, into));
    const read: QuantityRead = { kind: "read", dimension: want, value, written: as, unit: parts.unit };
    if (parts.plusMinus === undefined) return read;
    return { ...read, plusMinus: exactToNumber(exactOver(parts.plusMinus, into)) };
  }
}

/**
 * Better ways to write it, of those that can be read: what could be 1.052 or 1052 can only be a count as 1052, and 1,110 miles
 * are no length of a bicycle.
 */
function waysOf({ ways }: Fault, want: Dimension): Unreadable["ways"] {
  const usual = WAYS_TO_WRITE[want];
  if (ways === undefined) return usual;
  const readable = ways.filter((way) => readQuantity(way, want).kind === "read");
  const [first, second, third] = [...readable, ...[...usual].reverse()];
  return [first ?? usual[0], second ?? usual[1], third ?? usual[2]];
}

/** Factor of a unit that the calling code names. A name that does not exist is our fault and throws. */
function unitFactor(name: string | undefined, want: Dimension): Exact {
  if (name === undefined || want === "thread") return ONE;
  const unit: Unit | undefined = findUnit(name, want);
  if (unit === undefined) throw new Error(`readQuantity: "${name}" is no unit of ${DIMENSION_NAMES[want]}`);
  return unit.factor;
}
