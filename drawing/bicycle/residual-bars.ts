import { say } from "@coldset/core/texts";
import { at, type Drawing, type Item, numberWords, rectangle, wrapped } from "../model/index.js";

export interface ResidualRow {
  readonly name: string;
  /** Normalised residual w, signed. Left out for a measurement that nothing can check. */
  readonly w?: number;
  /** The one to measure again: its bar is in the accent. */
  readonly again?: boolean;
}

/** So many spreads beyond its bar's end the dust may lie: of 40 dots none is further out. */
const DUST_REACH = 2.3;
/** A normalised residual is in its own spreads, so by its making one spread is its standard deviation: 1.96 each way. */
export const RESIDUAL_DUST = say("drawing.residual-bars.each-bar-ends-in-its-dust");

/**
 * Which measurement disagrees with all the others? One bar a measurement from the middle line, in standard deviations, ended in dust one
 * of them wide; beyond the limit on both sides the ground is hatched. A reading that nothing can check is a dashed box full of dust.
 */
export function residualBars(rows: readonly ResidualRow[], limit: number, version: "wide" | "narrow"): Drawing {
  const wide = version === "wide";
  const width = wide ? 760 : 358;
  const most = Math.max(1, ...rows.map((row) => wrapped(row.name, wide ? 31 : 42).length));
  const rowHeight = (wide ? 34 : 52) + (most - 1) * 20;
  const left = wide ? 260 : 10;
  const right = width - 70;
  const known = rows.map((r) => (r.w !== undefined && Number.isFinite(r.w) ? r.w : undefined));
  const span = Math.max(limit * 1.5, ...known.map((w) => Math.abs(w ?? 0) + DUST_REACH));
  const x = (w: number) => (left + right) / 2 + (w / span) * ((right - left) / 2);
  const height = rows.length * rowHeight;
  // Narrow: the names stand above their bars, so the hatching keeps to the bars.
  const strips = wide
    ? [{ low: 0, high: height }]
    : rows.map((_, i) => ({ low: i * rowHeight, high: i * rowHeight + 24 }));
  const outside: Item[] = strips.flatMap(({ low, high }): Item[] => [
    { kind: "hatch", hatch: "tight", path: rectangle(left, low, x(-limit) - left, high - low) },
    { kind: "hatch", hatch: "tight", path: rectangle(x(limit), low, right - x(limit), high - low) },
  ]);
  const items: Item[] = [
    ...outside,
    { kind: "line", role: "after", from: at(x(-limit), -6), to: at(x(-limit), height) },
    { kind: "line", role: "after", from: at(x(limit), -6), to: at(x(limit), height) },
    { kind: "line", role: "construction", from: at(x(0), 0), to: at(x(0), height) },
    { kind: "text", role: "note", at: at(x(-limit), -24), text: numberWords(-limit, 2), anchor: "middle" },
    { kind: "text", role: "note", at: at(x(limit), -24), text: numberWords(limit, 2), anchor: "middle" },
  ];
  let worst: { name: string; w: number } | undefined;
  rows.forEach((row, index) => {
    const low = (rows.length - index - 1) * rowHeight;
    const y = low + (wide ? rowHeight / 2 : 12);
    const names = wrapped(row.name, wide ? 31 : 42);
    names.forEach((text, line) => {
      const role = row.again === true ? ("strong" as const) : ("body" as const);
      const stack = (names.length - 1 - line) * 20;
      items.push(
        wide
          ? { kind: "text", role, at: at(0, y - 6 + stack - (names.length - 1) * 10), text }
          : { kind: "text", role, at: at(left, low + 28 + stack), text, halo: true },
      );
    });
    const w = known[index];
    if (w === undefined) {
      items.push({
        kind: "polyline",
        role: "unknown",
        closed: true,
        fill: "paper",
        points: [at(x(0) - 46, y - 9), at(x(0) + 46, y - 9), at(x(0) + 46, y + 9), at(x(0) - 46, y + 9)],
      });
      items.push({ kind: "dust", shape: "strip", at: at(x(0), y), sdXMm: 18, sdYMm: 12, seed: index + 1, dots: 50 });
      return;
    }
    if (worst === undefined || Math.abs(w) > Math.abs(worst.w)) worst = { name: row.name, w };
    const ink = row.again === true ? "mark-line" : "ink";
    const tip = Math.abs(x(w) - x(0)) < 1 ? x(0) + 1 : x(w);
    items.push({ kind: "solid", ink, points: [at(x(0), y - 5), at(tip, y - 5), at(tip, y + 5), at(x(0), y + 5)] });
    items.push({
      kind: "dust",
      shape: "strip",
      at: at(x(w), y),
      sdXMm: x(1) - x(0),
      sdYMm: 14,
      seed: index + 1,
      dots: 40,
      ...(row.again === true ? { accent: true } : {}),
    });
    items.push({
      kind: "text",
      role: row.again === true ? "accent" : "note",
      at: at(right, y),
      text: numberWords(w, 1),
      shiftPx: [12, -6],
    });
  });
  const found: { name: string; w: number } | undefined = worst;
  return {
    label:
      found === undefined
        ? say("drawing.residual-bars.no-measurement-can-be-checked-against")
        : say("drawing.residual-bars.largest-disagreement-standard-deviations-the-limit", {
            found: found.name,
            deviations: numberWords(found.w, 1),
            limit: numberWords(limit, 2),
            residualDust: RESIDUAL_DUST,
          }),
    view: { xMm: -2, yMm: -32, widthMm: width + 4, heightMm: height + 36 },
    widthMm: wide ? 175 : 86,
    nominalWidthPx: width + 4,
    items,
  };
}
