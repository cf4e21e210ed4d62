/**
 * How is a text from a file shown on a terminal without doing anything to it? Control signs, escape sequences and marks
 * that turn the writing direction stand as their code, "[U+001B]"; line breaks become blanks.
 */
const BLANKS = /[\t\n\r\u2028\u2029]+/g;
// Controls, soft hyphen, zero-width signs, direction marks, tags, and halves of pairs that stand alone.
const UNSEEN =
  /[\p{Cc}\u00ad\u061c\u180e\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e007f}]|\p{Cs}/gu;

export function plain(text: string): string {
  return text.replace(BLANKS, " ").replace(UNSEEN, (sign) => {
    const code = (sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0");
    return `[U+${code}]`;
  });
}

/** The same for JSON on standard output: still the same data, but nothing in it moves the cursor of a terminal. */
export function jsonText(value: unknown): string {
  return JSON.stringify(value, undefined, 2).replace(
    /[\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}

/** Columns that a text takes; wide signs take two, marks that sit on another none. */
export function widthOf(text: string): number {
  let width = 0;
  for (const sign of text) {
    const code = sign.codePointAt(0) ?? 0;
    if (/\p{M}/u.test(sign)) continue;
    width += isWide(code) ? 2 : 1;
  }
  return width;
}

function isWide(code: number): boolean {
  return (
    (code >= 0x1100 && code <= 0x115f) ||
    (code >= 0x2e80 && code <= 0xa4cf) ||
    (code >= 0xac00 && code <= 0xd7a3) ||
    (code >= 0xf900 && code <= 0xfaff) ||
    (code >= 0xfe30 && code <= 0xfe6f) ||
    (code >= 0xff00 && code <= 0xff60) ||
    (code >= 0xffe0 && code <= 0xffe6) ||
    (code >= 0x1f300 && code <= 0x1faff) ||
    (code >= 0x20000 && code <= 0x3fffd)
  );
}
