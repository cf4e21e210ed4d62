/** What does the first sheet of the book say? Before and after to scale, the figures that matter, and what stands in the way. */

import type { ForkSwapValue } from "@coldset/core/geometry";
import type { PlanValue } from "@coldset/core/plan";
import { type Reckoning, readingWords, showNumber } from "@coldset/core/questions";
import type { FiredRule } from "@coldset/core/safety";
import { say } from "@coldset/core/texts";
import { beforeAfter } from "../bicycle/index.js";
import type { BookBlock, BookSection, FiguresBlock } from "../book/index.js";
import { dimensionsOfAfter, dustOfAfter, ringsOfAfter, sketchAfter, sketchBefore } from "../sketch/index.js";
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
    title: say("drawing.summary-of-build.where-it-stands"),
    lead: say("drawing.summary-of-build.of-questions-are-open-of-joints", {
      openCount: open.length,
      boardCount: r.board.length,
      lookedCount: looked.length,
      jointsCount: r.joints.joints.length,
      wordsCount: words.length === 0 ? "" : `: ${words.join(", ")}`,
    }),
    ...(standing.length === 0
      ? {}
      : {
          stamp: {
            word: say("drawing.summary-of-build.not-to-be-built"),
            why: say("drawing.summary-of-build.stands-against-it", {
              rules: [...new Set(standing.map((f) => f.rule))].join(", "),
            }),
          },
        }),
    blocks: [
      ...(standing.length > 0
        ? [
            {
              kind: "paragraph",
              text: say("drawing.summary-of-build.a-refusal-stands-on-what-this"),
            } as const,
          ]
        : drawingBlocks(r)),
      figures(r),
      ...ruleCautions(r, rules),
      ...(r.next.length === 0
        ? []
        : ([
            { kind: "heading", text: say("drawing.summary-of-build.what-to-measure-next") },
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
    {
      kind: "paragraph",
      first: say("drawing.summary-of-build.no-drawing"),
      text: say("drawing.summary-of-build.the-bicycle-cannot-be-drawn-yet", { why }),
    },
  ];
  if (after === undefined) {
    const frame =
      r.geometry.frame.kind === "refused"
        ? r.geometry.frame.refusals.map((x) => x.message.replace(/\b[a-z]+(?:_[a-z]+)*_(?:mm|deg)\b/g, readingWords))
        : [];
    const missing = [
      ...r.geometry.missing.map((m) => `${m.what}.`),
      ...r.cockpit.missing.map((m) => say("drawing.summary-of-build.missing", { missing: m })),
    ];
    const why = (frame.length > 0 ? frame : missing).slice(0, 4).join(" ");
    return no(why === "" ? say("drawing.summary-of-build.the-fork-the-wheels-or-the") : why);
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
    dimensions: dimensionsOfAfter(r),
    dust: dustOfAfter(r),
    rings: ringsOfAfter(r),
    label: say("drawing.summary-of-build.the-bicycle-before-in-pencil-and"),
  });
  if (drawn.kind === "refused") return no(drawn.refusals.map((x) => x.message).join(" "));
  const set = r.geometry.setAside === undefined ? "" : say("drawing.summary-of-build.one-reading-of-the-donor-was");
  return [
    {
      kind: "drawing",
      drawing: drawn.value.drawing,
      caption: say("drawing.summary-of-build.before-in-pencil-after-in-ink", {
        set,
        cautions: drawn.cautions.map((c) => c.message).join(" "),
      }).trim(),
    },
  ];
}

/** "over by 27", "8 to spare" */
function spare(left: number, unit: string): string {
  const size = showNumber(Math.abs(left), Math.abs(left) % 1 === 0 ? 0 : 1);
  return left < 0
    ? say("drawing.summary-of-build.over-by", { size, unit })
    : say("drawing.summary-of-build.to-spare", { size, unit });
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
  const toeName =
    toe?.toGuard === true ? say("drawing.summary-of-build.toe-to-guard") : say("drawing.summary-of-build.toe-to-tyre");
  const toeBand = r.joints.joints.find((j) => j.id === "J4")?.numbers.find((n) => n.name.startsWith(toeName))?.band;
  const { money, hours, mass } = r.ledger;
  const plan = r.plan.plan.kind === "answered" ? r.plan.plan.value : undefined;
  const massBand = mass.kind === "answered" ? mass.bands.massG : undefined;
  return {
    kind: "figures",
    figures: [
      side(say("drawing.summary-of-build.head-angle"), "head_angle_deg", "°", 1),
      side(say("drawing.summary-of-build.seat-angle"), "seat_angle_deg", "°", 1),
      side("trail", "trail_mm", "mm", 1),
      side(say("drawing.summary-of-build.cranks-over-ground"), "bb_height_mm", "mm", 0),
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
            ? say("drawing.summary-of-build.money-of", { budget: showNumber(money.value.budget, 0) })
            : "money",
        quantity: {
          unit: "",
          decimals: 0,
          without:
            money.kind === "answered" && money.value.budget !== undefined
              ? spare(money.value.budget - money.value.total, "")
              : say("drawing.buy-of-build.no-budget-entered"),
          ...(money.kind === "answered" && money.value.priceNotKnown.length === 0 ? { value: money.value.total } : {}),
        },
      },
      {
        label:
          hours.kind === "answered" && hours.value.hoursMax !== undefined
            ? say("drawing.summary-of-build.work-of-h", { hoursMax: showNumber(hours.value.hoursMax, 0) })
            : "work",
        quantity: {
          unit: "h",
          decimals: 1,
          without:
            hours.kind === "answered" && hours.value.hoursMax !== undefined
              ? spare(hours.value.hoursMax - hours.value.handsOnH, " h")
              : say("drawing.summary-of-build.no-limit-entered"),
          ...(hours.kind === "answered" ? { value: hours.value.handsOnH } : {}),
        },
      },
      lengthOf(r, plan),
    ],
  };
}

/** Days against the deadline; of a course its sessions, since the calendar gives no more of them. */
function lengthOf(r: Reckoning, plan: PlanValue | undefined): FiguresBlock["figures"][number] {
  const weeks = r.resolved.intent.deadline_weeks;
  if (plan?.sessionsListed !== undefined && weeks === undefined)
    return {
      label: say("drawing.summary-of-build.s-of", {
        sessionWord: plan.sessionWord,
        sessionsListed: plan.sessionsListed,
      }),
      quantity: {
        unit: "",
        decimals: 0,
        without: spare(plan.sessionsListed - plan.onePiece.sessions, ""),
        value: plan.onePiece.sessions,
      },
    };
  return {
    label: weeks === undefined ? "length" : say("drawing.summary-of-build.length-of-days", { weeks: weeks * 7 }),
    quantity: {
      unit: "days",
      decimals: 0,
      without:
        plan?.deadlineDays === undefined
          ? say("drawing.summary-of-build.no-deadline-entered")
          : spare(plan.deadlineDays - plan.onePiece.days, ""),
      ...(plan === undefined ? {} : { value: plan.onePiece.days }),
    },
  };
}
