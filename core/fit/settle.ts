/**
 * What do all deciding numbers of a joint say together? One hard limit missed: it fails. None missed but one open: it
 * must be measured first. Otherwise it fits, and each wanted limit that is missed or cannot be told flags a caution.
 */

import { type Caution, capital, type NextStep } from "../quantity/index.js";
import { say } from "../texts/say.js";
import type { DecidingNumber } from "./joint.js";
import { type Judged, judgeSpan, type Limits } from "./judge-span.js";
import type { Span } from "./span.js";
import { TOOLS, type ToolName } from "./tool-accuracy.js";

/** One number held against one limit, and where it would be measured. */
export interface Check {
  readonly name: string;
  readonly unit: DecidingNumber["unit"];
  readonly value: Span;
  readonly limit?: NonNullable<DecidingNumber["limit"]>;
  /** A narrower limit that is wanted beside the hard one: missed, it flags. */
  readonly wanted?: Limits & { readonly words: string };
  /** Where the missing or too coarse attribute is entered, with which tool it is taken. */
  readonly measure?: Measure;
  /** What the band of the value means; "half-widths of the tools, added" unless another word is right. */
  readonly bandMeans?: string;
  /** false: a yes or no that decides but is no figure to show. */
  readonly shown?: boolean;
  /** Code and sentence of the caution when the wanted limit is missed; a plain sentence stands in otherwise. */
  readonly flag?: string;
}

export interface Measure {
  readonly what: string;
  readonly at: string;
  /** Left out where nothing is measured but a person decides. */
  readonly tool?: ToolName;
  readonly how?: string;
  readonly accuracy?: string;
}

export interface Settled {
  readonly outcome: "fits" | "fails" | "open";
  readonly numbers: readonly DecidingNumber[];
  readonly cautions: readonly Caution[];
  readonly next?: NextStep;
  /** By name of the check: how the value lies to its limit, the hard one where there is one. */
  readonly judged: ReadonlyMap<string, Judged>;
  readonly failed: readonly Check[];
  readonly open: readonly Check[];
  readonly flagged: readonly Check[];
}

/** The measurement that would settle it, as a step for the builder. */
export function measureStep(m: Measure): NextStep {
  if (m.tool === undefined)
    return { kind: "decide", what: m.what, at: m.at, ...(m.how === undefined ? {} : { how: m.how }) };
  const tool = TOOLS[m.tool];
  return {
    kind: "measure",
    what: m.what,
    at: m.at,
    tool: tool.name,
    accuracy: m.accuracy ?? tool.accuracy,
    ...(m.how === undefined ? {} : { how: m.how }),
  };
}

/** A yes-or-no attribute as a check: 1 for yes, unknown stays unknown. */
export function yesNo(name: string, value: boolean | undefined, words: string, measure: Measure): Check {
  return {
    name,
    unit: "count",
    value: value === undefined ? { kind: "unknown" } : { kind: "known", mid: value ? 1 : 0, half: 0 },
    limit: { low: 1, kind: "hard", words },
    measure,
    shown: false,
  };
}

export function settle(checks: readonly Check[]): Settled {
  const numbers: DecidingNumber[] = [];
  const cautions: Caution[] = [];
  const judged = new Map<string, Judged>();
  const failed: Check[] = [];
  const open: Check[] = [];
  const flagged: Check[] = [];
  for (const check of checks) {
    const { value, limit } = check;
    const hard = limit?.kind === "hard" ? judgeSpan(value, limit) : undefined;
    const wantedLimit = check.wanted ?? (limit?.kind === "wanted" ? limit : undefined);
    const wanted = wantedLimit === undefined ? undefined : judgeSpan(value, wantedLimit);
    const judgement = hard ?? wanted;
    if (judgement !== undefined) judged.set(check.name, judgement);
    if (hard === "outside") failed.push(check);
    else if (hard === "straddles" || hard === "unknown") open.push(check);
    else if (wantedLimit !== undefined && wanted !== undefined && wanted !== "inside") {
      flagged.push(check);
      cautions.push({
        code: wanted === "outside" ? "wanted-limit-missed" : "wanted-limit-not-sure",
        ...(check.measure === undefined ? {} : { at: check.measure.at }),
        message: check.flag ?? flagWords(check, wantedLimit.words, wanted),
      });
    }
    if (value.kind === "known" && check.shown !== false)
      numbers.push(numberOf(check, value, hard === undefined || hard === "inside"));
  }
  const first = open.find((check) => check.measure !== undefined);
  const next = failed.length === 0 && first?.measure !== undefined ? measureStep(first.measure) : undefined;
  return {
    outcome: failed.length > 0 ? "fails" : open.length > 0 ? "open" : "fits",
    numbers,
    cautions,
    ...(next === undefined ? {} : { next }),
    judged,
    failed,
    open,
    flagged,
  };
}

/** Shown against the wanted limit where the hard one is kept and there is one; otherwise against the hard one. */
function numberOf(check: Check, value: Extract<Span, { kind: "known" }>, kept: boolean): DecidingNumber {
  const limit = check.wanted !== undefined && kept ? { ...check.wanted, kind: "wanted" as const } : check.limit;
  return {
    name: check.name,
    value: value.mid,
    unit: check.unit,
    ...(value.half > 0
      ? {
          band: {
            low: value.mid - value.half,
            high: value.mid + value.half,
            means: check.bandMeans ?? say("fit.settle.half-widths-of-the-tools-added"),
          },
        }
      : {}),
    ...(limit === undefined ? {} : { limit }),
  };
}

function flagWords(check: Check, wanted: string, judgement: Judged): string {
  if (check.value.kind === "unknown")
    return say("fit.settle.is-not-known-wanted-measure-it", { check: capital(check.name), wanted });
  const figure = say("fit.settle.is", {
    check: capital(check.name),
    mid: plain(check.value.mid).replace("-", "−"),
    unit: unitWords(check.unit),
  });
  return judgement === "outside"
    ? say("fit.settle.wanted", { figure, wanted })
    : say("fit.settle.which-reaches-across-what-is-wanted", { figure, half: plain(check.value.half), wanted });
}

/** 0.17000000000000171 as "0.17": at most two decimals, no zeros at the end. */
export function plain(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(Object.is(rounded, -0) ? 0 : rounded);
}

/** A reckoned length or angle as a workshop reads it: one decimal from 1 up, two below, no zeros at the end. Entered sizes keep `plain`. */
export function rounded(value: number): string {
  return Math.abs(value) < 1 ? plain(value) : plain(Math.round(value * 10) / 10);
}

function unitWords(unit: Check["unit"]): string {
  return unit === "deg" ? "°" : unit === "count" || unit === "ratio" ? "" : ` ${unit}`;
}
