/**
 * Is uncertainty drawn as a haze in every drawing? One table of all drawings: where a drawn quantity has a band there is dust and the
 * sentence says the band in words; where it has none there is no dust and it says so. A new drawing that is not in the table fails.
 */
import { readdirSync, readFileSync } from "node:fs";
import { reckon } from "@coldset/core/questions";
import { loadText, resolveBuild } from "@coldset/core/workshop";
import { describe, expect, test } from "vitest";
import {
  beforeAfter,
  cloudAndWall,
  frontRetentionArrows,
  gapBars,
  planStrip,
  rearSpread,
  residualBars,
  tabPlace,
  whatToMeasure,
} from "./bicycle/index.js";
import { SAMPLE_AFTER, SAMPLE_BEFORE } from "./bicycle/sample-bicycle.js";
import type { BookBlock } from "./book/index.js";
import { bookOfBuild } from "./build/index.js";
import type { Drawing, Item } from "./model/index.js";
import { dustOfAfter, dustOfDonor, ringsOfAfter, ringsOfDonor, sketchAfter, sketchBefore } from "./sketch/index.js";
import { toSvg } from "./svg/index.js";

const ROOM = new URL(".", import.meta.url);
const b95 = (low: number, high: number) => ({ low, high, means: "95 %" });

function drawn(input: Parameters<typeof beforeAfter>[0]): Drawing {
  const answer = beforeAfter(input);
  if (answer.kind === "refused") throw new Error(answer.refusals.map((r) => r.message).join(" "));
  return answer.value.drawing;
}

function known(drawing: Drawing | undefined): Drawing {
  if (drawing === undefined) throw new Error("this drawing is to be there");
  return drawing;
}

interface Sample {
  /** With bands, and the words that its sentence must have of them. Left out where nothing drawn can have a band, with the reason. */
  readonly banded?: { readonly drawing: () => Drawing; readonly dust: number; readonly says: readonly string[] };
  /** Without bands, and how the sentence owns up to it. */
  readonly bare?: { readonly drawing: () => Drawing; readonly says: readonly string[] };
  readonly why?: string;
}

const spread = { gapMm: 130, hubMm: 132 };
const tab = { nearMm: 39.9, farMm: 79.1, apartMm: 51, chainstayDeg: -5, seatstayDeg: 57 };
const wall = { what: "gap", value: 5, unit: "mm", limit: 4, limitIs: "least" as const };
const plan = { sessions: [0, 2], waits: [], deadlineDay: 35, version: "wide" as const };
const side = { before: SAMPLE_BEFORE, after: SAMPLE_AFTER, version: "wide" as const, label: "Side view." };

/** By the name of the function that draws it. */
const TABLE: Readonly<Record<string, Sample>> = {
  beforeAfter: {
    banded: {
      drawing: () =>
        drawn({
          ...side,
          dust: [{ name: "rear axle", at: SAMPLE_AFTER.rearAxle, sdXMm: 1, sdYMm: 0.5 }],
          rings: [{ name: "front tyre", at: SAMPLE_AFTER.frontAxle, radiusMm: 339, sdMm: 1.5 }],
        }),
      dust: 2,
      // By hand: 1.96 × 1, 1.96 × 0.5 and 1.96 × 1.5.
      says: ["rear axle ± 2.0 along, ± 1.0 up", "radius of the front tyre ± 2.9", "95 %"],
    },
    bare: { drawing: () => drawn(side), says: ["Side view."] },
  },
  cloudAndWall: {
    banded: { drawing: () => cloudAndWall({ ...wall, band: b95(3, 7) }), dust: 1, says: ["5.0 mm ± 2.0"] },
    bare: { drawing: () => cloudAndWall(wall), says: ["as entered"] },
  },
  frontRetentionArrows: {
    banded: {
      drawing: () =>
        frontRetentionArrows({
          end: "open-down",
          pushOutN: 1790,
          pushOutBand: b95(1630, 1950),
          gripN: 900,
          gripBand: b95(700, 1100),
        }),
      dust: 2,
      says: ["790 N ± 160", "900 N ± 200"],
    },
    bare: {
      drawing: () => frontRetentionArrows({ end: "open-down", pushOutN: 1790, gripN: 900, gripNote: "taken, no band" }),
      says: ["790 N as entered", "900 N taken, no band"],
    },
  },
  gapBars: {
    banded: {
      drawing: () => gapBars([{ name: "stays", gapMm: 6.5, band: b95(6, 7), wantedMm: 6 }], "wide"),
      dust: 1,
      says: ["stays 6.5 ± 0.5"],
    },
    bare: { drawing: () => gapBars([{ name: "stays", gapMm: 6.5, wantedMm: 6 }], "wide"), says: ["6.5 as entered"] },
  },
  planStrip: {
    banded: {
      drawing: () => planStrip({ ...plan, finish: { day: 40, low: 36, high: 44 } }),
      dust: 1,
      says: ["done on day 40 ± 4"],
    },
    bare: {
      drawing: () => planStrip({ ...plan, finish: { day: 40 } }),
      says: ["day 40 by the hours and waits as entered"],
    },
  },
  rearSpread: {
    banded: { drawing: () => rearSpread({ ...spread, overBand: b95(1.7, 2.3) }), dust: 2, says: ["± 0.15"] },
    bare: { drawing: () => rearSpread(spread), says: ["as entered"] },
  },
  residualBars: {
    banded: {
      drawing: () => residualBars([{ name: "rake", w: 2 }], 3.29, "wide"),
      dust: 1,
      says: ["± 1.96, 95 %"],
    },
    why: "a residual in its own spreads always has its band; without one there is no residual",
  },
  tabPlace: {
    banded: {
      drawing: () => tabPlace({ ...tab, between: { deg: 62, band: b95(61, 63) } }),
      dust: 2,
      says: ["62 degrees apart ± 1.0", "to be made"],
    },
    bare: { drawing: () => tabPlace(tab), says: ["as entered", "to be made"] },
  },
  whatToMeasure: {
    bare: { drawing: () => known(whatToMeasure("chainstay", "An example bicycle.", "wide")), says: ["example"] },
    why: "it shows where the tape is held on an example; no figure stands on it",
  },
};

