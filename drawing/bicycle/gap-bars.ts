import type { Band } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { at, bandWords, type Drawing, type Item, numberWords, rectangle, wrapped } from "../model/index.js";

export interface GapRow {
  readonly name: string;
  /** A few words below the name: "each side, wanted 6". */
  readonly note?: string;
  /** mm; left out when it has not been measured. */
  readonly gapMm?: number;
  readonly band?: Band;
  readonly wantedMm: number;
  readonly hardMm?: number;
}

/** Open hatching reaches this far beyond the wanted gap, mm. */
export const TIGHT_BEYOND_MM = 2;

/**
 * How much room is left at each place? One bar a row, all on one scale: close hatching up to the wanted gap, open hatching 2 beyond,
 * blank after; the bar ends in dust, the number stands at its end. A gap below nothing is drawn to the left of the edge.
 */
export function gapBars(rows: readonly GapRow[], version: "wide" | "narrow"): Drawing {
  const wide = version === "wide";
  const width = wide ? 760 : 358;
  const x0 = wide ? 250 : 30;
  const numberRoom = wide ? 150 : 120;
  const reach = Math.max(
    1,
    ...rows.map((row) => Math.max(row.wantedMm + TIGHT_BEYOND_MM, knownGap(row) ?? 0, row.band?.high ?? 0)),
  );
  const perMm = (width - x0 - numberRoom) / reach;
  const lines = rows.map((row) => ({
    names: wrapped(row.name, wide ? 29 : 42),
    notes: row.note === undefined ? [] : wrapped(row.note, wide ? 33 : 44),
  }));
  const heights = lines.map(({ names, notes }) => {
    const lettersHigh = (names.length + notes.length) * LINE + 6;
    return wide ? Math.max(46, lettersHigh + 6) : lettersHigh + 58;
  });
  const items: Item[] = [];
  let top = heights.reduce((sum, h) => sum + h, 0);
  const height = Math.max(1, top);
  rows.forEach((row, index) => {
    const tall = heights[index] ?? 0;
    if (index > 0) items.push({ kind: "line", role: "ornament", from: at(0, top), to: at(width, top) });
    const { names = [], notes = [] } = lines[index] ?? {};
    [...names, ...notes].forEach((text, line) => {
      items.push({
        kind: "text",
        role: line < names.length ? "strong" : "note",
        at: at(0, top - (line + 1) * LINE),
        text,
      });
    });
    const barY = wide ? top - Math.min(tall / 2, 30) : top - tall + 28;
    items.push(...barItems(row, index, { x0, barY, perMm, width }));
    top -= tall;
  });
  return {
    label: say("drawing.gap-bars.gaps-in-mm-on-one-scale", { sentence: rows.map(sentence).join("; ") }),
    view: { xMm: -2, yMm: 0, widthMm: width + 4, heightMm: height },
    widthMm: wide ? 175 : 86,
    nominalWidthPx: width + 4,
    items,
  };
}

const LINE = 22;

function knownGap(row: GapRow): number | undefined {
  return row.gapMm !== undefined && Number.isFinite(row.gapMm) ? row.gapMm : undefined;
}

function short(n: number): string {
  return numberWords(n, 1).replace(/\.0$/, "");
}

function sentence(row: GapRow): string {
  const gap = knownGap(row);
  return gap === undefined
    ? say("drawing.gap-bars.not-measured", { row: row.name })
    : say("drawing.gap-bars.wanted", {
        name: row.name,
        gapMm: short(gap),
        band: bandWords(gap, meantInNote(row), 1),
        wantedMm: short(row.wantedMm),
      });
}

/** What a band means is said once: where it stands in the note already, the number does not repeat it. */
function meantInNote(row: GapRow): Band | undefined {
  return row.band !== undefined && row.band.means === row.note ? { ...row.band, means: "95 %" } : row.band;
}

function barItems(
  row: GapRow,
  index: number,
  { x0, barY, perMm, width }: { x0: number; barY: number; perMm: number; width: number },
): Item[] {
  const backMm = 22 / perMm;
  const x = (mm: number) => x0 + Math.max(mm, -backMm) * perMm;
  const gap = knownGap(row);
  const items: Item[] = [];
  items.push({ kind: "hatch", hatch: "short", path: rectangle(x0, barY - 16, row.wantedMm * perMm, 32) });
  items.push({
    kind: "hatch",
    hatch: "tight",
    path: rectangle(x(row.wantedMm), barY - 16, TIGHT_BEYOND_MM * perMm, 32),
  });
  items.push({ kind: "line", role: "construction", from: at(x0, barY - 16), to: at(width - 20, barY - 16) });
  items.push({ kind: "line", role: "cut", from: at(x0, barY - 19), to: at(x0, barY + 19) });
  items.push({
    kind: "line",
    role: "after",
    from: at(x(row.wantedMm), barY - 19),
    to: at(x(row.wantedMm), barY + 19),
  });
  if (row.hardMm !== undefined) {
    items.push({
      kind: "line",
      role: "dimension",
      from: at(x(row.hardMm), barY - 12),
      to: at(x(row.hardMm), barY + 12),
    });
  }
  if (gap === undefined) {
    items.push({
      kind: "line",
      role: "unknown",
      from: at(x0, barY),
      to: at(x(row.wantedMm + TIGHT_BEYOND_MM), barY),
    });
    items.push({
      kind: "text",
      role: "strong",
      at: at(x(row.wantedMm + TIGHT_BEYOND_MM), barY),
      text: say("drawing.gap-bars.measure-first"),
      shiftPx: [8, -6],
      halo: true,
    });
    return items;
  }
  const half = 4;
  const end = x(gap);
  items.push({
    kind: "solid",
    ink: "ink",
    points: [at(x0, barY - half), at(end, barY - half), at(end, barY + half), at(x0, barY + half)],
  });
  let textX = Math.max(end, x0);
  if (row.band !== undefined) {
    const wide95 = (row.band.high - row.band.low) * perMm;
    items.push({
      kind: "dust",
      shape: "strip",
      at: at((x(row.band.low) + x(row.band.high)) / 2, barY),
      sdXMm: wide95 / (2 * 1.96),
      sdYMm: 16,
      seed: index + 1,
      dots: 60,
    });
    textX = Math.max(textX, x(row.band.high));
  } else {
    items.push({
      kind: "solid",
      ink: "ink",
      points: [at(end - 6, barY + 14), at(end + 6, barY + 14), at(end, barY + half)],
    });
  }
  const figure = short(gap);
  items.push({ kind: "text", role: "figure", at: at(textX, barY), text: figure, shiftPx: [10, -7], halo: true });
  items.push({
    kind: "text",
    role: "note",
    at: at(textX, barY),
    text: bandWords(gap, meantInNote(row), 1).replace(/\.0$/, ""),
    shiftPx: [20 + figure.length * 12, -6],
    halo: true,
  });
  return items;
}
