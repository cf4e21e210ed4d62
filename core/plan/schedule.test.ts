import { describe, expect, test } from "vitest";
import { schedule } from "./schedule.js";
import type { ScheduleInput, ScheduleOperation } from "./schedule-types.js";

const op = (id: number, hands_on_h: number, after: number[] = [], cure_after_h = 0): ScheduleOperation => ({
  id,
  name: `operation ${id}`,
  hands_on_h,
  cure_after_h,
  after,
});
const input = (operations: ScheduleOperation[], rest: Partial<ScheduleInput> = {}): ScheduleInput => ({
  evening_length_h: 3,
  evening_days: [0, 2, 4, 7, 9, 11],
  builders: 1,
  operations,
  ...rest,
});
function answer(of: ScheduleInput, budget?: number) {
  const found = schedule(of, budget);
  if (found.kind === "refused") throw new Error(found.refusals.map((r) => r.message).join(" "));
  return found;
}
function codes(of: ScheduleInput) {
  const found = schedule(of);
  return found.kind === "refused" ? found.refusals.map((r) => r.code) : [];
}

describe("by hand", () => {
  // 1: 2 h then 24 h cure; 2: 1 h after 1; 3: 2 h free; 4: 1 h after 2 and 3.
  // Path: 2 + 24 + 1 + 1 = 28. Operation 3 may start between 0 and 25.
  // Evenings of 3 h on day 0, 2: 1 at 0-2 (3 does not fit behind it), cure over at 26; day 2 = clock 48:
  // 2, 3 and 4 need 1 + 2 + 1 = 4 h > 3, so 4 must go to the third evening at 96: end 97.
  // Unless 1 h more fits on the first evening: 3 before 1 fills 2 h, then 1 does not fit. So 97, evening 3.
  const found = answer(input([op(1, 2, [], 24), op(2, 1, [1]), op(3, 2), op(4, 1, [2, 3])]));
  test("critical path", () => {
    expect(found.value.critical_path_h).toBe(28);
    expect(found.value.critical_operations).toEqual([1, 2, 4]);
    expect(found.value.earliest_start_h).toEqual({ 1: 0, 2: 26, 3: 0, 4: 27 });
    expect(found.value.latest_start_h).toEqual({ 1: 0, 2: 26, 3: 25, 4: 27 });
    expect(found.value.total_float_h).toEqual({ 1: 0, 2: 0, 3: 25, 4: 0 });
    expect(found.value.hands_on_total_h).toBe(6);
    expect(found.value.cure_total_h).toBe(24);
  });
  test("evenings", () => {
    expect(found.value.one_builder).toMatchObject({
      possible: true,
      earliest_finish_clock_h: 97,
      finish_evening: 3,
      hours_into_that_evening: 1,
      proven_optimal: true,
      lower_bound_clock_h: 97,
    });
    expect(found.value.one_builder.elapsed_days).toBeCloseTo(97 / 24, 12);
    expect(found.cautions).toEqual([]);
  });
  test("two builders do it on the second evening: 1 and 3 side by side, then 2 at 48, 4 at 49", () => {
    const two = answer(input([op(1, 2, [], 24), op(2, 1, [1]), op(3, 2), op(4, 1, [2, 3])], { builders: 2 }));
    expect(two.value.one_builder).toMatchObject({
      earliest_finish_clock_h: 50,
      finish_evening: 2,
      proven_optimal: true,
    });
  });
});

describe("edges", () => {
  test("an operation that fills an evening to the minute fits, 0.1 + 0.2 + 2.7 too", () => {
    expect(answer(input([op(1, 3)])).value.one_builder.finish_evening).toBe(1);
    expect(answer(input([op(1, 0.1), op(2, 0.2, [1]), op(3, 2.7, [2])])).value.one_builder.finish_evening).toBe(1);
  });
  test("a cure that ends on the minute of an opening holds nothing up", () => {
    // 1 ends at 3, 45 h later it is 48, the second evening
    expect(answer(input([op(1, 3, [], 45), op(2, 3, [1])])).value.one_builder.earliest_finish_clock_h).toBe(51);
    expect(answer(input([op(1, 3, [], 45.5), op(2, 3, [1])])).value.one_builder.earliest_finish_clock_h).toBe(99);
  });
  test("the cure of an operation that nothing follows is not in the finish, and is said", () => {
    const found = answer(input([op(1, 1, [], 24)]));
    expect(found.value.critical_path_h).toBe(1);
    expect(found.cautions.map((c) => c.code)).toEqual(["cures-after-the-end"]);
  });
  test("an operation without hands-on time still wants an open evening", () => {
    // 1 ends at 1 h, 2 is due at 25 h (closed), so at 48
    expect(answer(input([op(1, 1, [], 24), op(2, 0, [1])])).value.one_builder.earliest_finish_clock_h).toBe(48);
  });
  test("windows of 24 h that touch are one after the other", () => {
    const found = answer(input([op(1, 20), op(2, 20, [1])], { evening_length_h: 24, evening_days: [0, 1, 2] }));
    expect(found.value.one_builder).toMatchObject({
      earliest_finish_clock_h: 44,
      finish_evening: 2,
      hours_into_that_evening: 20,
    });
  });
  test("a first evening on day 3 starts the clock, and is said", () => {
    const found = answer(input([op(1, 1)], { evening_days: [3, 5] }));
    expect(found.value.one_builder.earliest_finish_clock_h).toBe(1);
    expect(found.cautions.map((c) => c.code)).toEqual(["first-evening-not-day-0"]);
  });
  test("the same predecessor named twice counts once; builders may be left out", () => {
    const { builders: _, ...without } = input([op(1, 1), op(2, 1, [1, 1])]);
    expect(answer(without).value.one_builder.earliest_finish_clock_h).toBe(2);
  });
});

