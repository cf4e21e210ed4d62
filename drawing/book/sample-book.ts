import { beforeAfter, cloudAndWall, frontRetentionArrows, gapBars, planStrip, residualBars } from "../bicycle/index.js";
import { SAMPLE_AFTER, SAMPLE_BEFORE } from "../bicycle/sample-bicycle.js";
import { at, type Drawing, pathOf, rectangle } from "../model/index.js";
import type { BookContent } from "./content.js";

/** Texts that try to be something else than text. */
export const HOSTILE_TEXTS = [
  "#set page(width: 10pt)",
  "$ x^2 $ and $(alert)",
  String.raw`back\slash \ #panic("x")`,
  "*bold* _under_ `code` ```raw```",
  "@label <label> [content] {code}",
  "\"quotes\" and 'quotes' // no comment /* no comment */",
  "= Heading -- --- ~ ... - + /",
  "</text></svg><script>alert(1)</script> &amp; & ]]>",
  '#image("/etc/hosts") #include "x.typ"',
  "−0.8 and -0.8 ± 0.3 × 2° · 5–6",
] as const;

export const ALIEN_TEXT = "emoji 🚲, right to left שלום, bell \u0007, turn \u202e, σ √ ✓ → 1⅛";
export const LONG_WORD = "Handlebarstemexpanderboltlubricationintervalmeasurement".repeat(4);

const before = (version: "wide" | "narrow"): Drawing => {
  const answer = beforeAfter({
    before: SAMPLE_BEFORE,
    after: SAMPLE_AFTER,
    version,
    label: "Before in pencil, after in ink: the bottom bracket comes down by 7.",
    wanted: { saddle: at(-220, 692), palm: at(345, 672) },
    dimensions: [
      { name: "wheelbase", text: "wheelbase 1051.1 ± 2.7", was: "was 1052" },
      { name: "bb-height", text: "282.2 ± 2.6", was: "was 289" },
      { name: "trail", text: "trail 68.2 ± 4.7" },
      { name: "head-angle", text: "71.1° ± 0.4" },
    ],
    dust: [{ at: SAMPLE_AFTER.headCrossing, sdXMm: 1.4, sdYMm: 1.2 }],
  });
  if (answer.kind === "refused") throw new Error(answer.refusals.map((r) => r.message).join(" "));
  return answer.value.drawing;
};

/** A plate to be cut, at its true size. */
export const SAMPLE_TEMPLATE: Drawing = {
  label: "A plate of 120 by 60 with two holes 51.0 apart.",
  view: { xMm: -10, yMm: -20, widthMm: 140, heightMm: 100 },
  widthMm: 140,
  nominalWidthPx: 700,
  items: [
    { kind: "hatch", hatch: "keep", path: rectangle(0, 0, 120, 60), role: "cut" },
    { kind: "circle", role: "after", centre: at(34, 30), radiusMm: 3, fill: "paper" },
    { kind: "circle", role: "after", centre: at(85, 30), radiusMm: 3, fill: "paper" },
    { kind: "dimension", role: "dimension", from: at(34, 30), to: at(85, 30), offsetMm: 38, text: "51.0 ± 0.1" },
    { kind: "dimension", role: "dimension", from: at(0, 0), to: at(120, 0), offsetMm: -12, text: "120" },
    { kind: "path", role: "axis", path: pathOf([at(-6, 30), at(126, 30)]) },
    { kind: "text", role: "strong", at: at(60, 12), text: "dotted side: keep", anchor: "middle", halo: true },
  ],
};

const b95 = (low: number, high: number) => ({ low, high, means: "95 %" });

