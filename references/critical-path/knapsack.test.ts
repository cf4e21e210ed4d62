/**
 * A knapsack of ten items with capacity 165 and best profit 309, one of fifteen with capacity 750 and best profit
 * 1458: well-known test data, from memory, not re-read; the arithmetic was repeated and agrees.
 * A budget is such a knapsack: every item is on the list at its weight, leaving it out loses its profit. The least
 * loss is then the sum of all profits less the best profit.
 */
import { swapsThatFit } from "@coldset/core/plan";
import { expect, test } from "vitest";
import { line } from "./scenario-tasks.js";

const cases = [
  {
    capacity: 165,
    best: 309,
    weights: [23, 31, 29, 44, 53, 38, 63, 85, 89, 82],
    profits: [92, 57, 49, 68, 60, 43, 67, 84, 87, 72],
  },
  {
    capacity: 750,
    best: 1458,
    weights: [70, 73, 77, 80, 82, 87, 90, 94, 98, 106, 110, 113, 115, 118, 120],
    profits: [135, 139, 149, 150, 156, 163, 173, 184, 192, 201, 210, 214, 221, 229, 240],
  },
];

test.each(cases)("capacity $capacity keeps a profit of $best", ({ capacity, best, weights, profits }) => {
  const answer = swapsThatFit({
    lines: weights.map((w, i) => line(`item ${i}`, w)),
    budget: capacity,
    swaps: weights.map((_, i) => ({
      id: `leave out ${i}`,
      what: `leave out ${i}`,
      out: [`item ${i}`],
      in: [],
      loss: profits[i] ?? 0,
    })),
  });
  if (answer.kind === "refused") throw new Error("refused");
  const all = profits.reduce((sum, p) => sum + p, 0);
  expect(answer.value.best?.loss).toBe(all - best);
  expect(answer.value.best?.total).toBeLessThanOrEqual(capacity);
  expect(answer.value.cheapest?.total).toBe(0);
});
