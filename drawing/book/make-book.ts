import { type Replaced, SCALE_BAR, STANDING_TEXT, typstPdf } from "../pdf/index.js";
import type { BookContent } from "./content.js";
import { layOut } from "./lay-out.js";
import { BOOK_TEMPLATE } from "./template.js";
import { VERDICT_MARKS } from "./verdict-marks.js";

export interface PrintedBook {
  readonly pdf: Uint8Array;
  readonly sheets: number;
  /** Signs that could not be printed and stand as their code, "[U+05D0]", with how often. The book says so on its last sheet. */
  readonly replaced: ReadonlyMap<string, number>;
  readonly warnings: readonly string[];
}

/**
 * How does this content look printed? A4, black on white, binding edge 14 mm, title block and standing text on every sheet, tables with their
 * heads repeated. Same content, same bytes. Reads the fonts of this package and nothing else.
 */
export function printBook(book: BookContent): PrintedBook {
  const replaced: Replaced = new Map();
  const laid = layOut(book, replaced);
  const codes = [...replaced.keys()]
    .sort()
    .map((word) => (replaced.get(word) === 1 ? word : `${word} × ${replaced.get(word)}`));
  const { pdf, pages, warnings } = typstPdf(SCALE_BAR + BOOK_TEMPLATE, {
    book: JSON.stringify({ ...laid, standing: STANDING_TEXT, codes: codes.join(", "), marks: VERDICT_MARKS }),
  });
  return { pdf, sheets: pages, replaced, warnings };
}

/** The printed book alone, as a PDF file. */
export function makeBook(book: BookContent): Uint8Array {
  return printBook(book).pdf;
}
