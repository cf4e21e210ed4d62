/** One JSON object on standard output. A number that is none is our fault and is never printed. */
import { firstNotFinite } from "@coldset/core/sheet";
import type { Io } from "../io.js";
import { jsonText } from "../screen/letters.js";

export function tellJson(io: Io, answer: object): void {
  const bad = firstNotFinite(answer, "answer");
  if (bad !== undefined) throw new Error(`${bad} is not a finite number`);
  io.stdout(`${jsonText(answer)}\n`);
}
