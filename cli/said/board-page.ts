/** How does the answered board stand on a terminal? The rows and words come as they are; nothing is reckoned here. */

import { sourceWords } from "@coldset/core/data";
import { capital, type NextStep } from "@coldset/core/quantity";
import type { BoardRow, Stake } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import type { Page, Span } from "../screen/page.js";
import { figureText, verdictStyle } from "./figures.js";

const STAKES: Readonly<Record<Stake, string>> = {
  hurt: say("cli.board-page.somebody-could-be-hurt"),
  money: say("cli.board-page.money-could-be-lost"),
  time: say("cli.board-page.weeks-could-be-lost"),
};

export function boardPage(board: readonly BoardRow[], page: Page): Page {
  let before: BoardRow | undefined;
  for (const row of board) {
    if (row.stake !== before?.stake) page.blank().text([["strong", `${STAKES[row.stake]}:`]]);
    if (row.open || before?.open === true) page.blank();
    before = row;
    page.text(
      [
        ["strong", String(row.n).padStart(2, "0")],
        ["quiet", row.question],
      ],
      1,
      4,
    );
    const about = row.about === undefined ? "" : ` (${row.about})`;
    const verdict: Span = [verdictStyle(row.verdict), `${row.verdict}${about}`];
    if (row.verdict === "not checked yet") {
      const words = row.working.notChecked[0] ?? row.answer;
      page.text([verdict, ...(words === "Not checked yet." ? [] : ["–", words])], 4, 6);
      continue;
    }
    page.text(row.answer, 4, 6);
    page.text(row.figure === undefined ? verdict : [verdict, "–", figureText(row.figure)], 4, 6);
    if (row.also.length > 0)
      page.text(
        [say("cli.board-page.others-weighed"), row.also.map((a) => `${a.about} ${a.verdict}`).join(", ")],
        4,
        6,
      );
    if (row.next !== undefined) page.text([["strong", say("cli.board-page.next")], stepText(row.next)], 4, 6);
  }
  return page;
}

/** "Measure the chainstay, with trammel, to ± 0.3 mm". */
export function stepText(step: NextStep): string {
  return [
    step.what,
    ...(step.tool === undefined ? [] : [say("cli.board-page.with", { tool: step.tool })]),
    ...(step.accuracy === undefined ? [] : [say("cli.board-page.to", { accuracy: step.accuracy })]),
  ].join(", ");
}

/** What stands behind each answer: words, figures, tables, and what it did not look at. */
export function workingPage(board: readonly BoardRow[], page: Page): Page {
  page.heading(say("cli.board-page.working"));
  for (const row of board) {
    const { words, figures, tables, notChecked } = row.working;
    if (words.length + figures.length + tables.length + notChecked.length === 0) continue;
    page.blank().text([["strong", `${row.n}. ${row.question}`]]);
    for (const text of words) page.text(text, 2, 2);
    page.list(
      figures.map((f) => capital(figureText(f, ""))),
      2,
    );
    for (const t of tables) {
      if (t.rows.length === 0) continue;
      page.blank().text(`${t.title}:`, 2).table(t.rows, { indent: 4, heads: t.columns });
    }
    if (notChecked.length > 0) page.text([say("cli.board-page.not-checked"), ...notChecked], 2, 4);
    if (row.sources.length > 0)
      page.text([say("cli.answer-page.sources"), `${row.sources.map(sourceWords).join("; ")}.`], 2, 4);
  }
  return page;
}
