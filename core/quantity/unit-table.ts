/**
 * Which units may be written, and what is one of them in the base unit? Every factor is exact but the radian's.
 * The sources stand in core/data/sources-quantity.ts.
 */
import type { SourceId } from "./answer.js";
import type { NumberDimension } from "./dimension.js";
import { type Exact, exactFromDecimal, exactOver, exactRatio, exactTimes } from "./exact-number.js";

export interface Unit {
  readonly dimension: NumberDimension;
  /** The short way we write it. */
  readonly name: string;
  /** Other ways people write it. */
  readonly also: readonly string[];
  /** One of it in the base unit of its dimension. */
  readonly factor: Exact;
  readonly source: SourceId;
}

const SI = "si-brochure-9";
const POUND = "yard-and-pound-1959";
const GRAVITY = "standard-gravity-1901";
const POUND_FORCE = "pound-force-derived";
const AS_IS = "kept-as-written";

const decimal = exactFromDecimal;
const INCH_MM = decimal("25.4");
const FOOT_MM = decimal("304.8");
const POUND_KG = decimal("0.45359237");
const LBF_N = exactTimes(POUND_KG, decimal("9.80665"));
const THOUSANDTH = decimal("0.001");

function rows(
  dimension: NumberDimension,
  list: readonly (readonly [string, readonly string[], Exact, SourceId])[],
): readonly Unit[] {
  return list.map(([name, also, factor, source]) => ({ dimension, name, also, factor, source }));
}

/** "lbf ft", "ft lb", "lb-ft" ... with one of the given words for the arm; the short name itself is left out. */
function poundTorqueNames(arms: readonly string[]): readonly string[] {
  const forces = ["lbf", "lb", "lbs"];
  return forces
    .flatMap((f) => arms.flatMap((a) => [" ", "-", "·", "."].flatMap((sep) => [`${f}${sep}${a}`, `${a}${sep}${f}`])))
    .filter((n) => !arms.some((a) => n === `lbf ${a}`));
}

