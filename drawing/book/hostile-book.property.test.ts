import fc from "fast-check";
import { expect, test } from "vitest";
import { printable } from "../pdf/index.js";
import { pageText, readPdf } from "../pdf/read-back.js";
import { printBook } from "./make-book.js";

const pieces = [
  "#",
  "$",
  "\\",
  "*",
  "_",
  "`",
  "@",
  "<",
  ">",
  "[",
  "]",
  "{",
  "}",
  '"',
  "'",
  "//",
  "/*",
  "~",
  "=",
  "-",
  "+",
  "a",
  "Z",
  "0",
  " ",
  "\n",
  "\u0000",
  "\u001b",
  "א",
  "🚲",
  "−",
  "±",
  "é",
  "\u200b",
  "\u202e",
  "#set",
  "#panic()",
];

test("any text in any place of the book is shown as text, and the layout does not break", () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom(...pieces), minLength: 1, maxLength: 60 }), (text) => {
      const { pdf, replaced } = printBook({
        job: text,
        title: text,
        subtitle: text,
        revision: text,
        sections: [
          {
            title: text,
            lead: text,
            stamp: { word: text, why: text },
            blocks: [
              { kind: "paragraph", first: text, text: `start ${text} end` },
              { kind: "list", items: [text] },
              { kind: "table", caption: text, columns: [{ head: text }, { head: "b" }], rows: [[text]] },
              { kind: "cautions", items: [{ first: text, text }] },
              { kind: "signatures", lines: [{ label: text, signed: text }] },
              { kind: "figures", figures: [{ label: text, quantity: { value: 1, unit: text } }] },
              {
                kind: "board",
                stake: "time",
                rows: [
                  {
                    number: 1,
                    question: text,
                    answer: text,
                    detail: text,
                    about: text,
                    next: text,
                    verdict: "fits",
                    keyNote: text,
                    open: true,
                  },
                ],
              },
            ],
          },
        ],
      });
      const close = (words: string) => words.replace(/[\s\u200b]+/g, "");
      const shown = readPdf(pdf).map(pageText).join("");
      expect(shown).toContain(close(printable(`start ${text} end`, new Map())));
      // Each of the places shows it; a text that may break across sheets is counted in one piece only.
      const once = close(printable(text, new Map()));
      if (once.length > 3) expect(shown.split(once).length - 1).toBeGreaterThanOrEqual(10);
      expect(replaced.has("[U+0000]")).toBe(text.includes("\u0000"));
    }),
    { seed: 1407, numRuns: 40 },
  );
});
