/**
 * Which of the given numbers are missing, no numbers, or outside what can be? All of them at once.
 * Inputs: the fields of a sheet and the object given. Only number and numbers fields are looked at.
 * Answer: one refusal per problem; an empty list means that the numbers can be calculated with.
 */
import type { Refusal } from "../quantity/index.js";
import type { Field } from "../sheet/index.js";

export function outOfRange(fields: readonly Field[], input: object): readonly Refusal[] {
  const given = input as Readonly<Record<string, unknown>>;
  const refusals: Refusal[] = [];
  for (const field of fields) {
    if (field.kind !== "number" && field.kind !== "numbers") continue;
    const value = given[field.key];
    if (value === undefined && field.optional === true) continue;
    const unit = field.unit === "count" || field.unit === "ratio" ? "" : ` ${field.unit}`;
    const allowed = `${field.min} to ${field.max}${unit}${field.integer === true ? ", whole" : ""}`;
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
          ? `${field.label} (${at}) is ${number}${unit}; it must lie in ${allowed}.`
          : `${field.label} (${at}) must be a number in ${allowed}.`,
      });
    };
    if (field.kind === "number") {
      judge(field.key, value);
    } else if (!Array.isArray(value) || value.length < field.minItems || value.length > field.maxItems) {
      const wanted = `a list of ${field.minItems} to ${field.maxItems} numbers`;
      refusals.push({
        code: value === undefined ? "missing" : "wrong-count",
        at: field.key,
        given: Array.isArray(value) ? value.length : value,
        allowed: wanted,
        message: `${field.label} (${field.key}) must be ${wanted}.`,
      });
    } else {
      for (let i = 0; i < value.length; i++) judge(`${field.key}[${i}]`, value[i]);
    }
  }
  return refusals;
}
