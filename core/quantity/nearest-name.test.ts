import { expect, test } from "vitest";
import { nearestName, slipsBetween } from "./nearest-name.js";

test("slips counted by hand", () => {
  expect(slipsBetween("rake", "rake")).toBe(0);
  expect(slipsBetween("rake", "raek")).toBe(1); // two neighbours swapped
  expect(slipsBetween("rake", "rke")).toBe(1);
  expect(slipsBetween("rake", "brake")).toBe(1);
  expect(slipsBetween("kitten", "sitting")).toBe(3); // the classroom example of the edit distance
  expect(slipsBetween("", "abc")).toBe(3);
});

const keys = ["rake_mm", "stack_mm", "head_angle_deg", "seat_angle_deg", "sd"];

test("the key that was meant", () => {
  expect(nearestName("rake", keys)).toBe("rake_mm");
  expect(nearestName("Rake-mm", keys)).toBe("rake_mm");
  expect(nearestName("head angle deg", keys)).toBe("head_angle_deg");
  expect(nearestName("haed_angle_deg", keys)).toBe("head_angle_deg");
  expect(nearestName("stak_mm", keys)).toBe("stack_mm");
});

test("a part of a longer name, word for word", () => {
  expect(nearestName("stack", ["top_tube_below_head_tube_top_mm", "lower_stack_mm"])).toBe("lower_stack_mm");
  expect(nearestName("mm", ["top_tube_below_head_tube_top_mm"])).toBeUndefined();
  expect(nearestName("tac", ["top_tube_below_head_tube_top_mm", "lower_stack_mm"])).toBeUndefined();
});

test("nothing near, nothing named", () => {
  expect(nearestName("wallpaper", keys)).toBeUndefined();
  expect(nearestName("", keys)).toBeUndefined();
  expect(nearestName("rake_mm", [])).toBeUndefined();
  expect(nearestName("x".repeat(65), ["x".repeat(65)])).toBeUndefined();
});

test("the first of equals wins, and the share of slips can be narrowed", () => {
  expect(nearestName("ab", ["ax", "xb"])).toBe("ax");
  // one swap and two changed letters: 3 of 7
  expect(nearestName("rkae_xx", keys)).toBe("rake_mm");
  expect(nearestName("rkae_xx", keys, 1 / 3)).toBeUndefined();
});
