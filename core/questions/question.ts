/** How is one row of the board made? Each question has a file; this holds what they share. */

import type { JointAnswer } from "../fit/index.js";
import type { Band, BoardVerdict, Caution, NextStep } from "../quantity/index.js";
import type { FiredRule } from "../safety/index.js";
import { say } from "../texts/say.js";
import type { BoardRow, Figure, Stake, Working, WorkingTable } from "./board.js";
import type { Reckoning } from "./reckoning.js";

/** Everything but the board itself. */
export type Reckoned = Omit<Reckoning, "board" | "next">;
export type Question = (r: Reckoned) => BoardRow;

export interface Head {
  readonly n: number;
  readonly question: string;
  readonly stake: Stake;
}

export interface RowBody {
  readonly answer: string;
  readonly verdict: BoardVerdict;
  readonly about?: string | undefined;
  readonly also?: BoardRow["also"];
  readonly figure?: Figure | undefined;
  readonly open?: boolean;
  readonly next?: NextStep | undefined;
  readonly words?: readonly string[];
  readonly figures?: readonly Figure[];
  readonly tables?: readonly WorkingTable[];
  readonly notChecked?: readonly string[];
  readonly joints?: readonly JointAnswer[];
  readonly sources?: readonly string[];
  readonly cautions?: readonly Caution[];
}

const SETTLED: readonly BoardVerdict[] = ["fits", "within", "no problem found"];

/** A row from its parts; open unless the verdict is settled or it is said otherwise. */
export function row(head: Head, body: RowBody): BoardRow {
  const joints = body.joints ?? [];
  const working: Working = {
    words: body.words ?? [],
    figures: body.figures ?? [],
    tables: [...(body.tables ?? []), ...(joints.length > 0 ? [jointTable(joints)] : [])],
    notChecked: body.notChecked ?? [],
  };
  return {
    ...head,
    answer: body.answer,
    verdict: body.verdict,
    ...(body.about === undefined ? {} : { about: body.about }),
    also: body.also ?? [],
    ...(body.figure === undefined ? {} : { figure: body.figure }),
    open: body.open ?? (body.verdict !== "not checked yet" && !SETTLED.includes(body.verdict)),
    ...(body.next === undefined ? {} : { next: body.next }),
    working,
    joints: joints.map((j) => j.id),
    sources: [...new Set([...(body.sources ?? []), ...joints.flatMap((j) => j.sources)])],
    cautions: uniqueCautions([...(body.cautions ?? []), ...joints.flatMap((j) => j.cautions)]),
  };
}

