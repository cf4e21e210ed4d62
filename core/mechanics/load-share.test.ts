/**
 * Moments about the rear contact, worked by hand; and the invented demo Canalside (front share, slope with and
 * without bags; wheelbase 1040, rear axle 429.5 behind the cranks), worked by other hands and again in a separate
 * program: 0.332, 0.243, 0.286, 0.291, 0.257, 0.347, 0.307, 0.218 and 0.366, 0.264, 0.298, 0.249.
 */
import { describe, expect, test } from "vitest";
import { loadShare, type Weight } from "./index.js";

const AXLES = { rearForwardMm: -429.5, frontForwardMm: 610.5 };
const bike = { kg: 16, forwardMm: 50, heightMm: 550 };
const rider = { kg: 60, forwardMm: -120, heightMm: 1050 };
const onRack = { kg: 22, forwardMm: -500, heightMm: 1000 };
const onTube = { kg: 22, forwardMm: -300, heightMm: 950 };
const panniers = { kg: 10, forwardMm: -450, heightMm: 450 };
const basket = { kg: 10, forwardMm: 550, heightMm: 850 };

describe("load share", () => {
  test("one weight midway between the axles: half; 500 ahead and 1000 high lifts at 50 %", () => {
    const one = loadShare([{ kg: 10, forwardMm: 0, heightMm: 1000 }], { rearForwardMm: -500, frontForwardMm: 500 });
    expect(one).toEqual({ totalKg: 10, frontShare: 0.5, liftsAtGrade: 0.5 });
  });
  // half the last digit that was worked out
  test.each<[string, readonly Weight[], number, number, number | undefined]>([
    ["no child", [bike, rider], 0.33, 0.005, 0.365],
    ["rack seat", [bike, rider, onRack], 0.24, 0.005, 0.265],
    ["tube seat", [bike, rider, onTube], 0.285, 0.0015, undefined],
    ["no child, panniers", [bike, rider, panniers], 0.29, 0.005, undefined],
    ["tube seat, panniers", [bike, rider, onTube, panniers], 0.257, 0.0015, 0.296],
    ["tube seat, basket", [bike, rider, onTube, basket], 0.346, 0.0015, undefined],
    ["rack seat, basket", [bike, rider, onRack, basket], 0.306, 0.0015, undefined],
    ["rack seat, panniers", [bike, rider, onRack, panniers], 0.217, 0.0015, 0.248],
  ])("%s: %d", (_, weights, share, by, grade) => {
    const found = loadShare(weights, AXLES);
    expect(Math.abs((found?.frontShare ?? 9) - share)).toBeLessThanOrEqual(by);
    if (grade !== undefined) expect(Math.abs((found?.liftsAtGrade ?? 9) - grade)).toBeLessThanOrEqual(0.005);
  });
  test("behind the rear axle it falls over; nothing to weigh is no answer", () => {
    expect(loadShare([{ kg: 1, forwardMm: -600, heightMm: 900 }], AXLES)?.frontShare).toBeLessThan(0);
    expect(loadShare([], AXLES)).toBeUndefined();
    expect(loadShare([rider], { rearForwardMm: 0, frontForwardMm: 0 })).toBeUndefined();
  });
});
