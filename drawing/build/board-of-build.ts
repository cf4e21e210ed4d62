/** How does the board of questions stand in print? Open rows large, settled ones a line, by what is at stake. */

import type { Figure, Reckoning, BoardRow as Row } from "@coldset/core/questions";
import { readingWords } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { cloudAndWall, residualBars } from "../bicycle/index.js";
import type { BoardBlock, BoardRow, BookBlock, BookSection, Stake } from "../book/index.js";
import { bookQuantity } from "./figure-words.js";
import { stepWords } from "./words.js";

const STAKES: readonly (readonly [Row["stake"], Stake])[] = [
  ["hurt", "safety"],
  ["money", "money"],
  ["time", "time"],
];
/** Beyond it a normalised residual names a reading as off (99.9 %). */
const RESIDUAL_LIMIT = 3.29;
const MOST_BARS = 5;

export function boardSection(r: Reckoning): BookSection {
  return {
    title: say("drawing.board-of-build.the-board"),
    lead: say("drawing.board-of-build.twenty-questions-ranked-by-what-is"),
    blocks: [
      ...STAKES.flatMap(([stake, printed]): BoardBlock[] => {
        const rows = r.board.filter((row) => row.stake === stake);
        return rows.length === 0 ? [] : [{ kind: "board", stake: printed, rows: rows.map(boardRow) }];
      }),
    ],
  };
}

function boardRow(row: Row): BoardRow {
  const also = row.also.map((a) => `${a.about} ${a.verdict}`).join(", ");
  const not = row.verdict === "no problem found" ? row.working.notChecked[0] : undefined;
  const about = [
    row.about,
    also === "" ? undefined : say("drawing.board-of-build.others-weighed", { also }),
    not === undefined ? undefined : say("drawing.board-of-build.not-checked", { not }),
  ].filter((t) => t !== undefined && t !== "");
  const isMark =
    row.figure?.limit?.low === 1 && row.figure.unit === "" && (row.figure.value === 0 || row.figure.value === 1);
  // A bare count ("0 of 4 signed") is in the answer's words already.
  const isCount = row.figure?.unit === "" && row.figure.limit === undefined && row.figure.against !== undefined;
  const figure = isMark || isCount ? undefined : row.figure;
  const drawing = figure === undefined ? undefined : wall(figure);
  const note = figure === undefined ? "" : [figure.name, figure.against].filter((t) => t !== undefined).join(", ");
  return {
    number: row.n,
    question: row.question,
    answer: row.verdict === "not checked yet" ? (row.working.notChecked[0] ?? row.answer) : row.answer,
    ...(row.open ? { detail: row.working.words.slice(0, 2).join(" ") } : {}),
    verdict: row.verdict,
    ...(about.length === 0 ? {} : { about: about.join("; ") }),
    ...(row.next === undefined ? {} : { next: stepWords(row.next) }),
    ...(figure === undefined ? {} : { key: bookQuantity(figure), keyNote: note }),
    ...(drawing === undefined ? {} : { drawing }),
    open: row.open,
  };
}

function wall(f: Figure) {
  const { low, high } = f.limit ?? {};
  const most = high !== undefined && (low === undefined || f.value > (low + high) / 2);
  const limit = most ? high : low;
  if (limit === undefined || f.band === undefined || (low !== undefined && high !== undefined && high - low < 1))
    return undefined;
  return cloudAndWall({
    what: f.name,
    value: f.value,
    band: f.band,
    unit: f.unit,
    limit,
    limitIs: most ? "most" : "least",
    decimals: f.decimals,
  });
}

/** The readings that lie furthest off, as bars; all of them stand in a table beside. */
export function residualBlocks(r: Reckoning): readonly BookBlock[] {
  const { survey, setAside } = r.geometry;
  if (survey.kind === "refused") return [];
  const rows = survey.value.readings.slice(0, MOST_BARS).map((reading) => ({
    name: readingWords(reading.measurement),
    ...(reading.normalised_residual === null ? {} : { w: reading.normalised_residual }),
    again: reading.measurement === setAside,
  }));
  return [
    {
      kind: "drawing",
      drawing: residualBars(rows, RESIDUAL_LIMIT, "wide"),
      caption: say("drawing.board-of-build.how-far-a-reading-lies-from", {
        readingsCount:
          survey.value.readings.length > MOST_BARS
            ? say("drawing.board-of-build.the-furthest", { mostBars: MOST_BARS })
            : "",
      }),
    },
  ];
}
