/** The search against two slow, plain ones, and laws that any plan must keep. Seeded. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { at } from "./at.js";
import { makeCalendar, placeWhole } from "./calendar.js";
import { calendarSlack } from "./calendar-slack.js";
import type { CalendarQuestion } from "./calendar-state.js";
import { criticalPath } from "./critical-path.js";
import { type CalendarPlan, feasibleCalendar } from "./feasible-calendar.js";
import { type Network, type NetworkOperation, readNetwork } from "./network.js";
import { proveCalendar } from "./prove-calendar.js";

const SEED = 20_260_314;

function networkOf(operations: readonly NetworkOperation[]): Network {
  const reading = readNetwork(operations);
  if (reading.kind === "refused") throw new Error("refused");
  return reading.network;
}

/** Lists of operations; step = grid of the hands-on times. */
function operationLists(least: number, most: number, stepH: number, longestH: number) {
  return fc
    .array(
      fc.record({
        steps: fc.integer({ min: 0, max: Math.round(longestH / stepH) }),
        cureH: fc.oneof(
          { weight: 3, arbitrary: fc.constant(0) },
          { weight: 2, arbitrary: fc.integer({ min: 1, max: 60 }) },
        ),
        links: fc.array(fc.integer({ min: 0, max: 99 }), { maxLength: 2 }),
      }),
      { minLength: least, maxLength: most },
    )
    .map((rows) =>
      rows.map(
        (r, i): NetworkOperation => ({
          id: i,
          name: "",
          handsOnH: r.steps * stepH,
          cureAfterH: r.cureH,
          after: i === 0 ? [] : r.links.filter((l) => l < 70).map((l) => l % i),
        }),
      ),
    );
}

const tueThuSat = (lengthH: number) => makeCalendar([0, 2, 4], lengthH, { windows: 3, days: 7 });
const ask = (network: Network, lengthH: number, rest: Partial<CalendarQuestion> = {}): CalendarQuestion => ({
  network,
  calendar: tueThuSat(lengthH),
  builders: 1,
  cutAtClosing: false,
  ...rest,
});

/** Every order in turn, each operation at its first place. */
function byAllOrders({ network, calendar }: CalendarQuestion): number {
  let best = Number.POSITIVE_INFINITY;
  const ends = new Map<number, number>();
  const walk = (freeH: number) => {
    if (freeH >= best) return;
    if (ends.size === network.count) {
      best = freeH;
      return;
    }
    for (let i = 0; i < network.count; i++) {
      if (ends.has(i) || !at(network.before, i).every((p) => ends.has(p))) continue;
      let from = freeH;
      for (const p of at(network.before, i)) from = Math.max(from, (ends.get(p) ?? 0) + at(network.cureAfterH, p));
      const { endH } = placeWhole(calendar, from, at(network.handsOnH, i));
      ends.set(i, endH);
      walk(endH);
      ends.delete(i);
    }
  };
  walk(0);
  return best;
}

/**
 * Every start on the whole hour in turn, no order and no first place assumed: an operation may stand anywhere inside
 * any evening. Knows nothing of the search under test. All times must be whole hours, hands-on times 1 h or more.
 */
function byAllHours({ network, builders }: CalendarQuestion, lengthH: number, days: readonly number[]): number {
  let best = Number.POSITIVE_INFINITY;
  const starts = new Map<number, number>();
  const busy = new Map<number, number>();
  const walk = (k: number, endH: number) => {
    if (endH >= best) return;
    const i = network.order[k];
    if (i === undefined) {
      best = endH;
      return;
    }
    const h = at(network.handsOnH, i);
    for (const day of days) {
      for (let offset = 0; offset + h <= lengthH; offset++) {
        const start = day * 24 + offset;
        const early = at(network.before, i).some(
          (p) => start < (starts.get(p) ?? 0) + at(network.handsOnH, p) + at(network.cureAfterH, p),
        );
        const hours = Array.from({ length: h }, (_, n) => start + n);
        if (early || hours.some((t) => (busy.get(t) ?? 0) >= builders)) continue;
        starts.set(i, start);
        for (const t of hours) busy.set(t, (busy.get(t) ?? 0) + 1);
        walk(k + 1, Math.max(endH, start + h));
        for (const t of hours) busy.set(t, (busy.get(t) ?? 0) - 1);
        starts.delete(i);
      }
    }
  };
  walk(0, 0);
  return best;
}

function expectWorkable(question: CalendarQuestion, plan: CalendarPlan) {
  const { network, calendar, builders } = question;
  const of = new Map(plan.placed.map((p) => [p.operation, p]));
  expect(of.size).toBe(network.count);
  for (const p of plan.placed) {
    const opens = calendar.startOf(p.window);
    expect(p.startH).toBeGreaterThanOrEqual(opens - 1e-6);
    expect(p.endH).toBeLessThanOrEqual(calendar.startOf(p.endWindow) + calendar.lengthH + 1e-6);
    if (!question.cutAtClosing) {
      expect(p.endWindow).toBe(p.window);
      expect(p.endH - p.startH).toBeCloseTo(at(network.handsOnH, p.operation), 6);
    } else {
      const open = calendar.openHoursBefore(p.endH) - calendar.openHoursBefore(p.startH);
      expect(open).toBeCloseTo(at(network.handsOnH, p.operation), 6);
    }
    for (const b of at(network.before, p.operation)) {
      const earlier = of.get(b);
      expect(p.startH).toBeGreaterThanOrEqual((earlier?.endH ?? Infinity) + at(network.cureAfterH, b) - 1e-6);
    }
    expect(p.builder).toBeLessThan(builders);
    for (const q of plan.placed) {
      if (q === p || q.builder !== p.builder) continue;
      expect(q.endH <= p.startH + 1e-6 || p.endH <= q.startH + 1e-6).toBe(true);
    }
  }
  expect(plan.finishH).toBe(Math.max(...plan.placed.map((p) => p.endH)));
  expect(plan.lowerBoundH).toBeLessThanOrEqual(plan.finishH);
}

