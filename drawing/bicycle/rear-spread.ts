import type { Band } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { at, bandWords, type Drawing, type Item, numberWords, type Point } from "../model/index.js";

export interface RearSpreadInput {
  /** Between the rear ends as they stand, mm. */
  readonly gapMm: number;
  /** Between the locknuts of the hub that is to go in, mm. */
  readonly hubMm: number;
  /** How much wider the hub is than the gap, with the tools' spread of both; without it both widths are as entered. */
  readonly overBand?: Band;
}

/** How many times wider than it is the set is drawn. */
export const SPREAD_WIDENING = 10;
const WIDTH = 280;
const HEIGHT = 164;
const ROOT_X = 14;
const END_X = 146;
const MIDDLE_Y = 94;
const GAP_PX = 42;

/**
 * How far are the rear ends set, seen from above? As they stand in pencil, as the hub asks for in ink; what lies between is drawn ten
 * times as wide as it is, and so is its dust, and the drawing says so. One world mm is one px of the look.
 */
export function rearSpread(input: RearSpreadInput): Drawing {
  const eachMm = (input.hubMm - input.gapMm) / 2;
  const known = Number.isFinite(eachMm);
  const perMm = (2 * GAP_PX) / (known ? input.gapMm : 130);
  const setPx = known ? Math.max(-GAP_PX + 12, Math.min(34, eachMm * perMm * SPREAD_WIDENING)) : 0;
  const eachWords = say("drawing.rear-spread.each-side", { eachMm: short(eachMm) });
  const items: Item[] = [];
  const stay = (side: 1 | -1, endPx: number): readonly Point[] => [
    at(ROOT_X, MIDDLE_Y + side * 17),
    at(END_X - 30, MIDDLE_Y + side * (endPx - 2)),
    at(END_X + 20, MIDDLE_Y + side * endPx),
  ];
  for (const side of [1, -1] as const) {
    const pencil = stay(side, GAP_PX);
    items.push({ kind: "polyline", role: "before", points: pencil });
    items.push({ kind: "polyline", role: "before", points: pencil.map((p) => at(p.x, p.y + side * 8)) });
  }
  for (const side of [1, -1] as const) {
    const [root = at(0, 0), knee = at(0, 0), end = at(0, 0)] = stay(side, GAP_PX + setPx);
    items.push({
      kind: "polyline",
      role: "after",
      closed: true,
      fill: "sheet",
      points: [
        root,
        knee,
        end,
        at(end.x, end.y + side * 8),
        at(knee.x, knee.y + side * 8),
        at(root.x, root.y + side * 8),
      ],
    });
  }
  const inner = GAP_PX + setPx;
  const each = halved(input.overBand);
  // What the band means is in the sentence; there is no room for it beside the stays.
  const inDrawing = each === undefined ? undefined : { ...each, means: "95 %" };
  if (each !== undefined && known)
    for (const side of [1, -1] as const)
      items.push({
        kind: "dust",
        shape: "strip",
        at: at(END_X + 10, MIDDLE_Y + side * inner),
        sdXMm: ((each.high - each.low) / (2 * 1.96)) * perMm * SPREAD_WIDENING,
        sdYMm: 26,
        rotateDeg: 90,
        seed: side === 1 ? 1 : 2,
        dots: 50,
      });
  items.push(
    { kind: "line", role: "axis", from: at(ROOT_X - 8, MIDDLE_Y), to: at(END_X + 24, MIDDLE_Y) },
    { kind: "line", role: "after", from: at(ROOT_X, MIDDLE_Y - 25), to: at(ROOT_X, MIDDLE_Y + 25) },
    {
      kind: "dimension",
      role: "dimension",
      from: at(END_X, MIDDLE_Y - inner),
      to: at(END_X, MIDDLE_Y + inner),
      offsetMm: 0,
      text: "",
    },
    { kind: "text", role: "strong", at: at(END_X + 30, MIDDLE_Y + 20), text: short(input.hubMm) },
    {
      kind: "text",
      role: "before",
      at: at(END_X + 30, MIDDLE_Y - 4),
      text: say("drawing.rear-spread.was", { gapMm: short(input.gapMm) }),
    },
    { kind: "text", role: "note", at: at(END_X + 30, MIDDLE_Y - 26), text: eachWords },
    { kind: "text", role: "note", at: at(END_X + 30, MIDDLE_Y - 46), text: bandWords(eachMm, inDrawing, 2) },
    { kind: "text", role: "note", at: at(ROOT_X, 6), text: say("drawing.rear-spread.the-set-is-drawn-ten-times") },
  );
  return {
    label: say("drawing.rear-spread.seen-from-above-the-rear-ends", {
      gapMm: short(input.gapMm),
      hubMm: short(input.hubMm),
      eachMm: short(eachMm),
      eachMm2: bandWords(eachMm, each, 2),
    }),
    view: { xMm: 0, yMm: 0, widthMm: WIDTH, heightMm: HEIGHT },
    widthMm: 56,
    nominalWidthPx: WIDTH,
    items,
  };
}

/** The set on one side is half of what lies over, and so is its band. */
function halved(over: Band | undefined): Band | undefined {
  return over === undefined ? undefined : { low: over.low / 2, high: over.high / 2, means: over.means };
}

const short = (n: number) => numberWords(n, 1).replace(/\.0$/, "");
