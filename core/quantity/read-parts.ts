/**
 * How do number and unit follow each other in this text? One number with a unit, or falling parts that belong
 * together (31 lb 4 oz, 5'11", 71°30', 1 h 30 min), and perhaps ± and a half-width behind it.
 */
import { say } from "../texts/say.js";
import { DIMENSION_NAMES, type NumberDimension } from "./dimension.js";
import { type Exact, exactBelow, exactOver, exactPlus, exactTimes } from "./exact-number.js";
import { nearestName } from "./nearest-name.js";
import { readNumber } from "./read-number.js";
import { type Fault, fault } from "./reading.js";
import { showable } from "./tidy-text.js";
import { UNITS, type Unit, type UnitHit, unitAtStart } from "./unit-table.js";

export interface Parts {
  readonly kind: "parts";
  /** In the base unit. */
  readonly amount: Exact;
  readonly plusMinus?: Exact;
  readonly unit: string;
}

interface Part {
  readonly number: Exact;
  readonly unit: UnitHit | undefined;
}

/** Units that people put behind each other, large to small. */
const FALLING: readonly (readonly string[])[] = [
  ["mi", "yd", "ft", "in"],
  ["m", "cm", "mm"],
  ["deg", "arcmin", "arcsec"],
  ["st", "lb", "oz"],
  ["kg", "g"],
  ["week", "day", "h", "min", "s"],
];

export function readParts(tidy: string, want: NumberDimension, bare: Exact): Parts | Fault {
  const [main = "", half, more] = tidy.split("±").map((s) => s.trim());
  if (more !== undefined) return fault("bad-plus-minus", say("quantity.read-parts.stands-more-than-once"));
  const sides = readSide(main, want);
  if (!Array.isArray(sides)) return sides;
  const [parts, negative] = sides;
  if (half === undefined) return total(parts, negative, bare);
  if (/^[-+]/.test(half)) return fault("bad-plus-minus", say("quantity.read-parts.the-figure-behind-has-no-sign"));
  const halfSide = readSide(half, want);
  if (!Array.isArray(halfSide)) return halfSide;
  const halfParts = halfSide[0];
  const mainUnit = parts.at(-1)?.unit;
  const halfUnit = halfParts.at(-1)?.unit;
  if (parts.length > 1 && halfUnit === undefined) {
    return fault("bad-plus-minus", say("quantity.read-parts.after-several-parts-the-figure-behind"));
  }
  const filled = (list: readonly Part[], other: UnitHit | undefined): readonly Part[] =>
    list.map((p) => (list.length === 1 && p.unit === undefined ? { ...p, unit: other } : p));
  const amount = total(filled(parts, halfUnit), negative, bare);
  const plusMinus = total(filled(halfParts, mainUnit), false, bare);
  if (amount.kind === "fault") return amount;
  if (plusMinus.kind === "fault") return plusMinus;
  return { ...amount, plusMinus: plusMinus.amount };
}

/** The parts of one side of ±, and whether a minus stands before them. */
function readSide(text: string, want: NumberDimension): [readonly Part[], boolean] | Fault {
  const sign = /^[-+] ?/.exec(text)?.[0] ?? "";
  const currency = want === "money" ? unitAtStart(text.slice(sign.length), want) : undefined;
  const before = currency?.unit.dimension === "money" ? currency : undefined;
  let rest = text.slice(sign.length + (before?.written.length ?? 0)).trimStart();
  const parts: Part[] = [];
  do {
    const number = readNumber(rest);
    if (number.kind === "fault")
      return parts.length === 0 || number.ways !== undefined ? withUnit(number, rest, want) : junk(rest);
    const tail = number.rest.trimStart();
    const unit = tail === "" ? undefined : unitAtStart(tail, want);
    if (tail !== "" && unit === undefined) return noUnit(tail, want);
    if (unit !== undefined && unit.unit.dimension !== want) return otherDimension(number.written, unit, want);
    if (unit !== undefined && before !== undefined) return junk(tail);
    parts.push({ number: number.value, unit: unit ?? before });
    rest = tail.slice(unit?.written.length ?? 0).trimStart();
  } while (rest !== "" && parts.length < 5);
  return rest === "" ? [parts, sign.startsWith("-")] : junk(rest);
}