describe("the search finds what slow, plain ones find", () => {
  test("all orders of up to 7 operations, quarter hours, waits", () => {
    fc.assert(
      fc.property(operationLists(1, 7, 0.25, 3), (list) => {
        const question = ask(networkOf(list), 3);
        const plan = proveCalendar(question);
        expectWorkable(question, plan);
        expect(plan.proven).toBe(true);
        expect(plan.finishH).toBeCloseTo(byAllOrders(question), 6);
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  test.each([1, 2])("all whole hours of up to 5 operations with %i builders", (builders) => {
    fc.assert(
      fc.property(operationLists(1, 5, 1, 3), (raw) => {
        const list = raw.map((o) => ({ ...o, handsOnH: Math.max(o.handsOnH, 1) }));
        const days = [0, 1, 3, 4, 6, 8, 9, 11, 13, 14, 16, 18];
        const question = ask(networkOf(list), 3, { builders, calendar: makeCalendar(days, 3) });
        const plan = proveCalendar(question);
        expectWorkable(question, plan);
        expect(plan.proven).toBe(true);
        const slow = byAllHours(question, 3, days);
        if (Number.isFinite(slow)) expect(plan.finishH).toBeCloseTo(slow, 6);
        else expect(plan.finishH).toBeGreaterThan(18 * 24 + 3 - 1e-6);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});

describe("laws", () => {
  test("one operation more, or one link more, never ends earlier; a longer evening never later", () => {
    fc.assert(
      fc.property(operationLists(2, 8, 0.25, 3), (list) => {
        const full = proveCalendar(ask(networkOf(list), 3));
        const fewer = proveCalendar(ask(networkOf(list.slice(0, -1)), 3));
        expect(fewer.finishH).toBeLessThanOrEqual(full.finishH + 1e-6);
        const last = at(list, list.length - 1);
        const linked = [...list.slice(0, -1), { ...last, after: [...last.after, 0] }];
        expect(proveCalendar(ask(networkOf(linked), 3)).finishH).toBeGreaterThanOrEqual(full.finishH - 1e-6);
        expect(proveCalendar(ask(networkOf(list), 4)).finishH).toBeLessThanOrEqual(full.finishH + 1e-6);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  test("a second builder, or cutting at closing time, never ends later; both plans can be carried out", () => {
    fc.assert(
      fc.property(operationLists(1, 8, 0.25, 3), (list) => {
        const network = networkOf(list);
        const alone = proveCalendar(ask(network, 3));
        for (const rest of [{ builders: 2 }, { builders: 3 }, { cutAtClosing: true }]) {
          const plan = proveCalendar(ask(network, 3, rest));
          expectWorkable(ask(network, 3, rest), plan);
          expect(plan.finishH).toBeLessThanOrEqual(alone.finishH + 1e-6);
        }
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  test("no plan ends before the critical path or the quick plan's bound, and the quick plan is never better", () => {
    fc.assert(
      fc.property(operationLists(1, 12, 0.25, 3), (list) => {
        const question = ask(networkOf(list), 3);
        const quick = feasibleCalendar(question);
        const plan = proveCalendar(question, 2000);
        expectWorkable(question, quick);
        expect(plan.finishH).toBeGreaterThanOrEqual(criticalPath(question.network).lengthH - 1e-6);
        expect(plan.finishH).toBeGreaterThanOrEqual(quick.lowerBoundH - 1e-6);
        expect(quick.finishH).toBeGreaterThanOrEqual(plan.finishH - 1e-6);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  test("all times halved, all figures halved", () => {
    fc.assert(
      fc.property(operationLists(1, 8, 0.5, 3), (list) => {
        const half = list.map((o) => ({ ...o, handsOnH: o.handsOnH / 2, cureAfterH: o.cureAfterH / 2 }));
        const whole = proveCalendar(ask(networkOf(list), 3));
        const calendar = makeCalendar([0, 1, 2], 1.5, { windows: 3, days: 3.5 });
        expect(proveCalendar(ask(networkOf(half), 1.5, { calendar })).finishH).toBeCloseTo(whole.finishH / 2, 6);
        const path = criticalPath(networkOf(list));
        const halfPath = criticalPath(networkOf(half));
        expect(halfPath.lengthH).toBeCloseTo(path.lengthH / 2, 9);
        halfPath.totalFloatH.forEach((f, i) => {
          expect(f).toBeCloseTo(at(path.totalFloatH, i) / 2, 6);
        });
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  test("started later by its slack, each operation alone leaves the finish where it is", () => {
    fc.assert(
      fc.property(operationLists(2, 7, 0.25, 3), (list) => {
        const question = ask(networkOf(list), 3);
        const { network, calendar } = question;
        const plan = proveCalendar(question);
        const slack = calendarSlack(network, calendar, plan);
        plan.placed.forEach((late, n) => {
          expect(at(slack, late.operation)).toBeGreaterThanOrEqual(0);
          const ends = new Map<number, number>();
          let freeH = 0;
          plan.placed.forEach((p, k) => {
            let from = k === n ? p.startH + at(slack, p.operation) : freeH;
            for (const b of at(network.before, p.operation)) {
              from = Math.max(from, (ends.get(b) ?? 0) + at(network.cureAfterH, b));
            }
            freeH = placeWhole(calendar, Math.max(from, freeH), at(network.handsOnH, p.operation)).endH;
            ends.set(p.operation, freeH);
          });
          expect(freeH).toBeLessThanOrEqual(plan.finishH + 1e-6);
        });
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});
