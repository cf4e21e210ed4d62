import type { Band } from "@coldset/core/quantity";
import { at, bandWords, type Drawing, type Item, numberWords, rectangle } from "../model/index.js";

export interface CloudAndWallInput {
  /** What the number is, for the sentence: "gap tyre to chainstay". */
  readonly what: string;
  /** Unknown is not zero: leave it out when it has not been measured. */
  readonly value?: number;
  readonly band?: Band;
  readonly unit: string;
  readonly limit: number;
  /** "least": it must not be smaller than the limit (wall on the left). "most": not greater (wall on the right). */
  readonly limitIs: "least" | "most";
  readonly decimals?: number;
  /** The stretch shown; chosen from value, band and limit otherwise. */
  readonly from?: number;
  readonly to?: number;
}

/** Drawn in px of the look: 280 wide. */
const WIDTH = 280;
const HEIGHT = 74;
const LINE_Y = 40;

/**
 * Where does the number stand against its limit? The dust is the number, 95 % of it inside its band; the wall is the limit with hatched
 * ground behind. A number without a band is one solid triangle and says "as entered". One world mm is one px of the look.
 */
export function cloudAndWall(input: CloudAndWallInput): Drawing {
  const decimals = input.decimals ?? 1;
  const known = input.value !== undefined && Number.isFinite(input.value);
  const value = known && input.value !== undefined ? input.value : input.limit;
  const band = known ? input.band : undefined;
  const lowest = Math.min(value, band?.low ?? value, input.limit);
  const highest = Math.max(value, band?.high ?? value, input.limit);
  const spare = Math.max(highest - lowest, Math.abs(input.limit) * 0.1, 1e-6) * 0.4;
  const from = input.from ?? lowest - spare;
  const to = input.to ?? highest + spare;
  const x = (n: number) => 8 + (WIDTH - 16) * Math.min(1, Math.max(0, (n - from) / (to - from)));
  const wallX = x(input.limit);
  const items: Item[] = [];
  const behind = input.limitIs === "least" ? ([8, wallX] as const) : ([wallX, WIDTH - 8] as const);
  if (behind[1] > behind[0]) {
    items.push({ kind: "hatch", hatch: "short", path: rectangle(behind[0], LINE_Y, behind[1] - behind[0], 30) });
  }
  items.push({ kind: "line", role: "after", from: at(8, LINE_Y), to: at(WIDTH - 8, LINE_Y) });
  const say = `${input.what}: `;
  const limitWords = `limit ${numberWords(input.limit, decimals).replace(/\.0+$/, "")}`;
  const wall: Item = {
    kind: "line",
    role: "cut",
    from: at(wallX, LINE_Y - (band === undefined ? 0 : 6)),
    to: at(wallX, LINE_Y + 33),
  };
  let label: string;
  if (!known) {
    items.push(wall, {
      kind: "text",
      role: "note",
      at: at(wallX + (input.limitIs === "least" ? 10 : -10), LINE_Y + 10),
      text: "? not measured",
      anchor: input.limitIs === "least" ? "start" : "end",
      halo: true,
    });
    label = `${say}not measured; ${limitWords} ${input.unit}.`;
  } else {
    const v = x(value);
    if (band !== undefined) {
      const left = x(band.low);
      const right = x(band.high);
      items.push({
        kind: "polyline",
        role: "ornament",
        closed: true,
        fill: "paper",
        points: [at(left, LINE_Y + 4), at(right, LINE_Y + 4), at(right, LINE_Y + 26), at(left, LINE_Y + 26)],
      });
      items.push(wall, {
        kind: "dust",
        shape: "strip",
        at: at((left + right) / 2, LINE_Y + 15),
        sdXMm: (right - left) / (2 * 1.96),
        sdYMm: 20,
        seed: 1,
        dots: 120,
      });
    } else {
      const room = v < WIDTH - 110;
      items.push(wall, {
        kind: "text",
        role: "note",
        at: at(v + (room ? 14 : -14), LINE_Y - 15),
        text: "as entered",
        anchor: room ? "start" : "end",
      });
    }
    items.push({
      kind: "solid",
      ink: "ink",
      points: [at(v - 8, LINE_Y - 12), at(v + 8, LINE_Y - 12), at(v, LINE_Y - 1)],
    });
    label = `${say}${numberWords(value, decimals)} ${input.unit} ${bandWords(value, band, decimals)}; ${limitWords} ${input.unit}.`;
  }
  const near = Math.abs(x(value) - wallX) < 44 && known;
  items.push({
    kind: "text",
    role: "note",
    at: at(Math.min(WIDTH - 8, Math.max(8, wallX)), near ? 0 : band === undefined ? 2 : 10),
    text: limitWords,
    anchor: wallX < 40 ? "start" : wallX > WIDTH - 40 ? "end" : "middle",
  });
  return {
    label,
    view: { xMm: 0, yMm: -4, widthMm: WIDTH, heightMm: HEIGHT + 4 },
    widthMm: 56,
    nominalWidthPx: WIDTH,
    items,
  };
}
