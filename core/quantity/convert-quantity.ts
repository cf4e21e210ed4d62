/** How much is this in another unit? For showing and for the door of a sheet; factors come from the unit table. */
import type { NumberDimension } from "./dimension.js";
import { exactFromDecimal, exactOver, exactTimes, exactToNumber } from "./exact-number.js";
import { findUnit, type Unit } from "./unit-table.js";

export function toBaseUnit(value: number, dimension: NumberDimension, unit: string): number {
  return exactToNumber(exactTimes(exactFromDecimal(String(finite(value))), need(unit, dimension).factor));
}

export function fromBaseUnit(value: number, dimension: NumberDimension, unit: string): number {
  return exactToNumber(exactOver(exactFromDecimal(String(finite(value))), need(unit, dimension).factor));
}

/** Mass in grams, for scales and weight tables. */
export function gramsFromKg(kg: number): number {
  return fromBaseUnit(kg, "mass", "g");
}

function need(unit: string, dimension: NumberDimension): Unit {
  const found = findUnit(unit, dimension);
  if (found === undefined) throw new RangeError(`"${unit}" is no unit of ${dimension}`);
  return found;
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a finite number`);
  return value;
}
