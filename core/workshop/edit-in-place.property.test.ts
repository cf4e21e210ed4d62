/**
 * An edit in place is held against the edit that reads everything anew (edit.ts), for places of the demo builds and of odd
 * texts, one edit upon the other, with values that YAML could take for something else.
 */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseDocument } from "yaml";
import { type EditPath, editText } from "./edit.js";
import { editInPlace } from "./edit-in-place.js";
import { loadText } from "./load.js";
import { type Spots, spotsOf } from "./spots.js";

const demo = (name: string) => readFileSync(new URL(`../../demo/${name}.yaml`, import.meta.url), "utf8");
const DOCS = ["quayside", "moorside", "canalside"].flatMap((name) => {
  const loaded = loadText(demo(name), name);
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  return loaded.docs;
});
const SEED = 20_260_502;

const odd = fc.oneof(
  fc.integer({ min: -3, max: 2000 }),
  fc.double({ min: 0, max: 1000, noNaN: true }).map((n) => Math.round(n * 1000) / 1000),
  fc.boolean(),
  fc.constantFrom<unknown>(
    1e21,
    1e-7,
    -0,
    null,
    "",
    " ",
    "a: b",
    "a #b",
    "- x",
    "[1",
    "{",
    "yes",
    "null",
    "~",
    "0x1F",
    "1:30",
  ),
  fc.constantFrom<unknown>(
    "12",
    "1.0",
    '"',
    "'",
    "a, b",
    "&a",
    "*a",
    "!t x",
    "---",
    "...",
    "? x",
    "a\nb",
    '1 1/8"',
    "M12x1.5",
  ),
  fc.string({ maxLength: 12 }),
);

describe("an edit in place", () => {
  it("gives the same text, document and data as the edit that reads everything anew, or leaves it to that one", () => {
    let inPlace = 0;
    const edits = fc.array(fc.tuple(fc.nat(), odd), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.constantFrom(...DOCS), edits, (doc, steps) => {
        let text = doc.text;
        let plain = doc.plain;
        let spots: Spots = spotsOf(text);
        for (const [n, value] of steps) {
          const key = [...spots.keys()][n % spots.size] ?? "[]";
          const path = JSON.parse(key) as EditPath;
          const quick = editInPlace(text, plain, spots, path, value);
          if (quick === undefined) continue;
          const slow = editText(text, path, value);
          expect(quick.kind).toBe(slow.kind);
          if (quick.kind !== "edited" || slow.kind !== "edited") continue;
          inPlace += 1;
          expect({ text: quick.text, plain: quick.plain, doc: quick.doc }).toEqual({
            text: slow.text,
            plain: slow.plain,
            doc: slow.doc,
          });
          expect(new Map(quick.spots)).toEqual(new Map(spotsOf(quick.text)));
          ({ text, plain, spots } = quick);
        }
      }),
      { seed: SEED, numRuns: 80 },
    );
    expect(inPlace).toBeGreaterThan(30);
  });

  it("finds the same places while a document is loaded", () => {
    for (const { text } of DOCS) {
      let spots: Spots | undefined;
      loadText(text, "one", (found) => {
        spots = found;
      });
      expect(spots).toEqual(spotsOf(text));
      expect(spots?.size).toBeGreaterThan(3);
    }
  });

  it("changes only the letters of the value: comments, quotes around others and the layout stay", () => {
    const text =
      "kind: route # as paced\nversion: 1\nid: 'r'\nsections: [ {km: 1,  grade: 0}, {\"km\":2, grade: 1} ]\n";
    const loaded = loadText(text, "r");
    if (loaded.kind === "refused") throw new Error("refused");
    const edited = editInPlace(text, loaded.docs[0]?.plain, spotsOf(text), ["sections", 1, "km"], 3.5);
    expect(edited).toMatchObject({ kind: "edited", text: text.replace('"km":2', '"km":3.5') });
  });

  it.each([
    ["an anchor somewhere in the text", "kind: route\nversion: 1\nid: r\nsections: &s [{km: 1, grade: 0}]\n"],
    ["a text that is not well-formed", "kind: route\nid: [\n"],
  ])("is left alone where there is %s", (_what, text) => {
    expect(spotsOf(text).size).toBe(0);
  });

  it.each([
    ["a value of several lines", 'kind: route\nversion: 1\nid: "a\n  b"\n', ["id"]],
    ["a block of text", "kind: route\nversion: 1\nid: |\n  a\n", ["id"]],
    ["a value with a tag", "kind: route\nversion: 1\nid: !!str 12\n", ["id"]],
    ["a place without a value", "kind: route\nversion: 1\nid:\n", ["id"]],
  ])("is left to the other one at %s", (_what, text, path) => {
    expect(parseDocument(text).errors).toEqual([]);
    const spots = spotsOf(text);
    expect(spots.has(JSON.stringify(["kind"]))).toBe(true);
    expect(spots.has(JSON.stringify(path))).toBe(false);
  });
});
