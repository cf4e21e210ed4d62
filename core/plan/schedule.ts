/**
 * In which order, on which evenings, and when is it finished?
 * Inputs: evening_length_h over 0 to 24; evening_days = day numbers, day 0 = the first evening; builders 1 to 8;
 *   operations with hands_on_h (builder busy), cure_after_h (clock hours after the end before any successor may
 *   start) and after (ids of predecessors).
 * Answer: the plain critical path (exact, no calendar), and under `one_builder` the earliest finish on the evenings
 *   given, each operation in one piece inside one evening. Clock zero = start of the first evening.
 * Where an operation is longer than the evening, or the listed evenings run out, `one_builder.possible` is false and
 *   a caution says what would help; the critical path stands all the same.
 * Limits: `proven_optimal` is false where the search ended before a proof; `lower_bound_clock_h` then says how much
 *   earlier a plan could be at most. Sources: critical-path-textbook, plan-derivation, bin-packing-bound.
 */

import { type Answer, answered, type Caution, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { at } from "./at.js";
import { CLOCK_EPS_H, makeCalendar } from "./calendar.js";
import { criticalPath } from "./critical-path.js";
import type { CalendarPlan } from "./feasible-calendar.js";
import { readNetwork } from "./network.js";
import { proveCalendar, USUAL_BUDGET_STATES } from "./prove-calendar.js";
import type {
  ImpossiblePlan,
  PossiblePlan,
  ScheduledOperation,
  ScheduleInput,
  ScheduleValue,
} from "./schedule-types.js";

export const MOST_BUILDERS = 8;

export function schedule(input: ScheduleInput, budgetStates = USUAL_BUDGET_STATES): Answer<ScheduleValue> {
  const reading = readNetwork(
    input.operations.map((o) => ({
      id: o.id,
      name: o.name ?? String(o.id),
      handsOnH: o.hands_on_h,
      cureAfterH: o.cure_after_h,
      after: o.after,
    })),
  );
  const refusals = [...(reading.kind === "refused" ? reading.refusals : []), ...eveningRefusals(input)];
  if (reading.kind === "refused" || refusals.length > 0) return refused(refusals);

  const { network } = reading;
  const path = criticalPath(network);
  const byId = (values: readonly number[]) =>
    Object.fromEntries(network.ids.map((id, i) => [String(id), at(values, i)]));
  const total = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0);
  const evenings = eveningPlan(input, network, budgetStates);
  const cautions: Caution[] = [...evenings.cautions];
  network.cureAfterH.forEach((cure, i) => {
    if (cure > 0 && at(network.next, i).length === 0) {
      cautions.push({
        code: "cures-after-the-end",
        at: `operations[${i}].cure_after_h`,
        message: say("plan.schedule.nothing-follows-operation-so-its-h", { ids: at(network.ids, i), cure }),
      });
    }
  });
  return answered<ScheduleValue>(
    {
      critical_path_h: path.lengthH,
      critical_operations: path.critical.map((i) => Number(at(network.ids, i))),
      earliest_start_h: byId(path.earliestStartH),
      latest_start_h: byId(path.latestStartH),
      total_float_h: byId(path.totalFloatH),
      hands_on_total_h: total(network.handsOnH),
      cure_total_h: total(network.cureAfterH),
      one_builder: evenings.plan,
    },
    { sources: ["critical-path-textbook", "plan-derivation", "bin-packing-bound"], cautions },
  );
}

function eveningRefusals(input: ScheduleInput): Refusal[] {
  const refusals: Refusal[] = [];
  const { evening_length_h: length, evening_days: days, builders = 1 } = input;
  const lengthFits = length > 0 && length <= 24;
  if (!lengthFits) {
    refusals.push({
      code: "evening-length",
      at: "evening_length_h",
      given: length,
      allowed: say("plan.shop-calendar.over-0-and-up-to-24"),
      message: say("plan.schedule.an-evening-of-h-cannot-be", { length }),
    });
  }
  if (!(Number.isInteger(builders) && builders >= 1 && builders <= MOST_BUILDERS)) {
    refusals.push({
      code: "builders",
      at: "builders",
      given: builders,
      allowed: say("plan.schedule.a-whole-number-from-1-to", { mostBuilders: MOST_BUILDERS }),
      message: say("plan.schedule.builders-cannot-be-planned-give-a", { builders, mostBuilders: MOST_BUILDERS }),
    });
  }
  if (days.length === 0) {
    refusals.push({
      code: "no-evenings",
      at: "evening_days",
      given: [],
      allowed: say("plan.schedule.at-least-one-day-number"),
      message: say("plan.schedule.no-evening-is-listed-give-the"),
    });
  }
  days.forEach((day, i) => {
    if (!Number.isFinite(day) || day < 0) {
      refusals.push({
        code: "bad-day",
        at: `evening_days[${i}]`,
        given: day,
        allowed: say("plan.schedule.0-or-more-day-0-is"),
        message: say("plan.schedule.evening-is-on-day-days-are", { evening: i + 1, day }),
      });
    }
    const previous = days[i - 1];
    if (previous !== undefined && lengthFits && (day - previous) * 24 < length - CLOCK_EPS_H) {
      refusals.push({
        code: "evenings-overlap",
        at: `evening_days[${i}]`,
        given: day,
        allowed: say("plan.schedule.rising-days-each-evening-after-the"),
        message: say("plan.schedule.evening-day-starts-before-evening-day", {
          evening: i + 1,
          day,
          eveningBefore: i,
          previous,
          length,
        }),
      });
    }
  });
  return refusals;
}

