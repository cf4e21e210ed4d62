import { describe, expect, test } from "vitest";
import { fewestWindows } from "./fewest-windows.js";
import { leastWaste } from "./least-waste.js";
import { timeGrid, upToGrid } from "./time-grid.js";

describe("fewest evenings of 3 h", () => {
  test.each([
    [[], 1],
    [[0], 1],
    [[3, 3], 2],
    [[1, 1, 1, 1], 2], // 4 h in sum
    [[1.75, 1.75, 1.75], 3], // 5.25 h in sum, but no two fit together
    [[2, 2, 1.25, 1.25], 3], // 6.5 h in sum
    [[2, 2, 1.5, 1.5], 3], // 7 h; 1.5 does not fit beside 2
    [[1.6, 1.6, 1.3, 1.3, 1.3], 3], // 7.1 h
  ])("%j need %d", (pieces, windows) => {
    expect(fewestWindows(pieces, 3)).toBe(windows);
  });
});

describe("room that stays empty in evenings of 3 h", () => {
  test.each([
    // 2.5 leaves 0.5 three times, one of them maybe in the last evening: 1.0, nothing small to fill it
    [[2.5, 2.5, 2.5], 0, 1],
    // 0.25 fills a quarter of it; 1 h does not fit beside 2.5
    [[2.5, 2.5, 2.5, 0.25, 1], 0, 0.75],
    // the first evening has 0.5 h gone: it may be the room beside a 2.5
    [[2.5, 2.5, 2.5], 0.5, 0.5],
    [[1, 1, 1], 0, 0],
    // room 1, 0.5, 0.5; the 1 may be in the last evening
    [[2, 2.5, 2.5], 0, 1],
  ])("%j with %d h gone: %d", (pieces, used, waste) => {
    expect(leastWaste(pieces, 3, used)).toBeCloseTo(waste, 9);
  });
});

test("the grid of all times, and moving up to it", () => {
  expect(timeGrid([0.25, 3, 24, 0])).toBe(0.25);
  expect(timeGrid([0.7, 2.5, 24])).toBeCloseTo(0.1, 9);
  expect(timeGrid([1 / 3])).toBe(0);
  expect(upToGrid(10.3, 0.25)).toBe(10.5);
  expect(upToGrid(10.5 + 1e-9, 0.25)).toBe(10.5);
  expect(upToGrid(10.3, 0)).toBe(10.3);
});
