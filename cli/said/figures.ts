/** How is a number printed: "70.1 mm ± 4.7", with what it is held against? */

import type { DecidingNumber } from "@coldset/core/fit";
import type { Band, BoardVerdict } from "@coldset/core/quantity";
import type { Figure } from "@coldset/core/questions";
import { showNumber } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import type { Style } from "../screen/page.js";

const SHOWN_UNITS: Readonly<Record<string, string>> = { deg: "°", count: "", ratio: "" };

function withUnit(text: string, unit: string): string {
  return unit === "" ? text : unit === "°" ? `${text}°` : `${text} ${unit}`;
}

/** "70.1 mm ± 4.7"; a lopsided band by its ends; without one that is said where the unit is one of measuring. */
export function quantityText(
  value: number,
  unit: string,
  decimals: number,
  band?: Band,
  without = say("cli.figures.as-entered"),
): string {
  const shown = withUnit(showNumber(value, decimals), unit);
  if (band === undefined) return ["mm", "°", "g", "kg", "bar"].includes(unit) ? `${shown}${without}` : shown;
  const half = (band.high - band.low) / 2;
  const fine = Math.max(decimals, 1);
  const middle = (band.high + band.low) / 2;
  if (Math.abs(middle - value) > 0.1 * half)
    return say("cli.figures.to", { shown, low: showNumber(band.low, fine), high: showNumber(band.high, fine) });
  // A half-width that would round to nothing gets the digits it needs.
  const digits = half > 0 && half < 0.5 * 10 ** -fine ? Math.min(4, Math.ceil(-Math.log10(half))) : fine;
  return `${shown} ± ${showNumber(half, digits)}`;
}

export function figureText(f: Figure, without = say("cli.figures.as-entered")): string {
  const against = f.against === undefined ? "" : ` (${f.against})`;
  if (yesOrNo(f.value, f.unit, f.limit?.low))
    return `${f.name}: ${f.value === 1 ? say("cli.answer-page.yes") : say("cli.answer-page.no")}`;
  // A count of so many: "0 of 4 signed".
  if (f.unit === "" && f.band === undefined && f.against?.startsWith("of ") === true)
    return `${showNumber(f.value, f.decimals)} ${f.against} ${f.name}`;
  return `${f.name} ${quantityText(f.value, f.unit, f.decimals, f.band, without)}${against}`;
}

/** A mark that is 1 or 0 and must be 1 is said as a word. */
function yesOrNo(value: number, unit: string, low: number | undefined): boolean {
  return (unit === "" || unit === "count") && low === 1 && (value === 0 || value === 1);
}

export interface NumberCells {
  readonly name: string;
  readonly value: string;
  readonly limit: string;
}

export function numberCells(n: DecidingNumber): NumberCells {
  const unit = SHOWN_UNITS[n.unit] ?? n.unit;
  const limit = n.limit === undefined ? "" : n.limit.words;
  if (yesOrNo(n.value, n.unit, n.limit?.low))
    return { name: n.name, value: n.value === 1 ? say("cli.answer-page.yes") : say("cli.answer-page.no"), limit };
  if (n.unit === "ratio" && n.name.startsWith("chance"))
    return { name: n.name, value: `${showNumber(100 * n.value, 0)} %`, limit };
  const whole = n.unit === "count" || (Number.isInteger(n.value) && n.band === undefined);
  const decimals = whole ? 0 : n.unit === "N" ? 0 : Math.abs(n.value) < 2 ? 2 : 1;
  return { name: n.name, value: quantityText(n.value, unit, decimals, n.band, ""), limit };
}

export function verdictStyle(verdict: BoardVerdict): Style {
  switch (verdict) {
    case "fits":
    case "within":
    case "no problem found":
      return "good";
    case "will not fit":
    case "over":
    case "refuse":
      return "bad";
    case "not checked yet":
      return "quiet";
    default:
      return "open";
  }
}

/** A sum in the workshop's own unit: whole where it is whole. */
export function sum(value: number): string {
  return showNumber(value, Math.abs(value - Math.round(value)) < 0.005 ? 0 : 2);
}

/** Hours with no more digits than they have: "0.3 h", "2 h". */
export function hoursText(value: number): string {
  return `${Number(value.toFixed(2))} h`.replace("-", "−");
}
