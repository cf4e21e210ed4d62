/** How are a value and its place in a document said in one short line? As people write them in the document itself. */
import { say } from "../texts/say.js";
import type { EditPath } from "./edit.js";
import { entryName, isPlainRecord, ownValue } from "./same-value.js";

const MOST_LETTERS = 90;

/** "551", "[55, 85]", "{ part: q51, qty: 1 }"; what is too long for a line is cut and says so with "…". */
export function writtenValue(value: unknown, most = MOST_LETTERS): string {
  const text = written(value, most);
  const letters = Array.from(text);
  return letters.length > most ? `${letters.slice(0, most - 1).join("")}…` : text;
}

function written(value: unknown, most: number): string {
  if (value === undefined) return say("workshop.written-value.not-there");
  if (value === null) return "empty";
  if (Array.isArray(value))
    return value.length === 0
      ? "[]"
      : `[${joined(
          value.map((v) => () => written(v, most)),
          most,
        )}]`;
  if (isPlainRecord(value)) {
    const parts = Object.entries(value).map(
      ([key, v]) =>
        () =>
          `${key}: ${written(v, most)}`,
    );
    return parts.length === 0 ? "{}" : `{ ${joined(parts, most)} }`;
  }
  return value === "" ? '""' : String(value).replace(/\s+/g, " ").trim();
}

/** Stops as soon as no more would be shown anyway. */
function joined(parts: readonly (() => string)[], most: number): string {
  let text = "";
  for (const part of parts) {
    if (text.length > most) break;
    text += text === "" ? part() : `, ${part()}`;
  }
  return text;
}

/** "measured.top_tube_cc", "parts q24, cost", "sections, entry 3, grade". Entries are named as `plain` has them. */
export function placeWords(path: EditPath, plain: unknown): string {
  let here = plain;
  let words = "";
  let afterEntry = false;
  for (const step of path) {
    const next = Array.isArray(here)
      ? here[Number(step)]
      : isPlainRecord(here)
        ? ownValue(here, String(step))
        : undefined;
    if (typeof step === "number") {
      const name = entryName(next);
      words += name === undefined ? say("workshop.written-value.entry", { step: step + 1 }) : ` ${name}`;
    } else words += words === "" ? step : `${afterEntry ? ", " : "."}${step}`;
    afterEntry = typeof step === "number";
    here = next;
  }
  return words === "" ? say("workshop.written-value.the-whole-document") : words;
}
