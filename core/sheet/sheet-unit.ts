/** How is each unit of a sheet shown, and which written figures does it take? */

import { type NumberDimension, type ReadOptions, readQuantity, type Unreadable } from "../quantity/index.js";
import { say } from "../texts/say.js";
import type { SheetUnit } from "./sheet.js";

interface UnitRow {
  /** As shown behind a number; "" for none. */
  readonly shown: string;
  /** The dimension and unit that written figures are read in. Absent: plain numbers only. */
  readonly reads?: readonly [NumberDimension, string];
}

export const SHEET_UNITS: Readonly<Record<SheetUnit, UnitRow>> = {
  mm: { shown: "mm", reads: ["length", "mm"] },
  m: { shown: "m", reads: ["length", "m"] },
  deg: { shown: "°", reads: ["angle", "deg"] },
  rad: { shown: "rad", reads: ["angle", "rad"] },
  h: { shown: "h", reads: ["time", "h"] },
  day: { shown: "days", reads: ["time", "day"] },
  min: { shown: "min", reads: ["time", "min"] },
  s: { shown: "s", reads: ["time", "s"] },
  N: { shown: "N", reads: ["force", "N"] },
  MPa: { shown: "MPa", reads: ["stress", "MPa"] },
  kg: { shown: "kg", reads: ["mass", "kg"] },
  g: { shown: "g", reads: ["mass", "g"] },
  Nm: { shown: "Nm", reads: ["torque", "Nm"] },
  Nmm: { shown: "Nmm", reads: ["torque", "Nmm"] },
  W: { shown: "W", reads: ["power", "W"] },
  "m/s": { shown: "m/s", reads: ["speed", "m/s"] },
  percent: { shown: "%", reads: ["percent", "%"] },
  count: { shown: "" },
  ratio: { shown: "" },
  named: { shown: "" },
  mm2: { shown: "mm²" },
  m2: { shown: "m²" },
  "m/s2": { shown: "m/s²" },
  "1/min": { shown: "1/min" },
  J: { shown: "J" },
  degC: { shown: "°C" },
  "kg m2": { shown: "kg m²" },
  "kg/m3": { shown: "kg/m³" },
  "N/mm": { shown: "N/mm" },
  "1/h": { shown: say("sheet.sheet-unit.per-h") },
  money: { shown: "" },
};

/** A number with the unit of a sheet, all digits kept: "100 mm", "−4.5°". */
export function withUnit(value: number, unit: SheetUnit): string {
  const { shown } = SHEET_UNITS[unit];
  const text = value < 0 ? `\u2212${Math.abs(value)}` : `${Object.is(value, -0) ? 0 : value}`;
  return shown === "" ? text : shown === "°" ? `${text}°` : `${text} ${shown}`;
}

/** Both limits with their unit: "100 to 800 mm". */
export function rangeText(min: number, max: number, unit: SheetUnit): string {
  return say("sheet.sheet-unit.to", { min: withUnit(min, "ratio"), max: withUnit(max, unit) });
}

export type FieldNumber =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "half-width" }
  | Unreadable;

/** A written figure in the unit of the field; "49,1 cm" in a field in mm is 491. */
export function readFieldNumber(text: string, unit: SheetUnit): FieldNumber {
  const reads = SHEET_UNITS[unit].reads ?? (["ratio", ""] as const);
  const options: ReadOptions = reads[1] === "" ? {} : { bareUnit: reads[1], into: reads[1] };
  const reading = readQuantity(text, reads[0], options);
  if (reading.kind === "unreadable") return reading;
  return reading.plusMinus === undefined ? { kind: "number", value: reading.value } : { kind: "half-width" };
}
