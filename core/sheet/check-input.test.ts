import { describe, expect, test } from "vitest";
import type { Refusal } from "../quantity/index.js";
import { checkInput } from "./check-input.js";
import type { Field } from "./sheet.js";
import { startInput } from "./start-input.js";
import { sampleSheet } from "./testing/sample-sheet.js";

const good = startInput(sampleSheet);

function refusalsOf(input: unknown, fields: readonly Field[] = sampleSheet.fields): readonly Refusal[] {
  const checked = checkInput(fields, input);
  if (checked.kind === "ok") throw new Error("passed");
  return checked.refusals;
}

function only(input: unknown): Refusal {
  const refusals = refusalsOf(input);
  expect(refusals).toHaveLength(1);
  const [first] = refusals;
  if (first === undefined) throw new Error("none");
  return first;
}

function valueOfInput(input: unknown): Record<string, unknown> {
  const checked = checkInput(sampleSheet.fields, input);
  if (checked.kind === "refused") throw new Error(checked.refusals.map((r) => r.message).join("\n"));
  return checked.value;
}

describe("passes", () => {
  test("the start values, as a fresh object", () => {
    const value = valueOfInput(good);
    expect(value).toEqual(good);
    expect(value).not.toBe(good);
  });

  test("optional fields may be missing, null or undefined; they are then absent", () => {
    const { angle_deg: _a, wet: _w, ...rest } = good;
    for (const input of [rest, { ...rest, angle_deg: null }, { ...rest, angle_deg: undefined }]) {
      expect(Object.keys(valueOfInput(input))).not.toContain("angle_deg");
    }
  });

  test("both limits belong to the range", () => {
    expect(valueOfInput({ ...good, length_mm: 100 })).toMatchObject({ length_mm: 100 });
    expect(valueOfInput({ ...good, length_mm: 800 })).toMatchObject({ length_mm: 800 });
  });

  // 1 in = 25.4 mm exactly (yard-and-pound-1959, from memory).
  test.each<[string, unknown, number]>([
    ["length_mm", "49,1 cm", 491],
    ["length_mm", "17 in", 431.8],
    ["length_mm", "340", 340],
    ["angle_deg", "71°30'", 71.5],
    ["wait_day", "48 h", 2],
    ["wait_day", "3", 3],
    ["teeth", "32", 32],
  ])("written figure: %s %s", (key, text, value) => {
    expect(valueOfInput({ ...good, [key]: text })[key]).toBe(value);
  });

  test("written figures inside lists, groups and tables", () => {
    const value = valueOfInput({
      ...good,
      spacers_mm: ["1/2 in", 10],
      new: { rake_mm: "4,5 cm" },
      stations: [
        [0, "12 mm"],
        ["34 cm", 22],
      ],
    });
    expect(value).toMatchObject({ spacers_mm: [12.7, 10], new: { rake_mm: 45 } });
    expect(value.stations).toEqual([
      [0, 12],
      [340, 22],
    ]);
  });

  test("an object without a prototype, as some parsers make", () => {
    expect(valueOfInput(Object.assign(Object.create(null), good))).toEqual(good);
  });
});

