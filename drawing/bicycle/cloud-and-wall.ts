import type { Band } from "@coldset/core/quantity";
import { say as sayText } from "@coldset/core/texts";
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
  /** A second wall above a least limit: the number must stand between the two. */
  readonly most?: number;
  readonly decimals?: number;
  /** The stretch shown; chosen from value, band and limit otherwise. */
  readonly from?: number;
  readonly to?: number;
}

/** Drawn in px of the look: 280 wide. */
const WIDTH = 280;
const TOP = 80;
const LINE_Y = 44;
/** Letters stand under the line in one row, and in a second one only where they would run into each other. */
const ROW_Y = [LINE_Y - 21, LINE_Y - 40] as const;
const LETTER_PX = 8.2;

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
  const highest = Math.max(value, band?.high ?? value, input.limit, input.most ?? input.limit);
  // A band gives the scale by itself; without one a tenth of the limit is shown at least.
  const least = band === undefined ? Math.abs(input.limit) * 0.1 : 0;
  const spare = Math.max(highest - lowest, least, 1e-6) * 0.4;
  const from = input.from ?? lowest - spare;
  const to = input.to ?? highest + spare;
  const x = (n: number) => 8 + (WIDTH - 16) * Math.min(1, Math.max(0, (n - from) / (to - from)));
  const wallX = x(input.limit);
  const items: Item[] = [];
  const behind = input.limitIs === "least" ? ([8, wallX] as const) : ([wallX, WIDTH - 8] as const);
  if (behind[1] > behind[0]) {
    items.push({ kind: "hatch", hatch: "short", path: rectangle(behind[0], LINE_Y, behind[1] - behind[0], 30) });
  }
  const mostX = input.most === undefined || input.limitIs === "most" ? undefined : x(input.most);
  if (mostX !== undefined && mostX < WIDTH - 8) {
    items.push({ kind: "hatch", hatch: "short", path: rectangle(mostX, LINE_Y, WIDTH - 8 - mostX, 30) });
  }
  items.push({ kind: "line", role: "after", from: at(8, LINE_Y), to: at(WIDTH - 8, LINE_Y) });
  const say = `${input.what}: `;
  // Money and counts have no unit: no gap is left for one.
  const unit = input.unit === "" ? "" : ` ${input.unit}`;
  const plain = (n: number) => numberWords(n, decimals).replace(/\.0+$/, "");
  const limitWords =
    mostX === undefined || input.most === undefined
      ? sayText("drawing.cloud-and-wall.limit", { limit: plain(input.limit) })
      : sayText("drawing.cloud-and-wall.to", { limit: plain(input.limit), most: plain(input.most) });
  const wallAt = (atX: number): Item => ({
    kind: "line",
    role: "cut",
    from: at(atX, LINE_Y - 5),
    to: at(atX, LINE_Y + 33),
  });
  const walls = mostX === undefined ? [wallAt(wallX)] : [wallAt(wallX), wallAt(mostX)];
  /** What stands in the first row of letters already, left and right. */
  const taken: (readonly [number, number])[] = [];
  let label: string;
  if (!known) {
    items.push(...walls, {
      kind: "text",
      role: "note",
      at: at(wallX + (input.limitIs === "least" ? 10 : -10), LINE_Y + 10),
      text: sayText("drawing.cloud-and-wall.not-measured"),
      anchor: input.limitIs === "least" ? "start" : "end",
      halo: true,
    });
    label = sayText("drawing.cloud-and-wall.not-measured-2", { name: say, limitWords, unit });
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
      items.push(...walls, {
        kind: "dust",
        shape: "strip",
        at: at((left + right) / 2, LINE_Y + 15),
        sdXMm: (right - left) / (2 * 1.96),
        sdYMm: 20,
        seed: 1,
        dots: 120,
      });
    } else {
      const long = sayText("drawing.number-words.as-entered").length * LETTER_PX;
      const right = v < WIDTH - long - 20;
      taken.push(right ? [v, v + 14 + long] : [v - 14 - long, v]);
      items.push(...walls, {
        kind: "text",
        role: "note",
        at: at(v + (right ? 14 : -14), ROW_Y[0]),
        text: sayText("drawing.number-words.as-entered"),
        anchor: right ? "start" : "end",
      });
    }
    taken.push([v - 12, v + 12]);
    items.push({
      kind: "solid",
      ink: "ink",
      points: [at(v - 8, LINE_Y - 12), at(v + 8, LINE_Y - 12), at(v, LINE_Y - 1)],
    });
    label = `${say}${numberWords(value, decimals)}${unit} ${bandWords(value, band, decimals)}; ${limitWords}${unit}.`;
  }
  const half = (limitWords.length * LETTER_PX) / 2;
  const middle = mostX === undefined ? wallX : (wallX + mostX) / 2;
  const centre = Math.min(WIDTH - 8 - half, Math.max(8 + half, middle));
  const free = taken.every(([left, right]) => centre + half + 6 < left || centre - half - 6 > right);
  items.push({
    kind: "text",
    role: "note",
    at: at(centre, free ? ROW_Y[0] : ROW_Y[1]),
    text: limitWords,
    anchor: "middle",
  });
  const foot = (free ? ROW_Y[0] : ROW_Y[1]) - 6;
  return {
    label,
    view: { xMm: 0, yMm: foot, widthMm: WIDTH, heightMm: TOP - foot },
    widthMm: 56,
    nominalWidthPx: WIDTH,
    items,
  };
}
