import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { jsonText, plain, widthOf } from "./letters.js";
import { Page } from "./page.js";

describe("letters", () => {
  test("nothing reaches the terminal that could move its cursor or turn the line round", () => {
    expect(plain("a\u001b[31mred\u0007\u202eback\u009b2J")).toBe("a[U+001B][31mred[U+0007][U+202E]back[U+009B]2J");
    expect(plain("two\r\nlines\ttab")).toBe("two lines tab");
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(plain(text)).not.toMatch(/[\p{Cc}\u202a-\u202e\u200b]/u);
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  test("JSON stays the same data", () => {
    const value = { "a\u009b": "\u202eback\u001b[2J\u2028" };
    expect(JSON.parse(jsonText(value))).toEqual(value);
    expect([...jsonText(value)].filter((sign) => sign !== "\n" && /[\p{Cc}\u202e\u2028]/u.test(sign))).toEqual([]);
  });

  test("wide signs take two columns, marks none", () => {
    expect(widthOf("ab")).toBe(2);
    expect(widthOf("車a")).toBe(3);
    expect(widthOf("e\u0301")).toBe(1);
  });
});

describe("the page", () => {
  test("no line is wider than the terminal, and no word is lost", () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ minLength: 1, maxLength: 90 }), { maxLength: 12 }),
        fc.integer({ min: 40, max: 100 }),
        (texts, columns) => {
          const page = new Page(columns, false);
          for (const t of texts) page.text(t, 2, 6);
          page.table(texts.map((t) => [t, "x", t]));
          for (const line of page.toString().split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(columns);
          const close = (t: string) => t.replace(/ /g, "");
          for (const t of texts) expect(close(page.toString().replaceAll("\n", ""))).toContain(close(plain(t)));
        },
      ),
      { seed: 3, numRuns: 200 },
    );
  });

  test("colour only adds: without it the same letters stand there", () => {
    const show = (colour: boolean) =>
      new Page(60, colour)
        .heading("Joints")
        .text(["a", ["bad", "will not fit"], "b"])
        .table([["x", ["good", "fits"]]])
        .toString();
    expect(show(true)).not.toBe(show(false));
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the sign that begins a colour
    expect(show(true).replace(/\u001b\[\d+m/g, "")).toBe(show(false));
  });

  test("a table keeps its columns under each other and wraps the widest", () => {
    const text = new Page(40, false)
      .table(
        [
          ["a", "short"],
          ["bb", "a cell with rather more words than fit beside it"],
        ],
        { heads: ["id", "what"] },
      )
      .toString();
    expect(text.split("\n").slice(0, 3)).toEqual([
      "  id  what",
      "  a   short",
      "  bb  a cell with rather more words than",
    ]);
  });
});
