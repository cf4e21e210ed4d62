/** How is a figure of the board, or the deciding number of a joint, set in print? */
import type { DecidingNumber } from "@coldset/core/fit";
import type { Band } from "@coldset/core/quantity";
import { type Figure, showNumber } from "@coldset/core/questions";
import type { BookQuantity } from "../book/index.js";
import { bandWords } from "../model/index.js";

const UNITS: Readonly<Record<string, string>> = { deg: "°", count: "", ratio: "" };

const MEASURED: readonly string[] = ["mm", "°", "g", "kg", "bar"];

export function bookQuantity(f: Figure): BookQuantity {
  return {
    value: f.value,
    unit: f.unit,
    decimals: f.decimals,
    ...(f.band === undefined ? {} : { band: shortBand(f.band) }),
    // A sum, a count or days are reckoned; only what is measured can be as entered.
    ...(MEASURED.includes(f.unit) ? {} : { without: f.unit === "N" ? "reckoned" : "" }),
  };
}

/** "95 %, from the survey" is the usual 95 % to the eye; other meanings stay. */
export function shortBand(band: Band): Band {
  return band.means.startsWith("95 %") ? { ...band, means: "95 %" } : band;
}

/** Name, value with band, and what it is held against, for a row of its own. */
export function numberCells(n: DecidingNumber): readonly [string, string, string] {
  const words = numberWords({
    name: "",
    value: n.value,
    unit: n.unit,
    ...(n.band === undefined ? {} : { band: n.band }),
  });
  const yesOrNo = n.unit === "count" && n.limit?.low === 1 && (n.value === 0 || n.value === 1);
  const value = yesOrNo
    ? n.value === 1
      ? "yes"
      : "no"
    : n.unit === "ratio" && n.name.startsWith("chance")
      ? `${showNumber(100 * n.value, 0)} %`
      : words.trim();
  return [n.name, value, n.limit?.words ?? ""];
}

/** A half-width that would round to nothing gets the digits it needs. */
function bandDecimals(band: Band, decimals: number): number {
  const half = (band.high - band.low) / 2;
  return half > 0 && half < 0.95 * 10 ** -decimals ? Math.min(4, Math.ceil(-Math.log10(half))) : decimals;
}

/** "cup over bore 0.17 mm ± 0.02 (0.1 to 0.2 press)"; a mark that must be 1 is said as a word. What ± means stands apart. */
export function numberWords(n: DecidingNumber): string {
  if (n.unit === "count" && n.limit?.low === 1 && (n.value === 0 || n.value === 1))
    return `${n.name}: ${n.value === 1 ? "yes" : "no"}`;
  const unit = UNITS[n.unit] ?? n.unit;
  const whole = n.unit === "count" || (Number.isInteger(n.value) && n.band === undefined);
  const decimals = whole || n.unit === "N" ? 0 : Math.abs(n.value) < 2 ? 2 : 1;
  const shown = showNumber(n.value, decimals);
  const figure = unit === "°" ? `${shown}°` : unit === "" ? shown : `${shown} ${unit}`;
  const band =
    n.band === undefined
      ? ""
      : ` ${bandWords(n.value, { ...n.band, means: "95 %" }, bandDecimals(n.band, Math.max(1, decimals)))}`;
  return `${n.name} ${figure}${band}${n.limit === undefined ? "" : ` (${n.limit.words})`}`;
}
