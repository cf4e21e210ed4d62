/**
 * What would this remedy cost here, who can do it, and what else does it change?
 * Cost by the ruling: hours x shop rate + consumables for hand work, or for machine work where a machine or a flame is
 * used. Unknown shop rate: the hours carry no price and the offer says so in its conditions.
 */

import type { RemedyRow } from "../data/remedy-row.js";
import { say } from "../texts/say.js";
import type { Ability } from "../workshop/index.js";
import type { RemedyOffer, SideEffect } from "./joint.js";
import type { FitView } from "./view.js";

/** Work with these uses a machine or a flame (ruling on the money of a remedy). */
export const MACHINE_ABILITIES: readonly Ability[] = ["lathe", "mill", "weld", "braze", "drill", "ream_face", "spray"];

/** What the joint knows better than the row. */
export interface RemedyOverrides {
  /** Numbers for the {names} in the row's words and for `to` of its side effects. */
  readonly values?: Readonly<Record<string, number | string>>;
  readonly hours?: number;
  /** A part of the bin that the remedy uses; its cost and mass count. */
  readonly part?: { readonly id: string; readonly cost: number | undefined; readonly mass: number | undefined };
  /** Refused in this build, with the reason. */
  readonly refused?: string;
  readonly rules?: readonly string[];
  readonly conditions?: readonly string[];
  readonly builderOnly?: boolean;
}

/** The row as an offer in this build. */
export function offerRemedy(row: RemedyRow, view: FitView, overrides: RemedyOverrides = {}): RemedyOffer {
  const { shop, prices } = view.resolved;
  const hours = overrides.hours ?? row.hours;
  const missing = row.needs.filter((need) => !shop.abilities.includes(need));
  const builderOnly = row.builderOnly === true || overrides.builderOnly === true;
  const refused = overrides.refused ?? row.refused;
  const conditions: string[] = [];
  for (const need of row.needs) {
    const condition = shop.conditions?.[need];
    if (condition !== undefined) conditions.push(`${need}: ${condition}`);
  }
  if (builderOnly) conditions.push(say("fit.offer-remedy.by-a-frame-builder-only"));
  conditions.push(...(overrides.conditions ?? []));
  const machine = row.machine === true || row.needs.some((need) => MACHINE_ABILITIES.includes(need));
  if (shop.rate_per_hour === undefined && hours > 0) conditions.push(say("fit.offer-remedy.the-shop-s-rate-is-not"));
  const consumables = hours === 0 ? 0 : machine ? prices.consumables_machine : prices.consumables_hand;
  if (consumables === undefined) conditions.push(say("fit.offer-remedy.what-is-used-up-has-no"));
  const work = row.costGiven ?? hours * (shop.rate_per_hour ?? 0) + (consumables ?? 0);
  const partCost = overrides.part?.cost;
  if (overrides.part !== undefined && partCost === undefined)
    conditions.push(say("fit.offer-remedy.the-price-of-is-not-known", { part: overrides.part.id }));
  if (row.replacesPart === true && overrides.part === undefined)
    conditions.push(say("fit.offer-remedy.the-part-s-own-price-comes"));
  if (builderOnly || missing.length > 0) conditions.push(say("fit.offer-remedy.cost-reckoned-at-this-shop-s"));
  return {
    id: row.id,
    what: fill(row.what, overrides.values),
    needs: row.needs,
    hours,
    cost: work + (partCost ?? 0),
    massG: (row.massG ?? 0) + (overrides.part?.mass ?? 0),
    reversible: row.reversible,
    risk: row.risk,
    here: !builderOnly && missing.length === 0 && refused === undefined,
    missing,
    conditions,
    sideEffects: (row.sideEffects ?? []).map((effect): SideEffect => {
      const to = effect.to === undefined ? undefined : overrides.values?.[effect.to];
      return {
        port: effect.port,
        ...(typeof to === "number" ? { to } : {}),
        joints: effect.joints,
        words: fill(effect.words, overrides.values),
      };
    }),
    ...(overrides.part === undefined ? {} : { part: overrides.part.id }),
    rules: [...new Set([...(row.rules ?? []), ...(overrides.rules ?? [])])],
    ...(refused === undefined ? {} : { refused }),
    ...(row.replacesPart === true ? { replacesPart: true } : {}),
  };
}

/**
 * In which order are they shown? Those that keep the parts before those that take another part (whose own price is not
 * in the sum), this shop's before a builder's, cheapest first; refused ones last.
 */
export function orderRemedies(offers: readonly RemedyOffer[]): readonly RemedyOffer[] {
  const rank = (offer: RemedyOffer) =>
    offer.refused !== undefined ? 4 : (offer.replacesPart === true ? 2 : 0) + (offer.here ? 0 : 1);
  return [...offers].sort((a, b) => rank(a) - rank(b) || a.cost - b.cost || a.id.localeCompare(b.id));
}

/**
 * Which remedy is reckoned with? The one the build names for this joint, if it is offered and not refused; otherwise
 * the cheapest that this shop can do and that keeps the parts chosen. undefined: none.
 */
export function reckonedRemedy(joint: string, offers: readonly RemedyOffer[], view: FitView): RemedyOffer | undefined {
  const named = view.resolved.build.remedies?.find((r) => r.joint === joint)?.remedy;
  const usable = offers.filter((offer) => offer.refused === undefined && offer.replacesPart !== true);
  const chosen = named === undefined ? undefined : usable.find((offer) => offer.id === named);
  return chosen ?? orderRemedies(usable).find((offer) => offer.here);
}

function fill(words: string, values: Readonly<Record<string, number | string>> | undefined): string {
  return words.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = values?.[name];
    return value === undefined ? whole : typeof value === "number" ? String(Math.round(value * 100) / 100) : value;
  });
}
