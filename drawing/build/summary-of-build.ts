/** What does the first sheet of the book say? Before and after to scale, the figures that matter, and what stands in the way. */
import type { ForkSwapValue } from "@coldset/core/geometry";
import { type Reckoning, readingWords, showNumber } from "@coldset/core/questions";
import type { FiredRule } from "@coldset/core/safety";
import { beforeAfter, type DimensionWish } from "../bicycle/index.js";
import type { BookBlock, BookSection, FiguresBlock } from "../book/index.js";
import { sketchAfter, sketchBefore } from "../sketch/index.js";
import { shortBand } from "./figure-words.js";
import { ruleCautions } from "./rule-cautions.js";

export function summarySection(r: Reckoning, standing: readonly FiredRule[]): BookSection {
  const open = r.board.filter((row) => row.open);
  const looked = r.joints.joints.filter((j) => j.verdict !== "not checked yet");
  const count = (verdict: string) => looked.filter((j) => j.verdict === verdict).length;
  const words = (["will not fit", "measure first", "fits with work", "fits"] as const).flatMap((v) =>
    count(v) === 0 ? [] : [`${v} ${count(v)}`],
  );
  const rules = r.rules.filter((f) => f.onChosen);
  return {
    title: "Where it stands",
    lead: `${open.length} of ${r.board.length} questions are open. ${looked.length} of ${r.joints.joints.length} joints were looked at${words.length === 0 ? "" : `: ${words.join(", ")}`}.`,
    ...(standing.length === 0
      ? {}
      : {
          stamp: {
            word: "NOT TO BE BUILT",
            why: `${[...new Set(standing.map((f) => f.rule))].join(", ")} stands against it`,
          },
        }),
    blocks: [
      ...(standing.length > 0
        ? [
            {
              kind: "paragraph",
              text: "A refusal stands on what this build has chosen. There is no drawing, no buy list and no plan until something else is chosen.",
            } as const,
          ]
        : drawingBlocks(r)),
      figures(r),
      ...ruleCautions(r, rules),
      ...(r.next.length === 0
        ? []
        : ([
            { kind: "heading", text: "What to measure next" },
            {
              kind: "table",
              columns: [
                { head: "What", share: 52 },
                { head: "With", share: 24 },
                { head: "To", share: 15 },
                { head: "Settles", share: 23 },
              ],
              rows: r.next.map((n) => [n.what, n.tool ?? "", n.accuracy ?? "", n.settles.join(", ")]),
            },
          ] as const)),
    ],
  };
}

function drawingBlocks(r: Reckoning): readonly BookBlock[] {
  const before = sketchBefore(r);
  const after = sketchAfter(r);
  const no = (why: string): readonly BookBlock[] => [
    { kind: "paragraph", first: "No drawing.", text: `The bicycle cannot be drawn yet: ${why}` },
  ];
  if (after === undefined) {
    const frame =
      r.geometry.frame.kind === "refused"
        ? r.geometry.frame.refusals.map((x) => x.message.replace(/\b[a-z]+(?:_[a-z]+)*_(?:mm|deg)\b/g, readingWords))
        : [];
    const missing = [...r.geometry.missing.map((m) => `${m.what}.`), ...r.cockpit.missing.map((m) => `Missing: ${m}.`)];
    const why = (frame.length > 0 ? frame : missing).slice(0, 4).join(" ");
    return no(why === "" ? "the fork, the wheels or the tyres are not known by their numbers." : why);
  }
  const { hand_xy, saddle_xy } = r.resolved.rider;
  const wanted = {
    ...(saddle_xy === undefined ? {} : { saddle: { x: saddle_xy[0], y: saddle_xy[1] } }),
    ...(hand_xy === undefined ? {} : { palm: { x: hand_xy[0], y: hand_xy[1] } }),
  };
  const drawn = beforeAfter({
    ...(before === undefined ? {} : { before }),
    after,
    version: "wide",
    wanted,
    dimensions: dimensions(r),
    dust: dust(r, after.headTop),
    label: "The bicycle before, in pencil, and after, in ink, to one scale on one ground line.",
  });
  if (drawn.kind === "refused") return no(drawn.refusals.map((x) => x.message).join(" "));
  const set = r.geometry.setAside === undefined ? "" : " One reading of the donor was set aside; see question 13.";
  return [
    {
      kind: "drawing",
      drawing: drawn.value.drawing,
      caption:
        `Before in pencil, after in ink, to scale.${set} ${drawn.cautions.map((c) => c.message).join(" ")}`.trim(),
    },
  ];
}

const DIMENSIONS = [
  ["head-angle", "head_angle_deg", "head", "°", 1],
  ["trail", "trail_mm", "trail", "", 0],
  ["bb-height", "bb_height_mm", "", "", 0],
  ["wheelbase", "wheelbase_mm", "wheelbase", "", 0],
] as const satisfies readonly (readonly [DimensionWish["name"], keyof ForkSwapValue, string, string, number])[];

