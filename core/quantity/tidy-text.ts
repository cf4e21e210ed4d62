/**
 * How is handwriting from many keyboards brought to one alphabet, before it is read?
 * Minus signs, dashes, primes, typographic quotes, fraction signs, narrow spaces and full-width signs become plain
 * ones. Nothing is guessed: signs that are not on the list stay and are refused later.
 */
const VULGAR: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅐": "1/7",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅑": "1/9",
  "⅒": "1/10",
};

/** Control signs, joiners and direction marks: nothing that a person types on purpose. */
const HIDDEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/u;
const HIDDEN_ALL = new RegExp(HIDDEN.source, "gu");

/** Does the text hold signs that cannot be seen (a tab and line ends at the edges are fine)? */
export function hasHiddenSigns(text: string): boolean {
  return HIDDEN.test(text.replace(/\t/g, " "));
}

/** The text for showing back: at most 64 signs, nothing that could upset a screen or a terminal. */
export function showable(text: string): string {
  const short = text.length > 64 ? `${text.slice(0, 63)}…` : text;
  return short.replace(HIDDEN_ALL, "\uFFFD");
}

export function tidyText(text: string): string {
  return text
    .replace(/[\uFF01-\uFF5E]/g, (c) => String.fromCharCode(c.charCodeAt(0) - 0xfee0))
    .replace(/\s+/gu, " ")
    .trim()
    .replace(/(\d ?)?([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒])/gu, (_all, before: string | undefined, sign: string) =>
      before === undefined ? (VULGAR[sign] ?? sign) : `${before.trim()} ${VULGAR[sign] ?? sign}`,
    )
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/[\u2212\u2010\u2011\u2013\uFE63]/g, "-")
    .replace(/[\u2032\u2018\u2019\u02B9\u02BC\u00B4`]/g, "'")
    .replace(/[\u2033\u201C\u201D\u201E\u02BA]|''/g, '"')
    .replace(/[\u00BA\u02DA]/g, "°")
    .replace(/\s*[·⋅∙•]\s*/gu, "·")
    .replace(/\+ ?\/ ?-|\+-/g, "±");
}
