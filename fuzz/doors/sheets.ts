/** What does any sheet say to any input? Finite figures with ordered bands around them, or described refusals. */
import { isDeepStrictEqual } from "node:util";
import { ALL_SOURCES } from "@coldset/core/data";
import type { Answer } from "@coldset/core/quantity";
import { type AnySheet, runSheet } from "@coldset/core/sheet";
import { ALL_SHEETS, readSheetInput } from "@coldset/core/sheets";
import fc from "fast-check";
import { stringify } from "yaml";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { type Large, largeText, textOfLarge } from "../inputs/large-text.js";
import { type InputStep, inputSteps, oddInput } from "../inputs/odd-input.js";
import { type Slip, slip, slipped } from "../inputs/odd-text.js";
import { describedRefusals, notFinite } from "../inputs/refusal-faults.js";
import { unwrittenNumber } from "../inputs/same-figures.js";

interface SheetInput {
  readonly sheet: string;
  readonly steps: readonly InputStep[];
  /** As data, or written out as text with slips in it. */
  readonly as: "data" | "json" | "yaml";
  readonly slips: readonly Slip[];
  /** In place of its own text. */
  readonly large?: Large;
}

const inputs: fc.Arbitrary<SheetInput> = fc.oneof<fc.WeightedArbitrary<SheetInput>[]>(
  {
    weight: 400,
    arbitrary: fc.record({
      sheet: fc.constantFrom(...ALL_SHEETS.map((s) => s.id)),
      steps: inputSteps,
      as: fc.constant("data" as const),
      slips: fc.constant([]),
    }),
  },
  {
    weight: 100,
    arbitrary: fc.record({
      sheet: fc.constantFrom(...ALL_SHEETS.map((s) => s.id)),
      steps: fc.constant([]),
      as: fc.constantFrom("json" as const, "yaml" as const),
      slips: fc.array(slip, { maxLength: 2 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      sheet: fc.constantFrom(...ALL_SHEETS.map((s) => s.id)),
      steps: fc.constant([]),
      as: fc.constant("yaml" as const),
      slips: fc.constant([]),
      large: largeText,
    }),
  },
);

const KNOWN_SOURCES = new Set(ALL_SOURCES.map((s) => s.id));

function put({ sheet: id, steps, as, slips, large }: SheetInput): Went {
  const sheet = ALL_SHEETS.find((s) => s.id === id);
  if (sheet === undefined) return refusedAs("no such sheet");
  const input = oddInput(sheet, steps);
  if (as === "data") return answered(sheet, input);
  const plain = () => (as === "json" ? JSON.stringify(input, null, 1) : stringify(input));
  const text = large === undefined ? slipped(plain(), slips) : textOfLarge(large);
  const read = readSheetInput(text, "a.yaml");
  if (read.kind === "refused") {
    describedRefusals(read.refusals);
    return refusedAs("text");
  }
  mustHold(typeof read.placeOf("a[0].b") === "string", () => "no place");
  const unwritten = unwrittenNumber(text, read.value);
  mustHold(unwritten === undefined, () => `${unwritten} stands nowhere in the text`);
  return answered(sheet, read.value);
}

function answered(sheet: AnySheet, input: unknown): Went {
  const before = plainCopy(input);
  const answer: Answer<unknown> = runSheet(sheet as never, input);
  mustHold(isDeepStrictEqual(plainCopy(input), before), () => "the input was changed");
  if (answer.kind === "refused") {
    describedRefusals(answer.refusals);
    for (const r of answer.refusals) mustHold(JSON.stringify(r) !== undefined, () => "cannot be sent as JSON");
    return refusedAs(answer.refusals[0]?.code ?? "");
  }
  const bad = notFinite(answer);
  mustHold(bad === undefined, () => `${bad}`);
  mustHold(
    isDeepStrictEqual(JSON.parse(JSON.stringify(answer)).value, plainCopy(answer.value)),
    () => "JSON loses some of it",
  );
  for (const [key, band] of Object.entries(answer.bands)) {
    mustHold(band.low <= band.high, () => `band of ${key}: ${band.low} to ${band.high}`);
    mustHold(band.means.trim() !== "", () => `the band of ${key} says nothing`);
    const value = at(answer.value, key);
    mustHold(value !== undefined, () => `a band for ${key}, which the answer does not have`);
    if (typeof value !== "number") continue;
    const room = 1e-9 * Math.max(1, Math.abs(value));
    mustHold(
      band.low - room <= value && value <= band.high + room,
      () => `${key} ${value} outside ${band.low} to ${band.high}`,
    );
  }
  for (const source of answer.sources) mustHold(KNOWN_SOURCES.has(source), () => `unknown source ${source}`);
  for (const c of answer.cautions) mustHold(c.code !== "" && c.message.length > 5, () => JSON.stringify(c));
  return accepted(sheet.id);
}

/** What JSON keeps, with undefined left out: for comparing before and after. */
function plainCopy(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (_key, inner: unknown) =>
      typeof inner === "bigint" || (typeof inner === "number" && !Number.isFinite(inner)) ? String(inner) : inner,
    ) ?? "null",
  );
}

function at(value: unknown, key: string): unknown {
  if (value === null || typeof value !== "object") return undefined;
  if (Object.hasOwn(value, key)) return (value as Record<string, unknown>)[key];
  return key
    .replace(/\[(\d+)\]/g, ".$1")
    .split(".")
    .reduce<unknown>(
      (here, step) => (here === null || typeof here !== "object" ? undefined : (here as Record<string, unknown>)[step]),
      value,
    );
}

export const sheets: Door<SheetInput> = {
  name: "sheets",
  holds:
    "a sheet answers with finite figures inside ordered bands, or refuses with code, place, given, allowed and message",
  inputs,
  put,
};
