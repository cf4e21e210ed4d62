/**
 * How wide is a chain of each speed class, inside and outside?
 * Data: widths in mm between the inner plates and over the pins. A chain goes with the class of the narrowest part that it
 * runs through. Source: drive-chain-widths; the chain's own sheet wins.
 */
import { say } from "../texts/say.js";

export interface ChainClass {
  readonly name: string;
  /** Speeds of the cassettes it is made for; 1 = single speed and hub gears. */
  readonly speeds: readonly number[];
  readonly innerMm: number;
  readonly outerLowMm: number;
  readonly outerHighMm: number;
  readonly source: string;
}

/** Outer width of the 1/8 class is common practice for standard pins; one list gives 3.3 for its inner width. */
export const CHAIN_CLASSES: readonly ChainClass[] = [
  row("1/8", [1], 3.175, 8.6, 9.6, "drive-chain-widths-memory"),
  row(say("drive.chain-classes.3-32-6-speed"), [5, 6], 2.38, 7.8, 7.8, "drive-chain-widths"),
  row(say("drive.chain-classes.3-32-7-speed"), [7], 2.38, 7.3, 7.3, "drive-chain-widths"),
  row(say("drive.chain-classes.3-32-8-speed"), [8], 2.38, 7.0, 7.3, "drive-chain-widths"),
  row(say("drive.chain-classes.11-128-9-speed"), [9], 2.18, 6.5, 6.8, "drive-chain-widths"),
  row(say("drive.chain-classes.11-128-10-speed"), [10], 2.18, 5.84, 6.2, "drive-chain-widths"),
  row(say("drive.chain-classes.11-128-11-speed"), [11], 2.18, 5.46, 5.74, "drive-chain-widths"),
  row(say("drive.chain-classes.11-128-12-speed"), [12], 2.18, 5.15, 5.25, "drive-chain-widths"),
  row("13-speed", [13], 2.18, 4.9, 4.9, "drive-chain-widths"),
];

/** Which chain class goes with a cassette of so many speeds; undefined where the table has none. */
export function chainClassForSpeeds(speeds: number): ChainClass | undefined {
  return CHAIN_CLASSES.find((chain) => chain.speeds.includes(speeds));
}

function row(
  name: string,
  speeds: readonly number[],
  innerMm: number,
  outerLowMm: number,
  outerHighMm: number,
  source: string,
): ChainClass {
  return { name, speeds, innerMm, outerLowMm, outerHighMm, source };
}
