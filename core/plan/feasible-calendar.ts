/**
 * What is a workable plan for the open evenings, quickly? Tries a few plain rules of thumb and keeps the best plan.
 * Inputs: network, calendar, number of builders, whether work may be cut at closing time. Every operation must fit
 *   into one window unless it may be cut.
 * Answer: a plan that can be carried out, with the bound under which no plan can end; proven only where both meet.
 * Limits: not searched to the end; `proveCalendar` goes on from here.
 * Sources: plan-derivation (docs/methods/schedule.md).
 */
import { at } from "./at.js";
import { CLOCK_EPS_H } from "./calendar.js";
import { type CalendarQuestion, type Chosen, makeStepper, type State, type Stepper } from "./calendar-state.js";

export interface PlacedOperation {
  /** Place in the network. */
  readonly operation: number;
  readonly startH: number;
  readonly endH: number;
  /** Window of start and end, first = 0. */
  readonly window: number;
  readonly endWindow: number;
  /** First builder = 0. */
  readonly builder: number;
}

export interface CalendarPlan {
  /** Clock hours from the start of the first evening to the end of the last operation. */
  readonly finishH: number;
  readonly finishWindow: number;
  /** Hours from the opening of that evening. */
  readonly hoursIntoWindow: number;
  /** No plan can end before this. */
  readonly lowerBoundH: number;
  /** True only where the search was finished or the bound is met. */
  readonly proven: boolean;
  /** States looked into by the search; 0 where the rules of thumb met the bound. */
  readonly states: number;
  /** In order of start. */
  readonly placed: readonly PlacedOperation[];
}

export function feasibleCalendar(question: CalendarQuestion): CalendarPlan {
  const stepper = makeStepper(question);
  const state = bestByRules(question, stepper);
  return planFrom(question, state, stepper.root.boundH, 0);
}

/** The best finished state that the rules of thumb give. */
export function bestByRules(question: CalendarQuestion, stepper: Stepper): State {
  const { handsOnH } = question.network;
  const rules: readonly ((chosen: Chosen) => number)[] = [
    (c) => -at(stepper.tailH, c.operation), // longest way to the end first
    (c) => c.place.endWindow * 1e4 - at(stepper.tailH, c.operation), // the same, evening by evening
    (c) => c.place.window * 1e4 - at(handsOnH, c.operation), // longest piece first
    (c) => c.place.endH, // first over first
  ];
  let best: State | undefined;
  for (const rule of rules) {
    let state = stepper.root;
    while (state.doneCount < question.network.count) {
      let pick: State | undefined;
      let pickRank = Number.POSITIVE_INFINITY;
      for (const child of stepper.expand(state, Number.POSITIVE_INFINITY)) {
        const rank = child.chosen === undefined ? 0 : rule(child.chosen);
        if (rank < pickRank) [pick, pickRank] = [child, rank];
      }
      if (pick === undefined) throw new Error("an open network always has a next operation");
      state = pick;
    }
    if (best === undefined || state.endH < best.endH) best = state;
    if (best.endH <= stepper.root.boundH + CLOCK_EPS_H) break;
  }
  if (best === undefined) throw new Error("there is at least one rule");
  return best;
}

export function planFrom(question: CalendarQuestion, state: State, lowerBoundH: number, states: number): CalendarPlan {
  const placed: PlacedOperation[] = [];
  for (let c = state.chosen; c !== undefined; c = c.earlier) {
    placed.push({ operation: c.operation, builder: c.builder, ...c.place });
  }
  placed.reverse();
  let last = at(placed, 0);
  for (const p of placed) if (p.endH >= last.endH) last = p;
  return {
    finishH: last.endH,
    finishWindow: last.endWindow,
    hoursIntoWindow: last.endH - question.calendar.startOf(last.endWindow),
    lowerBoundH: Math.min(lowerBoundH, last.endH),
    proven: last.endH <= lowerBoundH + CLOCK_EPS_H,
    states,
    placed,
  };
}
