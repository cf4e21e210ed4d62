import { describe, expect, test } from "vitest";
import { beforeAfter, cloudAndWall, frontRetentionArrows, gapBars, planStrip, residualBars } from "../bicycle/index.js";
import { SAMPLE_AFTER, SAMPLE_BEFORE } from "../bicycle/sample-bicycle.js";
import { at, type Drawing, pathOf, rectangle } from "../model/index.js";
import { toSvg } from "./to-svg.js";
import { xmlFault } from "./xml-fault.js";

const b95 = (low: number, high: number) => ({ low, high, means: "95 %" });

function bicycle(version: "wide" | "narrow"): Drawing {
  const answer = beforeAfter({
    before: SAMPLE_BEFORE,
    after: SAMPLE_AFTER,
    version,
    label: "Before and after",
    dimensions: [
      { name: "wheelbase" },
      { name: "bb-height" },
      { name: "stack" },
      { name: "reach" },
      { name: "trail" },
      { name: "head-angle" },
      { name: "seat-angle" },
    ],
    dust: [{ at: SAMPLE_AFTER.headTop, sdXMm: 1, sdYMm: 2 }],
    balloons: (["settled", "work", "measure", "no", "refuse", "gate"] as const).map((outline, i) => ({
      at: at(i * 100, 900),
      target: SAMPLE_AFTER.bb,
      text: String(i),
      outline,
      href: `#q${i}`,
    })),
  });
  if (answer.kind === "refused") throw new Error("the sample cannot be drawn");
  return answer.value.drawing;
}

const everyKind: Drawing = {
  label: "every kind",
  view: { xMm: 0, yMm: 0, widthMm: 100, heightMm: 50 },
  widthMm: 100,
  nominalWidthPx: 400,
  items: [
    {
      kind: "path",
      role: "after",
      fill: "sheet",
      path: [
        { op: "move", to: at(1, 1) },
        { op: "quad", control: at(2, 5), to: at(9, 1) },
        { op: "cubic", control1: at(1, 1), control2: at(4, 4), to: at(5, 5) },
        { op: "arc", centre: at(5, 5), radiusMm: 2, startDeg: 0, endDeg: 270 },
        { op: "close" },
      ],
    },
    { kind: "polyline", role: "accent", points: [at(0, 0), at(5, 5), at(9, 1)] },
    { kind: "hatch", hatch: "rubber", path: rectangle(1, 1, 8, 8), role: "cut" },
    { kind: "hatch", hatch: "keep", path: rectangle(20, 1, 8, 8) },
    { kind: "tube", role: "after", path: pathOf([at(0, 0), at(40, 30)]), outsideMm: 5 },
    { kind: "arrow", role: "accent", from: at(0, 0), to: at(0, 20), text: "1 790 N" },
    { kind: "dimension", role: "dimension", from: at(0, 0), to: at(-10, 0), offsetMm: 4, text: "10", was: "was 9" },
    { kind: "group", name: "a", items: [{ kind: "circle", role: "unknown", centre: at(3, 3), radiusMm: 2 }] },
  ],
};

const drawings: readonly (readonly [string, Drawing])[] = [
  ["bicycle wide", bicycle("wide")],
  ["bicycle narrow", bicycle("narrow")],
  ["every kind", everyKind],
  ["cloud", cloudAndWall({ what: "gap", value: 4.9, band: b95(3.3, 6.5), unit: "mm", limit: 4, limitIs: "least" })],
  ["cloud without band", cloudAndWall({ what: "gap", value: 0, unit: "mm", limit: 0, limitIs: "most" })],
  ["cloud not measured", cloudAndWall({ what: "gap", unit: "mm", limit: 4, limitIs: "least" })],
  ["cloud of no number", cloudAndWall({ what: "gap", value: Number.NaN, unit: "mm", limit: 4, limitIs: "least" })],
  [
    "gaps",
    gapBars(
      [
        { name: "a", gapMm: 6.5, band: b95(5.9, 7.1), wantedMm: 6 },
        { name: "b", gapMm: -3, wantedMm: 4 },
        { name: "c", wantedMm: 4 },
      ],
      "wide",
    ),
  ],
  ["gaps, none", gapBars([], "narrow")],
  ["residuals", residualBars([{ name: "a", w: -5, again: true }, { name: "b" }, { name: "c", w: 0 }], 3.29, "narrow")],
  ["residuals, none", residualBars([], 3.29, "wide")],
  [
    "plan",
    planStrip({
      sessions: [1, 3],
      waits: [{ fromDay: 4, toDay: 9, text: "cure" }],
      deadlineDay: 20,
      finish: { day: 18, low: 15, high: 22 },
      version: "wide",
    }),
  ],
  ["plan of a thousand years", planStrip({ sessions: [365_000], waits: [], version: "narrow" })],
  ["front", frontRetentionArrows({ end: "closed", pushOutN: 0 })],
];

