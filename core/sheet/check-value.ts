/** May this single value stand in its field? Numbers, written figures and words; each problem is put on the list. */
import { nearestName, type Refusal, showable } from "../quantity/index.js";
import type { SheetUnit } from "./sheet.js";
import { rangeText, readFieldNumber, withUnit } from "./sheet-unit.js";

interface NumberRule {
  readonly label: string;
  readonly unit: SheetUnit;
  readonly min: number;
  readonly max: number;
  readonly integer?: boolean;
}

interface TextRule {
  readonly label: string;
  readonly oneOf?: readonly string[];
  readonly maxLength: number;
  readonly optional?: boolean;
}

export function checkNumber(rule: NumberRule, given: unknown, at: string, put: Refusal[]): number | undefined {
  const allowed = `${rangeText(rule.min, rule.max, rule.unit)}${rule.integer === true ? ", whole numbers" : ""}`;
  const refuse = (code: string, why: string): undefined => {
    const message = `${rule.label} (${at}): ${why} Allowed: ${allowed}.`;
    put.push({ code, at, given: shownGiven(given), allowed, message });
    return undefined;
  };
  let value: number;
  if (typeof given === "number") {
    if (!Number.isFinite(given)) return refuse("not-finite", `${given} is not a number to reckon with.`);
    value = given === 0 ? 0 : given;
  } else if (typeof given === "string") {
    const read = readFieldNumber(given, rule.unit);
    if (read.kind === "half-width") return refuse("plus-minus-not-taken", "only one figure fits here, without ±.");
    if (read.kind === "unreadable") {
      return refuse(
        read.code,
        `cannot read "${read.written}": ${read.reason} Write it like ${read.ways.join(" or ")}.`,
      );
    }
    value = read.value;
  } else {
    return refuse("wrong-type", `${typeName(given)} is not a number.`);
  }
  if (value < rule.min)
    return refuse("out-of-range", `${withUnit(value, rule.unit)} is below ${withUnit(rule.min, rule.unit)}.`);
  if (value > rule.max)
    return refuse("out-of-range", `${withUnit(value, rule.unit)} is above ${withUnit(rule.max, rule.unit)}.`);
  if (rule.integer === true && !Number.isInteger(value))
    return refuse("not-whole", `${withUnit(value, rule.unit)} is not whole.`);
  return value;
}

export function checkText(rule: TextRule, given: unknown, at: string, put: Refusal[]): string | undefined {
  const allowed =
    rule.oneOf === undefined ? `text of at most ${rule.maxLength} signs` : `one of ${rule.oneOf.join(", ")}`;
  const refuse = (code: string, why: string): undefined => {
    put.push({
      code,
      at,
      given: shownGiven(given),
      allowed,
      message: `${rule.label} (${at}): ${why} Allowed: ${allowed}.`,
    });
    return undefined;
  };
  if (typeof given !== "string") return refuse("wrong-type", `${typeName(given)} is not text.`);
  const length = [...given].length;
  if (length > rule.maxLength) return refuse("too-long", `${length} signs are too many.`);
  if (/[^\P{Cc}\n\r\t]|[\p{Cs}]/u.test(given))
    return refuse("hidden-character", "the text holds signs that cannot be seen.");
  if (rule.oneOf !== undefined) {
    if (rule.oneOf.includes(given)) return given;
    const near = nearestName(given, rule.oneOf);
    const hint = near === undefined ? "" : ` Did you mean "${near}"?`;
    return refuse("not-one-of", `"${showable(given)}" is not on the list.${hint}`);
  }
  if (given.trim() === "" && rule.optional !== true) return refuse("empty", "nothing is written here.");
  return given;
}

/** What was given, short enough to show and to put into JSON. */
export function shownGiven(given: unknown): unknown {
  if (typeof given === "string") return showable(given);
  if (typeof given === "number") return Number.isFinite(given) ? given : String(given);
  if (typeof given === "boolean" || given === null || given === undefined) return given ?? null;
  return typeName(given);
}

function typeName(given: unknown): string {
  if (given === null || given === undefined) return "nothing";
  if (Array.isArray(given)) return `a list of ${given.length}`;
  if (typeof given === "object") return "an object";
  if (typeof given === "boolean") return String(given);
  return typeof given === "string" ? "text" : `a ${typeof given}`;
}
