/**
 * Two people measured the same length or angle and wrote two values. What do both say together? The average of the two,
 * with a half-width that covers both values and what each said of its own spread:
 *   mean = (a + b) / 2, half-width = max(|a - mean| + spread of a, |b - mean| + spread of b).
 * 549 and 551 give 550 ± 1; 549 ± 0.5 and 551 give 550 ± 1.5. It claims no more than that the truth lies between them:
 * two readings that disagree are no reason to trust their middle more. Our derivation.
 */
import { readQuantity, writeQuantity } from "@coldset/core/quantity";
import { type EditPath, editPlain } from "@coldset/core/workshop";

const DIMENSIONS = ["length", "angle"] as const;
const UNIT_DECIMALS = 3;

/** As it is written into the document, or undefined where the two are no readings of one sort. */
export function bothReadings(mine: unknown, theirs: unknown): string | undefined {
  for (const dimension of DIMENSIONS) {
    const [a, b] = [reading(mine, dimension), reading(theirs, dimension)];
    if (a === undefined || b === undefined) continue;
    const mean = (a.value + b.value) / 2;
    const half = Math.max(Math.abs(a.value - mean) + a.spread, Math.abs(b.value - mean) + b.spread);
    return `${figure(mean, dimension)} ± ${figure(half, dimension).replace(/^([\d.]+).*$/, "$1")}${unitOf(dimension)}`;
  }
  return undefined;
}

function reading(written: unknown, dimension: (typeof DIMENSIONS)[number]) {
  if (typeof written !== "string" && typeof written !== "number") return undefined;
  const read = readQuantity(written, dimension);
  return read.kind === "read" ? { value: read.value, spread: read.plusMinus ?? 0 } : undefined;
}

/** Digits only as many as the figure has: 550, 550.5. */
function figure(value: number, dimension: (typeof DIMENSIONS)[number]): string {
  const text = writeQuantity(value, dimension, "metric", { decimals: UNIT_DECIMALS });
  const number = text.match(/^[−-]?[\d.]+/)?.[0] ?? "";
  return number.includes(".") ? number.replace(/\.?0+$/, "") : number;
}

const unitOf = (dimension: (typeof DIMENSIONS)[number]) => (dimension === "length" ? " mm" : "°");

/**
 * The same for a place of a document: only readings of the donor's survey are joined, and only where the document can be
 * read with the result in that place. A count, a price or a name stays a choice between two.
 */
export function bothAtPlace(
  place: { readonly kind: string; readonly path: EditPath; readonly plain: unknown },
  mine: unknown,
  theirs: unknown,
): string | undefined {
  if (place.kind !== "donor" || place.path[0] !== "measured") return undefined;
  const both = bothReadings(mine, theirs);
  if (both === undefined) return undefined;
  return editPlain(place.plain, place.path, both).kind === "read" ? both : undefined;
}
