import { say as sayText } from "@coldset/core/texts";
import { bandWords, type Drawing, numberWords } from "../model/index.js";
import { printable, printableDrawing, type Replaced, TEMPLATE_ROOM_MM } from "../pdf/index.js";
import { toSvg } from "../svg/index.js";
import type { BoardRow, BookBlock, BookContent, BookQuantity, JointEntry } from "./content.js";

/** Room between the frame's sides, and the tallest drawing that still leaves room for its caption, mm. */
export const COLUMN_MM = 178;
const TALLEST_MM = 190;
const BOARD_DRAWING_MM = 42;
/** Beyond so many signs a cell, or a row of the board, may break across sheets; otherwise it is kept whole. */
const LONG_CELL = 300;
const LONG_TEXT = 1500;

/** What the typesetting reads: only texts, numbers and finished vectors. */
export type Laid = Readonly<Record<string, unknown>>;

/** How does the content become what the typesetting reads? Every text is made printable on the way. */
export function layOut(book: BookContent, replaced: Replaced): Laid {
  const say = (text: string | undefined, longest?: number) => printable(together(text ?? ""), replaced, longest);
  const sections = book.sections.map((section) => ({
    title: say(section.title),
    lead: say(section.lead),
    newSheet: section.newSheet === true,
    stamp: section.stamp === undefined ? null : { word: say(section.stamp.word), why: say(section.stamp.why) },
    blocks: section.blocks.map((block) => layBlock(block, say, replaced)),
  }));
  return {
    job: say(book.job, 12),
    title: say(book.title, 20),
    subtitle: say(book.subtitle),
    revision: say(book.revision, 12),
    sections,
  };
}

/** "± 0.3 mm" stays on one line. */
function together(text: string): string {
  return text.replace(/± (?=[\d−])/g, "±\u00a0").replace(/(\d) (?=(?:mm|kg|h|N|%|days)(?![\p{L}\d]))/gu, "$1\u00a0");
}

type Say = (text: string | undefined, longest?: number) => string;

function layBlock(block: BookBlock, say: Say, replaced: Replaced): Laid {
  switch (block.kind) {
    case "heading":
      return { kind: "heading", text: say(block.text) };
    case "paragraph":
      return { kind: "paragraph", first: say(block.first), text: say(block.text) };
    case "list":
      return {
        kind: "list",
        close: block.close === true,
        inTwo: block.inTwo === true,
        items: block.items.map((item) => say(item)),
      };
    case "joints":
      return { kind: "joints", joints: block.joints.map((j) => layJoint(j, say)) };
    case "board":
      return { kind: "board", stake: block.stake, rows: block.rows.map((row) => layRow(row, say, replaced)) };
    case "figures":
      return {
        kind: "figures",
        figures: block.figures.map((f) => ({ label: say(f.label, 12), ...quantity(f.quantity, say, 10) })),
      };
    case "table": {
      const count = Math.max(1, block.columns.length);
      const longest = Math.max(6, Math.floor(80 / count));
      return {
        kind: "table",
        caption: say(block.caption),
        columns: block.columns.map((column, i) => ({
          head: say(column.head, longest),
          align: column.align ?? "left",
          share: column.share ?? share(block.rows, i),
        })),
        rows: block.rows.map((row) => ({
          cells: block.columns.map((_, i) => say(row[i], longest)),
          long: row.some((text) => text.length > LONG_CELL),
        })),
      };
    }
    case "drawing":
      return block.trueScale === true
        ? template(block, say, replaced)
        : picture(block.drawing, block.caption, say, replaced);
    case "cautions":
      return {
        kind: "cautions",
        items: block.items.map((c) => ({ first: say(c.first), text: say(c.text), long: c.text.length > LONG_TEXT })),
      };
    case "signatures":
      return {
        kind: "signatures",
        lines: block.lines.map((line) => ({ label: say(line.label, 14), signed: say(line.signed, 14) })),
      };
  }
}

/** How wide does a column want to be? By its longest text, between 5 and 40 letters. */
function share(rows: readonly (readonly string[])[], column: number): number {
  const longest = Math.max(0, ...rows.map((row) => (row[column] ?? "").length));
  return Math.min(40, Math.max(5, longest));
}

function layJoint(j: JointEntry, say: Say): Laid {
  return {
    id: say(j.id, 6),
    title: say(j.title, 24),
    verdict: say(j.verdict),
    reason: say(j.reason, 24),
    line: j.line === true,
    number: say(j.number, 18),
    numbers: (j.numbers ?? []).map((cells) => cells.map((text) => say(text, 18))),
    ways: (j.ways ?? []).map((w) => ({ what: say(w.what, 24), facts: say(w.facts, 24), taken: w.taken })),
    next: say(j.next, 24),
    cautions: (j.cautions ?? []).map((c) => ({
      first: say(c.first),
      text: say(c.text),
      long: c.text.length > LONG_TEXT,
    })),
  };
}

function layRow(row: BoardRow, say: Say, replaced: Replaced): Laid {
  return {
    number: String(row.number),
    question: say(row.question),
    answer: say(row.answer, 18),
    detail: say(row.detail),
    verdict: say(row.verdict),
    about: say(row.about),
    next: say(row.next),
    key: row.key === undefined ? null : quantity(row.key, say, 12),
    keyNote: say(row.keyNote, 16),
    drawing: row.drawing === undefined ? null : fitted(row.drawing, BOARD_DRAWING_MM, replaced),
    open: row.open,
    long: [row.question, row.answer, row.detail, row.about, row.next, row.keyNote].join("").length > LONG_TEXT,
  };
}

function quantity(q: BookQuantity, say: Say, longest: number): Laid {
  const decimals = q.decimals ?? 1;
  if (q.value === undefined || !Number.isFinite(q.value)) {
    return { figure: "?", unit: say(q.unit, longest), band: "measure first" };
  }
  return {
    figure: say(numberWords(q.value, decimals)),
    unit: say(q.unit, longest),
    band: say(q.band === undefined && q.without !== undefined ? q.without : bandWords(q.value, q.band, decimals)),
  };
}

function fitted(drawing: Drawing, widestMm: number, replaced: Replaced): Laid {
  const ratio = drawing.view.heightMm / drawing.view.widthMm;
  const widthMm = Math.min(drawing.widthMm, widestMm, TALLEST_MM / ratio);
  const shown = printableDrawing({ ...drawing, widthMm }, replaced);
  return { svg: toSvg(shown, { mode: "print" }), widthMm, label: shown.label };
}

function picture(drawing: Drawing, caption: string | undefined, say: Say, replaced: Replaced): Laid {
  return { kind: "drawing", caption: say(caption), template: false, ...fitted(drawing, COLUMN_MM, replaced) };
}

function template(block: { drawing: Drawing; caption?: string }, say: Say, replaced: Replaced): Laid {
  const { widthMm, heightMm } = block.drawing.view;
  if (widthMm > TEMPLATE_ROOM_MM.width || heightMm > TEMPLATE_ROOM_MM.height) {
    const size = `${numberWords(widthMm, 0)} × ${numberWords(heightMm, 0)} mm`;
    return {
      kind: "plate",
      text: say(sayText("drawing.lay-out.this-template-is-and-does-not", { size })),
    };
  }
  const shown = printableDrawing({ ...block.drawing, widthMm }, replaced);
  return {
    kind: "drawing",
    caption: say(block.caption),
    template: true,
    svg: toSvg(shown, { mode: "print" }),
    widthMm,
    label: shown.label,
  };
}
