/** How are numbers and figures said on this page? In the units and with the decimal sign that were chosen; one place for all. */
import {
  type DecimalSign,
  type NumberWay,
  PLAIN_WAY,
  type SayOptions,
  sayFigures,
  sayNumber,
  unitIn,
} from "@coldset/core/quantity";
import type { BoardRow, Reckoning } from "@coldset/core/questions";
import type { Drawing, Item } from "@coldset/drawing";
import { type Units, useSettings } from "./settings.js";

export interface Numbers {
  readonly way: NumberWay;
  /** For the name of a drawing that is kept: another way is another drawing. */
  readonly key: string;
  /** True where everything stands as the answers were made. */
  readonly plain: boolean;
  readonly number: (value: number, decimals: number) => string;
  /** A sentence with figures in it. */
  readonly say: (text: string, options?: SayOptions) => string;
  readonly unit: (unit: string, decimals: number) => ReturnType<typeof unitIn>;
  /** The same answer with every sentence in it said this way. */
  readonly told: <T>(answer: T) => T;
  /** The same with the lengths in mm: for the small figure beside the inches. */
  readonly metric: Numbers;
  readonly drawn: (drawing: Drawing, bareUnit?: string) => Drawing;
}

const made = new Map<string, Numbers>();

export function numbersOf(units: Units, decimal: DecimalSign): Numbers {
  const key = `${units} ${decimal}`;
  const found = made.get(key);
  if (found !== undefined) return found;
  const way: NumberWay = { units, decimal };
  const plain = units === PLAIN_WAY.units && decimal === PLAIN_WAY.decimal;
  const say = (text: string, options?: SayOptions) => (plain ? text : sayFigures(text, way, options));
  const numbers: Numbers = {
    get metric() {
      return units === "metric" ? numbers : numbersOf("metric", decimal);
    },
    way,
    key,
    plain,
    number: (value, decimals) => sayNumber(value, decimals, way),
    say,
    unit: (unit, decimals) => unitIn(unit, decimals, way),
    told: plain ? (answer) => answer : teller(say),
    drawn: plain ? (drawing) => drawing : (drawing, bareUnit) => drawnIn(drawing, say, bareUnit),
  };
  made.set(key, numbers);
  return numbers;
}

/** Names that answers and documents are found by are no figures. */
const NAMES = new Set(["id", "at", "code", "kind", "unit", "rule", "part", "joint", "remedy", "place", "sources"]);

/** Goes through an answer; what was said once is kept as long as the answer is, so that nothing is drawn anew for nothing. */
function teller(say: (text: string) => string): <T>(answer: T) => T {
  const known = new WeakMap<object, unknown>();
  const told = (value: unknown): unknown => {
    if (typeof value === "string") return say(value);
    if (typeof value !== "object" || value === null) return value;
    const before = known.get(value);
    if (before !== undefined) return before;
    const now = Array.isArray(value)
      ? value.map(told)
      : Object.getPrototypeOf(value) === Object.prototype
        ? Object.fromEntries(
            Object.entries(value).map(([key, inside]) => [key, NAMES.has(key) ? inside : told(inside)]),
          )
        : value;
    known.set(value, now);
    return now;
  };
  return <T>(answer: T) => told(answer) as T;
}

function drawnIn(drawing: Drawing, say: Numbers["say"], bareUnit: string | undefined): Drawing {
  const text = (words: string) => say(words, { instead: true, ...(bareUnit === undefined ? {} : { bareUnit }) });
  const item = (it: Item): Item => {
    switch (it.kind) {
      case "group":
        return { ...it, items: it.items.map(item) };
      case "dimension":
        return { ...it, text: text(it.text), ...(it.was === undefined ? {} : { was: text(it.was) }) };
      case "angle":
        return { ...it, text: say(it.text), ...(it.was === undefined ? {} : { was: say(it.was) }) };
      case "text":
        return { ...it, text: text(it.text) };
      case "arrow":
        return it.text === undefined ? it : { ...it, text: text(it.text) };
      default:
        return it;
    }
  };
  return { ...drawing, label: say(drawing.label), items: drawing.items.map(item) };
}

export function useNumbers(): Numbers {
  return numbersOf(
    useSettings((s) => s.units),
    useSettings((s) => s.decimal),
  );
}

/** What a page shows of a reckoning, said in the reader's way. The documents in it stay as they were written. */
export function toldReckoning(r: Reckoning, numbers: Numbers): Reckoning {
  if (numbers.plain) return r;
  const { told } = numbers;
  return {
    ...r,
    board: toldBoard(r.board, numbers),
    next: told(r.next),
    joints: told(r.joints),
    rules: told(r.rules),
    plan: told(r.plan),
    ledger: told(r.ledger),
    forks: told(r.forks),
  };
}

export function toldBoard(board: readonly BoardRow[], numbers: Numbers): readonly BoardRow[] {
  return numbers.told(board);
}