const flat = (items: readonly Item[]): readonly Item[] =>
  items.flatMap((i) => (i.kind === "group" ? flat(i.items) : [i]));
const dustOf = (drawing: Drawing) => flat(drawing.items).filter((i) => i.kind === "dust");

/** Every function of the room that gives a drawing, by the type it says it gives. */
function drawingFunctions(): readonly string[] {
  const files = readdirSync(ROOM, { recursive: true, encoding: "utf8" })
    .map((f) => f.replaceAll("\\", "/"))
    .filter(
      (f) =>
        f.endsWith(".ts") && !f.endsWith(".d.ts") && !f.endsWith(".test.ts") && !/(^|\/)(dist|node_modules)\//.test(f),
    );
  return files.flatMap((f) => drawersIn(readFileSync(new URL(f, ROOM), "utf8")));
}

function drawersIn(source: string): readonly string[] {
  const found = source.matchAll(
    /export function (\w+)\([^{]*?\): (?:Drawing(?: \| undefined)?|Answer<\{ readonly drawing: Drawing \}>) \{/g,
  );
  return [...found].map((m) => m[1] ?? "");
}

describe("the table of drawings", () => {
  test("has every drawing, and no other", () => {
    expect([...drawingFunctions()].sort()).toEqual(Object.keys(TABLE).sort());
  });

  test("a new drawing is found", () => {
    expect(drawersIn("export function newOne(input: In): Drawing {\n}")).toEqual(["newOne"]);
    expect(drawersIn("export function other(\n  a: A,\n  b: B,\n): Answer<{ readonly drawing: Drawing }> {")).toEqual([
      "other",
    ]);
    expect(drawersIn("export function noDrawing(a: A): number {")).toEqual([]);
  });
});

describe.each(Object.entries(TABLE))("%s", (_, { banded, bare, why }) => {
  test("is shown with bands and without, or says why not", () => {
    expect(why !== undefined || (banded !== undefined && bare !== undefined)).toBe(true);
  });

  if (banded !== undefined)
    test("has dust where there is a band, and the band in words", () => {
      const drawing = banded.drawing();
      expect(dustOf(drawing)).toHaveLength(banded.dust);
      for (const words of banded.says) expect(drawing.label).toContain(words);
      // The sentence is what somebody hears who cannot see it, and the dust reaches the page.
      const svg = toSvg(drawing, { mode: "screen", idPrefix: "t" });
      expect(svg).toContain(`aria-label="${drawing.label}"`);
      expect(svg.match(/class="dust"/g)).toHaveLength(banded.dust);
    });

  if (bare !== undefined)
    test("has no dust where there is no band, and owns up to it", () => {
      const drawing = bare.drawing();
      expect(dustOf(drawing)).toHaveLength(0);
      for (const words of bare.says) expect(drawing.label).toContain(words);
    });
});

describe.each(["quayside", "moorside", "canalside"])("as the builds draw it: %s", (name) => {
  const text = readFileSync(new URL(`../demo/${name}.yaml`, ROOM), "utf8");
  const loaded = loadText(text, `${name}.yaml`);
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  const resolved = resolveBuild(loaded.docs.map((d) => d.doc));
  if (resolved.kind === "refused") throw new Error(JSON.stringify(resolved.refusals));
  const r = reckon(resolved.resolved);

  test("donor and bicycle to be: dust at axles, joints, hand and tyres", () => {
    const donor = drawn({
      after: settled(sketchBefore(r)),
      version: "narrow",
      dust: dustOfDonor(r),
      rings: ringsOfDonor(r),
      label: "Donor.",
    });
    const after = drawn({
      after: settled(sketchAfter(r)),
      version: "narrow",
      dust: dustOfAfter(r),
      rings: ringsOfAfter(r),
      label: "After.",
    });
    // Four joints and two tyres; after it also the hand.
    expect(dustOf(donor)).toHaveLength(6);
    expect(dustOf(after)).toHaveLength(7);
    for (const words of ["seat cluster ±", "rear axle ±", "front axle ±", "hand ±", "radius of the rear tyre ± 3.0"])
      expect(after.label).toContain(words);
  });

  test("the book's drawings have dust or say that there is no band", () => {
    const drawings = bookOfBuild(r, { revision: "t" }).sections.flatMap((s) => s.blocks.flatMap(drawingsOf));
    expect(drawings.length).toBeGreaterThan(2);
    for (const drawing of drawings)
      if (dustOf(drawing).length > 0) expect(drawing.label).toMatch(/±|\d to \d/);
      else expect(drawing.label).toContain("as entered");
  });
});

function settled<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("the demo has its parts chosen");
  return value;
}

function drawingsOf(block: BookBlock): readonly Drawing[] {
  if (block.kind === "drawing") return [block.drawing];
  if (block.kind === "board") return block.rows.flatMap((row) => (row.drawing === undefined ? [] : [row.drawing]));
  return [];
}
