/**
 * What does the board show? Twenty questions, each with today's answer, how sure it is, and the one measurement or
 * decision that would settle it. Terminal, page and book print these rows; none of them computes anything.
 */
import type { Band, BoardVerdict, Caution, NextStep, SourceId } from "../quantity/index.js";

export type Stake = "hurt" | "money" | "time";

/** A figure with its unit and band. Without a band it is shown "as entered". */
export interface Figure {
  readonly name: string;
  readonly value: number;
  /** "mm", "°", "N", "day", "h", "%", "" … as printed. For money "". */
  readonly unit: string;
  readonly decimals: number;
  readonly band?: Band;
  /** "of 560", "limit 4": what it is held against, printed small after the figure. */
  readonly against?: string;
  readonly limit?: { readonly low?: number; readonly high?: number; readonly words: string };
}

export interface WorkingTable {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The working behind a question: words first, then figures and tables. */
export interface Working {
  readonly words: readonly string[];
  readonly figures: readonly Figure[];
  readonly tables: readonly WorkingTable[];
  /** What this answer did not look at. */
  readonly notChecked: readonly string[];
}

export interface BoardRow {
  /** 1 to 20, the number of the question; the board and `asked/` keep it. */
  readonly n: number;
  readonly question: string;
  readonly stake: Stake;
  /** The answer as a whole sentence of few words. */
  readonly answer: string;
  readonly verdict: BoardVerdict;
  /** What the verdict is about, when that is not plain ("guard", "FA"). */
  readonly about?: string;
  /** Further verdicts shown small ("refuse FC"). */
  readonly also: readonly { readonly verdict: BoardVerdict; readonly about: string }[];
  /** The key number. */
  readonly figure?: Figure;
  /** Something is still to be measured, decided or proven. */
  readonly open: boolean;
  readonly next?: NextStep;
  readonly working: Working;
  /** Ids of joints behind it. */
  readonly joints: readonly string[];
  readonly sources: readonly SourceId[];
  readonly cautions: readonly Caution[];
}
