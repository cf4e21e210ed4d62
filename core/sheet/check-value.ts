/** May this single value stand in its field? Numbers, written figures and words; each problem is put on the list. */

import { nearestName, type Refusal, showable } from "../quantity/index.js";
import { say } from "../texts/say.js";
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
  const allowed = `${rangeText(rule.min, rule.max, rule.unit)}${rule.integer === true ? say("sheet.check-value.whole-numbers") : ""}`;
  const refuse = (code: string, why: string): undefined => {
    const message = say("sheet.check-value.allowed", { label: rule.label, at, why, allowed });
    put.push({ code, at, given: shownGiven(given), allowed, message });
    return undefined;
  };
  let value: number;
  if (typeof given === "number") {
    if (!Number.isFinite(given))
      return refuse("not-finite", say("sheet.check-value.is-not-a-number-to-reckon", { given }));
    value = given === 0 ? 0 : given;
  } else if (typeof given === "string") {
    const read = readFieldNumber(given, rule.unit);
    if (read.kind === "half-width")
      return refuse("plus-minus-not-taken", say("sheet.check-value.only-one-figure-fits-here-without"));
    if (read.kind === "unreadable") {
      return refuse(
        read.code,
        say("sheet.check-value.cannot-read-write-it-like", {
          written: read.written,
          reason: read.reason,
          ways: read.ways.join(" or "),
        }),
      );
    }
    value = read.value;
  } else {
    return refuse("wrong-type", say("sheet.check-value.is-not-a-number", { given: typeName(given) }));
  }
  if (value < rule.min)
    return refuse(
      "out-of-range",
      say("sheet.check-value.is-below", { value: withUnit(value, rule.unit), min: withUnit(rule.min, rule.unit) }),
    );
  if (value > rule.max)
    return refuse(
      "out-of-range",
      say("sheet.check-value.is-above", { value: withUnit(value, rule.unit), max: withUnit(rule.max, rule.unit) }),
    );
  if (rule.integer === true && !Number.isInteger(value))
    return refuse("not-whole", say("sheet.check-value.is-not-whole", { value: withUnit(value, rule.unit) }));
  return value;
}

export function checkText(rule: TextRule, given: unknown, at: string, put: Refusal[]): string | undefined {
  const allowed =
    rule.oneOf === undefined
      ? say("sheet.check-value.text-of-at-most-signs", { maxLength: rule.maxLength })
      : say("sheet.check-value.one-of", { oneOf: rule.oneOf.join(", ") });
  const refuse = (code: string, why: string): undefined => {
    put.push({
      code,
      at,
      given: shownGiven(given),
      allowed,
      message: say("sheet.check-value.allowed", { label: rule.label, at, why, allowed }),
    });
    return undefined;
  };
  if (typeof given !== "string")
    return refuse("wrong-type", say("sheet.check-value.is-not-text", { given: typeName(given) }));
  const length = [...given].length;
  if (length > rule.maxLength) return refuse("too-long", say("sheet.check-value.signs-are-too-many", { length }));
  if (/[^\P{Cc}\n\r\t]|[\p{Cs}]/u.test(given))
    return refuse("hidden-character", say("sheet.check-value.the-text-holds-signs-that-cannot"));
  if (rule.oneOf !== undefined) {
    if (rule.oneOf.includes(given)) return given;
    const near = nearestName(given, rule.oneOf);
    const hint = near === undefined ? "" : say("sheet.check-value.did-you-mean", { near });
    return refuse("not-one-of", say("sheet.check-value.is-not-on-the-list", { given: showable(given), hint }));
  }
  if (given.trim() === "" && rule.optional !== true)
    return refuse("empty", say("sheet.check-value.nothing-is-written-here"));
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
  if (Array.isArray(given)) return say("sheet.check-value.a-list-of", { givenCount: given.length });
  if (typeof given === "object") return say("sheet.check-value.an-object");
  if (typeof given === "boolean") return String(given);
  return typeof given === "string" ? "text" : `a ${typeof given}`;
}
