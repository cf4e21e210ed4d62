/** Does the dust of the bicycle to be agree with the bands that the swap itself gives to its figures? A second route to the same spread. */
import { readFileSync } from "node:fs";
import { bicyclePoints } from "@coldset/core/geometry";
import { reckon } from "@coldset/core/questions";
import { loadText, resolveBuild } from "@coldset/core/workshop";
import { describe, expect, test } from "vitest";
import { dustOfAfter, ringsOfAfter } from "./dust-of-after.js";

function reckoned(name: string, change: (text: string) => string = (t) => t) {
  const text = readFileSync(new URL(`../../demo/${name}.yaml`, import.meta.url), "utf8");
  const loaded = loadText(change(text), `${name}.yaml`);
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  const resolved = resolveBuild(loaded.docs.map((d) => d.doc));
  if (resolved.kind === "refused") throw new Error(JSON.stringify(resolved.refusals));
  return reckon(resolved.resolved);
}

describe.each(["quayside", "moorside", "canalside"])("dust of the bicycle to be, %s", (name) => {
  const r = reckoned(name);
  const { after } = r;
  if (after === undefined) throw new Error("the demo has its parts chosen");
  const half = (key: keyof typeof after.figures.value) => {
    const band = after.figures.bands[key];
    return band === undefined ? Number.NaN : (band.high - band.low) / 2;
  };
  const dust = new Map(dustOfAfter(r).map((d) => [d.name, d]));

  test("the head tube's top is as uncertain as reach and stack", () => {
    const top = dust.get("head tube's top");
    expect(1.96 * (top?.sdXMm ?? 0)).toBeCloseTo(half("reach_mm"), 3);
    expect(1.96 * (top?.sdYMm ?? 0)).toBeCloseTo(half("stack_mm"), 3);
    expect(top?.at).toEqual(after.points.headTop);
  });

  test("the axles are as uncertain as front centre and drop", () => {
    expect(1.96 * (dust.get("front axle")?.sdXMm ?? 0)).toBeCloseTo(half("front_centre_horizontal_mm"), 3);
    expect(1.96 * (dust.get("rear axle")?.sdYMm ?? 0)).toBeCloseTo(half("bb_drop_mm"), 3);
  });

  test("the tyres' outlines have the band of the estimated radius, M6: ± 3", () => {
    for (const ring of ringsOfAfter(r)) expect(1.96 * ring.sdMm).toBeCloseTo(3, 9);
    expect(ringsOfAfter(r).map((x) => x.radiusMm)).toEqual([after.points.rearRadiusMm, after.points.frontRadiusMm]);
  });

  test("the hand has the cockpit's band: 95 % of its cloud inside that radius", () => {
    const { handHalfWidthMm } = r.cockpit;
    // 95 % of a round normal cloud lies inside sqrt(-2 ln 0.05) = 2.4477 standard deviations (Rayleigh's law).
    expect(2.4477 * (dust.get("hand")?.sdXMm ?? Number.NaN)).toBeCloseTo(handHalfWidthMm ?? 0, 3);
  });
});

test("the parts reckoned with are those of the points drawn", () => {
  const r = reckoned("quayside");
  const frame = r.geometry.frame.kind === "answered" ? r.geometry.frame.value.frame : undefined;
  const again = bicyclePoints(frame as never, {
    axle_to_crown_mm: 395,
    rake_mm: 45,
    lower_stack_mm: 12,
    front_radius_mm: r.after?.points.frontRadiusMm ?? 0,
    rear_radius_mm: r.after?.points.rearRadiusMm ?? 0,
  });
  expect(again.headTop.x).toBeCloseTo(r.after?.points.headTop.x ?? 0, 9);
});

test("without a settled frame there is no dust", () => {
  const r = reckoned("quayside", (t) => t.replace(/^(measured:\n)((?: {2}.*\n)+)/m, "measured: {}\n"));
  expect(dustOfAfter(r)).toEqual([]);
  expect(ringsOfAfter(r)).toEqual([]);
});
