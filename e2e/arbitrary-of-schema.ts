/**
 * Which values does this JSON Schema describe? A generator made from the schema alone, for the words that the server's
 * description uses. It need not be exact: whether a value passes is judged by a validator that is not ours.
 */
import fc from "fast-check";

export type Schema = Readonly<Record<string, unknown>>;

const MOST_LEVELS = 5;
/** What people write into fields of numbers; the server reads it or says why not. */
const WRITTEN = ["49,1 cm", '1 1/8"', "442 ± 0.3", "M12x1.5", "?", "12", "-3 mm", "1e3", "½ in"];

export function arbitraryOf(schema: Schema, resolve: (ref: string) => Schema, level = 0): fc.Arbitrary<unknown> {
  const inner = (s: unknown) => arbitraryOf(s as Schema, resolve, level + 1);
  if (level > MOST_LEVELS) return fc.constantFrom(null, 0, "", [], {});
  if (typeof schema.$ref === "string") return arbitraryOf(resolve(schema.$ref), resolve, level);
  if ("const" in schema) return fc.constant(schema.const);
  if (Array.isArray(schema.enum)) return fc.constantFrom(...schema.enum);
  const union = schema.anyOf ?? schema.oneOf;
  if (Array.isArray(union)) return fc.oneof(...union.map(inner));
  const types = [schema.type].flat().filter((t) => typeof t === "string");
  if (types.length === 0) return fc.jsonValue({ maxDepth: 2 });
  return fc.oneof(...types.map((type) => ofType(type, schema, inner)));
}

function ofType(type: string, schema: Schema, inner: (s: unknown) => fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  switch (type) {
    case "null":
      return fc.constant(null);
    case "boolean":
      return fc.boolean();
    case "string":
      return text(schema);
    case "integer": {
      const [min, max] = bounds(schema);
      const small = { min: Math.max(min, -3), max: Math.min(max, 20) };
      return small.min > small.max
        ? fc.integer({ min, max })
        : fc.oneof(fc.integer(small), fc.integer({ min, max }), fc.constantFrom(min, max));
    }
    case "number": {
      const [min, max] = bounds(schema);
      return fc.oneof(fc.double({ min, max, noNaN: true }), fc.constantFrom(min, max));
    }
    case "array":
      return list(schema, inner);
    case "object":
      return object(schema, inner);
    default:
      throw new Error(`the type ${type} is not known`);
  }
}

function bounds(schema: Schema): readonly [number, number] {
  const of = (value: unknown, otherwise: number) =>
    typeof value === "number" ? Math.min(Math.max(value, -0x7fffffff), 0x7fffffff) : otherwise;
  return [of(schema.minimum, -1_000_000), of(schema.maximum, 1_000_000)];
}

function text(schema: Schema): fc.Arbitrary<string> {
  const minLength = Number(schema.minLength ?? 0);
  const maxLength = Math.min(Number(schema.maxLength ?? 40), 400);
  const plain = fc.string({ minLength, maxLength, unit: "binary" }).map((s) => s.replace(/[\uD800-\uDFFF]/g, "x"));
  if (typeof schema.pattern !== "string") return fc.oneof(plain, fc.constantFrom(...WRITTEN));
  return fc.stringMatching(new RegExp(schema.pattern), { size: "small" });
}

function list(schema: Schema, inner: (s: unknown) => fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  if (Array.isArray(schema.prefixItems)) return fc.tuple(...schema.prefixItems.map(inner));
  const minLength = Number(schema.minItems ?? 0);
  const maxLength = Math.min(Number(schema.maxItems ?? 4), minLength + 4);
  return fc.array(inner(schema.items ?? {}), { minLength, maxLength });
}

function object(schema: Schema, inner: (s: unknown) => fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  const properties = Object.entries((schema.properties ?? {}) as Readonly<Record<string, Schema>>);
  if (properties.length === 0) {
    const { additionalProperties: more, propertyNames } = schema;
    const pattern = (propertyNames as Schema | undefined)?.pattern;
    const key = typeof pattern === "string" ? fc.stringMatching(new RegExp(pattern)) : fc.string({ maxLength: 12 });
    const minKeys = Number(schema.minProperties ?? 0);
    return fc.dictionary(key, inner(more ?? {}), { minKeys, maxKeys: minKeys + 3 });
  }
  const requiredKeys = (schema.required ?? []) as never[];
  return fc.record(Object.fromEntries(properties.map(([key, s]) => [key, inner(s)])), { requiredKeys });
}
