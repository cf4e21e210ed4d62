/** Are the words of a key given with what was filled in, and does the table hold what it should? */
import { describe, expect, it } from "vitest";
import { ALL_TEXTS } from "./all-texts.js";
import { fill } from "./say.js";

describe("a text with names to fill in", () => {
  it("takes each value where its name stands, as often as it stands", () => {
    expect(fill("{a} of {b}; {a} again", { a: 3, b: "five" })).toBe("3 of five; 3 again");
  });

  it("reads a doubled brace as one", () => {
    expect(fill('{{"path": {path}}}', { path: 1 })).toBe('{"path": 1}');
  });

  it("does not read a value once more", () => {
    expect(fill("{a}{b}", { a: "{b}", b: "x" })).toBe("{b}x");
  });
});

describe("the table", () => {
  const rows = Object.entries(ALL_TEXTS);

  it("has a text for each key, with its braces closed", () => {
    expect(rows.length).toBeGreaterThan(1_000);
    const open = rows.filter(([, text]) => /[{}]/.test(text.replace(/\{\{|\}\}|\{[a-z][A-Za-z0-9]*\}/g, "")));
    expect(open).toEqual([]);
  });

  it("calls nothing safe", () => {
    expect(rows.filter(([, text]) => /\b(un)?safe(ly)?\b/i.test(text))).toEqual([]);
  });
});
