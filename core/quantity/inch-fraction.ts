/**
 * What does the inch rule say? The nearest mark of a rule divided in halves, quarters, eighths, sixteenths ...
 * Input: mm, and the parts of an inch (a power of two up to 64). Answer: text such as
 * "1 1/8" without its unit, the value of that mark in mm, and how far the length lies from it (mm, length minus mark).
 * Half-way lengths go to the mark further from zero. 1 in = 25.4 mm exactly (yard-and-pound-1959).
 */
import { exactFromDecimal, exactOver, exactToNumber } from "./exact-number.js";

export interface InchMark {
  readonly text: string;
  readonly markMm: number;
  readonly offMm: number;
}

const INCH = exactFromDecimal("25.4");

export function inchFraction(lengthMm: number, parts = 16): InchMark {
  if (!Number.isFinite(lengthMm)) throw new RangeError(`inchFraction: ${lengthMm} is not a finite number`);
  if (![1, 2, 4, 8, 16, 32, 64].includes(parts)) throw new RangeError(`inchFraction: a rule has no 1/${parts} marks`);
  const den = BigInt(parts);
  const inches = exactOver(exactFromDecimal(String(Math.abs(lengthMm))), INCH);
  const marks = (2n * inches.num * den + inches.den) / (2n * inches.den);
  const negative = lengthMm < 0 && marks > 0n;
  const whole = marks / den;
  let over = marks % den;
  let under = den;
  while (over > 0n && over % 2n === 0n) {
    over /= 2n;
    under /= 2n;
  }
  const words = over === 0n ? `${whole}` : whole === 0n ? `${over}/${under}` : `${whole} ${over}/${under}`;
  const markMm = (negative ? -1 : 1) * exactToNumber({ num: marks * 254n, den: den * 10n });
  return { text: negative ? `\u2212${words}` : words, markMm, offMm: lengthMm - markMm };
}