describe("refuses one thing at a time, with code, place and sentence", () => {
  test.each<[string, unknown, string, string]>([
    ["a missing number", { ...good, length_mm: undefined }, "missing", "length_mm"],
    ["null for a number that must be there", { ...good, length_mm: null }, "missing", "length_mm"],
    ["a missing key in a group", { ...good, new: {} }, "missing", "new.rake_mm"],
    ["NaN", { ...good, length_mm: Number.NaN }, "not-finite", "length_mm"],
    ["Infinity", { ...good, new: { rake_mm: Number.NEGATIVE_INFINITY } }, "not-finite", "new.rake_mm"],
    ["below", { ...good, length_mm: 99.9 }, "out-of-range", "length_mm"],
    ["above", { ...good, length_mm: "81 cm" }, "out-of-range", "length_mm"],
    ["a part of a tooth", { ...good, teeth: 32.5 }, "not-whole", "teeth"],
    ["a boolean for a number", { ...good, teeth: true }, "wrong-type", "teeth"],
    ["a list for a number", { ...good, teeth: [32] }, "wrong-type", "teeth"],
    ["a torque for a length", { ...good, length_mm: "12 Nm" }, "wrong-dimension", "length_mm"],
    ["an ambiguous comma", { ...good, length_mm: "1,052 mm" }, "ambiguous-thousands", "length_mm"],
    ["an empty text for a number", { ...good, length_mm: "" }, "empty", "length_mm"],
    ["a half-width", { ...good, length_mm: "442 ± 0.3" }, "plus-minus-not-taken", "length_mm"],
    ["a unit on a count", { ...good, teeth: "32 mm" }, "wrong-dimension", "teeth"],
    ["a word not on the list", { ...good, side: "behnd" }, "not-one-of", "side"],
    ["a number for a word", { ...good, side: 3 }, "wrong-type", "side"],
    ["a long text", { ...good, note: "x".repeat(21) }, "too-long", "note"],
    ["a control sign in a text", { ...good, note: "a\u0007" }, "hidden-character", "note"],
    ["a text for yes or no", { ...good, wet: "yes" }, "wrong-type", "wet"],
    ["a number for a list", { ...good, spacers_mm: 5 }, "wrong-type", "spacers_mm"],
    ["an empty list", { ...good, spacers_mm: [] }, "too-few-items", "spacers_mm"],
    ["a long list", { ...good, spacers_mm: [1, 2, 3, 4] }, "too-many-items", "spacers_mm"],
    ["a bad entry", { ...good, spacers_mm: [1, 41] }, "out-of-range", "spacers_mm[1]"],
    ["a hole in a list", { ...good, spacers_mm: [1, undefined] }, "wrong-type", "spacers_mm[1]"],
    ["a list for a group", { ...good, new: [] }, "not-an-object", "new"],
    ["a number in a list of objects", { ...good, measurements: [3] }, "not-an-object", "measurements[0]"],
    ["a short row", { ...good, stations: [[0, 12], [340]] }, "wrong-type", "stations[1]"],
    [
      "a bad cell",
      {
        ...good,
        stations: [
          [0, 12],
          [340, 99],
        ],
      },
      "out-of-range",
      "stations[1][1]",
    ],
    ["a text not on the list in a list", { ...good, fixed: ["z"] }, "not-one-of", "fixed[0]"],
    ["a key of another shape", { ...good, cogs_of_ring: { big: [11] } }, "bad-key", "cogs_of_ring.big"],
    ["a bad value in a map", { ...good, cogs_of_ring: { "42": [11, 8] } }, "out-of-range", "cogs_of_ring.42[1]"],
    ["a list for a map", { ...good, cogs_of_ring: [] }, "wrong-type", "cogs_of_ring"],
    [
      "a full map",
      { ...good, cogs_of_ring: { 41: [11], 42: [11], 43: [11], 44: [11] } },
      "too-many-items",
      "cogs_of_ring",
    ],
  ])("%s", (_name, input, code, at) => {
    const refusal = only(input);
    expect(refusal).toMatchObject({ code, at });
    expect(refusal.allowed).not.toBe("");
    expect(refusal.message).toContain(at);
    expect(refusal.message).toMatch(/\.$/);
  });

  test("the place of a bad value inside a list of objects", () => {
    const measurements = [
      { name: "a", value: 1, sd: 1 },
      { name: "b", value: 1, sd: 1 },
      { name: "c", value: 1, sd: -1 },
    ];
    expect(only({ ...good, measurements })).toMatchObject({
      code: "out-of-range",
      at: "measurements[2].sd",
      given: -1,
    });
  });

  test("a limit is named with its unit", () => {
    const refusal = only({ ...good, length_mm: 900 });
    expect(refusal).toEqual({
      code: "out-of-range",
      at: "length_mm",
      given: 900,
      allowed: "100 to 800 mm",
      message: "Length (length_mm): 900 mm is above 800 mm. Allowed: 100 to 800 mm.",
    });
    expect(only({ ...good, angle_deg: -11 }).message).toContain("\u221211° is below \u221210°");
  });

  test("what was written is shown back with ways to write it", () => {
    const refusal = only({ ...good, length_mm: "12 apples" });
    expect(refusal.given).toBe("12 apples");
    expect(refusal.message).toContain('"apples" is no unit of a length');
    expect(refusal.message).toContain("442 mm");
  });
});

