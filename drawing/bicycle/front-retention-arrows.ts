import type { Band } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { at, bandWords, type Drawing, type Item, numberWords, onCircle, type Segment } from "../model/index.js";

export interface FrontRetentionInput {
  /** How the fork's end holds the axle. */
  readonly end: "closed" | "open-down";
  /** Force along the slot that pushes the axle out, N. */
  readonly pushOutN: number;
  readonly pushOutBand?: Band;
  /** Said of a force without a band in place of "as entered": "reckoned, no band". */
  readonly pushOutNote?: string;
  /** What the clamp holds, N; left out when it is not known. */
  readonly gripN?: number;
  readonly gripBand?: Band;
  readonly gripNote?: string;
}

/**
 * Does the brake push the axle out of its slot, and what holds it? The fork's end seen from the side; arrows to one scale: down what pushes
 * out, up what the clamp holds. An arrow whose force has a band ends in dust. A closed end is drawn closed.
 */
export function frontRetentionArrows(input: FrontRetentionInput): Drawing {
  const push = Number.isFinite(input.pushOutN) ? input.pushOutN : undefined;
  const grip = input.gripN !== undefined && Number.isFinite(input.gripN) ? input.gripN : undefined;
  const reach = (n: number | undefined, band: Band | undefined) =>
    n === undefined ? 0 : Math.max(Math.abs(n), Math.abs(band?.high ?? 0), Math.abs(band?.low ?? 0));
  const most = Math.max(1, reach(push, input.pushOutBand), reach(grip, input.gripBand));
  const long = (n: number) => (Math.abs(n) / most) * 78;
  /** The arrow's end is as uncertain as its force: dust over its band, along the arrow. */
  const haze = (x: number, yAt: (n: number) => number, band: Band | undefined, seed: number): readonly Item[] =>
    band === undefined
      ? []
      : [
          {
            kind: "dust",
            shape: "strip",
            at: at(x, (yAt(Math.abs(band.low)) + yAt(Math.abs(band.high))) / 2),
            sdXMm: Math.abs(yAt(Math.abs(band.high)) - yAt(Math.abs(band.low))) / (2 * 1.96),
            sdYMm: 30,
            rotateDeg: 90,
            seed,
            dots: 60,
          },
        ];
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
  const words = (n: number | undefined, band: Band | undefined, note: string | undefined) =>
    n === undefined
      ? say("drawing.front-retention-arrows.not-known")
      : `${numberWords(n, 0)} N ${band === undefined && note !== undefined ? note : bandWords(n, band, 0)}`;
  const pushWords = words(push, input.pushOutBand, input.pushOutNote);
  const gripWords = words(grip, input.gripBand, input.gripNote);
  if (push !== undefined && push !== 0) {
    const end = (n: number) => foot - 6 - long(n);
    items.push(
      { kind: "arrow", role: "cut", from: at(axle.x, foot - 6), to: at(axle.x, end(push)) },
      ...haze(axle.x, end, input.pushOutBand, 1),
    );
  }
  items.push(
    { kind: "text", role: "strong", at: at(150, 62), text: say("drawing.front-retention-arrows.pushes-out") },
    { kind: "text", role: "body", at: at(150, 40), text: pushWords },
  );
  if (grip !== undefined && grip !== 0) {
    const end = (n: number) => axle.y - 20 + long(n);
    items.push(
      { kind: "arrow", role: "cut", from: at(30, axle.y - 20), to: at(30, end(grip)) },
      ...haze(30, end, input.gripBand, 2),
    );
  }
  const holds =
    input.end === "closed"
      ? say("drawing.front-retention-arrows.closed-end-holds-it")
      : say("drawing.front-retention-arrows.clamp-holds");
  items.push(
    { kind: "text", role: "strong", at: at(150, 240), text: holds },
    {
      kind: "text",
      role: "body",
      at: at(150, 218),
      text:
        input.end === "closed" && grip === undefined
          ? say("drawing.front-retention-arrows.no-slot-to-leave-by")
          : gripWords,
    },
  );
  return {
    label: say("drawing.front-retention-arrows.fork-end-the-brake-pushes-out", {
      end: input.end === "closed" ? "closed" : say("drawing.front-retention-arrows.open-downwards"),
      pushWords,
      gripWords,
    }),
    view: { xMm: 0, yMm: 0, widthMm: 330, heightMm: 260 },
    widthMm: 66,
    nominalWidthPx: 330,
    items,
  };
}
