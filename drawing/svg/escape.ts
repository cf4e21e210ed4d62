/**
 * How is any text, however hostile, written into XML so that it is shown as text? The five signs of XML become entities; what XML
 * may not hold at all (control characters, half of a surrogate pair, non-characters) becomes a visible code such as [U+0007].
 * Line breaks and tabs become spaces: a label is one line.
 */
export function escapedXml(text: string): string {
  let out = "";
  for (const sign of text) {
    const code = sign.codePointAt(0) ?? 0;
    if (sign === "\n" || sign === "\r" || sign === "\t") out += " ";
    else if (!allowedInXml(code)) out += codeWord(code);
    else out += ENTITIES[sign] ?? sign;
  }
  return out;
}

/** The visible stand-in for a sign that cannot be shown: [U+05D0]. */
export function codeWord(code: number): string {
  return `[U+${code.toString(16).toUpperCase().padStart(4, "0")}]`;
}

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

function allowedInXml(code: number): boolean {
  if (code < 0x20 || (code >= 0x7f && code <= 0x9f)) return false;
  if (code >= 0xd800 && code <= 0xdfff) return false;
  // Marks that turn the reading direction could make a warning read backwards.
  if ((code >= 0x202a && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069)) return false;
  return (code & 0xfffe) !== 0xfffe;
}

/** A number for an attribute: two decimals, no trailing zeros, never "-0". A number that is none is an error of ours. */
export function fixed(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`A drawing holds a coordinate that is not a number (${value}).`);
  const text = value.toFixed(2).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
}