export const UNITS: readonly Unit[] = [
  ...rows("length", [
    ["mm", ["millimetre", "millimetres", "millimeter", "millimeters"], decimal("1"), SI],
    ["cm", ["centimetre", "centimetres", "centimeter", "centimeters"], decimal("10"), SI],
    ["m", ["metre", "metres", "meter", "meters"], decimal("1000"), SI],
    ["km", ["kilometre", "kilometres", "kilometer", "kilometers"], decimal("1000000"), SI],
    ["um", ["µm", "μm", "micron", "microns"], THOUSANDTH, SI],
    ["in", ['"', "in.", "inch", "inches"], INCH_MM, POUND],
    ["ft", ["'", "ft.", "foot", "feet"], FOOT_MM, POUND],
    ["yd", ["yard", "yards"], decimal("914.4"), POUND],
    ["mi", ["mile", "miles"], decimal("1609344"), POUND],
  ]),
  ...rows("area", [
    ["mm2", ["mm²", "mm^2"], decimal("1"), SI],
    ["cm2", ["cm²", "cm^2"], decimal("100"), SI],
    ["m2", ["m²", "m^2"], decimal("1000000"), SI],
    ["in2", ["in²", "in^2", "sq in"], exactTimes(INCH_MM, INCH_MM), POUND],
  ]),
  ...rows("angle", [
    ["deg", ["°", "degree", "degrees"], decimal("1"), SI],
    ["arcmin", ["'"], exactRatio(1n, 60n), SI],
    ["arcsec", ['"'], exactRatio(1n, 3600n), SI],
    // 180 / pi; the test compares it with Math.PI.
    ["rad", ["radian", "radians"], decimal("57.29577951308232087679815481410517"), SI],
  ]),
  ...rows("mass", [
    ["kg", ["kilo", "kilos", "kilogram", "kilograms"], decimal("1"), SI],
    ["g", ["gram", "grams", "gramme", "grammes"], THOUSANDTH, SI],
    ["lb", ["lb.", "lbs", "lbs.", "pound", "pounds"], POUND_KG, POUND],
    ["oz", ["oz.", "ounce", "ounces"], exactOver(POUND_KG, decimal("16")), POUND],
    ["st", ["stone"], exactTimes(POUND_KG, decimal("14")), POUND],
  ]),
  ...rows("torque", [
    ["Nm", ["N m", "N·m", "N.m", "N-m", "newton metre", "newton metres"], decimal("1"), SI],
    ["Ncm", ["N cm", "N·cm"], decimal("0.01"), SI],
    ["Nmm", ["N mm", "N·mm"], THOUSANDTH, SI],
    ["lbf ft", poundTorqueNames(["ft"]), exactTimes(LBF_N, decimal("0.3048")), POUND_FORCE],
    ["lbf in", poundTorqueNames(["in"]), exactTimes(LBF_N, decimal("0.0254")), POUND_FORCE],
    ["kgf m", ["kgfm", "kgf·m", "kpm", "kp m"], decimal("9.80665"), GRAVITY],
    ["kgf cm", ["kgfcm", "kgf·cm", "kpcm", "kp cm"], decimal("0.0980665"), GRAVITY],
  ]),
  ...rows("force", [
    ["N", ["newton", "newtons"], decimal("1"), SI],
    ["kN", [], decimal("1000"), SI],
    ["lbf", ["pound-force"], LBF_N, POUND_FORCE],
    ["kgf", ["kp"], decimal("9.80665"), GRAVITY],
  ]),
  ...rows("stress", [
    ["MPa", ["N/mm2", "N/mm²", "N/mm^2"], decimal("1"), SI],
    ["GPa", [], decimal("1000"), SI],
    ["kPa", [], THOUSANDTH, SI],
    ["bar", [], decimal("0.1"), SI],
    ["psi", ["lbf/in2", "lbf/in²"], exactOver(LBF_N, exactTimes(INCH_MM, INCH_MM)), POUND_FORCE],
  ]),
  ...rows("time", [
    ["h", ["hr", "hrs", "hour", "hours"], decimal("1"), SI],
    ["min", ["mins", "minute", "minutes"], exactRatio(1n, 60n), SI],
    ["s", ["sec", "secs", "second", "seconds"], exactRatio(1n, 3600n), SI],
    ["day", ["d", "days"], decimal("24"), SI],
    ["week", ["weeks"], decimal("168"), SI],
  ]),
  ...rows("speed", [
    ["m/s", ["mps"], decimal("1"), SI],
    ["km/h", ["kmh", "kph"], exactRatio(5n, 18n), SI],
    ["mph", ["mi/h"], decimal("0.44704"), POUND],
  ]),
  ...rows("power", [
    ["W", ["watt", "watts"], decimal("1"), SI],
    ["kW", [], decimal("1000"), SI],
  ]),
  ...rows("percent", [["%", ["percent", "per cent", "pct"], decimal("1"), SI]]),
  // Money is never converted: the sum is kept as written, the currency stands in `unit`.
  ...rows("money", [
    ["EUR", ["€", "euro", "euros"], decimal("1"), AS_IS],
    ["GBP", ["£"], decimal("1"), AS_IS],
    ["USD", ["$", "US$"], decimal("1"), AS_IS],
    ["CHF", [], decimal("1"), AS_IS],
    ["SEK", [], decimal("1"), AS_IS],
    ["NOK", [], decimal("1"), AS_IS],
    ["DKK", [], decimal("1"), AS_IS],
    ["PLN", [], decimal("1"), AS_IS],
    ["CZK", [], decimal("1"), AS_IS],
  ]),
  ...rows("count", [
    ["T", ["tooth", "teeth"], decimal("1"), AS_IS],
    ["pcs", ["pc", "piece", "pieces"], decimal("1"), AS_IS],
  ]),
];

/** The unit written exactly so, or else the only one that differs in capitals alone. Looks in one dimension. */
export function findUnit(written: string, dimension: NumberDimension): Unit | undefined {
  const here = UNITS.filter((u) => u.dimension === dimension);
  const same = here.find((u) => u.name === written || u.also.includes(written));
  if (same !== undefined) return same;
  const low = written.toLowerCase();
  const loose = here.filter((u) => u.name.toLowerCase() === low || u.also.some((a) => a.toLowerCase() === low));
  return loose.length === 1 ? loose[0] : undefined;
}

export interface UnitHit {
  readonly unit: Unit;
  /** As written. */
  readonly written: string;
}

interface Spelling {
  readonly text: string;
  readonly unit: Unit;
}

const SPELLINGS: readonly Spelling[] = UNITS.flatMap((unit) =>
  [unit.name, ...unit.also].map((text) => ({ text, unit })),
).sort((a, b) => b.text.length - a.text.length);

/**
 * Which unit stands at the start of this text? The longest spelling wins ("lbf ft" before "lbf"); between equals the
 * wanted dimension (' and " mean feet and inches in a length, minutes and seconds in an angle), then right capitals.
 */
export function unitAtStart(text: string, want: NumberDimension): UnitHit | undefined {
  let best: { hit: UnitHit; score: number } | undefined;
  const low = text.toLowerCase();
  for (const { text: spelling, unit } of SPELLINGS) {
    const written = text.slice(0, spelling.length);
    if (low.slice(0, spelling.length) !== spelling.toLowerCase()) continue;
    const next = text.charAt(spelling.length);
    if (/\p{L}$/u.test(spelling) && /[\p{L}²^]/u.test(next)) continue;
    const score = spelling.length * 4 + (unit.dimension === want ? 2 : 0) + (written === spelling ? 1 : 0);
    if (best === undefined || score > best.score) best = { hit: { unit, written }, score };
  }
  return best?.hit;
}