describe("what cannot be reached is said, not hidden", () => {
  test("longer than an evening: no plan, the path stands", () => {
    const found = answer(input([op(1, 3.5), op(2, 1, [1])]));
    expect(found.value.one_builder).toMatchObject({
      possible: false,
      why: "longer-than-an-evening",
      proven_impossible: true,
      earliest_finish_clock_h: null,
      proven_optimal: false,
    });
    expect(found.value.critical_path_h).toBe(4.5);
    expect(found.cautions[0]).toMatchObject({ code: "longer-than-an-evening", at: "operations[0].hands_on_h" });
  });
  test("the evenings run out: how many more in the same rhythm", () => {
    // 4 pieces of 2 h need 4 evenings of 3 h, two are listed
    const found = answer(input([op(1, 2), op(2, 2), op(3, 2), op(4, 2)], { evening_days: [0, 2] }));
    expect(found.value.one_builder).toMatchObject({
      possible: false,
      why: "evenings-run-out",
      proven_impossible: true,
      evenings_needed: 4,
      evenings_listed: 2,
    });
    expect(found.value.one_builder.schedule).toHaveLength(2);
    expect(found.cautions.map((c) => c.code)).toEqual(["evenings-run-out"]);
  });
  test("no proof inside the budget: said, with the bound", () => {
    // 10 h in evenings of 3 h: the fourth evening (clock 72) must see at least 1 h, so none ends before 73.
    const hours = [1.25, 0.75, 0.75, 1.25, 2, 1, 1, 2];
    const list = input(
      hours.map((h, i) => op(i + 1, h)),
      { evening_days: [0, 1, 2, 3, 4, 5] },
    );
    const found = answer(list, 0);
    expect(found.value.one_builder).toMatchObject({ possible: true, proven_optimal: false, lower_bound_clock_h: 73 });
    expect(found.value.one_builder.earliest_finish_clock_h).toBeGreaterThan(73);
    expect(found.cautions.map((c) => c.code)).toEqual(["not-proven-earliest"]);
    const searched = answer(list);
    expect(searched.value.one_builder.proven_optimal).toBe(true);
    expect(searched.cautions).toEqual([]);
  });
});

describe("refusals, all at once", () => {
  test("a ring is named in the order of the work", () => {
    const found = schedule(input([op(1, 1), op(2, 1, [1, 4]), op(3, 1, [2]), op(4, 1, [3])]));
    expect(found.kind === "refused" && found.refusals[0]).toMatchObject({ code: "loop" });
    const ring = found.kind === "refused" ? (found.refusals[0]?.given as number[]) : [];
    expect(ring).toHaveLength(4);
    expect(ring[0]).toBe(ring[3]);
    expect([
      [2, 3, 4, 2],
      [3, 4, 2, 3],
      [4, 2, 3, 4],
    ]).toContainEqual(ring);
  });
  test("an operation after itself is a ring", () => {
    expect(codes(input([op(1, 1, [1])]))).toEqual(["loop"]);
  });
  test.each([
    ["duplicate-id", input([op(1, 1), op(1, 2)])],
    ["unknown-predecessor", input([op(1, 1, [7])])],
    ["bad-time", input([op(1, -1)])],
    ["bad-time", input([op(1, 1, [], -5)])],
    ["bad-time", input([op(1, Number.NaN)])],
    ["no-operations", input([])],
    ["too-many-operations", input(Array.from({ length: 201 }, (_, i) => op(i, 1)))],
    ["evening-length", input([op(1, 1)], { evening_length_h: 0 })],
    ["evening-length", input([op(1, 1)], { evening_length_h: 25 })],
    ["builders", input([op(1, 1)], { builders: 0 })],
    ["builders", input([op(1, 1)], { builders: 1.5 })],
    ["no-evenings", input([op(1, 1)], { evening_days: [] })],
    ["bad-day", input([op(1, 1)], { evening_days: [-1, 2] })],
    ["evenings-overlap", input([op(1, 1)], { evening_days: [0, 2, 2] })],
    ["evenings-overlap", input([op(1, 1)], { evening_days: [0, 4, 2] })],
  ])("%s", (code, of) => {
    expect(codes(of)).toEqual([code]);
  });
  test("several together", () => {
    expect(new Set(codes(input([op(1, -1, [9]), op(1, 1)], { builders: 0 })))).toEqual(
      new Set(["bad-time", "duplicate-id", "unknown-predecessor", "builders"]),
    );
  });
});

test("200 operations in a chain of threes are answered in the budget", () => {
  const list = Array.from({ length: 200 }, (_, i) => op(i + 1, 0.5 + (i % 5) / 4, i >= 3 ? [i - 2] : []));
  const found = answer(input(list, { evening_days: Array.from({ length: 300 }, (_, i) => i) }));
  expect(found.value.one_builder.possible).toBe(true);
});
