/**
 * How does a page of text come to stand on a terminal of so many columns? Texts are made plain, wrapped at words, and
 * only then coloured; colour is an addition and never the only sign of anything.
 */
import pc from "picocolors";
import { plain, widthOf } from "./letters.js";

export type Style = "strong" | "quiet" | "good" | "open" | "bad";
export type Span = string | readonly [Style, string];

export interface TableOptions {
  readonly indent?: number;
  readonly heads?: readonly string[];
  /** Columns that stand to the right, by number. */
  readonly right?: readonly number[];
}

const NARROWEST = 40;
const WIDEST = 100;
const GAP = 2;
/** A column narrower than this that would like more room cannot be read. */
const TIGHT = 7;

interface Word {
  readonly text: string;
  readonly style: Style | undefined;
}

export class Page {
  readonly width: number;
  readonly #paint: Readonly<Record<Style, (text: string) => string>>;
  readonly #lines: string[] = [];

  constructor(columns: number, colour: boolean) {
    this.width = Math.min(WIDEST, Math.max(NARROWEST, Math.floor(columns)));
    const c = pc.createColors(colour);
    this.#paint = { strong: c.bold, quiet: c.dim, good: c.green, open: c.yellow, bad: c.red };
  }

  blank(): this {
    if (this.#lines.length > 0 && this.#lines.at(-1) !== "") this.#lines.push("");
    return this;
  }

  heading(text: string): this {
    this.blank();
    this.text([["strong", text.toUpperCase()]]);
    this.#lines.push(this.#paint.quiet("─".repeat(Math.min(this.width, widthOf(plain(text))))));
    return this;
  }

  /** A paragraph; lines after the first stand `hang` columns in. */
  text(spans: Span | readonly Span[], indent = 0, hang = indent): this {
    const list = typeof spans === "string" || isStyled(spans) ? [spans] : spans;
    const room = this.width - Math.max(indent, hang);
    let line: Word[] = [];
    let margin = indent;
    let used = indent;
    const flush = () => {
      this.#put(line, margin);
      line = [];
      margin = hang;
      used = hang;
    };
    for (const { text, style } of list.flatMap(words)) {
      for (const piece of cut(text, room)) {
        const width = widthOf(piece);
        if (line.length > 0 && used + 1 + width > this.width) flush();
        used += width + (line.length > 0 ? 1 : 0);
        line.push({ text: piece, style });
      }
    }
    if (line.length > 0) flush();
    return this;
  }

  list(items: readonly (Span | readonly Span[])[], indent = 2): this {
    for (const item of items) {
      const spans = typeof item === "string" || isStyled(item) ? [item] : item;
      this.text(["-", ...spans], indent, indent + 2);
    }
    return this;
  }

  /** Columns as wide as their longest cell; where that is too wide the widest ones wrap. */
  table(rows: readonly (readonly Span[])[], options: TableOptions = {}): this {
    const { indent = 2, heads, right = [] } = options;
    const all = heads === undefined ? rows : [heads.map((h): Span => ["quiet", h]), ...rows];
    const columns = Math.max(0, ...all.map((row) => row.length));
    if (columns === 0) return this;
    const text = (cell: Span | undefined) => plain(cell === undefined ? "" : typeof cell === "string" ? cell : cell[1]);
    const natural = Array.from({ length: columns }, (_, i) => Math.max(1, ...all.map((r) => widthOf(text(r[i])))));
    const widths = fitted(natural, this.width - indent - GAP * (columns - 1));
    if (widths.some((width, i) => width < Math.min(natural[i] ?? 0, TIGHT))) return this.#stacked(rows, indent, heads);
    for (const row of all) {
      const cells = Array.from({ length: columns }, (_, i) => {
        const cell = row[i];
        const style = cell === undefined || typeof cell === "string" ? undefined : cell[0];
        const width = widths[i] ?? 1;
        return { style, width, lines: wrapped(bound(text(cell)), width), right: right.includes(i) };
      });
      const height = Math.max(...cells.map((c) => c.lines.length));
      for (let n = 0; n < height; n++) {
        const line = cells.map(({ style, width, lines, right: toRight }) => {
          const part = lines[n] ?? "";
          const room = " ".repeat(Math.max(0, width - widthOf(part)));
          const shown = style === undefined || part === "" ? part : this.#paint[style](part);
          return toRight ? room + shown : shown + room;
        });
        this.#lines.push(unbound(" ".repeat(indent) + line.join(" ".repeat(GAP))).trimEnd());
      }
    }
    return this;
  }

  /** Where the columns have no room beside each other: each row as a few lines, every cell under its head. */
  #stacked(rows: readonly (readonly Span[])[], indent: number, heads: readonly string[] | undefined): this {
    for (const row of rows) {
      const cells = row.flatMap((cell, i): Span[] => {
        const empty = (typeof cell === "string" ? cell : cell[1]) === "";
        const head = heads?.[i] ?? "";
        return empty ? [] : [...(i === 0 ? [] : ["–"]), ...(head === "" ? [] : [["quiet", `${head}:`] as const]), cell];
      });
      this.text(cells, indent, indent + 2);
    }
    return this;
  }

  toString(): string {
    return this.#lines.length === 0 ? "" : `${this.#lines.join("\n")}\n`;
  }

  #put(line: readonly Word[], indent: number): void {
    let text = " ".repeat(indent);
    line.forEach((word, i) => {
      text += `${i === 0 ? "" : " "}${word.style === undefined ? word.text : this.#paint[word.style](word.text)}`;
    });
    this.#lines.push(unbound(text));
  }
}

function isStyled(span: Span | readonly Span[]): span is readonly [Style, string] {
  return (
    Array.isArray(span) && span.length === 2 && ["strong", "quiet", "good", "open", "bad"].includes(String(span[0]))
  );
}

function words(span: Span): Word[] {
  const [style, text] = typeof span === "string" ? [undefined, span] : span;
  return bound(plain(text))
    .split(" ")
    .filter((w) => w !== "")
    .map((w) => ({ text: w, style }));
}

/** "± 0.3" stays on one line: the blank between is bound until the line is put down. */
const BOUND = "\u00a0";
const bound = (text: string): string => text.replace(/([±–]) (?=[\d−])/g, `$1${BOUND}`);
const unbound = (line: string): string => line.replaceAll(BOUND, " ");

/** A word longer than the room, in pieces; others whole. */
function cut(word: string, room: number): readonly string[] {
  if (widthOf(word) <= room || room < 1) return [word];
  const parts: string[] = [];
  let part = "";
  for (const sign of word) {
    if (part !== "" && widthOf(part + sign) > room) {
      parts.push(part);
      part = "";
    }
    part += sign;
  }
  return part === "" ? parts : [...parts, part];
}

function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ").flatMap((w) => cut(w, width))) {
    if (line !== "" && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return line === "" ? lines : [...lines, line];
}

/** Takes room from the widest columns until all fit. */
function fitted(natural: readonly number[], room: number): readonly number[] {
  const widths = [...natural];
  let over = widths.reduce((sum, w) => sum + w, 0) - room;
  while (over > 0) {
    const widest = widths.indexOf(Math.max(...widths));
    const now = widths[widest] ?? 1;
    if (now <= 1) break;
    widths[widest] = now - 1;
    over -= 1;
  }
  return widths;
}
