import { type Answer, answered, refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { at, type BalloonItem, type Drawing, type Item, numberWords, type Point, rectangle } from "../model/index.js";
import { inkBicycle, pedalOf, pencilBicycle } from "./bicycle-parts.js";
import {
  type BicycleSketch,
  groundCautions,
  notDrawnCautions,
  sketchRefusals,
  widthCautions,
} from "./bicycle-sketch.js";
import { type DimensionWish, dimensionItems } from "./sketch-dimensions.js";

/** A place that is not known exactly. `name` is said in the drawing's sentence, with its band. */
export interface PlaceDust {
  readonly name?: string;
  readonly at: Point;
  readonly sdXMm: number;
  readonly sdYMm: number;
}

export interface RingDust {
  readonly name: string;
  readonly at: Point;
  readonly radiusMm: number;
  readonly sdMm: number;
}

/** "95 %: rear axle ± 2.1 along, ± 1.0 up; front tyre's radius ± 3.0 mm." Each direction by itself. */
function bandSentence(dust: readonly PlaceDust[], rings: readonly RingDust[]): string {
  const half = (sd: number) => numberWords(1.96 * sd, 1);
  const parts = [
    ...dust.map((d) =>
      say("drawing.before-after.along-up", {
        joint: d.name ?? say("drawing.before-after.a-joint"),
        sdXMm: half(d.sdXMm),
        sdYMm: half(d.sdYMm),
      }),
    ),
    ...rings.map((ring) => say("drawing.before-after.radius-of-the", { ring: ring.name, sdMm: half(ring.sdMm) })),
  ];
  return parts.length === 0 ? "" : say("drawing.before-after.places-in-mm-95", { parts: parts.join("; ") });
}

export interface BeforeAfterInput {
  /** As it stands; drawn in pencil. Leave out to draw one bicycle only. */
  readonly before?: BicycleSketch;
  /** As it will be; drawn in ink. */
  readonly after: BicycleSketch;
  /** On which point do the two lie over each other? The ground is one line in any case. */
  readonly align?: "bb" | "rear-axle";
  readonly version: "wide" | "narrow";
  /** Where the rider wants saddle and hand, in the coordinates of `after`. */
  readonly wanted?: { readonly saddle?: Point; readonly palm?: Point };
  readonly dimensions?: readonly DimensionWish[];
  /** Joints whose place is uncertain: standard deviations in mm. Drawn ten times as wide, and the drawing says so. */
  readonly dust?: readonly PlaceDust[];
  /** Outlines of tyres whose radius is uncertain, in the coordinates of `after`; widened like the joints. */
  readonly rings?: readonly RingDust[];
  /** Questions on their places, in the coordinates of `after`. */
  readonly balloons?: readonly Omit<BalloonItem, "kind">[];
  /** The drawing's answer in one sentence. */
  readonly label: string;
}

/** How many times wider than it is the dust round a joint is drawn. */
export const DUST_WIDENING = 10;
export const DUST_SENTENCE = say("drawing.before-after.dust-round-a-joint-is-drawn");
export const RING_SENTENCE = say("drawing.before-after.so-is-the-dust-along-a");
const DUST_SENTENCE_NARROW = [
  say("drawing.before-after.dust-round-a-joint-is-drawn-2"),
  say("drawing.before-after.ten-times-as-wide-as-it"),
];

function moved(sketch: BicycleSketch, dx: number, dy: number): BicycleSketch {
  const shift = (value: unknown): unknown => {
    if (typeof value !== "object" || value === null) return value;
    const entries = Object.entries(value);
    if ("x" in value && "y" in value && typeof value.x === "number" && typeof value.y === "number") {
      return { x: value.x + dx, y: value.y + dy };
    }
    return Object.fromEntries(entries.map(([key, inner]) => [key, shift(inner)]));
  };
  return { ...(shift(sketch) as BicycleSketch), groundY: sketch.groundY + dy };
}

function contact(
  wanted: Point | undefined,
  reached: Point | undefined,
  words: string,
  pxMm: number,
  named: boolean,
): Item[] {
  const items: Item[] = [];
  if (wanted !== undefined) {
    const arm = 11 * pxMm;
    items.push(
      { kind: "circle", role: "dimension", centre: wanted, radiusMm: 9 * pxMm, fill: "paper" },
      { kind: "line", role: "dimension", from: at(wanted.x - arm, wanted.y), to: at(wanted.x + arm, wanted.y) },
      { kind: "line", role: "dimension", from: at(wanted.x, wanted.y - arm), to: at(wanted.x, wanted.y + arm) },
    );
    if (named)
      items.push({
        kind: "text",
        role: "note",
        at: wanted,
        text: words,
        anchor: "middle",
        shiftPx: [0, 20],
        halo: true,
      });
  }
  if (reached !== undefined)
    items.push({ kind: "circle", role: "construction", centre: reached, radiusMm: 4.5 * pxMm, fill: "ink" });
  return items;
}

/**
 * How does the old bicycle become the wanted one, seen from the side, to scale, on one ground line? Before in pencil, after in ink.
 * Front is to the right. Refuses when a coordinate is missing or is no number.
 */
export function beforeAfter(input: BeforeAfterInput): Answer<{ readonly drawing: Drawing }> {
  const refusals = [
    ...sketchRefusals(input.after, "after"),
    ...(input.before === undefined ? [] : sketchRefusals(input.before, "before")),
  ];
  if (refusals.length > 0) return refused(refusals);

  // Ground is y = 0; the bottom bracket of the bicycle in ink is x = 0.
  const after = moved(input.after, -input.after.bb.x, -input.after.groundY);
  const lay = (p: Point) => at(p.x - input.after.bb.x, p.y - input.after.groundY);
  const before =
    input.before === undefined
      ? undefined
      : moved(
          input.before,
          input.align === "rear-axle" ? after.rearAxle.x - input.before.rearAxle.x : -input.before.bb.x,
          -input.before.groundY,
        );

  const wide = input.version === "wide";
  const dimensions = (input.dimensions ?? []).slice(0, wide ? undefined : 2);
  const nominalWidthPx = wide ? 1000 : 358;
  const points: Point[] = [];
  for (const b of before === undefined ? [after] : [after, before]) {
    points.push(
      at(b.rearAxle.x - b.rearRadiusMm - 20, 0),
      at(b.frontAxle.x + b.frontRadiusMm + 20, 0),
      b.headTop,
      ...[b.saddle, b.palm, b.steererTop, b.barClamp].filter((p) => p !== undefined),
    );
  }
  const balloons = (input.balloons ?? []).map((b) => ({
    ...b,
    at: lay(b.at),
    ...(b.target === undefined ? {} : { target: lay(b.target) }),
  }));
  const wantedSaddle = input.wanted?.saddle === undefined ? undefined : lay(input.wanted.saddle);
  const wantedPalm = input.wanted?.palm === undefined ? undefined : lay(input.wanted.palm);
  points.push(...[wantedSaddle, wantedPalm].filter((p) => p !== undefined));
  const xs = points.map((p) => p.x);
  const left = Math.min(...xs) - 30;
  const right = Math.max(...xs) + 30;
  const pxMm = (right - left) / nominalWidthPx;
  const below = dimensions.some((d) => d.name === "wheelbase")
    ? (dimensions.some((d) => d.name === "wheelbase" && d.was !== undefined) ? 96 : 78) * pxMm
    : dimensions.some((d) => d.name === "trail")
      ? 62 * pxMm
      : 16 * pxMm;
  const reach = 32 * pxMm;
  const ys = [...points.map((p) => p.y + 50 * pxMm), ...balloons.map((b) => b.at.y + reach)];
  const top = Math.max(...ys);
  const bottom = Math.min(-below, ...balloons.map((b) => b.at.y - reach));
  const low = Math.min(left, ...balloons.map((b) => b.at.x - reach));
  const high = Math.max(right, ...balloons.map((b) => b.at.x + reach));
  const ringed = (input.rings ?? []).length > 0;
  const dusty = ringed || (input.dust ?? []).length > 0;
  const noteLines = !dusty
    ? []
    : wide
      ? [[DUST_SENTENCE, ...(ringed ? [RING_SENTENCE] : [])].join(" ")]
      : [...DUST_SENTENCE_NARROW, ...(ringed ? [RING_SENTENCE] : [])];
  const noteMm = (noteLines.length * 20 + (dusty ? 8 : 0)) * pxMm;

  const items: Item[] = [
    {
      kind: "group",
      name: "ground",
      items: [
        { kind: "hatch", hatch: "ground", path: rectangle(left, -12 * pxMm, right - left, 12 * pxMm) },
        { kind: "line", role: "ground", from: at(left, 0), to: at(right, 0) },
      ],
    },
    // Pencil lies under the ink: what the new bicycle hides is hidden.
    ...(before === undefined ? [] : [{ kind: "group", name: "before", items: pencilBicycle(before) } as const]),
    { kind: "group", name: "after", items: inkBicycle(after) },
  ];
  items.push({
    kind: "group",
    name: "dust",
    items: [
      ...(input.dust ?? []).map(
        (d, index): Item => ({
          kind: "dust",
          shape: "ellipse",
          at: lay(d.at),
          sdXMm: d.sdXMm * DUST_WIDENING,
          sdYMm: d.sdYMm * DUST_WIDENING,
          seed: index + 1,
          dots: wide ? 90 : 50,
        }),
      ),
      ...(input.rings ?? []).map(
        (ring, index): Item => ({
          kind: "dust",
          shape: "ring",
          at: lay(ring.at),
          sdXMm: ring.sdMm * DUST_WIDENING,
          sdYMm: ring.radiusMm,
          seed: 101 + index,
          dots: wide ? 260 : 140,
        }),
      ),
    ],
  });
  items.push({
    kind: "group",
    name: "rider",
    items: [
      ...contact(wantedSaddle, after.saddle, say("drawing.before-after.saddle-wanted"), pxMm, wide),
      ...contact(wantedPalm, after.palm, say("drawing.before-after.hand-wanted"), pxMm, wide),
      ...(after.crankLengthMm === undefined
        ? []
        : contact(undefined, pedalOf(after, after.crankLengthMm), "", pxMm, false)),
    ],
  });
  items.push({
    kind: "group",
    name: "dimensions",
    items: dimensions.flatMap((wish) => dimensionItems(after, wish, pxMm, input.version)),
  });
  items.push(...balloons.map((b): Item => ({ kind: "balloon", ...b })));
  noteLines.forEach((text, index) => {
    items.push({ kind: "text", role: "note", at: at(low, bottom), text, shiftPx: [2, -19 * (index + 1)] });
  });
  const drawing: Drawing = {
    label: [
      input.label,
      bandSentence(input.dust ?? [], input.rings ?? []),
      dusty ? DUST_SENTENCE : "",
      ringed ? RING_SENTENCE : "",
    ]
      .filter((words) => words !== "")
      .join(" "),
    view: { xMm: low, yMm: bottom - noteMm, widthMm: high - low, heightMm: top - bottom + noteMm },
    widthMm: wide ? 178 : 86,
    nominalWidthPx: ((high - low) / (right - left)) * nominalWidthPx,
    items,
  };
  return answered(
    { drawing },
    {
      cautions: [
        ...widthCautions(input.after, "after"),
        ...notDrawnCautions(input.after, "after"),
        ...groundCautions(input.after, "after"),
        ...(input.before === undefined ? [] : groundCautions(input.before, "before")),
      ],
    },
  );
}