function dimensions(r: Reckoning): readonly DimensionWish[] {
  const after = r.after?.figures;
  if (after === undefined) return [];
  const was = r.geometry.before?.figures.value;
  return DIMENSIONS.map(([name, key, words, sign, decimals]): DimensionWish => {
    const band = after.bands[key];
    const half = band === undefined ? "" : ` ± ${showNumber((band.high - band.low) / 2, decimals)}`;
    return {
      name,
      text: `${words === "" ? "" : `${words} `}${showNumber(after.value[key], decimals)}${sign}${half}`,
      ...(was === undefined ? {} : { was: `was ${showNumber(was[key], decimals)}${sign}` }),
    };
  });
}

/** How surely the place of the head-tube top is known, from the bands of stack and reach. */
function dust(r: Reckoning, at: { readonly x: number; readonly y: number }) {
  const { stack_mm, reach_mm } = r.after?.figures.bands ?? {};
  if (stack_mm === undefined || reach_mm === undefined) return [];
  const sd = (b: { readonly low: number; readonly high: number }) => (b.high - b.low) / 2 / 1.96;
  return [{ at, sdXMm: sd(reach_mm), sdYMm: sd(stack_mm) }];
}

/** "over by 27", "8 to spare" */
function spare(left: number, unit: string): string {
  const size = showNumber(Math.abs(left), Math.abs(left) % 1 === 0 ? 0 : 1);
  return left < 0 ? `over by ${size}${unit}` : `${size}${unit} to spare`;
}

function figures(r: Reckoning): FiguresBlock {
  const after = r.after?.figures;
  const side = (label: string, key: keyof ForkSwapValue, unit: string, decimals: number) => {
    const band = after?.bands[key];
    return {
      label,
      quantity: {
        unit,
        decimals,
        ...(after === undefined ? {} : { value: after.value[key] }),
        ...(band === undefined ? {} : { band: shortBand(band) }),
      },
    };
  };
  const toe = r.toe.kind === "known" ? r.toe : undefined;
  const toeName = toe?.toGuard === true ? "toe to guard" : "toe to tyre";
  const toeBand = r.joints.joints.find((j) => j.id === "J4")?.numbers.find((n) => n.name.startsWith(toeName))?.band;
  const { money, hours, mass } = r.ledger;
  const plan = r.plan.plan.kind === "answered" ? r.plan.plan.value : undefined;
  const massBand = mass.kind === "answered" ? mass.bands.massG : undefined;
  return {
    kind: "figures",
    figures: [
      side("head angle", "head_angle_deg", "°", 1),
      side("seat angle", "seat_angle_deg", "°", 1),
      side("trail", "trail_mm", "mm", 1),
      side("cranks over ground", "bb_height_mm", "mm", 0),
      side("wheelbase", "wheelbase_mm", "mm", 0),
      {
        label: toeName,
        quantity: {
          unit: "mm",
          decimals: 0,
          without: "reckoned",
          ...(toe === undefined ? {} : { value: toe.mm }),
          ...(toeBand === undefined ? {} : { band: { ...toeBand, means: "95 %" } }),
        },
      },
      {
        label: "mass",
        quantity: {
          unit: "kg",
          decimals: 2,
          ...(mass.kind === "answered" && mass.value.massNotKnown.length === 0
            ? { value: mass.value.massG / 1000 }
            : {}),
          ...(massBand === undefined
            ? {}
            : { band: { ...massBand, low: massBand.low / 1000, high: massBand.high / 1000 } }),
        },
      },
      {
        label:
          money.kind === "answered" && money.value.budget !== undefined
            ? `money, of ${showNumber(money.value.budget, 0)}`
            : "money",
        quantity: {
          unit: "",
          decimals: 0,
          without:
            money.kind === "answered" && money.value.budget !== undefined
              ? spare(money.value.budget - money.value.total, "")
              : "no budget entered",
          ...(money.kind === "answered" && money.value.priceNotKnown.length === 0 ? { value: money.value.total } : {}),
        },
      },
      {
        label:
          hours.kind === "answered" && hours.value.hoursMax !== undefined
            ? `work, of ${showNumber(hours.value.hoursMax, 0)} h`
            : "work",
        quantity: {
          unit: "h",
          decimals: 1,
          without:
            hours.kind === "answered" && hours.value.hoursMax !== undefined
              ? spare(hours.value.hoursMax - hours.value.handsOnH, " h")
              : "no limit entered",
          ...(hours.kind === "answered" ? { value: hours.value.handsOnH } : {}),
        },
      },
      {
        label:
          r.resolved.intent.deadline_weeks === undefined
            ? "length"
            : `length, of ${r.resolved.intent.deadline_weeks * 7} days`,
        quantity: {
          unit: "days",
          decimals: 0,
          without:
            plan?.deadlineDays === undefined
              ? "no deadline entered"
              : spare(plan.deadlineDays - plan.onePiece.days, ""),
          ...(plan === undefined ? {} : { value: plan.onePiece.days }),
        },
      },
    ],
  };
}
