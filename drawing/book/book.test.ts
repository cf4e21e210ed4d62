import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { STANDING_TEXT } from "../pdf/index.js";
import { pageText, readPdf } from "../pdf/read-back.js";
import type { BookContent } from "./content.js";
import { makeBook, printBook } from "./make-book.js";
import { HOSTILE_TEXTS, LONG_WORD, SAMPLE_BOOK } from "./sample-book.js";

const close = (text: string) => text.replace(/\s+/g, "");
const book = printBook(SAMPLE_BOOK);
const pages = readPdf(book.pdf);
const texts = pages.map(pageText);
const whole = texts.join("");

describe("the book", () => {
  test("is A4, of seven sheets, the same bytes each time, with no day but the one passed in", () => {
    expect(book.sheets).toBe(7);
    expect(pages).toHaveLength(7);
    for (const page of pages) {
      expect(page.widthMm).toBeCloseTo(210, 3);
      expect(page.heightMm).toBeCloseTo(297, 3);
    }
    expect(Buffer.compare(makeBook(SAMPLE_BOOK), book.pdf)).toBe(0);
    expect(Buffer.from(book.pdf).toString("latin1")).not.toMatch(/CreationDate|ModDate/);
    expect(book.warnings).toEqual([]);
  });

  test("every sheet has the standing text, the job, its number and the revision", () => {
    texts.forEach((text, index) => {
      expect(text).toContain(close(STANDING_TEXT));
      expect(text).toContain(`jobQuaysidesheet${index + 1}of7revisionrev.C,day9`);
    });
  });

  test("shows every question with answer, number, verdict and next step", () => {
    for (const section of SAMPLE_BOOK.sections) {
      for (const block of section.blocks) {
        if (block.kind !== "board") continue;
        for (const row of block.rows) {
          for (const words of [row.question, row.answer, row.detail, row.next, row.about, row.keyNote])
            expect(whole).toContain(close(words ?? ""));
          expect(whole.toLowerCase()).toContain(close(row.verdict));
        }
      }
    }
    expect(whole).toContain("1790N±160");
    expect(whole).toContain("?mmmeasurefirst");
    expect(whole).toContain("asentered");
  });

  test("minus signs survive", () => {
    expect(whole).toContain("−0.8mm±3.0");
    expect(whole).toContain("−5.5");
    expect(whole).toContain("−3.29");
    expect(whole).toContain("−0.80");
  });

  test("hostile texts are shown as they were typed", () => {
    for (const text of HOSTILE_TEXTS) expect(whole).toContain(close(text));
    expect(whole).toContain(LONG_WORD);
    expect(whole).toContain(close("emoji [U+1F6B2], right to left [U+05E9]"));
    expect(whole).toContain("Signsnotprinted.");
    expect(book.replaced.get("[U+0007]")).toBe(1);
  });

  test("a table that breaks repeats its heads", () => {
    const with_ = texts.filter((text) => text.includes("Operation"));
    expect(with_.length).toBeGreaterThan(2);
    for (const text of with_) expect(text).toContain("No.WhatNeedsHoursDay");
  });

  test("letters: 8.5 pt stands in the title block only, all others are 10 pt or more", () => {
    for (const page of pages) {
      for (const run of page.runs) {
        const foot = run.yMm > 297 - 8 - 30;
        expect(run.sizePt).toBeGreaterThanOrEqual(foot ? 8.49 : 9.99);
      }
    }
  });

  test("nothing begins outside the frame, which leaves 14 mm to bind", () => {
    for (const page of pages) {
      for (const run of page.runs) {
        expect(run.xMm).toBeGreaterThan(14);
        expect(run.xMm).toBeLessThan(202);
        expect(run.yMm).toBeGreaterThan(8);
        expect(run.yMm).toBeLessThan(289);
      }
    }
  });

  test("the bar beside the template measures 100.0 mm", () => {
    const bars = pages
      .flatMap((p) => p.strokes)
      .filter((s) => Math.abs(s.weightMm - 0.7) < 0.01 && s.from[1] === s.to[1]);
    const lengths = bars.map((s) => s.to[0] - s.from[0]).filter((mm) => mm > 95 && mm < 105);
    expect(lengths).toHaveLength(1);
    expect(lengths[0]).toBeCloseTo(100, 3);
  });
});

