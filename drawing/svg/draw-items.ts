import {
  at,
  DUST_DOT_PX,
  type DustItem,
  dustDots,
  flattened,
  HATCHES,
  HAZE_SCREEN,
  type HatchItem,
  hatchLines,
  type Item,
  LINE_ROLES,
  type Point,
  pathOf,
  type TextItem,
  type TubeItem,
} from "../model/index.js";
import { fixed } from "./escape.js";
import { angle, arrow, balloon, dimension } from "./marks.js";
import { lineLook, type Page } from "./page.js";
import { arcOf, circle, letters, pathData, spot, stroke } from "./strokes.js";

export function drawItems(items: readonly Item[], page: Page): string {
  return items.map((item) => drawItem(item, page)).join("");
}

function drawItem(item: Item, page: Page): string {
  switch (item.kind) {
    case "line":
      return stroke(pathOf([item.from, item.to]), item.role, page);
    case "polyline":
      return stroke(pathOf(item.points, item.closed ?? false), item.role, page, item.fill);
    case "path":
      return stroke(item.path, item.role, page, item.fill);
    case "circle":
      return circle(item.centre, item.radiusMm * page.perMm, lineLook(item.role, page, item.fill), page);
    case "arc":
      return stroke([{ op: "arc", ...arcOf(item) }], item.role, page);
    case "tube":
      return tube(item, page);
    case "solid":
      return `<path fill="${page.colour(item.ink)}" d="${pathData(pathOf(item.points, true), page)}"/>`;
    case "text":
      return text(item, page);
    case "dimension":
      return dimension(item, page);
    case "angle":
      return angle(item, page);
    case "hatch":
      return hatch(item, page);
    case "dust":
      return dust(item, page);
    case "balloon":
      return balloon(item, page);
    case "arrow":
      return arrow(item, page);
    case "group":
      return `<g class="g-${item.name.replace(/[^a-z-]/g, "-")}">${drawItems(item.items, page)}</g>`;
  }
}

function tube(item: TubeItem, page: Page): string {
  const d = pathData(item.path, page);
  const edge = page.weight(LINE_ROLES[item.role].weightPx);
  const width = item.outsideMm * page.perMm;
  const cap = item.roundEnds === true ? "round" : "butt";
  const one = (colour: string, wide: number) =>
    `<path fill="none" stroke="${colour}" stroke-width="${fixed(Math.max(wide, edge / 2))}" stroke-linecap="${cap}" stroke-linejoin="round" d="${d}"/>`;
  const walls =
    one(page.colour(LINE_ROLES[item.role].ink), width + edge) + one(page.colour("sheet"), Math.max(width - edge, 0));
  return item.roundEnds === true ? walls : walls + tubeEnds(item, page);
}

/** The two short lines that close a tube at its ends. */
function tubeEnds(item: TubeItem, page: Page): string {
  const chain = flattened(item.path)[0] ?? [];
  const ends: [Point | undefined, Point | undefined][] = [
    [chain[0], chain[1]],
    [chain.at(-1), chain.at(-2)],
  ];
  let out = "";
  for (const [end, next] of ends) {
    if (end === undefined || next === undefined) continue;
    const long = Math.hypot(next.x - end.x, next.y - end.y);
    if (long === 0) continue;
    const across = {
      x: (-(next.y - end.y) / long) * (item.outsideMm / 2),
      y: ((next.x - end.x) / long) * (item.outsideMm / 2),
    };
    out += stroke(
      pathOf([at(end.x + across.x, end.y + across.y), at(end.x - across.x, end.y - across.y)]),
      item.role,
      page,
    );
  }
  return out;
}

function text(item: TextItem, page: Page): string {
  const p = page.place(item.at);
  const [dx, dy] = item.shiftPx ?? [0, 0];
  return letters(item.text, item.role, p.x + dx * page.perPx, p.y - dy * page.perPx, page, {
    anchor: item.anchor,
    turnDeg: -(item.rotateDeg ?? 0),
    halo: item.halo,
  });
}

function hatch(item: HatchItem, page: Page): string {
  const style = HATCHES[item.hatch];
  const perPx = page.mode === "print" ? page.perPx : 1;
  const { strokes, dots } = hatchLines(item.path, item.hatch, perPx / page.perMm);
  const weight = page.mode === "print" ? style.weightPx * perPx : style.weightPx;
  const d = strokes.map(([a, b]) => `M${spot(a, page)}L${spot(b, page)}`).join("");
  const dotted = dots.map((p) => `M${spot(p, page)}h.01`).join("");
  const look = (cap: string) =>
    `class="h-${item.hatch}" fill="none" stroke="${page.colour("ink")}" stroke-width="${fixed(weight)}" stroke-linecap="${cap}"`;
  let out = "";
  if (d !== "") out += `<path ${look("butt")} d="${d}"/>`;
  if (dotted !== "") out += `<path ${look("round")} d="${dotted}"/>`;
  if (item.role !== undefined) out += stroke(item.path, item.role, page);
  return out;
}

function dust(item: DustItem, page: Page): string {
  const d = dustDots(item)
    .map((p) => `M${spot(p, page)}h.01`)
    .join("");
  const ink = item.accent === true ? "mark-line" : "ink";
  const opacity = page.mode === "screen" && item.accent !== true ? ` opacity="${HAZE_SCREEN}"` : "";
  return `<path class="dust" fill="none" stroke="${page.colour(ink)}" stroke-width="${fixed(page.weight(DUST_DOT_PX))}" stroke-linecap="round"${opacity} d="${d}"/>`;
}