type NetworkRead = Extract<ReturnType<typeof readNetwork>, { kind: "network" }>["network"];

function eveningPlan(
  input: ScheduleInput,
  network: NetworkRead,
  budgetStates: number,
): { readonly plan: PossiblePlan | ImpossiblePlan; readonly cautions: readonly Caution[] } {
  const calendar = makeCalendar(input.evening_days, input.evening_length_h);
  const cautions: Caution[] = [];
  const firstDay = at(input.evening_days, 0);
  if (firstDay !== 0) {
    cautions.push({
      code: "first-evening-not-day-0",
      at: "evening_days[0]",
      message: say("plan.schedule.the-first-evening-is-on-day", { firstDay }),
    });
  }
  const nothing = {
    possible: false,
    earliest_finish_clock_h: null,
    finish_evening: null,
    hours_into_that_evening: null,
    elapsed_days: null,
    proven_optimal: false,
    schedule: [],
    evenings_listed: calendar.listed,
  } as const;

  const tooLong = network.handsOnH.flatMap((h, i) => (h > calendar.lengthH + CLOCK_EPS_H ? [i] : []));
  if (tooLong.length > 0) {
    for (const i of tooLong) {
      cautions.push({
        code: "longer-than-an-evening",
        at: `operations[${i}].hands_on_h`,
        message: say("plan.schedule.operation-takes-h-and-fits-into", {
          ids: at(network.ids, i),
          handsOnH: at(network.handsOnH, i),
          lengthH: calendar.lengthH,
        }),
      });
    }
    const plan = {
      ...nothing,
      why: "longer-than-an-evening",
      proven_impossible: true,
      lower_bound_clock_h: null,
    } as const;
    return { plan: { ...plan, evenings_needed: null }, cautions };
  }

  const builders = input.builders ?? 1;
  const best = proveCalendar({ network, calendar, builders, cutAtClosing: false }, budgetStates);
  const steps = scheduleRows(
    best,
    network.ids.map(Number),
    (w) => firstDay + calendar.startOf(w) / 24,
    calendar.startOf,
  );
  if (best.finishWindow >= calendar.listed) {
    const lastEndH = calendar.startOf(calendar.listed - 1) + calendar.lengthH;
    const needed = best.finishWindow + 1;
    const certain = best.lowerBoundH > lastEndH + CLOCK_EPS_H;
    cautions.push({
      code: "evenings-run-out",
      at: "evening_days",
      message: say("plan.schedule.the-work-does-not-end-on", {
        listed: calendar.listed,
        certain: certain ? "" : say("plan.schedule.no-plan-found-one-may-still"),
        needed,
        needed2: needed - calendar.listed,
      }),
    });
    return {
      plan: {
        ...nothing,
        why: "evenings-run-out",
        proven_impossible: certain,
        evenings_needed: needed,
        lower_bound_clock_h: best.lowerBoundH,
        schedule: steps.filter((s) => s.evening <= calendar.listed),
      },
      cautions,
    };
  }
  if (!best.proven) {
    cautions.push({
      code: "not-proven-earliest",
      at: "one_builder",
      message: say("plan.schedule.this-plan-can-be-carried-out", { lowerBoundH: Number(best.lowerBoundH.toFixed(2)) }),
    });
  }
  return {
    plan: {
      possible: true,
      earliest_finish_clock_h: best.finishH,
      finish_evening: best.finishWindow + 1,
      hours_into_that_evening: best.hoursIntoWindow,
      elapsed_days: best.finishH / 24,
      proven_optimal: best.proven,
      lower_bound_clock_h: best.lowerBoundH,
      evenings_listed: calendar.listed,
      schedule: steps,
    },
    cautions,
  };
}

function scheduleRows(
  plan: CalendarPlan,
  ids: readonly number[],
  dayOf: (window: number) => number,
  startOf: (window: number) => number,
): ScheduledOperation[] {
  return plan.placed.map((p) => ({
    id: at(ids, p.operation),
    start_clock_h: p.startH,
    end_clock_h: p.endH,
    evening: p.window + 1,
    day: dayOf(p.window),
    hours_into_that_evening: p.startH - startOf(p.window),
    builder: p.builder + 1,
  }));
}
