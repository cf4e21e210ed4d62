/**
 * Which number stands at the start of this text?
 * Takes 25.4 · 25,4 · .5 · 1 052 · 1,052.5 · 1.052,5 · 1/8 · 1 1/8 · 1-1/8 · 1e3. A dot alone is always the decimal sign.
 * A comma alone is the decimal sign too, but "1,052" could be 1.052 or 1052 and is refused.
 */
import { say } from "../texts/say.js";
import { type Exact, exactFromDecimal, exactPlus, exactRatio } from "./exact-number.js";
import { type Fault, fault } from "./reading.js";

export interface NumberHit {
  readonly kind: "number";
  /** Never below zero: the sign is read before. */
  readonly value: Exact;
  readonly written: string;
  readonly rest: string;
}

const SPACED = "[1-9]\\d{0,2}(?: \\d{3})+";
const MIXED = new RegExp(`^(${SPACED}|\\d+)[ -](\\d{1,4})/(\\d{1,4})(?![\\d/.,])`);
const FRACTION = /^(\d{1,4})\/(\d{1,4})(?![\d/.,])/;
const GROUPED = new RegExp(`^(${SPACED})(?!\\d)(?:[.,](\\d+))?(?![\\d.,/])`);
const PLAIN = /^([\d.,]*\d[\d.,]*)(?:[eE]([+-]?\d{1,2})(?!\d))?/;

export function readNumber(text: string): NumberHit | Fault {
  const mixed = MIXED.exec(text);
  if (mixed !== null) return withFraction(text, mixed[0], mixed[1] ?? "", mixed[2] ?? "", mixed[3] ?? "");
  const fraction = FRACTION.exec(text);
  if (fraction !== null) return withFraction(text, fraction[0], undefined, fraction[1] ?? "", fraction[2] ?? "");
  const grouped = GROUPED.exec(text);
  if (grouped !== null) {
    const whole = (grouped[1] ?? "").replace(/ /g, "");
    return hit(text, grouped[0], exactFromDecimal(grouped[2] === undefined ? whole : `${whole}.${grouped[2]}`));
  }
  const plain = PLAIN.exec(text);
  if (plain === null) return fault("not-a-number", say("quantity.read-number.no-number-stands-where-one-is"));
  const digits = asDecimal(plain[1] ?? "");
  if (typeof digits !== "string") return digits;
  const power = plain[2] === undefined ? "" : `e${plain[2]}`;
  return hit(text, plain[0], exactFromDecimal(digits + power));
}

function hit(text: string, written: string, value: Exact): NumberHit {
  return { kind: "number", value, written, rest: text.slice(written.length) };
}

function withFraction(
  text: string,
  written: string,
  whole: string | undefined,
  over: string,
  under: string,
): NumberHit | Fault {
  const num = BigInt(over);
  const den = BigInt(under);
  if (den === 0n)
    return fault("bad-fraction", say("quantity.read-number.the-fraction-divides-by-zero", { over, under }));
  if (whole === undefined) return hit(text, written, exactRatio(num, den));
  if (num >= den)
    return fault("bad-fraction", say("quantity.read-number.after-a-whole-number-the-fraction", { over, under }));
  return hit(text, written, exactPlus(exactFromDecimal(whole.replace(/ /g, "")), exactRatio(num, den)));
}

/** Digits with at most one dot, as a program writes them. */
function asDecimal(raw: string): string | Fault {
  const dots = raw.split(".").length - 1;
  const commas = raw.split(",").length - 1;
  if (/[.,]$/.test(raw))
    return fault("not-a-number", say("quantity.read-number.ends-in-a-decimal-sign", { written: raw }));
  if (dots === 0 && commas === 0) return raw;
  if (dots === 1 && commas === 0) return raw;
  if (dots === 0 && commas === 1) {
    if (!/^[1-9]\d{0,2},\d{3}$/.test(raw)) return raw.replace(",", ".");
    const decimal = raw.replace(",", ".");
    const whole = raw.replace(",", "");
    return fault("ambiguous-thousands", say("quantity.read-number.could-be-or", { written: raw, decimal, whole }), [
      decimal,
      whole,
      raw.replace(",", " "),
    ]);
  }
  if (/^[1-9]\d{0,2}(?:,\d{3})+\.\d+$/.test(raw)) return raw.replaceAll(",", "");
  if (/^[1-9]\d{0,2}(?:\.\d{3})+,\d+$/.test(raw)) return raw.replaceAll(".", "").replace(",", ".");
  return fault("two-decimal-signs", say("quantity.read-number.has-more-than-one-decimal-sign", { written: raw }));
}
