import { at, type Drawing, type Item, numberWords, onCircle, type Point, pathOf } from "../model/index.js";

export interface TabPlaceInput {
  /** Holes of the tab from the axle and from each other, mm. */
  readonly nearMm: number;
  readonly farMm: number;
  readonly apartMm: number;
  /** Directions of the stays' centre lines from the axle, degrees anticlockwise, front to the right. */
  readonly chainstayDeg: number;
  readonly seatstayDeg: number;
  readonly chainstayMm?: number;
  readonly seatstayMm?: number;
}

/** Angle that the two holes span at the axle, degrees: law of cosines on the three distances. undefined where they close no triangle. */
export function holesSpanDeg(nearMm: number, farMm: number, apartMm: number): number | undefined {
  const cosine = (nearMm ** 2 + farMm ** 2 - apartMm ** 2) / (2 * nearMm * farMm);
  return Number.isFinite(cosine) && Math.abs(cosine) <= 1 ? (Math.acos(cosine) * 180) / Math.PI : undefined;
}

/**
 * Where do the two holes of the brake tab lie? To scale, from the left-hand side's directions as the bicycle is drawn: the axle, both
 * stays, and the two arcs on which the holes lie. The turn about the axle is not decided here, so the holes are dashed.
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
  return {
    label: `Brake tab to scale: holes ${short(input.nearMm)} and ${short(input.farMm)} mm from the axle and ${short(input.apartMm)} apart, between stays ${short(Math.abs(input.seatstayDeg - input.chainstayDeg))} degrees apart. The turn about the axle is not decided; one way is drawn.`,
    view: { xMm: -30, yMm: low, widthMm: reach + 40, heightMm: reach - low - 4 },
    widthMm: 56,
    nominalWidthPx: 280,
    items,
  };
}

const short = (n: number) => numberWords(n, 1).replace(/\.0$/, "");
