/** How is a remedy written down? One row per way to make a joint fit, from the tables of the trade, filled in per build. */
import type { SourceId } from "../quantity/index.js";
import type { Ability } from "../workshop/index.js";

/** A change that the remedy brings to another interface. `to` names a number that the joint fills in. */
export interface SideEffectRow {
  /** Port path: "frame.rear_spacing". */
  readonly port: string;
  /** Name of the number that the joint hands over (`values` of the overrides), e.g. "new_spacing". */
  readonly to?: string;
  /** Joints that must be looked at again. */
  readonly joints: readonly string[];
  /** May hold {names} of the same numbers. */
  readonly words: string;
}

export interface RemedyRow {
  /** Kebab-case, one per remedy in the whole program. */
  readonly id: string;
  /** Joint of the table: "J9". */
  readonly joint: `J${number}`;
  /** What is done, in a few words. May hold {names} of numbers that the joint hands over. */
  readonly what: string;
  readonly needs: readonly Ability[];
  readonly reversible: boolean;
  /** Net shop hours, common practice ± 50 %. */
  readonly hours: number;
  readonly risk: "L" | "M" | "H";
  /** A flame, or a machine that `needs` does not show. */
  readonly machine?: boolean;
  /** Own currency, where a price is known; otherwise hours x rate + consumables. */
  readonly costGiven?: number;
  readonly massG?: number;
  readonly sideEffects?: readonly SideEffectRow[];
  /** Safety rules that the remedy brings with it: S1 to S18. */
  readonly rules?: readonly string[];
  /** Always refused: shown with this reason, never offered. */
  readonly refused?: string;
  /** Only a frame builder does this, whatever this shop can do. */
  readonly builderOnly?: boolean;
  /** Another part takes the place: it does not make this pair fit. */
  readonly replacesPart?: boolean;
  readonly sources: readonly SourceId[];
}