function total(parts: readonly Part[], negative: boolean, bare: Exact): Parts | Fault {
  let sum: Exact = { num: 0n, den: 1n };
  let above: Unit | undefined;
  for (const [i, part] of parts.entries()) {
    // 5'11 is read as inches behind feet; no other unit may be left out in the middle.
    const bareInches = part.unit === undefined && above?.name === "ft" ? UNITS.find((u) => u.name === "in") : undefined;
    const unit = part.unit?.unit ?? bareInches;
    if (parts.length > 1) {
      if (unit === undefined)
        return fault("parts-do-not-fit", say("quantity.read-parts.each-part-of-the-figure-needs"));
      if (above !== undefined && !follows(above, unit)) {
        return fault(
          "parts-do-not-fit",
          say("quantity.read-parts.does-not-follow-in-one-figure", { unit: unit.name, above: above.name }),
        );
      }
      if (above !== undefined && !exactBelow(exactTimes(part.number, unit.factor), above.factor)) {
        return fault(
          "parts-do-not-fit",
          say("quantity.read-parts.the-behind-must-stay-below-one", { unit: unit.name, above: above.name }),
        );
      }
      if (i < parts.length - 1 && part.number.num % part.number.den !== 0n) {
        return fault("parts-do-not-fit", say("quantity.read-parts.only-the-last-part-may-have"));
      }
    }
    sum = exactPlus(sum, exactTimes(part.number, unit?.factor ?? bare));
    above = unit;
  }
  const amount = negative ? exactOver({ num: -sum.num, den: sum.den }, { num: 1n, den: 1n }) : sum;
  const unit = parts.flatMap((p) => (p.unit === undefined ? [] : [p.unit.written])).join(" ");
  return { kind: "parts", amount, unit };
}

function follows(above: Unit, unit: Unit): boolean {
  return FALLING.some((row) => row.includes(above.name) && row.indexOf(unit.name) > row.indexOf(above.name));
}

/** "1,052 mm" is best answered by "1.052 mm" and "1052 mm": the ways of a number with the unit that was written. */
function withUnit(number: Fault, text: string, want: NumberDimension): Fault {
  if (number.ways === undefined) return number;
  const unit = unitAtStart(text.replace(/^[\d.,]+/, "").trimStart(), want);
  if (unit === undefined || unit.unit.dimension !== want) return number;
  const [a, b, c] = number.ways;
  return { ...number, ways: [`${a} ${unit.written}`, `${b} ${unit.written}`, `${c} ${unit.written}`] };
}

function junk(rest: string): Fault {
  return fault("trailing-text", say("quantity.read-parts.behind-the-figure-cannot-be-read", { rest: showable(rest) }));
}

function noUnit(tail: string, want: NumberDimension): Fault {
  if (/^- ?[\d.,]/.test(tail)) {
    return fault("trailing-text", say("quantity.read-parts.two-figures-with-a-dash-between"));
  }
  const word = /^[\p{L}\p{S}%'"/²^·.-]+/u.exec(tail)?.[0];
  if (word === undefined || !/\p{L}/u.test(word)) return junk(tail);
  const names = UNITS.filter((u) => u.dimension === want).flatMap((u) => [
    u.name,
    ...u.also.filter((a) => a.length > 2),
  ]);
  const near = nearestName(word, names, 1 / 3);
  const hint = near === undefined ? "" : say("quantity.read-parts.did-you-mean", { near });
  return fault(
    "unknown-unit",
    say("quantity.read-parts.is-no-unit-of", { word: showable(word), dimensionNames: DIMENSION_NAMES[want], hint }),
  );
}

function otherDimension(number: string, hit: UnitHit, want: NumberDimension): Fault {
  const is = DIMENSION_NAMES[hit.unit.dimension];
  return fault(
    "wrong-dimension",
    say("quantity.read-parts.is-wanted-is", {
      number,
      written: hit.written,
      foundDimension: is,
      wantedDimension: DIMENSION_NAMES[want],
    }),
  );
}
