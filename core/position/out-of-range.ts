/**
 * Which of the given numbers are missing, no numbers, or outside what can be? All of them at once.
 * Inputs: the fields of a sheet and the object given. Only number and numbers fields are looked at.
 * Answer: one refusal per problem; an empty list means that the numbers can be calculated with.
 */

import type { Refusal } from "../quantity/index.js";
import type { Field } from "../sheet/index.js";
import { say } from "../texts/say.js";

export function outOfRange(fields: readonly Field[], input: object): readonly Refusal[] {
  const given = input as Readonly<Record<string, unknown>>;
  const refusals: Refusal[] = [];
  for (const field of fields) {
    if (field.kind !== "number" && field.kind !== "numbers") continue;
    const value = given[field.key];
    if (value === undefined && field.optional === true) continue;
    const unit = field.unit === "count" || field.unit === "ratio" ? "" : ` ${field.unit}`;
    const allowed = say("position.out-of-range.to", {
      min: field.min,
      max: field.max,
      unit,
      whole: field.integer === true ? say("position.out-of-range.whole") : "",
    });
    const judge = (at: string, number: unknown): void => {
      if (typeof number === "number" && number >= field.min && number <= field.max) {
        if (field.integer !== true || Number.isInteger(number)) return;
      }
      const isNumber = typeof number === "number" && Number.isFinite(number);
      refusals.push({
        code: isNumber ? "out-of-range" : number === undefined ? "missing" : "not-a-number",
        at,
        given: number,
        allowed,
        message: isNumber
          ? say("position.out-of-range.is-it-must-lie-in", { label: field.label, at, number, unit, allowed })
          : say("position.out-of-range.must-be-a-number-in", { label: field.label, at, allowed }),
      });
    };
    if (field.kind === "number") {
      judge(field.key, value);
    } else if (!Array.isArray(value) || value.length < field.minItems || value.length > field.maxItems) {
      const wanted = say("position.out-of-range.a-list-of-to-numbers", {
        minItems: field.minItems,
        maxItems: field.maxItems,
      });
      refusals.push({
        code: value === undefined ? "missing" : "wrong-count",
        at: field.key,
        given: Array.isArray(value) ? value.length : value,
        allowed: wanted,
        message: say("position.out-of-range.must-be", { label: field.label, key: field.key, wanted }),
      });
    } else {
      for (let i = 0; i < value.length; i++) judge(`${field.key}[${i}]`, value[i]);
    }
  }
  return refusals;
}
