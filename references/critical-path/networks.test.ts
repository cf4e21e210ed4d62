/**
 * Taylor, Introduction to Management Science, solutions to chapter 8: two networks with activities on arrows.
 * Inputs and results as printed in the scanned manual (read; the arithmetic was repeated, all rows agree).
 * An arrow i-j becomes an operation; it comes after all arrows that end at event i. A dummy is an operation of 0 h.
 */
import { criticalPath, readNetwork, schedule } from "@coldset/core/plan";
import { describe, expect, test } from "vitest";

type Arrow = readonly [from: number, to: number, length: number];

function network(arrows: readonly Arrow[]) {
  const name = ([from, to]: Arrow) => `${from}-${to}`;
  const reading = readNetwork(
    arrows.map((a) => ({
      id: name(a),
      name: name(a),
      handsOnH: a[2],
      cureAfterH: 0,
      after: arrows.filter((b) => b[1] === a[0]).map(name),
    })),
  );
  if (reading.kind === "refused") throw new Error("refused");
  return reading.network;
}

const A: readonly Arrow[] = [
  [1, 2, 7],
  [1, 3, 10],
  [2, 4, 6],
  [3, 4, 5],
  [3, 5, 4],
  [4, 5, 3],
  [5, 6, 2],
];
const B: readonly Arrow[] = [
  [1, 2, 8],
  [1, 3, 10],
  [1, 4, 9],
  [2, 5, 6],
  [2, 6, 4],
  [3, 5, 5],
  [4, 5, 0],
  [4, 7, 7],
  [5, 7, 12],
  [5, 8, 15],
  [6, 9, 18],
  [7, 8, 4],
  [8, 9, 7],
];

describe("network A: length 20, critical 1-3-4-5-6", () => {
  const path = criticalPath(network(A));
  test("length and critical arrows", () => {
    expect(path.lengthH).toBe(20);
    expect(path.critical.map((i) => network(A).ids[i])).toEqual(["1-3", "3-4", "4-5", "5-6"]);
  });
  // activity: earliest start, latest start, slack
  test.each([
    ["1-2", 0, 2, 2],
    ["1-3", 0, 0, 0],
    ["2-4", 7, 9, 2],
    ["3-4", 10, 10, 0],
    ["3-5", 10, 14, 4],
    ["4-5", 15, 15, 0],
    ["5-6", 18, 18, 0],
  ])("%s starts at %d, at the latest %d, slack %d", (id, early, late, slack) => {
    const i = network(A).ids.indexOf(id);
    expect([path.earliestStartH[i], path.latestStartH[i], path.totalFloatH[i]]).toEqual([early, late, slack]);
  });
});

describe("network B, with a dummy: length 38, critical 1-3-5-7-8-9", () => {
  const { ids } = network(B);
  const path = criticalPath(network(B));
  test("length, critical arrows, all slacks", () => {
    expect(path.lengthH).toBe(38);
    expect(path.critical.map((i) => ids[i])).toEqual(["1-3", "3-5", "5-7", "7-8", "8-9"]);
    const printed: Record<string, number> = {
      "1-2": 1,
      "1-4": 6,
      "2-5": 1,
      "2-6": 8,
      "4-5": 6,
      "4-7": 11,
      "5-8": 1,
      "6-9": 8,
    };
    expect(Object.fromEntries(ids.map((id, i) => [id, path.totalFloatH[i]]))).toEqual(
      Object.fromEntries(ids.map((id) => [id, printed[id] ?? 0])),
    );
  });
});

test("the sheet gives network A the same figures under the documented keys", () => {
  const id = (i: number) => i + 1;
  const answer = schedule({
    evening_length_h: 24,
    evening_days: Array.from({ length: 10 }, (_, i) => i),
    builders: 1,
    operations: A.map((a, i) => ({
      id: id(i),
      name: `${a[0]}-${a[1]}`,
      hands_on_h: a[2],
      cure_after_h: 0,
      after: A.flatMap((b, k) => (b[1] === a[0] ? [id(k)] : [])),
    })),
  });
  if (answer.kind === "refused") throw new Error("refused");
  expect(answer.value.critical_path_h).toBe(20);
  expect(answer.value.critical_operations).toEqual([2, 4, 6, 7]);
  expect(answer.value.total_float_h).toEqual({ 1: 2, 2: 0, 3: 2, 4: 0, 5: 4, 6: 0, 7: 0 });
  expect(answer.value.hands_on_total_h).toBe(37);
});
