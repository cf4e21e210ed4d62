import { codeWord } from "../svg/index.js";
import { printFonts } from "./fonts.js";

/** Spelled out where the print fonts have no glyph; nothing is lost by it. */
const SPELLED: Readonly<Record<string, string>> = {
  "\u2011": "-",
  "\u2010": "-",
  "\u2009": " ",
  "\u202f": "\u00a0",
  "\u2007": "\u00a0",
  "\u200b": "",
  "\u00ad": "",
  "\ufeff": "",
  "→": "->",
  "←": "<-",
  "≤": "<=",
  "≥": ">=",
  "≈": "about ",
  "√": "root ",
  "✓": "yes",
  "✗": "no",
  "•": "·",
  σ: "sd",
  µ: "micro",
  μ: "micro",
  Ω: "ohm",
  "⌀": "Ø",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅓": "1/3",
  "⅔": "2/3",
};

/** Collects what had to be replaced in a book or drawing: the code that was printed, and how often. */
export type Replaced = Map<string, number>;

/** Marks a place where a long word may be broken; the page templates turn it into nothing at all. */
const MAY_BREAK = "\u200b";

/**
 * How is a text written so that every sign of it can be printed? Signs without a glyph are spelled out where a plain word says the same,
 * and are otherwise printed as their code, [U+05D0], and noted in `replaced`. Control characters count as signs without a glyph; line ends
 * and tabs become a space. Words longer than `longestWord` may be broken anywhere, so that they never run out of their column.
 */
export function printable(text: string, replaced: Replaced, longestWord = 24): string {
  const { signs } = printFonts();
  let out = "";
  for (const sign of text.normalize("NFC")) {
    const code = sign.codePointAt(0) ?? 0;
    const spelled = SPELLED[sign];
    if (sign === "\n" || sign === "\r" || sign === "\t") out += " ";
    else if (code >= 0x20 && signs.has(code) && !isControl(code)) out += sign;
    else if (spelled !== undefined) out += /^\d\//.test(spelled) && /\d$/.test(out) ? ` ${spelled}` : spelled;
    else {
      const word = codeWord(code);
      replaced.set(word, (replaced.get(word) ?? 0) + 1);
      out += word;
    }
  }
  return out.replace(/\S+/gu, (word) => {
    const letters = [...word];
    if (letters.length <= longestWord) return word;
    return letters.map((letter, i) => (i > 0 && i % 2 === 0 ? `${MAY_BREAK}${letter}` : letter)).join("");
  });
}

function isControl(code: number): boolean {
  return (code >= 0x7f && code <= 0x9f) || code === 0x00ad || (code >= 0x200b && code <= 0x200f);
}

/** The same for every text inside a drawing; its labels are one line and are not broken. */
export function printableDrawing<T>(value: T, replaced: Replaced): T {
  const visit = (inner: unknown, key: string): unknown => {
    if (typeof inner === "string") {
      return key === "text" || key === "was" || key === "label"
        ? printable(inner, replaced, Number.POSITIVE_INFINITY)
        : inner;
    }
    if (Array.isArray(inner)) return inner.map((one) => visit(one, ""));
    if (typeof inner === "object" && inner !== null) {
      return Object.fromEntries(Object.entries(inner).map(([name, one]) => [name, visit(one, name)]));
    }
    return inner;
  };
  return visit(value, "") as T;
}
