/**
 * What is a joint's answer? The verdict in one of the fixed words, the numbers that decided it with their limits, the
 * remedies that would turn it, and what to measure first where an attribute is not known.
 */
import type { Band, Caution, JointVerdict, NextStep, SourceId } from "../quantity/index.js";
import type { Ability, Place } from "../workshop/index.js";

/** A deciding number. `limit` says in words and numbers what it is held against. */
export interface DecidingNumber {
  /** "cup over bore", "gap at the chainstay, radius 329.5". */
  readonly name: string;
  readonly value: number;
  readonly unit: "mm" | "deg" | "N" | "count" | "ratio" | "kg" | "bar";
  readonly band?: Band;
  readonly limit?: {
    readonly low?: number;
    readonly high?: number;
    /** hard: a band across it means measure first; wanted: it flags. */
    readonly kind: "wanted" | "hard";
    readonly words: string;
  };
}

/** A change of a port that a remedy brings with it: read by other joints. */
export interface SideEffect {
  /** Port path such as "frame.rear_spacing" or "rotor_rear.plane". */
  readonly port: string;
  /** New value in the port's unit, where it is a number. */
  readonly to?: number;
  /** Joints that must be looked at again. */
  readonly joints: readonly string[];
  readonly words: string;
}

/** A remedy row of core/data/remedies.ts, filled in for this joint. */
export interface RemedyOffer {
  /** Id of the row: "cold-set-rear". */
  readonly id: string;
  readonly what: string;
  readonly needs: readonly Ability[];
  readonly hours: number;
  /** Own currency; by the ruling hours × rate + consumables where no price is given. */
  readonly cost: number;
  readonly massG: number;
  readonly reversible: boolean;
  readonly risk: "L" | "M" | "H";
  /** This shop has every ability. Otherwise: ask a builder. */
  readonly here: boolean;
  readonly missing: readonly Ability[];
  /** Conditions that travel with an ability here ("by the qualified volunteer only"). */
  readonly conditions: readonly string[];
  readonly sideEffects: readonly SideEffect[];
  /** A part of the bin that the remedy uses. */
  readonly part?: string;
  /** Safety rules that the remedy itself brings (gate, refuse): ids S1–S18. A refused remedy is shown, never offered. */
  readonly rules: readonly string[];
  readonly refused?: string;
  /** Another part takes the place: shown as the change that would turn the verdict, never reckoned with. */
  readonly replacesPart?: boolean;
}

/** One joint's answer. */
export interface JointAnswer {
  readonly id: `J${number}`;
  /** "headset cup – head tube" */
  readonly title: string;
  readonly between: readonly (Place | "frame")[];
  readonly verdict: JointVerdict;
  /** One sentence of few words: the answer. */
  readonly reason: string;
  readonly numbers: readonly DecidingNumber[];
  /** Cheapest first; those of this shop before those of a builder. */
  readonly remedies: readonly RemedyOffer[];
  readonly next?: NextStep;
  /** Safety rules that fire on this joint, by id; core/safety words them. */
  readonly rules: readonly {
    readonly rule: string;
    readonly level: "refuse" | "gate" | "flag";
    readonly why: string;
    readonly place?: Place;
    readonly part?: string;
  }[];
  readonly sources: readonly SourceId[];
  readonly cautions: readonly Caution[];
}
