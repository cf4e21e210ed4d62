/**
 * How is a written number kept without rounding until the very end? As a fraction of two whole numbers.
 * `1 1/8 in` is 9/8 x 127/5 mm, so it comes out as 28.575 and not as 28.574999999999996.
 */
export interface Exact {
  readonly num: bigint;
  /** Above zero. */
  readonly den: bigint;
}

/** Fraction of two whole numbers. `den` must not be zero: that is for the caller to see to. */
export function exactRatio(num: bigint, den: bigint): Exact {
  if (den === 0n) throw new RangeError("exactRatio: the lower number is zero");
  return den < 0n ? { num: -num, den: -den } : { num, den };
}

/** Exact value of plain decimal text as a program writes it: "12", "0.5", "1e-7". Throws on anything else. */
export function exactFromDecimal(text: string): Exact {
  const match = /^(-?)(\d*)(?:\.(\d+))?(?:[eE]([+-]?\d{1,4}))?$/.exec(text);
  const whole = match?.[2] ?? "";
  const part = match?.[3] ?? "";
  if (match === null || whole + part === "") throw new RangeError(`exactFromDecimal: cannot read "${text}"`);
  const digits = BigInt(whole + part) * (match[1] === "-" ? -1n : 1n);
  const power = Number(match[4] ?? "0") - part.length;
  return power >= 0 ? { num: digits * 10n ** BigInt(power), den: 1n } : { num: digits, den: 10n ** BigInt(-power) };
}

export function exactTimes(a: Exact, b: Exact): Exact {
  return { num: a.num * b.num, den: a.den * b.den };
}

export function exactOver(a: Exact, b: Exact): Exact {
  return exactRatio(a.num * b.den, a.den * b.num);
}

export function exactPlus(a: Exact, b: Exact): Exact {
  return { num: a.num * b.den + b.num * a.den, den: a.den * b.den };
}

/** Is a below b? */
export function exactBelow(a: Exact, b: Exact): boolean {
  return a.num * b.den < b.num * a.den;
}

/** Nearest double. At least 40 digits go into the last step, so the result is right to the last bit but for ties. */
export function exactToNumber(value: Exact): number {
  const negative = value.num < 0n;
  const num = negative ? -value.num : value.num;
  if (num === 0n) return 0;
  const digits = 40 + Math.max(0, value.den.toString().length - num.toString().length);
  const scaled = Number(`${(num * 10n ** BigInt(digits)) / value.den}e-${digits}`);
  return negative ? -scaled : scaled;
}
