import {
  type Drawing,
  type Fill,
  type Ink,
  LEAST_LETTER_PX,
  LEAST_PRINT_LETTER_MM,
  LETTER_ROLES,
  LINE_ROLES,
  type LineRole,
  type Point,
  PRINT_COLOUR,
  PRINT_LETTER_MM_PER_PX,
  PRINT_WEIGHT_MM_PER_PX,
} from "../model/index.js";
import { fixed } from "./escape.js";

export interface SvgOptions {
  readonly mode: "screen" | "print";
  /** Keeps ids of several drawings on one page apart. */
  readonly idPrefix?: string;
  /** Width at which it will be shown, px. Screen only. */
  readonly displayWidthPx?: number;
}

/** How does a place in the world become a place on this page, and a px of the look a length on it? */
export interface Page {
  readonly mode: "screen" | "print";
  readonly width: number;
  readonly height: number;
  /** Page units for one world mm. */
  readonly perMm: number;
  /** Page units for one px of the look, for offsets, slashes, balloons. */
  readonly perPx: number;
  readonly place: (p: Point) => { readonly x: number; readonly y: number };
  readonly weight: (weightPx: number) => number;
  readonly letter: (sizePx: number) => number;
  readonly colour: (ink: Fill) => string;
}

export function pageFor(drawing: Drawing, options: SvgOptions): Page {
  const { view } = drawing;
  const print = options.mode === "print";
  const width = print ? drawing.widthMm : (options.displayWidthPx ?? drawing.nominalWidthPx);
  const perMm = width / view.widthMm;
  const shrink = width / drawing.nominalWidthPx;
  const letter = (sizePx: number) =>
    print
      ? Math.max(LEAST_PRINT_LETTER_MM, sizePx * PRINT_LETTER_MM_PER_PX)
      : Math.max(LEAST_LETTER_PX, sizePx * shrink);
  const body = LETTER_ROLES.body.sizePx;
  return {
    mode: options.mode,
    width,
    height: view.heightMm * perMm,
    perMm,
    perPx: letter(body) / body,
    place: (p) => ({ x: (p.x - view.xMm) * perMm, y: (view.yMm + view.heightMm - p.y) * perMm }),
    weight: (weightPx) => (print ? weightPx * PRINT_WEIGHT_MM_PER_PX : weightPx),
    letter,
    colour: (ink) => (ink === "none" ? "none" : colourOf(ink, print)),
  };
}

function colourOf(ink: Ink, print: boolean): string {
  return print ? PRINT_COLOUR[ink] : `var(--${ink})`;
}

/** The attributes of a line in this role. */
export function lineLook(role: LineRole, page: Page, fill: Fill = "none"): string {
  const style: { ink: Ink; weightPx: number; dashPx?: readonly number[] } = LINE_ROLES[role];
  const dash =
    style.dashPx === undefined ? "" : ` stroke-dasharray="${style.dashPx.map((d) => fixed(page.weight(d))).join(" ")}"`;
  return `class="r-${role}" fill="${page.colour(fill)}" stroke="${page.colour(style.ink)}" stroke-width="${fixed(page.weight(style.weightPx))}" stroke-linecap="round" stroke-linejoin="round"${dash}`;
}
