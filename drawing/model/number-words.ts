import type { Band } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";

/** How is a number written? True minus sign, a thin gap between thousands from 1 000 up when whole, decimals as asked. */
export function numberWords(value: number, decimals = 1): string {
  if (!Number.isFinite(value)) return "?";
  const text = Math.abs(value).toFixed(decimals);
  const [whole = "0", part] = text.split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, "\u00a0");
  const zero = Number(text) === 0;
  return `${value < 0 && !zero ? "−" : ""}${grouped}${part === undefined ? "" : `.${part}`}`;
}

/**
 * How is the band written beside its number? "± 0.6" where it is even, else "1.2 to 3.4"; what it means follows unless it is the
 * usual 95 %. A number without a band is "as entered".
 */
export function bandWords(value: number, band: Band | undefined, decimals = 1): string {
  if (band === undefined) return say("drawing.number-words.as-entered");
  const up = band.high - value;
  const down = value - band.low;
  const even = Math.abs(up - down) < 0.5 * 10 ** -decimals;
  const words = even
    ? `± ${numberWords((up + down) / 2, decimals)}`
    : say("drawing.number-words.to", { low: numberWords(band.low, decimals), high: numberWords(band.high, decimals) });
  return band.means === "95 %" ? words : `${words} (${band.means})`;
}
