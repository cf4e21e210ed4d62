import { describe, expect, test } from "vitest";
import { readQuantity } from "./read-quantity.js";
import type { ThreadSize } from "./reading.js";
import { writeThread } from "./write-thread.js";

function threadOf(text: string): ThreadSize {
  const reading = readQuantity(text, "thread");
  if (reading.kind === "unreadable") throw new Error(`${text}: ${reading.code} ${reading.reason}`);
  return reading.thread;
}

const metric = (majorMm: number, pitchMm?: number): ThreadSize =>
  pitchMm === undefined ? { majorMm, form: "metric" } : { majorMm, pitchMm, form: "metric" };
const perInch = (majorMm: number, tpi: number, pitchMm: number): ThreadSize => ({
  majorMm,
  tpi,
  pitchMm,
  form: "threads per inch",
});

describe("threads as they are marked", () => {
  test.each<[string, ThreadSize]>([
    ["M12x1.5", metric(12, 1.5)],
    ["M12×1.5", metric(12, 1.5)],
    ["M12 x 1,5", metric(12, 1.5)],
    ["m10*1", metric(10, 1)],
    ["M5x0.8 mm", metric(5, 0.8)],
    ["10x1", metric(10, 1)],
    ["25 x 1 mm", metric(25, 1)],
    ["M5", metric(5)],
    // Bottom bracket 1.37 in x 24: 34.798 mm (references: 34.8 found on a page), pitch 25.4 / 24 = 1.05833...
    ["1.37x24", perInch(34.798, 24, 25.4 / 24)],
    ['1.37"×24 tpi', perInch(34.798, 24, 25.4 / 24)],
    ["1.37 in x 24 t.p.i.", perInch(34.798, 24, 25.4 / 24)],
    // Pedal, ISO 6695 (from memory): 9/16 in x 20 = 14.2875 mm, pitch 1.27.
    ["9/16x20", perInch(14.2875, 20, 1.27)],
    ["9/16 in x 20 tpi", perInch(14.2875, 20, 1.27)],
    ["1 1/8 x 26", perInch(28.575, 26, 25.4 / 26)],
    ["1x24", perInch(25.4, 24, 25.4 / 24)],
    ["36 mm x 24 tpi", perInch(36, 24, 25.4 / 24)],
    ["36x24 tpi", perInch(36, 24, 25.4 / 24)],
  ])("%s", (text, thread) => {
    const { pitchMm, ...rest } = threadOf(text);
    const { pitchMm: wanted, ...others } = thread;
    expect(rest).toEqual(others);
    if (wanted === undefined) expect(pitchMm).toBeUndefined();
    else expect(pitchMm).toBeCloseTo(wanted, 14);
  });

  test("a spoke of 56 to the inch has a pitch of 0.4536 (references: spoke thread FG 2.3, from memory)", () => {
    const thread = threadOf("2.3 mm x 56 tpi");
    expect(thread.pitchMm).toBeCloseTo(0.4536, 4);
  });

  test("a pitch that is not written is left out, not filled in", () => {
    expect(Object.keys(threadOf("M5"))).not.toContain("pitchMm");
  });

  test("the hand is kept where it is written, and absent where it is not", () => {
    expect(threadOf("1.37x24 LH").hand).toBe("left");
    expect(threadOf("M10x1 left-hand").hand).toBe("left");
    expect(threadOf("9/16 in x 20 tpi RH").hand).toBe("right");
    expect(Object.keys(threadOf("M10x1"))).not.toContain("hand");
  });

  test("value is the major diameter in mm", () => {
    expect(readQuantity("1.37x24", "thread")).toMatchObject({ value: 34.798, dimension: "thread" });
  });
});

describe("refused", () => {
  test.each<[string, string]>([
    ["36x24", "ambiguous-thread"], // mm x mm or threads per inch
    ["M12x24", "ambiguous-thread"],
    ["4x8", "ambiguous-thread"],
    ["12", "bad-thread"],
    ["M", "bad-thread"],
    ["M12x", "bad-thread"],
    ["x1.5", "bad-thread"],
    ["M12 1.5", "bad-thread"],
    ["M12x0", "bad-thread"],
    ["M5x4", "bad-thread"], // pitch over half the diameter
    ["M12x24 tpi", "bad-thread"],
    ['M12"x24', "bad-thread"],
    ["1 in x 2", "bad-thread"],
    ["M0x0", "bad-thread"],
    ["M500x3", "bad-thread"],
    ["1.37 in x 240 tpi", "bad-thread"],
    ["M12x1.5.2", "two-decimal-signs"],
    ["M12x1,250", "ambiguous-thousands"],
    ["M12x1.5-6H", "trailing-text"],
    ["M12x1.5 steel", "trailing-text"],
  ])("%s: %s", (text, code) => {
    expect(readQuantity(text, "thread")).toMatchObject({ kind: "unreadable", code });
  });

  test("a bare number is no thread", () => {
    expect(readQuantity(12, "thread")).toMatchObject({ code: "bad-thread" });
  });
});

test("what is written can be read again", () => {
  for (const text of ["M12x1.5", "M5", "1.37x24 LH", "9/16x20", "36 mm x 24 tpi", "1x24", "2.3 mm x 56 tpi"]) {
    expect(threadOf(writeThread(threadOf(text))), writeThread(threadOf(text))).toEqual(threadOf(text));
  }
  expect(writeThread(threadOf("M12x1.5"))).toBe("M12 × 1.5");
  expect(writeThread(threadOf("1.37x24 LH"))).toBe("1.37 in × 24 tpi LH");
});