describe("breaking over sheets", () => {
  const filler = (lines: number): BookContent => ({
    job: "Invented",
    title: "Filler",
    revision: "rev. A",
    sections: [
      {
        title: "First",
        blocks: [
          ...Array.from({ length: lines }, (_, i) => ({ kind: "paragraph" as const, text: `Line ${i}.` })),
          { kind: "heading", text: "HEADING" },
          { kind: "paragraph", text: "AFTER" },
        ],
      },
      {
        title: "SECOND",
        lead: "LEAD",
        blocks: [{ kind: "table", caption: "CAPTION", columns: [{ head: "A" }], rows: [["CELL"], ["x"]] }],
      },
    ],
  });

  test("no heading, lead or caption stands alone at the foot of a sheet", () => {
    for (let lines = 20; lines < 44; lines++) {
      const sheets = readPdf(makeBook(filler(lines))).map(pageText);
      const sheetOf = (word: string) => sheets.findIndex((text) => text.includes(word));
      expect(sheetOf("HEADING"), `${lines} lines`).toBe(sheetOf("AFTER"));
      expect(sheetOf("SECOND"), `${lines} lines`).toBe(sheetOf("CELL"));
      expect(sheetOf("CAPTION"), `${lines} lines`).toBe(sheetOf("CELL"));
    }
  });

  test("a very long cell, row and caution run on over sheets and lose nothing", () => {
    const words = Array.from({ length: 1500 }, (_, i) => `w${i}`).join(" ");
    const sheets = readPdf(
      makeBook({
        job: LONG_WORD.slice(0, 90),
        title: LONG_WORD,
        revision: LONG_WORD.slice(0, 60),
        sections: [
          {
            title: LONG_WORD,
            stamp: { word: "NOT TO CUT", why: LONG_WORD.slice(0, 60) },
            blocks: [
              { kind: "table", columns: [{ head: "A" }, { head: "B" }, { head: "C" }], rows: [["x", words, "y"]] },
              { kind: "cautions", items: [{ first: "Flag.", text: words }] },
              {
                kind: "board",
                stake: "safety",
                rows: [{ number: 1, question: "q", answer: "a", detail: words, verdict: "gate", open: true }],
              },
            ],
          },
        ],
      }),
    );
    const text = sheets.map((p) => pageText(p).replace(close(STANDING_TEXT), "")).join("");
    expect(text.split("w1499").length - 1).toBe(3);
    for (const page of sheets) {
      const foot = page.runs.find((run) => run.text.startsWith("Guidance only"))?.yMm ?? 0;
      const below = page.runs.filter((run) => run.yMm > foot + 0.1 && run.sizePt < 10.6 && /w\d+/.test(run.text));
      expect(below).toEqual([]);
    }
  });

  test("an empty book is one sheet with its title", () => {
    const one = printBook({ job: "", title: "Empty", revision: "", sections: [] });
    expect(one.sheets).toBe(1);
    expect(readPdf(one.pdf).map(pageText)[0]).toContain("Empty");
  });
});