export function uniqueCautions(all: readonly Caution[]): readonly Caution[] {
  const seen = new Set<string>();
  return all.filter((c) => {
    const key = `${c.code} ${c.message}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** A question that this program cannot answer yet. It says so and claims nothing. */
export function notIn(head: Head, words: string): BoardRow {
  return row(head, {
    answer: say("questions.question.not-checked-yet"),
    verdict: "not checked yet",
    words: [words],
    notChecked: [words],
  });
}

export function figure(
  name: string,
  value: number,
  unit: string,
  decimals: number,
  band?: Band,
  rest: Partial<Figure> = {},
): Figure {
  return { name, value, unit, decimals, ...(band === undefined ? {} : { band }), ...rest };
}

export function joint(r: Reckoned, id: string): JointAnswer {
  const found = r.joints.joints.find((j) => j.id === id);
  if (found === undefined) throw new Error(`no joint ${id}`);
  return found;
}

/** The number that a joint names so, as a figure of the board. */
export function jointFigure(j: JointAnswer, i = 0): Figure | undefined {
  const n = j.numbers[i];
  if (n === undefined) return undefined;
  const unit = n.unit === "deg" ? "°" : n.unit === "count" || n.unit === "ratio" ? "" : n.unit;
  const decimals = n.unit === "N" ? 0 : Math.abs(n.value) < 2 ? 2 : 1;
  return figure(
    n.name,
    n.value,
    unit,
    decimals,
    n.band,
    n.limit === undefined
      ? {}
      : {
          against: n.limit.words,
          limit: {
            ...(n.limit.low === undefined ? {} : { low: n.limit.low }),
            ...(n.limit.high === undefined ? {} : { high: n.limit.high }),
            words: n.limit.words,
          },
        },
  );
}

export function showNumber(value: number, decimals: number): string {
  const text = Math.abs(value) < 0.5 * 10 ** -decimals ? (0).toFixed(decimals) : value.toFixed(decimals);
  return text.replace("-", "−");
}

export function showFigure(f: Figure): string {
  const half = f.band === undefined ? "" : ` ± ${showNumber((f.band.high - f.band.low) / 2, Math.max(f.decimals, 1))}`;
  return `${showNumber(f.value, f.decimals)}${half}${f.unit === "" ? "" : f.unit === "°" ? "°" : ` ${f.unit}`}`;
}

function jointTable(joints: readonly JointAnswer[]): WorkingTable {
  return {
    title: say("questions.question.joints-behind-this-answer"),
    columns: ["Joint", "Verdict", "Why"],
    rows: joints.map((j) => [`${j.id} ${j.title}`, j.verdict, j.reason]),
  };
}

/** Which of several joint verdicts weighs most? */
export function heaviest(joints: readonly JointAnswer[]): JointAnswer | undefined {
  const rank = ["will not fit", "measure first", "fits with work", "fits", "not checked yet"];
  return [...joints].sort((a, b) => rank.indexOf(a.verdict) - rank.indexOf(b.verdict))[0];
}

/** The survey's name of a reading, in words. */
export function readingWords(name: string): string {
  const NAMES: Readonly<Record<string, string>> = {
    top_tube_actual_mm: say("questions.question.top-tube"),
    top_tube_below_head_tube_top_mm: say("questions.question.top-tube-s-joint-below-the"),
    seat_tube_cc_mm: say("questions.question.seat-tube"),
    head_angle_deg: say("questions.question.head-angle"),
    seat_angle_deg: say("questions.question.seat-angle"),
    chainstay_mm: "chainstay",
    down_tube_cc_mm: say("questions.question.down-tube"),
    down_tube_joint_above_head_tube_bottom_mm: say("questions.question.down-tube-s-joint-above-the"),
    head_tube_mm: say("questions.question.head-tube"),
    front_centre_mm: say("questions.question.front-centre"),
    wheelbase_mm: "wheelbase",
    bb_height_mm: say("questions.question.cranks-axis-to-the-floor"),
    axle_to_crown_mm: say("survey.measurement-kinds.fork-axle-to-crown"),
    rake_mm: say("questions.question.fork-rake"),
    rear_axle_to_head_tube_top_mm: say("questions.question.rear-axle-to-head-tube-top"),
    front_axle_to_head_tube_top_mm: say("questions.question.front-axle-to-head-tube-top"),
    bb_to_head_tube_top_mm: say("questions.question.cranks-axis-to-head-tube-top"),
    bb_to_head_tube_bottom_mm: say("questions.question.cranks-axis-to-head-tube-bottom"),
    rear_axle_to_seat_cluster_mm: say("survey.measurement-kinds.rear-axle-to-seat-cluster"),
    front_axle_to_seat_cluster_mm: say("survey.measurement-kinds.front-axle-to-seat-cluster"),
    top_tube_slope_deg: say("survey.measurement-kinds.slope-of-the-top-tube"),
    rear_axle_height_mm: say("questions.question.rear-axle-height"),
    front_axle_height_mm: say("questions.question.front-axle-height"),
  };
  return NAMES[name.replace(/#\d+$/, "")] ?? name.replaceAll("_", " ").replace(/ (mm|deg)$/, "");
}

/** A reading as the survey names it. */
export const SURVEY_NAME = /\b[a-z]+(?:_[a-z]+)*_(?:mm|deg)\b/g;

/** A sentence of the survey with its readings in words. */
export function inWords(message: string): string {
  return message.replace(SURVEY_NAME, (name) => readingWords(name));
}

/** Cautions of the survey with the readings in words. */
export function cautionsInWords(all: readonly Caution[]): readonly Caution[] {
  return all.map((c) => ({
    ...c,
    message: plainer(inWords(c.message)),
  }));
}

/** The survey speaks of standard deviations and residuals; a builder reads how far a reading is off. */
function plainer(message: string): string {
  const words = message
    .replace(/ of its standard deviation, allowed (\d+(?:\.\d+)?)/, " of its own spreads, $1 at most")
    .replace(/ \([^;]*; redundancy [\d.]+\)/, "")
    .replace("It shares its residual with", "It stands or falls with the")
    .replace("than their standard deviations allow", "than careful measuring does")
    .replace(/ -(?=\d)/g, " −");
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** While a refusal stands on something chosen, nothing is done before it is settled. */
export function settleFirst(refused: FiredRule): NextStep {
  return {
    kind: "decide",
    what: say("questions.question.settle-the-refusal-first", {
      rule: refused.rule,
      insteadDo: refused.insteadDo.replace(/\.$/, "").replace(/^[A-Z](?=[a-z])/, (c) => c.toLowerCase()),
    }),
  };
}

/** Said wherever a figure is reckoned without a reading that the survey names as wrong. */
export function setAsideWords(r: Reckoned): readonly string[] {
  const name = r.geometry.setAside;
  return name === undefined
    ? []
    : [say("questions.question.reckoned-without-the-which-disagrees-with", { name: readingWords(name) })];
}
