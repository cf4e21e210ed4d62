import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkInput } from "./check-input.js";
import { type JsonSchema, sheetJsonSchema } from "./sheet-json-schema.js";
import { startInput } from "./start-input.js";
import { sampleSheet } from "./testing/sample-sheet.js";

/**
 * A small second reader for the part of JSON Schema 2020-12 (core and validation vocabularies, from memory) that we
 * write. It throws at a word it does not know, so a misspelt word in a schema fails here.
 */
function passes(schema: JsonSchema, value: unknown): boolean {
  const types = [schema.type].flat();
  return Object.entries(schema).every(([word, rule]) => {
    const object =
      typeof value === "object" && value !== null && !Array.isArray(value) ? Object.entries(value) : undefined;
    switch (word) {
      case "$schema":
      case "title":
      case "description":
      case "default":
      case "x-unit":
        return true;
      case "type":
        return types.some((type) => isOf(type, value));
      case "minimum":
        return typeof value !== "number" || value >= Number(rule);
      case "maximum":
        return typeof value !== "number" || value <= Number(rule);
      case "minLength":
        return typeof value !== "string" || [...value].length >= Number(rule);
      case "maxLength":
        return typeof value !== "string" || [...value].length <= Number(rule);
      case "enum":
        return (rule as unknown[]).includes(value);
      case "minItems":
        return !Array.isArray(value) || value.length >= Number(rule);
      case "maxItems":
        return !Array.isArray(value) || value.length <= Number(rule);
      case "items":
        return !Array.isArray(value) || value.every((v) => passes(rule as JsonSchema, v));
      case "prefixItems":
        return (
          !Array.isArray(value) || (rule as JsonSchema[]).every((s, i) => i >= value.length || passes(s, value[i]))
        );
      case "minProperties":
        return object === undefined || object.length >= Number(rule);
      case "maxProperties":
        return object === undefined || object.length <= Number(rule);
      case "required":
        return object === undefined || (rule as string[]).every((k) => object.some(([key]) => key === k));
      case "properties":
        return (
          object === undefined ||
          object.every(([k, v]) => {
            const inner = (rule as Record<string, JsonSchema>)[k];
            return inner === undefined || passes(inner, v);
          })
        );
      case "propertyNames":
        return (
          object === undefined || object.every(([k]) => new RegExp(String((rule as JsonSchema).pattern), "u").test(k))
        );
      case "additionalProperties": {
        const known = Object.keys((schema.properties ?? {}) as object);
        const others = (object ?? []).filter(([k]) => !known.includes(k));
        return rule === false ? others.length === 0 : others.every(([, v]) => passes(rule as JsonSchema, v));
      }
      default:
        throw new Error(`the word "${word}" is not known`);
    }
  });
}

function isOf(type: unknown, value: unknown): boolean {
  switch (type) {
    case "object":
      return typeof value === "object" && value !== null && !Array.isArray(value);
    case "array":
      return Array.isArray(value);
    case "integer":
      return Number.isInteger(value);
    case "number":
    case "string":
    case "boolean":
      return typeof value === type;
    default:
      throw new Error(`the type "${String(type)}" is not known`);
  }
}

const schema = sheetJsonSchema(sampleSheet);
const start = startInput(sampleSheet);

test("head and shape", () => {
  expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
  expect(schema.type).toBe("object");
  expect(schema.additionalProperties).toBe(false);
  expect(schema.required).toEqual(sampleSheet.fields.filter((f) => f.optional !== true).map((f) => f.key));
  expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
});

test("the second reader refuses what it should: it can fail", () => {
  expect(passes(schema, start)).toBe(true);
  expect(passes(schema, { ...start, more: 1 })).toBe(false);
  expect(passes(schema, { ...start, length_mm: 900 })).toBe(false);
  expect(passes(schema, { ...start, length_mm: "49,1 cm" })).toBe(false);
  expect(passes(schema, { ...start, new: { rake_mm: 45, more: 1 } })).toBe(false);
  expect(() => passes({ minimun: 1 }, 1)).toThrow("minimun");
});

