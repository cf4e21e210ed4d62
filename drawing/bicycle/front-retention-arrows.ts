import type { Band } from "@coldset/core/quantity";
import { at, bandWords, type Drawing, type Item, numberWords, onCircle, type Segment } from "../model/index.js";

export interface FrontRetentionInput {
  /** How the fork's end holds the axle. */
  readonly end: "closed" | "open-down";
  /** Force along the slot that pushes the axle out, N. */
  readonly pushOutN: number;
  readonly pushOutBand?: Band;
  /** What the clamp holds, N; left out when it is not known. */
  readonly gripN?: number;
  readonly gripBand?: Band;
}

/**
 * Does the brake push the axle out of its slot, and what holds it? The fork's end seen from the side; arrows to one scale: down what pushes
 * out, up what the clamp holds. A closed end is drawn closed.
 */
export function frontRetentionArrows(input: FrontRetentionInput): Drawing {
  const push = Number.isFinite(input.pushOutN) ? input.pushOutN : undefined;
  const grip = input.gripN !== undefined && Number.isFinite(input.gripN) ? input.gripN : undefined;
  const most = Math.max(1, Math.abs(push ?? 0), Math.abs(grip ?? 0));
  const long = (n: number) => (Math.abs(n) / most) * 78;
  const axle = at(90, 130);
  const slot = 12;
  const foot = 94;
  const body: readonly Segment[] = [
    { op: "move", to: at(60, 250) },
    { op: "line", to: at(120, 250) },
    { op: "line", to: at(120, 150) },
    { op: "quad", control: at(126, 118), to: at(118, foot) },
    { op: "line", to: at(90 + slot, foot) },
    ...(input.end === "open-down"
      ? ([
          { op: "line", to: at(90 + slot, axle.y) },
          { op: "arc", centre: axle, radiusMm: slot, startDeg: 0, endDeg: 180 },
        ] as const)
      : []),
    { op: "line", to: at(90 - slot, foot) },
    { op: "line", to: at(62, foot) },
    { op: "quad", control: at(54, 118), to: at(60, 150) },
    { op: "close" },
  ];
  const items: Item[] = [
    { kind: "path", role: "cut", path: body, fill: "sheet" },
    { kind: "circle", role: "after", centre: axle, radiusMm: slot - 2, fill: "sheet" },
    { kind: "line", role: "axis", from: at(axle.x - 20, axle.y), to: at(axle.x + 20, axle.y) },
    { kind: "line", role: "axis", from: at(axle.x, axle.y - 20), to: at(axle.x, axle.y + 20) },
    { kind: "arc", role: "dimension", centre: axle, radiusMm: 74, startDeg: -30, endDeg: 64 },
    { kind: "text", role: "note", at: onCircle(axle, 74, 40), text: "rotor", shiftPx: [8, 0] },
  ];
  const words = (n: number | undefined, band: Band | undefined) =>
    n === undefined ? "not known" : `${numberWords(n, 0)} N ${bandWords(n, band, 0)}`;
  if (push !== undefined && push !== 0) {
    items.push({ kind: "arrow", role: "cut", from: at(axle.x, foot - 6), to: at(axle.x, foot - 6 - long(push)) });
  }
  items.push(
    { kind: "text", role: "strong", at: at(150, 62), text: "pushes out" },
    { kind: "text", role: "body", at: at(150, 40), text: words(push, input.pushOutBand) },
  );
  if (grip !== undefined && grip !== 0) {
    items.push({ kind: "arrow", role: "cut", from: at(30, axle.y - 20), to: at(30, axle.y - 20 + long(grip)) });
  }
  const holds = input.end === "closed" ? "closed end holds it" : "clamp holds";
  items.push(
    { kind: "text", role: "strong", at: at(150, 240), text: holds },
    {
      kind: "text",
      role: "body",
      at: at(150, 218),
      text: input.end === "closed" && grip === undefined ? "no slot to leave by" : words(grip, input.gripBand),
    },
  );
  return {
    label: `Fork end ${input.end === "closed" ? "closed" : "open downwards"}; the brake pushes out with ${words(push, input.pushOutBand)}; the clamp holds ${words(grip, input.gripBand)}.`,
    view: { xMm: 0, yMm: 0, widthMm: 330, heightMm: 260 },
    widthMm: 66,
    nominalWidthPx: 330,
    items,
  };
}
