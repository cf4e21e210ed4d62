/**
 * Which swaps bring the list back inside the budget at least loss? Exact, over all sets of swaps that go together.
 * Inputs: lines, budget, swaps (lines out, lines in, loss = what it is worth to you not to make the swap, in money,
 *   0 where you do not mind). Swaps that take out the same line, or bring in the same one, do not go together.
 * Answer: the best set (least loss, then fewest swaps, then least total) and the cheapest set of all; `possible`
 *   false where nothing fits.
 * Limits: 20 swaps; every price concerned must be known, else the answer says measure first and names them.
 */

import { type Answer, answered, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { COIN, lineRefusals, type MoneyLine } from "./money-ledger.js";

export const MOST_SWAPS = 20;

export interface Swap {
  readonly id: string;
  readonly what: string;
  /** Ids of lines that leave the list. */
  readonly out: readonly string[];
  readonly in: readonly MoneyLine[];
  readonly loss?: number;
}

export interface SwapSet {
  readonly swaps: readonly string[];
  readonly what: string;
  readonly total: number;
  readonly loss: number;
  /** Budget less total; below 0 it is over. */
  readonly toSpare: number;
}

export interface SwapsValue {
  readonly totalAsListed: number;
  readonly overBy: number;
  readonly possible: boolean;
  readonly best: SwapSet | undefined;
  readonly cheapest: SwapSet | undefined;
  /** Not empty: prices to ask first; nothing is decided then. */
  readonly priceNotKnown: readonly string[];
}

export function swapsThatFit(input: {
  readonly lines: readonly MoneyLine[];
  readonly budget: number;
  readonly swaps: readonly Swap[];
}): Answer<SwapsValue> {
  const { lines, budget, swaps } = input;
  const refusals = swapRefusals(input);
  if (refusals.length > 0) return refused(refusals);

  const priceOf = new Map(lines.map((l) => [l.id, (l.price ?? 0) * l.qty]));
  const totalAsListed = sum([...priceOf.values()]);
  const overBy = Math.max(totalAsListed - budget, 0);
  const unknown = [...lines, ...swaps.flatMap((s) => s.in)].filter((l) => l.price === null && l.qty > 0);
  if (unknown.length > 0) {
    const priceNotKnown = unknown.map((l) => l.id);
    return answered<SwapsValue>(
      { totalAsListed, overBy, possible: false, best: undefined, cheapest: undefined, priceNotKnown },
      {
        sources: ["ledger-derivation"],
        cautions: [
          {
            code: "price-not-known",
            at: "lines",
            message: say("plan.swaps-that-fit.ask-these-prices-first-until-then", {
              priceNotKnown: priceNotKnown.join(", "),
            }),
          },
        ],
      },
    );
  }

  const steps = swaps.map((s) => ({
    swap: s,
    change: sum(s.in.map((l) => (l.price ?? 0) * l.qty)) - sum(s.out.map((id) => priceOf.get(id) ?? 0)),
    touches: [...s.out, ...s.in.map((l) => l.id)],
  }));
  // The most that the swaps from here on could still save.
  const couldSave = steps.map((_, i) => sum(steps.slice(i).map((s) => Math.min(s.change, 0))));
  let best: SwapSet | undefined;
  let cheapest: SwapSet | undefined;
  const taken: Swap[] = [];
  const touched = new Set<string>();
  const walk = (i: number, total: number, loss: number): void => {
    const step = steps[i];
    if (step === undefined) {
      const set = {
        swaps: taken.map((s) => s.id),
        what: taken.map((s) => s.what).join("; "),
        total,
        loss,
        toSpare: budget - total,
      };
      if (cheapest === undefined || total < cheapest.total - COIN) cheapest = set;
      if (set.toSpare >= -COIN && (best === undefined || better(set, best))) best = set;
      return;
    }
    const floor = total + (couldSave[i] ?? 0);
    const hopelessBest = floor > budget + COIN || (best !== undefined && loss > best.loss);
    if (hopelessBest && cheapest !== undefined && floor >= cheapest.total - COIN) return;
    walk(i + 1, total, loss);
    if (step.touches.some((id) => touched.has(id))) return;
    for (const id of step.touches) touched.add(id);
    taken.push(step.swap);
    walk(i + 1, total + step.change, loss + (step.swap.loss ?? 0));
    taken.pop();
    for (const id of step.touches) touched.delete(id);
  };
  walk(0, totalAsListed, 0);
  return answered<SwapsValue>(
    { totalAsListed, overBy, possible: best !== undefined, best, cheapest, priceNotKnown: [] },
    { sources: ["ledger-derivation"] },
  );
}

function better(a: SwapSet, b: SwapSet): boolean {
  if (Math.abs(a.loss - b.loss) > COIN) return a.loss < b.loss;
  if (a.swaps.length !== b.swaps.length) return a.swaps.length < b.swaps.length;
  return a.total < b.total;
}

function swapRefusals(input: Parameters<typeof swapsThatFit>[0]): Refusal[] {
  const { lines, budget, swaps } = input;
  const refusals = [...lineRefusals(lines), ...swaps.flatMap((s) => lineRefusals(s.in))];
  const refuse = (code: string, place: string, given: unknown, allowed: string, message: string) =>
    refusals.push({ code, at: place, given, allowed, message });
  if (!(Number.isFinite(budget) && budget >= 0)) {
    refuse(
      "bad-amount",
      "budget",
      budget,
      say("plan.money-ledger.0-or-more"),
      say("plan.swaps-that-fit.budget-is-give-0-or-more", { budget }),
    );
  }
  if (swaps.length > MOST_SWAPS) {
    refuse(
      "too-many-swaps",
      "swaps",
      swaps.length,
      say("plan.swaps-that-fit.up-to", { mostSwaps: MOST_SWAPS }),
      say("plan.swaps-that-fit.swaps-are-too-many-to-try", { swapsCount: swaps.length, mostSwaps: MOST_SWAPS }),
    );
  }
  swaps.forEach((s, i) => {
    if (swaps.findIndex((t) => t.id === s.id) !== i) {
      refuse(
        "duplicate-id",
        `swaps[${i}].id`,
        s.id,
        say("plan.swaps-that-fit.an-id-that-no-other-swap"),
        say("plan.swaps-that-fit.two-swaps-have-the-id", { swap: s.id }),
      );
    }
    if (s.loss !== undefined && !(Number.isFinite(s.loss) && s.loss >= 0)) {
      refuse(
        "bad-amount",
        `swaps[${i}].loss`,
        s.loss,
        say("plan.money-ledger.0-or-more"),
        say("plan.swaps-that-fit.the-loss-of-is-give-0", { swap: s.id, loss: s.loss }),
      );
    }
    for (const id of s.out) {
      if (!lines.some((l) => l.id === id)) {
        refuse(
          "unknown-line",
          `swaps[${i}].out`,
          id,
          say("plan.swaps-that-fit.ids-of-lines-in-the-list"),
          say("plan.swaps-that-fit.takes-out-which-is-not-in", { what: s.what, id }),
        );
      }
    }
    for (const l of s.in) {
      if (lines.some((m) => m.id === l.id) && !s.out.includes(l.id)) {
        refuse(
          "already-listed",
          `swaps[${i}].in`,
          l.id,
          say("plan.swaps-that-fit.lines-that-are-not-in-the"),
          say("plan.swaps-that-fit.brings-in-which-is-in-the", { what: s.what, line: l.id }),
        );
      }
    }
  });
  return refusals;
}

const sum = (list: readonly number[]) => list.reduce((total, v) => total + v, 0);
