/**
 * Which sizes belong together on old and new bicycles? Nominal tables of head tubes, races, steerers, clamps, hub widths
 * and tyre and rim widths. Every row names its source; a part's own sheet wins.
 */
import type { SourceId } from "../quantity/index.js";

/** A head tube by the outside diameter of its cups. */
export interface HeadTubeRow {
  /** Cup outside diameters that bear this name: [nominal, as made], mm. */
  readonly cups: readonly number[];
  readonly words: string;
  /** Bore that the cup wants, mm. */
  readonly boreLow: number;
  readonly boreHigh: number;
  /** Press wanted: cup minus bore, mm. */
  readonly pressLow: number;
  readonly pressHigh: number;
  /** Steerers that headsets of this size are made for, mm. The first is the usual one. */
  readonly steerers: readonly number[];
  readonly source: SourceId;
}

export const HEAD_TUBES: readonly HeadTubeRow[] = [
  {
    cups: [30.0],
    words: "1 in, JIS",
    boreLow: 29.85,
    boreHigh: 29.9,
    pressLow: 0.1,
    pressHigh: 0.2,
    steerers: [25.4],
    source: "fit-headset-guide",
  },
  {
    cups: [30.2],
    words: "1 in, ISO",
    boreLow: 30.05,
    boreHigh: 30.1,
    pressLow: 0.1,
    pressHigh: 0.2,
    steerers: [25.4],
    source: "fit-headset-guide",
  },
  {
    cups: [34, 34.1],
    words: "1 1/8 in",
    boreLow: 33.9,
    boreHigh: 33.95,
    pressLow: 0.1,
    pressHigh: 0.2,
    steerers: [28.6, 25.4],
    source: "fit-headset-practice",
  },
  {
    cups: [37.0],
    words: "1 1/4 in",
    boreLow: 36.8,
    boreHigh: 36.9,
    pressLow: 0.1,
    pressHigh: 0.2,
    steerers: [31.8, 28.6],
    source: "fit-headset-practice",
  },
  // 44: the cutter leaves 43.95, press 0.05 (trade 4.1, builders' forum); judged around that value.
  {
    cups: [44.0],
    words: "44",
    boreLow: 43.93,
    boreHigh: 43.97,
    pressLow: 0.03,
    pressHigh: 0.07,
    steerers: [28.6, 38.1],
    source: "fit-headset-practice",
  },
];

/** How near a bore must lie to a row's window to bear its name, mm: wear and ovality stay below it. */
export const HEAD_TUBE_NAME_REACH_MM = 0.15;

/** Which head tube is this, by its bore? undefined where no row is near. */
export function headTubeByBore(boreMm: number): HeadTubeRow | undefined {
  let best: HeadTubeRow | undefined;
  let off = HEAD_TUBE_NAME_REACH_MM;
  for (const row of HEAD_TUBES) {
    const away = Math.max(row.boreLow - boreMm, boreMm - row.boreHigh, 0);
    if (away < off) {
      best = row;
      off = away;
    }
  }
  return best;
}

/** Which head tube is a cup of this outside diameter made for? */
export function headTubeByCup(cupMm: number): HeadTubeRow | undefined {
  return HEAD_TUBES.find((row) => row.cups.some((cup) => Math.abs(cup - cupMm) < 0.06));
}

/** A crown race by name: seat and race bear the same number; the race is ground 0.05 to 0.15 smaller. */
export interface RaceRow {
  readonly seat: number;
  readonly words: string;
  readonly source: SourceId;
}
export const RACE_SEATS: readonly RaceRow[] = [
  { seat: 26.4, words: "1 in, ISO", source: "fit-headset-codes" },
  { seat: 27.0, words: "1 in, JIS", source: "fit-headset-codes" },
  { seat: 30.0, words: "1 1/8 in", source: "fit-headset-codes" },
  { seat: 33.0, words: "1 1/4 in", source: "fit-headset-practice" },
  { seat: 39.8, words: "1 1/2 in", source: "fit-headset-codes" },
  { seat: 40.0, words: "1 1/2 in", source: "fit-headset-codes" },
];

