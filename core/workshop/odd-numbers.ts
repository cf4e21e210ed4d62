/**
 * Does a number stand in this text that reads as something else than it looks? YAML takes 0x1F for 31 and 0o17 for 15, and
 * after a line "%YAML 1.1" also 010 for 8, 1_000 for 1000 and 1:30 for 90. In a workshop these are slips of the keyboard,
 * and the figure would be wrong without a word. Only plain decimal figures are taken. At most `most` are told.
 */

import { type Document, visit } from "yaml";
import { type Refusal, showable } from "../quantity/index.js";
import { say } from "../texts/say.js";

const DECIMAL = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/;

export function oddNumbers(document: Document, where: (offset: number | undefined) => string, most = 20): Refusal[] {
  const refusals: Refusal[] = [];
  visit(document, {
    Scalar: (_, { value, source, range }) => {
      if (typeof value !== "number" && typeof value !== "bigint") return;
      // .nan and .inf are numbers to nobody; each field refuses them in its own words.
      if (source === undefined || (typeof value === "number" && !Number.isFinite(value))) return;
      if (DECIMAL.test(source) && Number(source) === Number(value)) return;
      if (refusals.length >= most) return;
      const at = where(range?.[0]);
      const given = showable(source);
      const message = say("workshop.odd-numbers.would-be-read-as-write-the", { at, given, value });
      refusals.push({
        code: "odd-number",
        at,
        given,
        allowed: say("workshop.odd-numbers.a-decimal-figure-such-as-442"),
        message,
      });
    },
  });
  return refusals;
}