describe("svg of a drawing", () => {
  test.each(drawings)("%s: well-formed, no number missing, the same each time", (_, drawing) => {
    for (const mode of ["screen", "print"] as const) {
      const svg = toSvg(drawing, { mode, idPrefix: "x" });
      expect(xmlFault(svg)).toBeUndefined();
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      expect(toSvg(structuredClone(drawing), { mode, idPrefix: "x" })).toBe(svg);
      expect(svg).toMatch(/^<svg [^>]*role="(?:img|group)" aria-label="[^"]+"/);
    }
  });

  test.each(drawings)(
    "%s: no letter under 13.5 px on a screen of any width, nor under 10 pt in print",
    (_, drawing) => {
      for (const displayWidthPx of [120, 320, 390, 1280]) {
        for (const m of toSvg(drawing, { mode: "screen", displayWidthPx }).matchAll(/font-size="([\d.]+)"/g)) {
          expect(Number(m[1])).toBeGreaterThanOrEqual(13.5);
        }
      }
      for (const m of toSvg(drawing, { mode: "print" }).matchAll(/font-size="([\d.]+)"/g)) {
        expect(Number(m[1])).toBeGreaterThanOrEqual(3.52); // 10 pt = 3.528 mm
      }
    },
  );

  test("the screen takes the look's colours, print has none of them", () => {
    const screen = toSvg(everyKind, { mode: "screen" });
    expect(screen).toContain('stroke="var(--ink)"');
    expect(screen).not.toMatch(/#[0-9a-f]{3}/i);
    expect(toSvg(everyKind, { mode: "print" })).not.toContain("var(");
  });

  test("one world mm at true scale is one mm on paper", () => {
    // A line from 10 to 61 in a window of 100 on 100 mm of paper must be 51 long, whatever the look's sizes are.
    const line: Drawing = { ...everyKind, items: [{ kind: "line", role: "after", from: at(10, 5), to: at(61, 5) }] };
    expect(toSvg(line, { mode: "print" })).toContain('d="M10 45L61 45"');
    expect(toSvg(line, { mode: "print" })).toContain('width="100mm" height="50mm"');
  });

  test("an arc is drawn the way round it is meant", () => {
    // Anticlockwise from east to north, radius 10 about (50, 25): ends at (50, 35), so 15 from the top; SVG sweep flag 0.
    const arc: Drawing = {
      ...everyKind,
      items: [{ kind: "arc", role: "after", centre: at(50, 25), radiusMm: 10, startDeg: 0, endDeg: 90 }],
    };
    expect(toSvg(arc, { mode: "print" })).toContain('d="M60 25A10 10 0 0 0 50 15"');
  });

  test("a place that is no number is not drawn somewhere else", () => {
    const bad: Drawing = {
      ...everyKind,
      items: [{ kind: "line", role: "after", from: at(Number.NaN, 0), to: at(1, 1) }],
    };
    expect(() => toSvg(bad, { mode: "print" })).toThrow(/not a number/);
  });

  test("a balloon leads only to a place on the page", () => {
    const to = (href: string): Drawing => ({
      ...everyKind,
      items: [{ kind: "balloon", at: at(5, 5), text: "1", outline: "settled", href }],
    });
    expect(toSvg(to("#q1"), { mode: "screen" })).toContain('<a class="balloon" href="#q1" tabindex="-1"');
    expect(toSvg(to("javascript:alert(1)"), { mode: "screen" })).not.toContain("href");
  });

  test("the check of well-formedness can fail", () => {
    expect(xmlFault("<a><b></a></b>")).toBeDefined();
    expect(xmlFault("<a>&nbsp;</a>")).toBeDefined();
    expect(xmlFault('<a b="1" b="2"></a>')).toBeDefined();
    expect(xmlFault("<a>")).toBeDefined();
    expect(xmlFault('<a b="&amp;">x &lt; y<c/></a>')).toBeUndefined();
  });
});