/** An invented book with every kind of block in it. */
export const SAMPLE_BOOK: BookContent = {
  job: "Quayside",
  title: "Quayside",
  subtitle: "Old hybrid becomes an all-weather commuter: hub gear, two discs. For R1, 9 km each way, cobbles and rain.",
  revision: "rev. C, day 9",
  sections: [
    {
      title: "Questions",
      blocks: [
        {
          kind: "drawing",
          drawing: before("wide"),
          caption: "Ink: as it will be, fork FA, tyre 584-47. Grey: as it came.",
        },
        {
          kind: "board",
          stake: "safety",
          rows: [
            {
              number: 1,
              question: "Can the front wheel come out under this brake?",
              answer: "Not with fork FA: its end is closed.",
              detail:
                "FC was never made for a disc. FB opens downwards: keep it off unless this bicycle gets it another way.",
              verdict: "no problem found",
              about: "not checked: the closed end itself, for cracks",
              next: "Decide: fork FA",
              key: { value: 1790, unit: "N", band: b95(1630, 1950), decimals: 0 },
              keyNote: "pushes the left end out of FB at a hard stop",
              drawing: frontRetentionArrows({
                end: "open-down",
                pushOutN: 1790,
                pushOutBand: b95(1630, 1950),
                gripN: 900,
              }),
              open: true,
            },
            {
              number: 9,
              question: "Where exactly does the brake tab go?",
              answer: "Between the stays, bolt line 21° down. No cut before the welder signs.",
              verdict: "gate",
              about: "qualified welder",
              next: "Trace your own caliper, then turn it",
              key: { value: 79.1, unit: "mm", band: b95(79, 79.2) },
              open: true,
            },
            {
              number: 2,
              question: "Is this frame and fork sound enough to spend on?",
              answer: "Sound where you looked.",
              verdict: "measure first",
              about: "rust at the shell",
              next: "Scribe the bloom, read the pit depth",
              key: { unit: "mm" },
              open: true,
            },
            {
              number: 16,
              question: "Is this used part worth mending?",
              answer: "q05: no. Its rim wall is 0.8.",
              verdict: "refuse",
              about: "q05",
              open: false,
              key: { value: 0.8, unit: "mm" },
            },
            {
              number: 5,
              question: "What does this fork do to it?",
              answer: "7 lower at the cranks, steers as before",
              verdict: "flag",
              about: "toe overlap",
              open: false,
              key: { value: 68.2, unit: "mm", band: b95(63.5, 72.9) },
            },
          ],
        },
        {
          kind: "board",
          stake: "money",
          rows: [
            {
              number: 13,
              question: "Did I mis-measure?",
              answer: "The top tube disagrees with everything by 14.",
              detail: "You read 537, to the edge of the seat tube; half of 28.6 is missing. All the rest says 551.",
              verdict: "measure first",
              next: "Re-measure the top tube, centre to centre",
              key: { value: -0.8, unit: "mm", band: b95(-3.8, 2.2) },
              drawing: cloudAndWall({
                what: "room",
                value: 4.9,
                band: b95(3.3, 6.5),
                unit: "mm",
                limit: 4,
                limitIs: "least",
              }),
              open: true,
            },
            {
              number: 19,
              question: "Is it worth it, and when do I stop?",
              answer: "Hydraulic discs put 27 over.",
              verdict: "over",
              about: "the budget",
              next: "Cable discs instead, 27 less",
              key: { value: 587, unit: "of 560", decimals: 0 },
              open: false,
            },
            {
              number: 6,
              question: "Will the crank clear the stay, the tyre clear everything?",
              answer: "All clear bare. The guard must be trimmed.",
              verdict: "fits with work",
              about: "guard",
              key: { value: 6.5, unit: "mm", band: b95(5.9, 7.1) },
              open: false,
            },
            {
              number: 8,
              question: "How do I fit a through axle in a slotted end?",
              answer: "Not needed: the axle sits in the slot",
              verdict: "fits",
              key: { value: 0.1, unit: "mm", band: b95(0.05, 0.15), decimals: 2 },
              open: false,
            },
            {
              number: 10,
              question: "Will the 28.6 clamp go on the 31.8 tube?",
              answer: "No, and nothing turns it",
              verdict: "will not fit",
              open: false,
            },
          ],
        },
      ],
    },
    {
      title: "Brake tab, rear left",
      lead: "Template 1:1. Plain steel plate 6. Seen from the left, front to the left. Print at 100 %, no fitting to the page.",
      newSheet: true,
      stamp: { word: "NOT TO CUT", why: "2 of 4 signatures missing" },
      blocks: [
        { kind: "drawing", drawing: SAMPLE_TEMPLATE, trueScale: true },
        {
          kind: "figures",
          figures: [
            { label: "hole A from axle", quantity: { value: 39.9, unit: "mm", band: b95(39.8, 40) } },
            { label: "hole B from axle", quantity: { value: 79.1, unit: "mm", band: b95(79, 79.2) } },
            { label: "A to B", quantity: { value: 51, unit: "mm", band: b95(50.9, 51.1) } },
            { label: "tab face from centre", quantity: { value: 67.5, unit: "mm", band: b95(67.2, 67.8) } },
            {
              label: "bolts M6",
              quantity: {
                value: 7,
                unit: "N m",
                band: { low: 6, high: 8, means: "sheet of the part wins" },
                decimals: 0,
              },
            },
          ],
        },
        {
          kind: "cautions",
          items: [
            {
              first: "Clean first.",
              text: "No chlorinated cleaner in the shop: near an arc it gives phosgene. Soap and water.",
            },
            {
              first: "Bare steel.",
              text: "Grind brass, silver, zinc, paint off. Never weld into them. Keep 15 from any brazed joint.",
            },
            {
              first: "Earth clamp near the weld,",
              text: "never through hub bearings. Plastics, tyre, bar plugs off. Closed tubes need a vent. Fire watch 30 min.",
            },
          ],
        },
        {
          kind: "signatures",
          lines: [
            { label: "tube is plain steel", signed: "R1, day 8" },
            { label: "plane measured on the wheel", signed: "R1, day 9" },
            { label: "dry fit of every part, bare" },
            { label: "qualified welder" },
          ],
        },
      ],
    },
    {
      title: "Gaps and readings",
      newSheet: true,
      blocks: [
        {
          kind: "drawing",
          drawing: gapBars(
            [
              {
                name: "Tyre – chainstays",
                note: "each side, wanted 6",
                gapMm: 6.5,
                band: b95(5.9, 7.1),
                wantedMm: 6,
                hardMm: 4,
              },
              { name: "Tyre – brake bridge", note: "above it, wanted 6", gapMm: 27, band: b95(24, 30), wantedMm: 6 },
              { name: "Ring 42 – stay", note: "inside face, wanted 3", gapMm: 1.9, band: b95(0.9, 2.9), wantedMm: 3 },
            ],
            "wide",
          ),
          caption: "Close hatching: no room. Open hatching: less than 2 over what is wanted.",
        },
        {
          kind: "drawing",
          drawing: residualBars(
            [
              { name: "top tube", w: -5.47, again: true },
              { name: "chainstay", w: 0.4 },
              { name: "front centre", w: 1.9 },
              { name: "rake" },
            ],
            3.29,
            "wide",
          ),
          caption: "Readings against all the others, in standard deviations.",
        },
      ],
    },
    {
      title: "Plan",
      blocks: [
        {
          kind: "drawing",
          drawing: planStrip({
            version: "wide",
            sessions: [0, 2, 4, 7, 9, 11, 14, 16, 18, 30, 32, 37],
            waits: [{ fromDay: 18.5, toDay: 28, text: "paint cures" }],
            deadlineDay: 35,
            finish: { day: 40, low: 36, high: 44 },
          }),
        },
        {
          kind: "table",
          caption: "Operations in order",
          columns: [
            { head: "No.", align: "right" },
            { head: "What" },
            { head: "Needs" },
            { head: "Hours", align: "right" },
            { head: "Day", align: "right" },
          ],
          rows: Array.from({ length: 64 }, (_, i) => [
            String(i + 1),
            `Operation ${i + 1}: strip, clean and measure the part, write the reading down`,
            i % 3 === 0 ? "ream and face" : "hand",
            (0.5 + (i % 4) * 0.25).toFixed(2),
            String(Math.floor(i / 2)),
          ]),
        },
        { kind: "heading", text: "What was not checked" },
        { kind: "list", items: ["Hidden cracks under paint.", "The weld itself: nobody here can see into it."] },
      ],
    },
    {
      title: "Texts as they were typed",
      blocks: [
        ...HOSTILE_TEXTS.map((text) => ({ kind: "paragraph" as const, first: "Note.", text })),
        { kind: "paragraph", text: ALIEN_TEXT },
        { kind: "paragraph", text: LONG_WORD },
        {
          kind: "table",
          columns: [{ head: "Part" }, { head: "Note" }, { head: "Price", align: "right" }],
          rows: [
            [HOSTILE_TEXTS[0], LONG_WORD, "−0.80"],
            ["Łódź, Ærø, Žďár", HOSTILE_TEXTS[7], "1.00"],
          ],
        },
      ],
    },
  ],
};
