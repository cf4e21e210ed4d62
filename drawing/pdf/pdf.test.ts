import { describe, expect, test } from "vitest";
import { LONG_WORD, SAMPLE_TEMPLATE } from "../book/sample-book.js";
import { drawingPdf, fontFolder, printable, printFonts, STANDING_TEXT, templatePdf } from "./index.js";
import { pageText, readPdf } from "./read-back.js";

const close = (text: string) => text.replace(/[\s\u200b]+/g, "");

describe("fonts", () => {
  test("the folder is found, and its signs are those a workshop needs", () => {
    expect(fontFolder()).toMatch(/fonts[/\\]$/);
    const { signs } = printFonts();
    for (const sign of "abcXYZ0123456789.,:;!?()[]{}<>#$%&*+-/=@\\^_`|~\"' ±×°−–—·½¼¾€£éüßñøŁłŞşŽžőű") {
      expect(signs.has(sign.codePointAt(0) ?? 0), sign).toBe(true);
    }
    for (const sign of "σ√✓⅛→≤אЖ") expect(signs.has(sign.codePointAt(0) ?? 0), sign).toBe(false);
  });
});

describe("printable text", () => {
  test("nothing is dropped: a sign without a shape is spelled out or stands as its code", () => {
    const replaced = new Map<string, number>();
    expect(printable('σ 2 ≤ 3, 1⅛" → ok', replaced)).toBe('sd 2 <= 3, 1 1/8" -> ok');
    expect(replaced.size).toBe(0);
    expect(printable("שש 🚲 \u0007", replaced)).toBe("[U+05E9][U+05E9] [U+1F6B2] [U+0007]");
    expect([...replaced]).toEqual([
      ["[U+05E9]", 2],
      ["[U+1F6B2]", 1],
      ["[U+0007]", 1],
    ]);
  });

  test("a letter with its accent apart becomes one letter", () => {
    expect(printable("Zˇd", new Map())).not.toContain("[U+");
    expect(printable("e\u0301", new Map())).toBe("é");
  });

  test("only long words may be broken, and no letter of them is lost", () => {
    expect(printable("a plain sentence", new Map(), 12)).toBe("a plain sentence");
    expect(close(printable(LONG_WORD, new Map()))).toBe(LONG_WORD);
    expect(printable(LONG_WORD, new Map())).toContain("\u200b");
  });
});

describe("a drawing as PDF", () => {
  test("one page of its own size, letters as letters, the same bytes each time", () => {
    const pdf = drawingPdf(SAMPLE_TEMPLATE);
    expect(Buffer.compare(pdf, drawingPdf(SAMPLE_TEMPLATE))).toBe(0);
    const pages = readPdf(pdf);
    expect(pages).toHaveLength(1);
    expect(pages[0]?.widthMm).toBeCloseTo(140, 2);
    expect(pages[0]?.heightMm).toBeCloseTo(100, 2);
    expect(pages[0] && pageText(pages[0])).toContain("51.0±0.1");
    expect(Buffer.from(pdf).toString("latin1")).not.toMatch(/CreationDate/);
  });
});

describe("a template at its true size", () => {
  const options = {
    title: "Brake tab #set",
    note: "Plate 6.",
    notToCut: "2 of 4 signatures missing",
    job: "Quayside",
    revision: "rev. C",
  };
  const answer = templatePdf(SAMPLE_TEMPLATE, options);
  const page = answer.kind === "answered" ? readPdf(answer.value.pdf)[0] : undefined;

  test("the bar measures 100.0 mm between the middles of its end strokes", () => {
    const bar = page?.strokes.filter((s) => Math.abs(s.weightMm - 0.7) < 0.01) ?? [];
    const flat = bar.filter((s) => Math.abs(Math.abs(s.to[0] - s.from[0]) - 100) < 0.2);
    expect(flat).toHaveLength(1);
    expect(Math.abs((flat[0]?.to[0] ?? 0) - (flat[0]?.from[0] ?? 0))).toBeCloseTo(100, 3);
    const ends = bar
      .filter((s) => Math.abs(s.to[1] - s.from[1]) > 5 && Math.abs(s.to[1] - s.from[1]) < 7)
      .map((s) => s.from[0]);
    expect(ends).toHaveLength(2);
    expect(Math.abs((ends[0] ?? 0) - (ends[1] ?? 0))).toBeCloseTo(100, 3);
  });

  test("the holes' dimension is as long on paper as it says: 51.0", () => {
    const long = page?.strokes.map((s) => Math.hypot(s.to[0] - s.from[0], s.to[1] - s.from[1])) ?? [];
    expect(long.some((mm) => Math.abs(mm - 51) < 0.01)).toBe(true);
    expect(long.some((mm) => Math.abs(mm - 120) < 0.01)).toBe(true);
  });

  test("it says NOT TO CUT, why, what to do with the bar, and the standing text", () => {
    const text = page === undefined ? "" : pageText(page);
    for (const words of [
      "NOT TO CUT",
      options.notToCut,
      "This bar must measure 100.0 ± 0.3",
      STANDING_TEXT,
      options.title,
    ]) {
      expect(text).toContain(close(words));
    }
  });

  test("signed, it no longer says so", () => {
    const { notToCut: _, ...signed } = options;
    const done = templatePdf(SAMPLE_TEMPLATE, signed);
    expect(done.kind === "answered" && readPdf(done.value.pdf).map(pageText).join("")).not.toContain("NOTTOCUT");
  });

  test("one that does not fit is refused, never shrunk", () => {
    const wide = templatePdf({ ...SAMPLE_TEMPLATE, view: { ...SAMPLE_TEMPLATE.view, widthMm: 300 } }, options);
    expect(wide.kind === "refused" && wide.refusals[0]?.code).toBe("template-too-large");
  });
});
