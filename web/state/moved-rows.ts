/** What moved on the board since the last edit? Row by row: another answer, another verdict, another number. */

import { type BoardRow, type Figure, showFigure } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";

export interface Moved {
  readonly n: number;
  /** The old ones, only where they changed. */
  readonly answer?: string;
  readonly verdict?: string;
  readonly figure?: string;
}

export function figureText(f: Figure | undefined): string {
  return f === undefined ? "" : `${showFigure(f)}${f.against === undefined ? "" : ` ${f.against}`}`;
}

const verdictText = (row: BoardRow) => `${row.verdict}${row.about === undefined ? "" : ` ${row.about}`}`;

export function movedRows(before: readonly BoardRow[], now: readonly BoardRow[]): ReadonlyMap<number, Moved> {
  const old = new Map(before.map((row) => [row.n, row]));
  const moved = new Map<number, Moved>();
  for (const row of now) {
    const was = old.get(row.n);
    if (was === undefined) continue;
    const answer = was.answer === row.answer ? undefined : was.answer;
    const verdict = verdictText(was) === verdictText(row) ? undefined : verdictText(was);
    const figure = figureText(was.figure) === figureText(row.figure) ? undefined : figureText(was.figure);
    if (answer === undefined && verdict === undefined && figure === undefined) continue;
    moved.set(row.n, {
      n: row.n,
      ...(answer === undefined ? {} : { answer }),
      ...(verdict === undefined ? {} : { verdict }),
      ...(figure === undefined || figure === "" ? {} : { figure }),
    });
  }
  return moved;
}

/** "13 measure first, now no problem found" where the verdict turned, and the numbers of those that changed parts. */
export function movedWords(
  moved: ReadonlyMap<number, Moved>,
  before: readonly BoardRow[],
  now: readonly BoardRow[],
): { readonly turned: readonly string[]; readonly parts: string } {
  const turned: string[] = [];
  const parts: number[] = [];
  for (const row of now) {
    if (!moved.has(row.n)) continue;
    const was = before.find((b) => b.n === row.n)?.verdict;
    if (was === undefined || was === row.verdict) parts.push(row.n);
    else turned.push(say("web.moved-rows.now", { number: row.n, was, verdict: row.verdict }));
  }
  return { turned, parts: listed(parts.sort((a, b) => a - b).map(String)) };
}

export function listed(words: readonly string[]): string {
  return words.length < 2
    ? words.join("")
    : say("web.moved-rows.and", { allButLast: words.slice(0, -1).join(", "), last: words.at(-1) });
}
