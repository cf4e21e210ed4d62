/**
 * What does the sheet say to this input? Checks the input first, then runs. Refusals come back as a value.
 * A number in the answer that is not finite is our fault, never the builder's: it throws, naming the place.
 */

import type { Answer } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { checkInput } from "./check-input.js";
import type { Sheet } from "./sheet.js";

export function runSheet<In, Out>(sheet: Sheet<In, Out>, input: unknown): Answer<Out> {
  const checked = checkInput(sheet.fields, input);
  if (checked.kind === "refused") return checked;
  // The fields describe `In`; this is the one place where the checked object takes that type.
  const answer = sheet.run(checked.value as In);
  if (answer.kind === "refused") return answer;
  const bad = firstNotFinite(answer.value, "value") ?? firstNotFinite(answer.bands, "bands");
  if (bad !== undefined) throw new Error(`Sheet ${sheet.id}: ${bad} is not a finite number`);
  return answer;
}

/** Path of the first number that is NaN or infinite, or undefined where all are finite. */
export function firstNotFinite(value: unknown, at: string, above: readonly object[] = []): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${at} (${value})`;
  if (typeof value !== "object" || value === null) return undefined;
  if (above.includes(value)) return say("sheet.run-sheet.a-loop", { at });
  const path = [...above, value];
  for (const [key, inner] of Object.entries(value)) {
    const bad = firstNotFinite(inner, Array.isArray(value) ? `${at}[${key}]` : `${at}.${key}`, path);
    if (bad !== undefined) return bad;
  }
  return undefined;
}
