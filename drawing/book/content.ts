import type { Band, BoardVerdict } from "@coldset/core/quantity";
import type { Drawing } from "../model/index.js";

/**
 * What does a printed book hold? Plain data, in the order it is read. Texts are shown as they are, whatever stands in them.
 * No day is printed unless one is given in `revision`.
 */
export interface BookContent {
  readonly job: string;
  readonly title: string;
  readonly subtitle?: string;
  /** Shown in every title block: "rev. C, day 9". */
  readonly revision: string;
  readonly sections: readonly BookSection[];
}

export interface BookSection {
  readonly title: string;
  readonly lead?: string;
  /** Begins on its own sheet. */
  readonly newSheet?: boolean;
  /** Two posts beside the title: { word: "NOT TO CUT", why: "2 of 4 signatures missing" }. */
  readonly stamp?: { readonly word: string; readonly why: string };
  readonly blocks: readonly BookBlock[];
}

export type BookBlock =
  | HeadingBlock
  | ParagraphBlock
  | ListBlock
  | BoardBlock
  | FiguresBlock
  | TableBlock
  | DrawingBlock
  | CautionsBlock
  | SignaturesBlock
  | JointsBlock;

export interface HeadingBlock {
  readonly kind: "heading";
  readonly text: string;
}
export interface ParagraphBlock {
  readonly kind: "paragraph";
  /** Set in bold before the text. */
  readonly first?: string;
  readonly text: string;
}
export interface ListBlock {
  readonly kind: "list";
  /** Small and close: sources, what was not checked. */
  readonly close?: boolean;
  /** In two columns beside each other. */
  readonly inTwo?: boolean;
  readonly items: readonly string[];
}

/** A number with unit and band. Without a value it prints "?" and "measure first"; without a band "as entered". */
export interface BookQuantity {
  readonly value?: number;
  readonly unit: string;
  readonly band?: Band;
  readonly decimals?: number;
  /** What stands where no band is: "over by 27". Left out: "as entered". */
  readonly without?: string;
}

export type Stake = "safety" | "money" | "time";

export interface BoardRow {
  readonly number: number;
  readonly question: string;
  readonly answer: string;
  readonly detail?: string;
  readonly verdict: BoardVerdict;
  /** What the verdict is about: "guard", "35 days". After "no problem found": what was not checked. */
  readonly about?: string;
  readonly next?: string;
  readonly key?: BookQuantity;
  /** A few words under the key number. */
  readonly keyNote?: string;
  readonly drawing?: Drawing;
  /** Open rows are large, settled ones a line. */
  readonly open: boolean;
}
export interface BoardBlock {
  readonly kind: "board";
  readonly stake: Stake;
  readonly rows: readonly BoardRow[];
}
export interface FiguresBlock {
  readonly kind: "figures";
  readonly figures: readonly { readonly label: string; readonly quantity: BookQuantity }[];
}
export interface TableBlock {
  readonly kind: "table";
  readonly caption?: string;
  readonly columns: readonly { readonly head: string; readonly align?: "left" | "right"; readonly share?: number }[];
  /** Texts; a row shorter than the columns leaves the rest empty. */
  readonly rows: readonly (readonly string[])[];
}
export interface DrawingBlock {
  readonly kind: "drawing";
  readonly drawing: Drawing;
  readonly caption?: string;
  /** One world mm is one mm on paper, with the 100 mm bar. One that does not fit on the sheet is not printed, and says so. */
  readonly trueScale?: boolean;
}
export interface CautionsBlock {
  readonly kind: "cautions";
  readonly items: readonly { readonly first: string; readonly text: string }[];
}
/** Joints under each other: with their numbers, ways, next step and cautions, or (`line`) as one line with the deciding number. */
export interface JointsBlock {
  readonly kind: "joints";
  readonly joints: readonly JointEntry[];
}
export interface JointEntry {
  readonly id: string;
  readonly title: string;
  readonly verdict: BoardVerdict;
  readonly reason: string;
  readonly line?: boolean;
  /** On a line: the one deciding number, with its name. */
  readonly number?: string;
  /** Name, value with band, and what it is held against. */
  readonly numbers?: readonly (readonly [string, string, string])[];
  readonly ways?: readonly { readonly what: string; readonly facts: string; readonly taken: boolean }[];
  readonly next?: string;
  readonly cautions?: readonly { readonly first: string; readonly text: string }[];
}
export interface SignaturesBlock {
  readonly kind: "signatures";
  /** `signed`: name and day as entered by a person. Empty: a line to sign on. */
  readonly lines: readonly { readonly label: string; readonly signed?: string }[];
}
