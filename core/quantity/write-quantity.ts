/**
 * How is a figure shown to the builder? With its unit, sensible decimals and a true minus sign; no signs between
 * thousands, so that what is shown can be typed back in. Value in the base unit (mm, deg, kg, Nm, N, MPa, h ...).
 * Rounding happens here and only here. A value that is not finite is our fault and throws.
 */
import { say } from "../texts/say.js";
import { BASE_UNITS, type NumberDimension } from "./dimension.js";
import { exactToNumber } from "./exact-number.js";
import { inchFraction } from "./inch-fraction.js";
import { findUnit } from "./unit-table.js";

export type UnitSystem = "metric" | "inch";

export interface WriteOptions {
  readonly decimals?: number;
  /** Lengths in inches as fractions of this: 16 for sixteenths. A power of two up to 64. */
  readonly inchFractions?: number;
  /** Any unit of the dimension, instead of the usual one of the system. */
  readonly unit?: string;
  /** Half-width in the base unit, shown behind ±. */
  readonly plusMinus?: number;
}

/** Decimals shown for each unit unless told otherwise: about a tenth of what a builder can measure. */
const DECIMALS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 2,
  m: 3,
  km: 2,
  in: 3,
  ft: 2,
  mm2: 1,
  in2: 3,
  deg: 1,
  kg: 2,
  g: 0,
  lb: 2,
  oz: 1,
  Nm: 1,
  "lbf ft": 1,
  "lbf in": 0,
  N: 0,
  lbf: 0,
  MPa: 0,
  bar: 1,
  psi: 0,
  h: 1,
  min: 0,
  s: 0,
  day: 1,
  "m/s": 2,
  "km/h": 1,
  mph: 1,
  W: 0,
  "%": 1,
};

const SYSTEM_UNITS: Readonly<Partial<Record<NumberDimension, string>>> = {
  length: "in",
  area: "in2",
  mass: "lb",
  torque: say("quantity.write-quantity.lbf-ft"),
  force: "lbf",
  stress: "psi",
  speed: "mph",
};

export function writeQuantity(
  value: number,
  dimension: NumberDimension,
  system: UnitSystem = "metric",
  options: WriteOptions = {},
): string {
  const halfWidth = options.plusMinus;
  if (!Number.isFinite(value) || (halfWidth !== undefined && !Number.isFinite(halfWidth))) {
    throw new RangeError(`writeQuantity: ${value} is not a finite number`);
  }
  const unit = options.unit ?? usualUnit(value, dimension, system);
  const found = unit === "" ? undefined : findUnit(unit, dimension);
  if (unit !== "" && found === undefined) throw new RangeError(`writeQuantity: "${unit}" is no unit of ${dimension}`);
  const one = found === undefined ? 1 : exactToNumber(found.factor);
  const name = found?.name ?? "";
  if (name === "in" && options.inchFractions !== undefined) {
    const text = inchFraction(value, options.inchFractions).text;
    const half = halfWidth === undefined ? "" : ` ± ${inchFraction(halfWidth, options.inchFractions).text}`;
    return `${text}${half} in`;
  }
  const decimals = options.decimals ?? DECIMALS[name] ?? (dimension === "money" ? 2 : dimension === "ratio" ? 3 : 0);
  const half = halfWidth === undefined ? "" : ` ± ${fixed(halfWidth / one, decimals)}`;
  const text = fixed(value / one, decimals) + half;
  if (name === "") return text;
  if (name === "deg") return `${text}°`;
  return `${text} ${name}`;
}

function usualUnit(value: number, dimension: NumberDimension, system: UnitSystem): string {
  if (system === "inch") return SYSTEM_UNITS[dimension] ?? BASE_UNITS[dimension];
  if (dimension === "mass" && Math.abs(value) < 0.9995) return "g";
  return BASE_UNITS[dimension];
}

/** Fixed decimals with a true minus sign, and no minus before a zero. */
export function fixed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && /[1-9]/.test(text) ? `\u2212${text}` : text;
}