/** A threaded steerer: its thread, its bore and the quill that goes into it. */
export interface SteererRow {
  readonly od: number;
  readonly words: string;
  readonly tpi: number;
  /** Outside diameter of the quill, mm. */
  readonly quill: number;
  /** Inside diameter of the threaded steerer, mm. */
  readonly bore: number;
  readonly source: SourceId;
}
export const STEERERS: readonly SteererRow[] = [
  // Bore of a 1 in threaded steerer 22.225 found; of 1 1/8 in taken the same way, 1 in exactly.
  { od: 25.4, words: "1 in", tpi: 24, quill: 22.2, bore: 22.225, source: "fit-steerer-tables" },
  { od: 28.6, words: "1 1/8 in", tpi: 26, quill: 25.4, bore: 25.5, source: "fit-steerer-tables" },
];

export function steererByOd(odMm: number): SteererRow | undefined {
  return STEERERS.find((row) => Math.abs(row.od - odMm) <= 0.15);
}

/** Shims from one clamp to the next that can be had: [bar, stem]. */
export const BAR_SHIMS: readonly (readonly [number, number])[] = [
  [25.4, 26.0],
  [25.4, 31.8],
  [26.0, 31.8],
];
/** Where levers sit: flat bars 22.2, drop bars 23.8 to 24.2. */
export const GRIP_ROWS = [
  { low: 22.1, high: 22.3, words: "flat bar, 22.2" },
  { low: 23.8, high: 24.2, words: "drop bar, 23.8 to 24.2" },
] as const;

/** Axle words to the diameter that stands in the slot or bore, mm. */
export const AXLE_DIAMETER_MM = {
  m10_solid: 10,
  m9_solid: 9,
  qr_10: 10,
  qr_9: 9,
  through_12: 12,
  through_15: 15,
  through_20: 20,
} as const;
export type AxleWord = keyof typeof AXLE_DIAMETER_MM;

/** In the workshop's words. */
export const AXLE_WORDS: Readonly<Record<AxleWord, string>> = {
  m10_solid: "solid M10 axle",
  m9_solid: "solid M9 axle",
  qr_10: "hollow M10 axle with skewer",
  qr_9: "hollow M9 axle with skewer",
  through_12: "through axle 12",
  through_15: "through axle 15",
  through_20: "through axle 20",
};

/** Rim inner widths by nominal tyre width, older ISO 5775-1 table for crotchet rims, mm (from memory). */
export const RIM_WIDTHS_BY_TYRE: readonly { readonly tyre: number; readonly rims: readonly number[] }[] = [
  { tyre: 20, rims: [13, 15] },
  { tyre: 23, rims: [13, 15] },
  { tyre: 25, rims: [13, 15, 17] },
  { tyre: 28, rims: [15, 17, 19] },
  { tyre: 32, rims: [15, 17, 19] },
  { tyre: 35, rims: [17, 19, 21] },
  { tyre: 37, rims: [17, 19, 21, 23] },
  { tyre: 40, rims: [19, 21, 23] },
  { tyre: 44, rims: [19, 21, 23, 25] },
  { tyre: 47, rims: [19, 21, 23, 25, 27] },
  { tyre: 50, rims: [21, 23, 25, 27, 30.5] },
  { tyre: 54, rims: [23, 25, 27, 29, 30.5] },
  { tyre: 57, rims: [23, 25, 27, 29, 30.5] },
];

/**
 * Does the table list this tyre on this rim? A width that has no row of its own is listed where both neighbours list the
 * rim; outside the table nothing is listed.
 */
export function tyreOnRimListed(tyreMm: number, rimMm: number): boolean {
  const below = RIM_WIDTHS_BY_TYRE.filter((row) => row.tyre <= tyreMm).at(-1);
  const above = RIM_WIDTHS_BY_TYRE.find((row) => row.tyre >= tyreMm);
  const lists = (row: { readonly rims: readonly number[] }) => row.rims.some((rim) => Math.abs(rim - rimMm) < 0.5);
  return below !== undefined && above !== undefined && lists(below) && lists(above);
}

/** Distance of the brake boss from the axle by bead seat diameter, mm. */
export const BOSS_RADIUS_MM: readonly { readonly bsd: number; readonly radius: number }[] = [
  { bsd: 622, radius: 283 },
  { bsd: 584, radius: 265 },
  { bsd: 559, radius: 253.5 },
];
