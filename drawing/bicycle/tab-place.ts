import type { Band } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { at, bandWords, type Drawing, type Item, numberWords, onCircle, type Point, pathOf } from "../model/index.js";

export interface TabPlaceInput {
  /** Holes of the tab from the axle and from each other, mm. */
  readonly nearMm: number;
  readonly farMm: number;
  readonly apartMm: number;
  /** Directions of the stays' centre lines from the axle, degrees anticlockwise, front to the right. */
  readonly chainstayDeg: number;
  readonly seatstayDeg: number;
  /** The angle between the stays with its band, degrees, as measured at the axle; without it the drawn one, as entered. */
  readonly between?: { readonly deg: number; readonly band: Band };
  readonly chainstayMm?: number;
  readonly seatstayMm?: number;
}

/** How many times wider than it is the dust at a stay's end is drawn. */
export const TAB_DUST_WIDENING = 10;

/** Angle that the two holes span at the axle, degrees: law of cosines on the three distances. undefined where they close no triangle. */
export function holesSpanDeg(nearMm: number, farMm: number, apartMm: number): number | undefined {
  const cosine = (nearMm ** 2 + farMm ** 2 - apartMm ** 2) / (2 * nearMm * farMm);
  return Number.isFinite(cosine) && Math.abs(cosine) <= 1 ? (Math.acos(cosine) * 180) / Math.PI : undefined;
}

/**
 * Where do the two holes of the brake tab lie? To scale, from the left-hand side's directions as the bicycle is drawn: the axle, both
 * stays, and the two arcs on which the holes lie. The turn about the axle is not decided here, so the holes are dashed. Dust at the
 * stays' ends, ten times as wide as it is: how surely the angle between them is known, half of it at each. The holes are to be made, so they have no dust.
 */
export function tabPlace(input: TabPlaceInput): Drawing {
  const axle = at(0, 0);
  const reach = input.farMm + 34;
  const stay = (deg: number, outsideMm: number): Item => ({
    kind: "tube",
    role: "after",
    path: pathOf([onCircle(axle, 15, deg), onCircle(axle, reach, deg)]),
    outsideMm,
  });
  const span = holesSpanDeg(input.nearMm, input.farMm, input.apartMm);
  const middle = (input.chainstayDeg + input.seatstayDeg) / 2;
  const items: Item[] = [];
  for (const radiusMm of [input.nearMm, input.farMm])
    items.push({
      kind: "arc",
      role: "construction",
      centre: axle,
      radiusMm,
      startDeg: input.chainstayDeg,
      endDeg: input.seatstayDeg,
    });
  items.push(stay(input.chainstayDeg, input.chainstayMm ?? 19), stay(input.seatstayDeg, input.seatstayMm ?? 15));
  const { between } = input;
  if (between !== undefined) {
    const eachDeg = (between.band.high - between.band.low) / 2 / 2 / 1.96;
    for (const [deg, seed] of [
      [input.chainstayDeg, 1],
      [input.seatstayDeg, 2],
    ] as const)
      items.push({
        kind: "dust",
        shape: "strip",
        at: onCircle(axle, reach - 12, deg),
        sdXMm: (reach - 12) * ((eachDeg * Math.PI) / 180) * TAB_DUST_WIDENING,
        sdYMm: 22,
        rotateDeg: deg + 90,
        seed,
        dots: 50,
      });
  }
  let holes: readonly Point[] = [];
  if (span !== undefined) {
    holes = [onCircle(axle, input.nearMm, middle - span / 2), onCircle(axle, input.farMm, middle + span / 2)];
    const [near = axle, far = axle] = holes;
    items.push(
      { kind: "line", role: "axis", from: axle, to: near },
      { kind: "line", role: "axis", from: axle, to: far },
      { kind: "line", role: "unknown", from: near, to: far },
    );
  }
  for (const hole of holes) items.push({ kind: "circle", role: "after", centre: hole, radiusMm: 5, fill: "paper" });
  items.push(
    { kind: "circle", role: "after", centre: axle, radiusMm: 16, fill: "sheet" },
    { kind: "circle", role: "construction", centre: axle, radiusMm: 5, fill: "ink" },
  );
  const [near, far] = holes;
  if (near !== undefined && far !== undefined)
    items.push(
      { kind: "text", role: "strong", at: near, text: short(input.nearMm), shiftPx: [14, -4], halo: true },
      { kind: "text", role: "strong", at: far, text: short(input.farMm), shiftPx: [14, -6], halo: true },
    );
  const low = -26;
  const drawnDeg = Math.abs(input.seatstayDeg - input.chainstayDeg);
  const stays =
    between === undefined
      ? say("drawing.tab-place.degrees-apart-as-drawn-as-entered", { drawnDeg: short(drawnDeg) })
      : say("drawing.tab-place.degrees-apart", {
          deg: short(between.deg),
          band: bandWords(between.deg, between.band, 1),
        });
  return {
    label: say("drawing.tab-place.brake-tab-to-scale-holes-and", {
      nearMm: short(input.nearMm),
      farMm: short(input.farMm),
      apartMm: short(input.apartMm),
      stays,
      between: between === undefined ? "" : say("drawing.tab-place.the-dust-at-the-ends-of"),
    }),
    view: { xMm: -30, yMm: low, widthMm: reach + 40, heightMm: reach - low - 4 },
    widthMm: 56,
    nominalWidthPx: 280,
    items,
  };
}

const short = (n: number) => numberWords(n, 1).replace(/\.0$/, "");
