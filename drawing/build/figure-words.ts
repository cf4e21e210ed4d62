/** How is a figure of the board, or the deciding number of a joint, set in print? */
import type { DecidingNumber } from "@coldset/core/fit";
import type { Band } from "@coldset/core/quantity";
import { type Figure, showNumber } from "@coldset/core/questions";
import type { BookQuantity } from "../book/index.js";
import { bandWords } from "../model/index.js";

const UNITS: Readonly<Record<string, string>> = { deg: "°", count: "", ratio: "" };

export function bookQuantity(f: Figure): BookQuantity {
  return {
    value: f.value,
    unit: f.unit,
    decimals: f.decimals,
    ...(f.band === undefined ? {} : { band: shortBand(f.band) }),
  };
}

/** "95 %, from the survey" is the usual 95 % to the eye; other meanings stay. */
export function shortBand(band: Band): Band {
  return band.means.startsWith("95 %") ? { ...band, means: "95 %" } : band;
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
    n.band === undefined ? "" : ` ${bandWords(n.value, { ...n.band, means: "95 %" }, Math.max(1, decimals))}`;
  return `${n.name} ${figure}${band}${n.limit === undefined ? "" : ` (${n.limit.words})`}`;
}
