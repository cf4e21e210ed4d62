import { say } from "../texts/say.js";
import type { MeasurementKind } from "./measurement-kinds.js";

/** Ways in which a reading goes wrong by hand and eye. */
export const SLIP_CAUSES = [
  "tube-edge",
  "centre-to-top",
  "tape-hooked-at-100",
  "ten-misread",
  "digits-swapped",
  "inch-for-mm",
  "cm-for-mm",
  "diameter-for-radius",
  "complement-angle",
  "sloping-floor",
] as const;
export type SlipCause = (typeof SLIP_CAUSES)[number];

/** What is known of the tubes; what is left out is assumed and said so. */
export interface SlipContext {
  readonly seatTubeOdMm?: number | undefined;
  readonly topTubeOdMm?: number | undefined;
  readonly headTubeOdMm?: number | undefined;
  readonly downTubeOdMm?: number | undefined;
  /** Seat tube, BB centre to its top, as measured. */
  readonly seatTubeCtMm?: number | undefined;
}

/** One slip of one reading: what the reading should have been, had this happened. */
export interface Slip {
  readonly cause: SlipCause;
  readonly corrected: number;
  /** How it happened, for the builder. */
  readonly words: string;
  /**
   * What its rarity adds to chi-square when slips are ranked, -2 ln(how often against a tube edge).
   * Common practice, no source; the figures are our own judgement.
   */
  readonly rarity: number;
}

interface Tube {
  readonly name: string;
  readonly od: number;
  readonly assumed: boolean;
}

/** Which slips could have given this reading? Every one with the value it should have been. */
export function possibleSlips(kind: MeasurementKind, reading: number, context: SlipContext): Slip[] {
  const slips: Slip[] = [];
  const add = (cause: SlipCause, corrected: number, rarity: number, words: string): void => {
    if (corrected > 0 && Number.isFinite(corrected) && corrected !== reading) {
      slips.push({ cause, corrected, rarity, words });
    }
  };
  if (kind.unit === "deg") {
    if (kind.name !== "top_tube_slope_deg") {
      add("complement-angle", 90 - reading, 1, say("survey.slips.the-level-showed-the-angle-from"));
      add("complement-angle", 180 - reading, 1, say("survey.slips.the-angle-was-taken-on-the"));
    }
    addSwaps(reading, add);
    return slips;
  }
  addEdges(kind.name, reading, context, add);
  if (kind.name === "seat_tube_cc_mm" && context.topTubeOdMm !== undefined) {
    const half = context.topTubeOdMm / 2;
    add(
      "centre-to-top",
      reading - half,
      0.5,
      say("survey.slips.read-to-the-top-of-the", { topTubeOdMm: context.topTubeOdMm }),
    );
  }
  add("tape-hooked-at-100", reading - 100, 1, say("survey.slips.the-tape-began-at-its-100"));
  add("tape-hooked-at-100", reading + 100, 1, say("survey.slips.100-was-taken-off-although-the"));
  for (const [step, rarity] of [
    [10, 1],
    [20, 2],
    [30, 3],
  ] as const) {
    add("ten-misread", reading - step, rarity, say("survey.slips.the-scale-was-misread-too-much", { step }));
    add("ten-misread", reading + step, rarity, say("survey.slips.the-scale-was-misread-too-little", { step }));
  }
  addSwaps(reading, add);
  add("inch-for-mm", reading * 25.4, 1, say("survey.slips.inches-written-in-the-column-for"));
  add("inch-for-mm", reading / 25.4, 1, say("survey.slips.turned-from-inches-into-mm-although"));
  add("cm-for-mm", reading * 10, 1, say("survey.slips.centimetres-written-in-the-column-for"));
  add("cm-for-mm", reading / 10, 1, say("survey.slips.one-nought-too-many"));
  if (kind.name === "rear_axle_height_mm" || kind.name === "front_axle_height_mm") {
    add("diameter-for-radius", reading / 2, 0.5, say("survey.slips.the-diameter-of-the-wheel-was"));
    add("diameter-for-radius", reading * 2, 1, say("survey.slips.half-of-the-radius-was-written"));
  }
  return slips;
}

/** Of which tubes can an edge stand for the centre in this measurement? */
function addEdges(
  name: string,
  reading: number,
  context: SlipContext,
  add: (cause: SlipCause, corrected: number, rarity: number, words: string) => void,
): void {
  const tube = (word: string, od: number | undefined, usual: number): Tube => ({
    name: word,
    od: od ?? usual,
    assumed: od === undefined,
  });
  const seat = tube(say("survey.side-model.seat-tube"), context.seatTubeOdMm, 28.6);
  const top = tube(say("survey.side-model.top-tube"), context.topTubeOdMm, 28.6);
  const head = tube(say("survey.side-model.head-tube"), context.headTubeOdMm, 36);
  const down = tube(say("survey.slips.down-tube"), context.downTubeOdMm, 31.8);
  const ends: Readonly<Record<string, readonly Tube[]>> = {
    seat_tube_cc_mm: [top],
    top_tube_actual_mm: [seat, head],
    down_tube_cc_mm: [head],
    rear_axle_to_seat_cluster_mm: [seat, top],
    front_axle_to_seat_cluster_mm: [seat, top],
    bb_to_head_tube_top_mm: [head],
    bb_to_head_tube_bottom_mm: [head],
    rear_axle_to_head_tube_top_mm: [head],
    front_axle_to_head_tube_top_mm: [head],
    top_tube_below_head_tube_top_mm: [top],
    down_tube_joint_above_head_tube_bottom_mm: [down],
  };
  const tubes = ends[name] ?? [];
  for (const t of tubes) {
    const of = say("survey.slips.half-of-the", { tube: t.name, od: t.od, assumed: t.assumed ? " assumed" : "" });
    const rarity = t.assumed ? 1 : 0;
    add("tube-edge", reading + t.od / 2, rarity, say("survey.slips.taken-to-the-tube-s-edge", { of }));
    add("tube-edge", reading - t.od / 2, rarity, say("survey.slips.taken-to-the-tube-s-far", { of }));
  }
  const [one, two] = tubes;
  if (name === "top_tube_actual_mm" && one !== undefined && two !== undefined) {
    const both = (one.od + two.od) / 2;
    const of = say("survey.slips.half-of-and-of", {
      one: one.name,
      oneOd: one.od,
      oneAssumed: one.assumed ? " assumed" : "",
      two: two.name,
      twoOd: two.od,
      twoAssumed: two.assumed ? " assumed" : "",
    });
    const rarity = one.assumed || two.assumed ? 1.5 : 0.5;
    add("tube-edge", reading + both, rarity, say("survey.slips.taken-edge-to-edge-not-centre", { of }));
    add("tube-edge", reading - both, rarity, say("survey.slips.taken-over-both-tubes-not-centre", { of }));
  }
}

function addSwaps(
  reading: number,
  add: (cause: SlipCause, corrected: number, rarity: number, words: string) => void,
): void {
  const digits = String(Math.abs(reading));
  for (let i = 0; i + 1 < digits.length; i++) {
    const a = digits.charAt(i);
    const b = digits.charAt(i + 1);
    if (a === b || a === "." || b === "." || (i === 0 && b === "0")) continue;
    const swapped = Number(digits.slice(0, i) + b + a + digits.slice(i + 2)) * Math.sign(reading);
    add("digits-swapped", swapped, 2, say("survey.slips.two-digits-swapped-written-as", { swapped, reading }));
  }
}

/** How far can the top of a seat tube stand above the centre of the top tube, mm? Common practice, no source. */
export const COLLAR_MM = { least: 10, most: 70 } as const;