test("every start value passes its own schema", () => {
  for (const [key, inner] of Object.entries(schema.properties as Record<string, JsonSchema>)) {
    if (key !== "note") expect(passes(inner, inner.default), key).toBe(true);
  }
});

test("with written numbers the schema lets text pass, and the check reads it", () => {
  const loose = sheetJsonSchema(sampleSheet, { writtenNumbers: true });
  const written = { ...start, length_mm: "49,1 cm", spacers_mm: ["1/2 in"] };
  expect(passes(loose, written)).toBe(true);
  expect(checkInput(sampleSheet.fields, written).kind).toBe("ok");
  expect(passes(loose, { ...start, length_mm: 900 })).toBe(false);
});

describe("schema and check agree (two routes)", () => {
  const seed = 20201208;
  const number = fc.oneof(fc.integer({ min: -50, max: 900 }), fc.constantFrom(100, 800, 9, 60, 32.5, 0));
  const row = fc.oneof(
    fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 8, max: 40 })),
    fc.array(number, { maxLength: 3 }),
  );
  const often = <T>(usual: fc.Arbitrary<T>, odd: fc.Arbitrary<unknown>) =>
    fc.oneof({ weight: 12, arbitrary: usual }, { weight: 1, arbitrary: odd });
  const odd = fc.oneof(number, fc.boolean(), fc.constant([]), fc.constant({}));
  const input = fc.record(
    {
      length_mm: often(fc.integer({ min: 100, max: 800 }), odd),
      angle_deg: often(fc.integer({ min: -10, max: 90 }), odd),
      teeth: often(fc.integer({ min: 9, max: 60 }), odd),
      spacers_mm: often(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 3 }), fc.array(number)),
      side: often(fc.constantFrom("ahead", "behind"), fc.constantFrom("up", 3)),
      note: often(fc.string({ maxLength: 20 }), fc.string({ maxLength: 30 })),
      wet: often(fc.boolean(), odd),
      new: often(
        fc.record({ rake_mm: fc.integer({ min: 0, max: 100 }) }),
        fc.record({ rake_mm: number, more: number }, { requiredKeys: [] }),
      ),
      measurements: often(
        fc.array(
          fc.record({
            name: fc.constantFrom("a", "b"),
            value: fc.integer({ min: -2000, max: 2000 }),
            sd: fc.integer({ min: 1, max: 50 }),
          }),
          { maxLength: 4 },
        ),
        fc.array(odd, { maxLength: 6 }),
      ),
      stations: often(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 8, max: 40 })), {
          minLength: 2,
          maxLength: 5,
        }),
        fc.array(row),
      ),
      fixed: often(fc.array(fc.constantFrom("x", "y"), { maxLength: 2 }), odd),
      cogs_of_ring: often(
        fc.dictionary(
          fc.constantFrom("42", "34"),
          fc.array(fc.integer({ min: 9, max: 60 }), { minLength: 1, maxLength: 4 }),
        ),
        fc.dictionary(fc.constantFrom("42", "big"), fc.array(number)),
      ),
    },
    { requiredKeys: ["length_mm", "teeth", "spacers_mm", "side", "new", "measurements", "stations", "fixed"] },
  );

  test("2000 inputs: both pass or both refuse, and both happen often", () => {
    let passed = 0;
    let failed = 0;
    fc.assert(
      fc.property(input, (value) => {
        const checked = checkInput(sampleSheet.fields, value).kind === "ok";
        expect(checked, JSON.stringify(value)).toBe(passes(schema, value));
        if (checked) passed += 1;
        else failed += 1;
      }),
      { seed, numRuns: 2000 },
    );
    expect(passed).toBeGreaterThan(300);
    expect(failed).toBeGreaterThan(300);
  });

  test("any JSON at all: the check never throws, and what it refuses can be shown as JSON", () => {
    fc.assert(
      fc.property(fc.oneof(fc.jsonValue(), fc.anything()), fc.constantFrom(...Object.keys(start)), (value, key) => {
        for (const whole of [value, { ...start, [key]: value }]) {
          const checked = checkInput(sampleSheet.fields, whole);
          if (checked.kind === "refused") expect(JSON.stringify(checked.refusals)).toContain("code");
        }
      }),
      { seed, numRuns: 1000 },
    );
  });
});
