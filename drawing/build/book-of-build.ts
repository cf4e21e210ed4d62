/**
 * What stands in the printed book of a build? Summary with before and after, the board, the joints with their remedies,
 * what to buy, the plan, the working, the sources. All of it is taken from the reckoning as it stands; nothing is
 * reckoned here. While a refusal stands on something chosen there is no drawing, no buy list and no plan: the book says why.
 */

import { sourceWords } from "@coldset/core/data";
import type { Caution } from "@coldset/core/quantity";
import type { BoardRow, Reckoning, WorkingTable } from "@coldset/core/questions";
import { standingRefusals } from "@coldset/core/safety";
import { say } from "@coldset/core/texts";
import type { BookBlock, BookContent, BookSection } from "../book/index.js";
import { boardSection, residualBlocks } from "./board-of-build.js";
import { buySection } from "./buy-of-build.js";
import { jointsSection } from "./joints-of-build.js";
import { planSection } from "./plan-of-book.js";
import { summarySection } from "./summary-of-build.js";
import { sentence } from "./words.js";

export interface BookOptions {
  /** Shown in every title block: "2026-05-02", "C". The book itself knows no day. */
  readonly revision: string;
}

export function bookOfBuild(r: Reckoning, options: BookOptions): BookContent {
  const { build, donor } = r.resolved;
  const standing = standingRefusals(r.rules);
  const go = standing.length === 0;
  return {
    job: build.id,
    title: build.title,
    subtitle: say("drawing.book-of-build.made-of-donor", { donor: donor.id, label: donor.label }),
    revision: options.revision,
    sections: [
      summarySection(r, standing),
      boardSection(r),
      jointsSection(r, go),
      ...(go ? [buySection(r), planSection(r)] : []),
      workingSection(r, go),
      endSection(r),
    ],
  };
}

/** Gates stand with lines to sign in the plan, ways with the sum, where there are such sheets. */
const PRINTED_ONCE = ["Gates", say("drawing.book-of-build.ways-tried")];
/** Already shown in sections of their own. */
const SHOWN_ELSEWHERE = [14, 15];

function workingSection(r: Reckoning, go: boolean): BookSection {
  const blocks = r.board.flatMap((row): BookBlock[] => {
    const all = row.working.tables.filter((t) => !t.title.startsWith("Joints behind") && t.rows.length > 0);
    const tables = all.filter((t) => !(go && PRINTED_ONCE.includes(t.title)));
    const own = cautionsOf(r, row);
    if (SHOWN_ELSEWHERE.includes(row.n) || tables.length + own.length === 0) return [];
    return [
      { kind: "heading", text: `${row.n}. ${row.question}` },
      { kind: "paragraph", text: row.working.words.map(sentence).join(" ") },
      ...(row.n === 13 ? residualBlocks(r) : []),
      ...tables.map((t): BookBlock => (t.columns.length === 2 ? pairs(t) : table(t))),
      ...(own.length === 0
        ? []
        : [{ kind: "cautions", items: own.map((c) => ({ first: "", text: c.message })) } as const]),
    ];
  });
  return { title: "Working", lead: say("drawing.book-of-build.where-the-answers-of-the-board"), blocks };
}

/** Of a long list of trials the best stand in print. */
const MOST_TRIALS = 5;

function table(whole: WorkingTable): BookBlock {
  const short = whole.title.endsWith("best first") && whole.rows.length > MOST_TRIALS;
  const t = short ? { ...whole, rows: whole.rows.slice(0, MOST_TRIALS) } : whole;
  return {
    kind: "table",
    caption: short
      ? say("drawing.book-of-build.of", { title: t.title, mostTrials: MOST_TRIALS, rowsCount: whole.rows.length })
      : t.title,
    columns: t.columns.map((head, i) => ({ head, share: shareOf(head, t.rows, i) })),
    rows: t.rows,
  };
}

/** A list of names with a figure each reads as a sentence. */
function pairs(t: WorkingTable): BookBlock {
  return { kind: "paragraph", first: `${t.title}.`, text: `${t.rows.map((row) => row.join(" ")).join("; ")}.` };
}

/** A column is wide enough for the longest word of its head, and grows with its texts up to 40 letters. */
function shareOf(head: string, rows: readonly (readonly string[])[], column: number): number {
  const word = Math.max(...head.split(" ").map((w) => w.length));
  const text = Math.max(0, ...rows.map((row) => (row[column] ?? "").length));
  return Math.max(word + 4, Math.min(40, text + 2), 6);
}

function endSection(r: Reckoning): BookSection {
  const not = r.joints.joints.filter((j) => j.verdict === "not checked yet").map((j) => `${j.id} ${j.title}`);
  const questions = r.board.flatMap((row) =>
    row.working.notChecked.length === 0
      ? []
      : [
          say("drawing.book-of-build.question", {
            number: row.n,
            sentence: row.working.notChecked.map(sentence).join(" "),
          }),
        ],
  );
  const ids = [...new Set([...r.board.flatMap((b) => b.sources), ...r.joints.joints.flatMap((j) => j.sources)])];
  const cautions = restOfCautions(r);
  return {
    title: say("drawing.book-of-build.what-was-not-checked-and-where"),
    blocks: [
      ...(not.length === 0
        ? []
        : [
            {
              kind: "paragraph",
              first: say("drawing.book-of-build.joints-not-checked-yet-look-at"),
              text: `${not.join("; ")}.`,
            } as const,
          ]),
      ...(questions.length === 0 ? [] : [{ kind: "list", close: true, items: questions } as const]),
      ...(cautions.length === 0
        ? []
        : ([
            { kind: "heading", text: "Cautions" },
            { kind: "cautions", items: cautions.map((c) => ({ first: "", text: c.message })) },
          ] as const)),
      { kind: "heading", text: "Sources" },
      { kind: "list", close: true, inTwo: true, items: ids.map(sourceWords) },
    ],
  };
}

/** Of this question alone: those of a joint stand with the joint. */
function cautionsOf(r: Reckoning, row: BoardRow): readonly Caution[] {
  const told = new Set(r.joints.joints.flatMap((j) => j.cautions.map((c) => c.message)));
  // What nothing checks stands under what was not checked.
  const own = row.cautions.filter((c) => !told.has(c.message) && !c.message.startsWith("The others cannot check"));
  return [...new Map(own.map((c) => [c.message, c])).values()];
}

/** Those that no sheet before carries: of the joints as a whole, and of questions that stand elsewhere. */
function restOfCautions(r: Reckoning): readonly Caution[] {
  const all = [
    ...r.board.filter((row) => SHOWN_ELSEWHERE.includes(row.n)).flatMap((row) => cautionsOf(r, row)),
    ...r.joints.cautions,
  ];
  return [...new Map(all.map((c) => [c.message, c])).values()];
}
