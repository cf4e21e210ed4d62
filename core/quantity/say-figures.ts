/**
 * How are the figures of a sentence said to somebody who thinks in inches, or who writes a comma? The one place for it.
 * Answers are made once, in millimetres and with a point; here a finished sentence is said in the reader's way.
 * Inputs: the text; the way. In inches a length in mm, a mass in kg and a torque in Nm get the other figure beside them,
 *   or (in a drawing, where there is no room for two) in their place. With a comma, each decimal point of a figure turns.
 * Left alone: what has no unit in the sentence (units); names, threads, editions and clause numbers (comma).
 * Each other figure has so many decimals that it reads back as the same one within the digits that were shown.
 */
import { say } from "../texts/say.js";
import { fixed, type UnitSystem } from "./write-quantity.js";

export type DecimalSign = "point" | "comma";

export interface NumberWay {
  readonly units: UnitSystem;
  readonly decimal: DecimalSign;
}

export const PLAIN_WAY: NumberWay = { units: "metric", decimal: "point" };

interface OtherUnit {
  readonly unit: string;
  /** How many of the metric unit one of the other is. */
  readonly one: number;
  /** Decimals more than the metric figure has. */
  readonly more: number;
}

/** yard-and-pound-1959: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, both exact; 1 lbf ft = 0.45359237 × 9.80665 × 0.3048 Nm. */
const OTHERS: Readonly<Record<string, OtherUnit>> = {
  mm: { unit: "in", one: 25.4, more: 2 },
  kg: { unit: "lb", one: 0.45359237, more: 0 },
  Nm: { unit: say("quantity.write-quantity.lbf-ft"), one: 0.45359237 * 9.80665 * 0.3048, more: 1 },
};

/** A figure's unit, decimals and factor as this reader wants them. */
export function unitIn(
  unit: string,
  decimals: number,
  way: NumberWay,
): { readonly unit: string; readonly decimals: number; readonly times: number } {
  const other = way.units === "inch" ? OTHERS[unit] : undefined;
  return other === undefined
    ? { unit, decimals, times: 1 }
    : { unit: other.unit, decimals: decimals + other.more, times: 1 / other.one };
}

/** One number, in this reader's decimal sign. */
export function sayNumber(value: number, decimals: number, way: NumberWay): string {
  const text = fixed(value, decimals);
  return way.decimal === "comma" ? text.replace(".", ",") : text;
}

const NUMBER = "(?:\\d{1,3}(?:\\u00a0\\d{3})+|\\d+)(?:\\.\\d+)?";
const SIGNED = `[−+-]?${NUMBER}`;
const JOINER = "(?: ± | to | × |–|\\u00a0±\\u00a0)";
const WITH_UNIT = new RegExp(
  `(?<![\\p{L}\\d.,/])((?:± ?|±\\u00a0)?${SIGNED}(?:${JOINER}${SIGNED}){0,3})([ \\u00a0])(mm|kg|Nm)(?![\\p{L}\\d²³/·]| \\()`,
  "gu",
);
const NOT_BARE = "(?:mm|cm|m|in|ft|lb|kg|g|N|Nm|lbf|h|hours?|days?|min|bar|MPa|teeth|links|spreads)";
/** Nothing but a figure, with plain words before or after it: "was 126", "6 or more". */
const BARE = new RegExp(
  `^((?:[\\p{L} ]* )?)((?:± ?)?${SIGNED}(?:${JOINER}${SIGNED})?)((?: (?!${NOT_BARE}\\b)[\\p{L} ]*)?)$`,
  "u",
);
const ANY_NUMBER = new RegExp(NUMBER, "gu");
/** A decimal figure; not the tail of a name, a thread as a file writes it, an edition or a clause of a standard. */
const POINTED =
  /(?<![\p{L}\d._/]|[\p{L}\d]-)(?<!\b(?:class|clause|section|table|figure|chapter|version|part)[ \u00a0])(\d+)\.(\d+)(?![\p{L}\d_]|\.\d)/giu;

const decimalsOf = (number: string) => number.split(".")[1]?.length ?? 0;

function converted(figures: string, other: OtherUnit): string {
  return figures.replace(ANY_NUMBER, (number) =>
    fixed(Number(number.replaceAll("\u00a0", "")) / other.one, decimalsOf(number) + other.more),
  );
}

export interface SayOptions {
  /** In a drawing: the other figure instead of this one, not beside it. */
  readonly instead?: boolean;
  /** The unit of a text that has a number and no unit, as on a dimension line; with it the inches take its place. */
  readonly bareUnit?: string;
}

export function sayFigures(text: string, way: NumberWay, options: SayOptions = {}): string {
  let said = text;
  if (way.units === "inch") {
    said = said.replace(WITH_UNIT, (whole, figures: string, gap: string, unit: string) => {
      const other = OTHERS[unit];
      if (other === undefined) return whole;
      const there = `${converted(figures, other)}${gap}${other.unit}`;
      return options.instead === true ? there : `${whole} (${there})`;
    });
    const bare = options.bareUnit === undefined || said !== text ? null : BARE.exec(text);
    const other = OTHERS[options.bareUnit ?? ""];
    if (bare !== null && other !== undefined)
      said = `${bare[1] ?? ""}${converted(bare[2] ?? "", other)} ${other.unit}${bare[3] ?? ""}`;
  }
  return way.decimal === "comma" ? said.replace(POINTED, "$1,$2") : said;
}

const UNIT_WORDS: Readonly<Record<string, string>> = {
  mm: "millimetres",
  in: "inches",
  kg: "kilograms",
  lb: "pounds",
  Nm: say("quantity.say-figures.newton-metres"),
  "lbf ft": "pound-feet",
  N: "newtons",
  h: "hours",
  "°": "degrees",
};

/** The unit as a voice should say it; "mm" is spelt out letter by letter by some. */
export function unitWords(unit: string): string {
  return UNIT_WORDS[unit] ?? unit;
}

/** A sentence for a voice: units behind figures in words, and ± said. */
export function speakFigures(text: string): string {
  return text
    .replace(
      /(\d)[ \u00a0]?(mm|kg|Nm|lbf ft|lb|in|N|°)(?![\p{L}\d²³/])/gu,
      (_, digit: string, unit: string) => `${digit} ${unitWords(unit)}`,
    )
    .replace(/[ \u00a0]?±[ \u00a0]?/gu, " plus or minus ")
    .trimStart();
}
