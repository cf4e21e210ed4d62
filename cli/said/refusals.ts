/** How is a refusal told: on the error stream for the person, and as one object for a program? */

import type { Refusal, Refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { jsonText } from "../screen/letters.js";
import { Page } from "../screen/page.js";

/** Beyond so many they are counted on the screen; the JSON holds them all. */
const MOST_SHOWN = 40;
const MOST_LETTERS = 1500;

export function refusalsPage(refusals: readonly Refusal[], page: Page, placeOf?: (at: string) => string): Page {
  const shown = firstOfSyntax(refusals);
  const count =
    shown.length === 1
      ? say("cli.refusals.one-thing-has")
      : say("cli.refusals.things-have", { shownCount: shown.length });
  page.text([["bad", say("cli.refusals.to-be-put-right-first-nothing", { count })]]);
  for (const r of shown.slice(0, MOST_SHOWN)) {
    const place = placeOf?.(r.at);
    page
      .blank()
      .text([...(place === undefined ? [] : [["strong", `${place}:`] as const]), sentence(shortened(r.message))], 2, 4);
    const given = givenWords(r.given);
    if (given !== "" && !SYNTAX.has(r.code) && !TOLD_IN_WORDS.has(r.code) && !r.message.includes(given))
      page.text([say("cli.refusals.given"), given], 4, 6);
    if (SYNTAX.has(r.code)) page.text(say("cli.refusals.look-at-the-indents-brackets-and"), 4, 6);
    else if (r.allowed !== "" && !r.message.includes(r.allowed))
      page.text([say("cli.refusals.allowed"), r.allowed.replace(/, at most 64 signs, within ± [\d ]+$/, "")], 4, 6);
  }
  if (shown.length > MOST_SHOWN)
    page.blank().text(say("cli.refusals.and-more-json-lists-them-all", { shownCount: shown.length - MOST_SHOWN }), 2);
  return page;
}

/** Tells it and gives the exit code. With `json` the object is the only thing on standard output. */
export function tellRefused(io: Io, answer: Refused, json: boolean, placeOf?: (at: string) => string): number {
  if (json) io.stdout(`${jsonText({ kind: "refused", refusals: answer.refusals.map(refusalObject) })}\n`);
  io.stderr(refusalsPage(answer.refusals, new Page(io.columns, io.colour), placeOf).toString());
  return EXIT.refused;
}

const SYNTAX: ReadonlySet<string> = new Set(["yaml"]);
/** Their message tells in words what was given; the object is for programs. */
const TOLD_IN_WORDS: ReadonlySet<string> = new Set(["unknown-key", "store-in-use"]);

/** One slip of the pen makes a reader of YAML stumble several times: of each file only the first is told. --json has them all. */
function firstOfSyntax(refusals: readonly Refusal[]): readonly Refusal[] {
  const seen = new Set<string>();
  return refusals.flatMap((r) => {
    if (!SYNTAX.has(r.code)) return [r];
    const file = r.at.replace(/:\d+:\d+$/, "");
    if (seen.has(file)) return [];
    seen.add(file);
    return [
      {
        ...r,
        message: say("cli.refusals.this-is-not-yaml-or-json", { at: r.at, atCount: r.message.slice(r.at.length + 2) }),
      },
    ];
  });
}

/** A capital in front, unless a place or a name that is written so stands there; one stop behind. */
function sentence(text: string): string {
  const capital = text
    .replace(/^(unknown|no|more|expected|missing)\b/, (w) => w.charAt(0).toUpperCase() + w.slice(1))
    .replace(
      /^(\S+:\d+:\d+ \S+: )([a-z])(?=[a-z]+ )/,
      (_, place: string, letter: string) => place + letter.toUpperCase(),
    );
  return /[.!?…)]$/.test(capital) || capital.endsWith("-o book.pdf") ? capital : `${capital}.`;
}

function refusalObject({ code, at, given, allowed, message }: Refusal): Refusal {
  return { code, at, given: jsonable(given), allowed, message };
}

/** What was given, as JSON can hold it: a number that is none is written as a word. */
function jsonable(given: unknown): unknown {
  if (given === undefined) return null;
  if (typeof given === "number" && !Number.isFinite(given)) return String(given);
  if (typeof given === "bigint" || typeof given === "symbol" || typeof given === "function") return String(given);
  if (Array.isArray(given)) return given.map(jsonable);
  if (typeof given === "object" && given !== null)
    return Object.fromEntries(Object.entries(given).map(([key, value]) => [key, jsonable(value)]));
  return given;
}

function shortened(message: string): string {
  return message.length <= MOST_LETTERS
    ? message
    : say("cli.refusals.json-has-all-of-it", { mostLetters: message.slice(0, MOST_LETTERS) });
}

function givenWords(given: unknown): string {
  if (given === null || given === undefined) return "";
  const text = typeof given === "object" ? (JSON.stringify(jsonable(given)) ?? "") : String(given);
  return text.length > 120 ? `${text.slice(0, 120)}…` : text;
}
