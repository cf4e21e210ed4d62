/** Can a broken run be counted as a good one? */
import { describe, expect, it } from "vitest";
import { count } from "./count.mjs";

const file = (status: string, ...tests: string[]) => ({
  name: "x.test.ts",
  status,
  assertionResults: tests.map((test) => ({ status: test, fullName: `a ${test} one` })),
});

describe("count", () => {
  it("adds up over files and names what was skipped", () => {
    const report = { testResults: [file("passed", "passed", "passed"), file("failed", "failed", "passed", "skipped")] };
    expect(count(report, 1, "unit")).toEqual({ passed: 3, failed: 1, skipped: ["a skipped one"], notes: [] });
  });

  it.each([
    ["no report", undefined, 1],
    ["no tests", { testResults: [] }, 0],
    ["a file that does not load", { testResults: [file("failed")] }, 1],
    ["an error between the tests", { testResults: [file("passed", "passed")] }, 1],
  ])("%s is a failure with a note", (_, report, exitCode) => {
    const counted = count(report, exitCode, "unit");
    expect(counted.failed).toBe(1);
    expect(counted.notes).toHaveLength(1);
  });

  it("only skipped tests are no tests", () => {
    expect(count({ testResults: [file("passed", "skipped")] }, 0, "unit").failed).toBe(1);
  });
});