describe("unknown keys", () => {
  test("the nearest known key is named", () => {
    const refusal = only({ ...good, lenght_mm: 340 });
    expect(refusal).toMatchObject({ code: "unknown-key", at: "lenght_mm" });
    expect(refusal.message).toBe('The input has no key "lenght_mm". Did you mean "length_mm"?');
  });

  test("with nothing near, the known ones are listed; inside a group the path is whole", () => {
    const refusal = only({ ...good, new: { rake_mm: 45, wallpaper: 1 } });
    expect(refusal).toMatchObject({ code: "unknown-key", at: "new.wallpaper", allowed: "rake_mm" });
    expect(refusal.message).toContain("Known are: rake_mm.");
  });

  test("hundreds of unknown keys make a short list", () => {
    const many = Object.fromEntries(Array.from({ length: 500 }, (_, i) => [`k${i}`, i]));
    const refusals = refusalsOf({ ...good, ...many });
    expect(refusals).toHaveLength(21);
    expect(refusals.at(-1)?.message).toContain("480 more");
  });
});

describe("hostile input", () => {
  test.each(["__proto__", "constructor", "prototype"])("the key %s is refused at every depth", (key) => {
    const outer: unknown = JSON.parse(JSON.stringify(good).replace("{", `{"${key}": {"polluted": true}, `));
    const inner: unknown = { ...good, new: JSON.parse(`{"rake_mm": 45, "${key}": {"polluted": true}}`) };
    const inMap: unknown = { ...good, cogs_of_ring: JSON.parse(`{"${key}": [11]}`) };
    expect(only(outer)).toMatchObject({ code: "forbidden-key", at: key });
    expect(only(inner)).toMatchObject({ code: "forbidden-key", at: `new.${key}` });
    expect(only(inMap)).toMatchObject({ code: "forbidden-key", at: `cogs_of_ring.${key}` });
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  test("inherited values do not count as given", () => {
    const inherited: unknown = Object.create(good);
    expect(refusalsOf(inherited).map((r) => r.code)).toEqual(["not-an-object"]);
    const { length_mm: _l, ...rest } = good;
    expect(only(rest)).toMatchObject({ code: "missing", at: "length_mm" });
  });

  test.each<[unknown]>([[null], [undefined], [[]], [3], ["text"], [true], [new Date(0)], [new Map()], [() => 1]])(
    "%s is no input object",
    (input) => {
      expect(only(input)).toMatchObject({ code: "not-an-object", at: "" });
    },
  );

  test("symbols, huge texts and functions are refused and can be shown as JSON", () => {
    const refusals = refusalsOf({ ...good, [Symbol("s")]: 1, note: "x".repeat(1e6), teeth: () => 1, length_mm: 12n });
    expect(refusals.map((r) => r.code).sort()).toEqual(["too-long", "unknown-key", "wrong-type", "wrong-type"]);
    expect(JSON.stringify(refusals).length).toBeLessThan(3000);
  });
});

test("all problems come at once, in the order of the fields", () => {
  const refusals = refusalsOf({
    lenght_mm: 1,
    teeth: 8,
    spacers_mm: [50, "x"],
    side: "up",
    new: { rake_mm: -1 },
    measurements: [{ name: "", value: 1 }],
    stations: [],
    fixed: ["x"],
  });
  expect(refusals.map((r) => [r.code, r.at])).toEqual([
    ["unknown-key", "lenght_mm"],
    ["missing", "length_mm"],
    ["out-of-range", "teeth"],
    ["out-of-range", "spacers_mm[0]"],
    ["not-a-number", "spacers_mm[1]"],
    ["not-one-of", "side"],
    ["out-of-range", "new.rake_mm"],
    ["empty", "measurements[0].name"],
    ["missing", "measurements[0].sd"],
    ["too-few-items", "stations"],
  ]);
});
