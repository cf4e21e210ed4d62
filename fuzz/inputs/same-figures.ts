/**
 * Does the typed document say what the text says? Walks the plain data and the typed value side by side, by rules of its
 * own: a number stays itself, a written figure is what a second reading finds, nothing that was written is missing, and
 * nothing stands there that was not written. Answers with the first difference, or undefined.
 */
import { plainReading } from "./plain-reading.js";

const near = (a: number, b: number) => Math.abs(a - b) <= 1e-10 * Math.max(1, Math.abs(a), Math.abs(b));
const isRecord = (v: unknown): v is Record<string, unknown> => v !== null && typeof v === "object" && !Array.isArray(v);

/** Sorts of figure that a document holds, each with the factor into the unit it is kept in. */
const READ_AS: readonly (readonly [string, number])[] = [
  ["length", 1],
  ["angle", 1],
  ["mass", 1],
  ["mass", 1000],
  ["time", 1],
];

function figureOf(written: string, value: number): boolean {
  return READ_AS.some(([dimension, times]) => {
    const bare = dimension === "mass" && times === 1000 ? 0.001 : 1;
    const read = plainReading(written, dimension, bare);
    return read !== undefined && near(read.value * times, value);
  });
}

export function firstDifference(plain: unknown, typed: unknown, at = ""): string | undefined {
  const no = (why: string) => `${at || "the document"}: ${why}`;
  if (typeof typed === "number" && !Number.isFinite(typed)) return no(`${typed} is not finite`);
  if (plain === "?" || plain === null || plain === undefined)
    // A field of words keeps a lone question mark as it was written.
    return typed === undefined || typed === 1 || typed === null || (plain === "?" && typed === "?")
      ? undefined
      : no("stands there, but was not written");
  if (typed === undefined) return no(`${JSON.stringify(plain)} was written and is not there`);
  if (typeof plain === "number") {
    const value = isRecord(typed) ? typed.value : typed;
    return value === plain || value === String(plain) ? undefined : no(`${plain} became ${JSON.stringify(typed)}`);
  }
  if (typeof plain === "boolean") return typed === plain ? undefined : no(`${plain} became ${JSON.stringify(typed)}`);
  if (typeof plain === "string") {
    if (typed === plain) return undefined;
    if (typeof typed === "number") return figureOf(plain, typed) ? undefined : no(`"${plain}" became ${typed}`);
    if (!isRecord(typed)) return no(`"${plain}" became ${JSON.stringify(typed)}`);
    if (typeof typed.bsdMm === "number" && typeof typed.widthMm === "number") {
      const sides = (plain.match(/\d+/g) ?? []).map(Number).sort((a, b) => b - a);
      return sides.length === 2 && sides[0] === typed.bsdMm && sides[1] === typed.widthMm
        ? undefined
        : no(`tyre "${plain}" became ${JSON.stringify(typed)}`);
    }
    const { value, written } = typed;
    if (written !== plain) return no(`"${plain}" is kept as ${JSON.stringify(written)}`);
    return typeof value === "number" && figureOf(plain, value) ? undefined : no(`"${plain}" became ${String(value)}`);
  }
  if (Array.isArray(plain)) {
    if (!Array.isArray(typed) || typed.length !== plain.length) return no("a list of another length");
    for (const [i, item] of plain.entries()) {
      const inner = firstDifference(item, typed[i], `${at}[${i}]`);
      if (inner !== undefined) return inner;
    }
    return undefined;
  }
  if (!isRecord(plain)) return no(`a ${typeof plain} in plain data`);
  if (Array.isArray(typed)) return profileDifference(plain, typed, at);
  if (!isRecord(typed)) return no(`a group became ${JSON.stringify(typed)}`);
  for (const key of new Set([...Object.keys(plain), ...Object.keys(typed)])) {
    const inner = firstDifference(
      Object.hasOwn(plain, key) ? plain[key] : undefined,
      Object.hasOwn(typed, key) ? typed[key] : undefined,
      at === "" ? key : `${at}.${key}`,
    );
    if (inner !== undefined) return inner;
  }
  return undefined;
}

/** Distance and reading, sorted by distance. */
function profileDifference(plain: Record<string, unknown>, rows: readonly unknown[], at: string): string | undefined {
  const keys = Object.keys(plain);
  if (rows.length !== keys.length) return `${at}: ${keys.length} readings became ${rows.length}`;
  let before = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    if (!Array.isArray(row) || typeof row[0] !== "number") return `${at}: a row is no pair`;
    const [distance, reading] = row as [number, unknown];
    if (!Number.isFinite(distance) || distance < before) return `${at}: ${distance} out of order`;
    before = distance;
    const key = keys.find((k) => /^\d+(?:\.\d+)?$/.test(k) && Number(k) === distance);
    if (key === undefined) return `${at}: a reading at ${distance}, which was not written (${keys.join(", ")})`;
    const inner = firstDifference(plain[key], reading, `${at}.${key}`);
    if (inner !== undefined) return inner;
  }
  return undefined;
}

/** Every number of the data that stands nowhere in the text as a plain decimal figure: nobody wrote it. */
export function unwrittenNumber(text: string, plain: unknown): number | undefined {
  const written = new Set<number>();
  for (const [token] of text.matchAll(/[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g)) {
    written.add(Number(token));
    written.add(Math.abs(Number(token)));
  }
  const look = (value: unknown): number | undefined => {
    if (typeof value === "number") return written.has(value) ? undefined : value;
    if (value === null || typeof value !== "object") return undefined;
    for (const inner of Object.values(value)) {
      const found = look(inner);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  return look(plain);
}
