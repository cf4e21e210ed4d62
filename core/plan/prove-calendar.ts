/**
 * What is the earliest evening on which the job can be finished, and is that certain? An exact search.
 * Inputs: network, calendar, builders, cut at closing or not; budgetStates = how many states may be looked into
 *   (a count, not a time, so the same question always gets the same answer); more than 20 operations get fewer, as
 *   each state then costs more.
 * Answer: the best plan found, `proven` where none can be earlier, and the bound under which none can end.
 * How: layer by layer over the sets of finished operations; a state that another with the same set covers is
 *   dropped, and so is one whose bound is not below the best finish known. First with narrow layers, to find good
 *   plans soon, then wider; a pass that had to drop nothing else is a proof.
 * Limits: past the budget the plan stands, unproven. Sources: plan-derivation (docs/methods/schedule.md).
 */
import { CLOCK_EPS_H } from "./calendar.js";
import { type CalendarQuestion, coversState, makeStepper, type State, type Stepper } from "./calendar-state.js";
import { bestByRules, type CalendarPlan, planFrom } from "./feasible-calendar.js";

/** Enough for every scenario of the demo and for most plans of up to 20 operations; a few seconds at most. */
export const USUAL_BUDGET_STATES = 50_000;

const LAYER_WIDTHS = [8, 128, 2048, Number.POSITIVE_INFINITY];

export function proveCalendar(question: CalendarQuestion, budgetStates = USUAL_BUDGET_STATES): CalendarPlan {
  const budget = budgetStates * Math.min(1, (20 / question.network.count) ** 2.5);
  const stepper = makeStepper(question);
  let best = bestByRules(question, stepper);
  let lowerBoundH = stepper.root.boundH;
  let states = 0;
  for (const width of LAYER_WIDTHS) {
    if (best.endH <= lowerBoundH + CLOCK_EPS_H || states >= budget) break;
    const pass = searchPass(stepper, best, width, budget - states);
    best = pass.best;
    states += pass.states;
    lowerBoundH = Math.max(lowerBoundH, Math.min(pass.droppedBoundH, best.endH));
  }
  return planFrom(question, best, lowerBoundH, states);
}

interface Pass {
  readonly best: State;
  readonly states: number;
  /** Least bound among what was dropped unlooked-at. */
  readonly droppedBoundH: number;
}

function searchPass(stepper: Stepper, start: State, width: number, budgetStates: number): Pass {
  let best = start;
  let states = 0;
  let droppedBoundH = Number.POSITIVE_INFINITY;
  let layer: State[] = [stepper.root];
  while (layer.length > 0) {
    const byKey = new Map<State["key"], State[]>();
    for (const state of layer) {
      if (state.boundH >= best.endH - CLOCK_EPS_H) continue;
      if (states >= budgetStates) {
        droppedBoundH = Math.min(droppedBoundH, state.boundH);
        continue;
      }
      states++;
      for (const child of stepper.expand(state, best.endH - CLOCK_EPS_H)) {
        if (child.doneCount === child.done.length) {
          if (child.endH < best.endH) best = child;
          continue;
        }
        const same = byKey.get(child.key);
        if (same === undefined) byKey.set(child.key, [child]);
        else if (!same.some((s) => coversState(s, child))) {
          byKey.set(child.key, [...same.filter((s) => !coversState(child, s)), child]);
        }
      }
    }
    layer = [...byKey.values()].flat();
    layer.sort((a, b) => a.boundH - b.boundH || sum(a.earliestH) - sum(b.earliestH));
    for (const state of layer.slice(width)) droppedBoundH = Math.min(droppedBoundH, state.boundH);
    if (layer.length > width) layer.length = width;
  }
  return { best, states, droppedBoundH };
}

function sum(list: Float64Array): number {
  let total = 0;
  for (const v of list) total += v;
  return total;
}
