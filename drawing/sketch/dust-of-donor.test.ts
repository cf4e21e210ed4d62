/** Does the dust agree with the survey's covariance carried through the frame itself, not through our formulas? */
import { readFileSync } from "node:fs";
import { bicyclePoints, type FrameMeasures } from "@coldset/core/geometry";
import { reckon } from "@coldset/core/questions";
import { loadText, resolveBuild } from "@coldset/core/workshop";
import { describe, expect, test } from "vitest";
import { dustOfDonor } from "./dust-of-donor.js";

const QUAYSIDE = readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8");

function reckoned(change: (text: string) => string = (t) => t) {
  const loaded = loadText(change(QUAYSIDE), "quayside.yaml");
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  const resolved = resolveBuild(loaded.docs.map((d) => d.doc));
  if (resolved.kind === "refused") throw new Error(JSON.stringify(resolved.refusals));
  return reckon(resolved.resolved);
}

describe("dust round the donor's joints", () => {
  const r = reckoned();
  const { frame } = r.geometry;
  if (frame.kind === "refused") throw new Error("the demo's survey settles its frame");
  const { keys, covariance, frame: figures } = frame.value;

  /** sd of a coordinate by central differences through `bicyclePoints`, all fourteen figures and their covariance. */
  function carried(of: (points: ReturnType<typeof bicyclePoints>) => number): number {
    const slopes = keys.map((key) => {
      const at = (h: number) =>
        of(bicyclePoints({ ...(figures as FrameMeasures), [key]: (figures[key] ?? 0) + h } as FrameMeasures, {}));
      return (at(1e-3) - at(-1e-3)) / 2e-3;
    });
    let variance = 0;
    for (const [i, a] of slopes.entries())
      for (const [j, b] of slopes.entries()) variance += a * b * (covariance[i]?.[j] ?? 0);
    return Math.sqrt(variance);
  }

  test.each([
    ["seat cluster", 0, "seatCluster"],
    ["head tube's top", 1, "headTop"],
    ["rear axle", 2, "rearAxle"],
    ["front axle", 3, "frontAxle"],
  ] as const)("%s: as wide and as high as the covariance carried through the frame", (_, index, point) => {
    const dust = dustOfDonor(r)[index];
    expect(dust?.at).toEqual(r.geometry.before?.points[point]);
    expect(dust?.sdXMm).toBeCloseTo(
      carried((p) => p[point].x),
      1,
    );
    expect(dust?.sdYMm).toBeCloseTo(
      carried((p) => p[point].y),
      1,
    );
  });

  test("where the survey settles nothing there is no dust", () => {
    expect(dustOfDonor(reckoned((t) => t.replace(/^(measured:\n)((?: {2}.*\n)+)/m, "measured: {}\n")))).toEqual([]);
  });
});