/** A second opinion from programs that are not ours, where they are installed. */
const tools = spawnSync("pdftotext", ["-v"]).status === 0 && spawnSync("pdftoppm", ["-v"]).status === 0;
describe.skipIf(!tools)("read by other programs", () => {
  const folder = mkdtempSync(join(tmpdir(), "coldset-book-"));
  const file = join(folder, "book.pdf");
  writeFileSync(file, book.pdf);

  afterAll(() => rmSync(folder, { recursive: true }));

  function pixels(from: string, page: number, dpi: number) {
    const to = join(folder, "p");
    execFileSync("pdftoppm", [
      "-r",
      String(dpi),
      "-f",
      String(page),
      "-l",
      String(page),
      "-gray",
      "-singlefile",
      from,
      to,
    ]);
    const image = readFileSync(`${to}.pgm`);
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(image.subarray(0, 40).toString("latin1"));
    const width = Number(head?.[1]);
    const start = head?.[0].length ?? 0;
    return {
      width,
      height: Number(head?.[2]),
      dark: (x: number, y: number) => (image[start + y * width + x] ?? 255) < 100,
    };
  }

  test("the text can be taken out", () => {
    const text = execFileSync("pdftotext", ["-layout", file, "-"]).toString();
    expect(text).toContain("−0.8");
    expect(text.split("Guidance only.").length - 1).toBe(7);
    expect(close(text)).toContain(close(HOSTILE_TEXTS[7]));
  });

  test.each([
    ["the sample", book.pdf],
    [
      "long words everywhere",
      makeBook({
        job: LONG_WORD.slice(0, 80),
        title: LONG_WORD,
        subtitle: LONG_WORD,
        revision: LONG_WORD.slice(0, 40),
        sections: [
          {
            title: LONG_WORD,
            lead: LONG_WORD,
            blocks: [
              { kind: "paragraph", text: LONG_WORD },
              { kind: "list", items: [LONG_WORD] },
              { kind: "cautions", items: [{ first: "Flag.", text: LONG_WORD }] },
              {
                kind: "table",
                columns: [{ head: "a" }, { head: "b" }, { head: LONG_WORD }],
                rows: [["x", "y", LONG_WORD]],
              },
              {
                kind: "board",
                stake: "money",
                rows: [
                  {
                    number: 1,
                    question: LONG_WORD,
                    answer: LONG_WORD,
                    verdict: "over",
                    about: LONG_WORD,
                    next: LONG_WORD,
                    key: { value: 1, unit: LONG_WORD },
                    keyNote: LONG_WORD,
                    open: true,
                  },
                ],
              },
            ],
          },
        ],
      }),
    ],
  ] as const)("%s: nothing runs out to the right, the margin inside the frame stays white", (name, pdf) => {
    const one = join(folder, `${name.length}.pdf`);
    writeFileSync(one, pdf);
    for (let page = 1; page <= readPdf(pdf).length; page++) {
      const image = pixels(one, page, 100);
      const column = (mm: number) => Math.round((mm / 25.4) * 100);
      for (let y = column(11); y < column(250); y++) {
        for (let x = column(197.8); x < column(201); x++)
          expect(image.dark(x, y), `sheet ${page}, ${x}, ${y}`).toBe(false);
      }
    }
  });

  test("the bar is 100.0 ± 0.2 mm in pixels at 300 dpi", () => {
    const { dark, width, height } = pixels(file, 3, 300);
    // The bar's own line is the only thick one (0.7 mm, 8 px) about 100 mm long: look for a run of dark of that length.
    const bar = readPdf(book.pdf)[2]?.strokes.find((s) => Math.abs(s.to[0] - s.from[0] - 100) < 0.5);
    const y = Math.round(((bar?.from[1] ?? 0) / 25.4) * 300);
    expect(y).toBeGreaterThan(0);
    expect(y).toBeLessThan(height);
    let best = 0;
    let run = 0;
    for (let x = 200; x < width - 200; x++) {
      run = dark(x, y) ? run + 1 : 0;
      best = Math.max(best, run);
    }
    // The end strokes are 0.7 mm wide: the dark run is 100 mm from middle to middle plus half a stroke at each end.
    const mm = (best / 300) * 25.4 - 0.7;
    expect(Math.abs(mm - 100)).toBeLessThan(0.2);
  });
});
