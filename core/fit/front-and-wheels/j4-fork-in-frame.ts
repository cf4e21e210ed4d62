/**
 * J4: does this fork suit the frame?
 * The head angle may change by 1 degree against today's bicycle on today's wheels, both level, after all changes (M4). The
 * toe keeps 100 (89 with foot retention) to tyre or guard (M8). The fork is rated for a disc where there is one, and takes
 * the tyre. Sources: fit-m4-swap, fit-m8-toe, fit-iso-4210-2, fit-16-cfr-1512.
 */

import { FORK_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { saggedRadiusMm } from "../../geometry/index.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { carriesChild, type PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, type Measure, plain, rounded, settle, yesNo } from "../settle.js";
import { span, UNKNOWN } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { discAt } from "./brakes-wanted.js";
import { toeOf } from "./toe-of.js";

const head = { id: "J4", title: "fork – frame", between: ["fork", "frame"] } as const;

export const MOST_HEAD_ANGLE_CHANGE_DEG = 1;
/** A fork read to ± 2 turns the head by ± 0.1 (10 mm are about 0.5 degrees, M4). */
const HEAD_ANGLE_HALF_DEG = 0.1;
/** Axle to crown per degree of head angle, mm (10 mm are about 0.5 degrees, M4). */
const MM_PER_DEG = 20;
const TOE_HALF_MM = 2;

export const j4ForkInFrame: JointDefinition = {
  ...head,
  attributes: [
    "fork.ports.axle_to_crown",
    "fork.ports.rake",
    "fork.ports.rated_disc",
    "fork.ports.tyre_max",
    "headset.ports.lower_stack",
    "tyre_front.ports.size",
    "tyre_rear.ports.size",
    "crank.ports.length",
    "crank.ports.q",
    "bb.ports.spindle_length",
    "guards.ports.width",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const fork = partAt(view, "fork", "fork");
    if (fork === undefined) return notChosen(head, "fork");
    const checks: Check[] = [headAngle(view, fork), ...discRating(view, fork), ...tyreLimit(view, fork)];
    const toe = toeChecks(view);
    checks.push(...toe.checks);
    const settled = settle(checks);
    const failed = new Set(settled.failed.map((check) => check.name));
    return closeJoint(head, {
      settled,
      words: { fits: fitWords(view, fork), fails: failWords(view, fork, failed) },
      remedies: settled.outcome === "fails" ? remedies(view, fork, failed) : [],
      rules: toe.rules,
      sources: ["fit-m4-swap", "fit-m8-toe", "fit-iso-4210-2", "fit-16-cfr-1512"],
      cautions: toe.cautions,
    });
  },
};

function change(view: FitView): number | undefined {
  return view.before === undefined || view.after === undefined
    ? undefined
    : view.after.head_angle_deg - view.before.head_angle_deg;
}

function headAngle(view: FitView, fork: PartOfKind<"fork">): Check {
  const measure: Measure =
    view.frame === undefined
      ? {
          what: say("fit-front.j4-fork-in-frame.measure-the-frame-until-the-survey"),
          at: "donor.measured",
          tool: "tape",
          how: say("fit-front.j4-fork-in-frame.lengths-and-two-angles-the-survey"),
        }
      : fork.ports.axle_to_crown === undefined
        ? {
            what: say("fit-front.j4-fork-in-frame.measure-the-fork-from-axle-to"),
            at: `bin.parts.${fork.id}.ports.axle_to_crown`,
            tool: "rule",
            accuracy: "± 2 mm",
          }
        : fork.ports.rake === undefined
          ? {
              what: say("fit-front.j4-fork-in-frame.measure-the-rake-of-the-fork"),
              at: `bin.parts.${fork.id}.ports.rake`,
              tool: "rule",
              accuracy: "± 2 mm",
            }
          : {
              what: say("fit-front.j4-fork-in-frame.read-the-size-of-the-chosen"),
              at: "build.chosen.tyre_front",
              tool: "eye",
            };
  return {
    name: say("fit-front.j4-fork-in-frame.change-of-head-angle"),
    unit: "deg",
    value: span(change(view), HEAD_ANGLE_HALF_DEG),
    limit: {
      low: -MOST_HEAD_ANGLE_CHANGE_DEG,
      high: MOST_HEAD_ANGLE_CHANGE_DEG,
      kind: "hard",
      words: say("fit-front.j4-fork-in-frame.1-at-most-against-today"),
    },
    measure,
    bandMeans: say("fit-front.j4-fork-in-frame.fork-read-to-2-mm"),
  };
}

function discRating(view: FitView, fork: PartOfKind<"fork">): readonly Check[] {
  const disc = discAt(view, "front");
  if (disc === false) return [];
  const at = `bin.parts.${fork.id}.ports.rated_disc`;
  if (disc === undefined) {
    return [
      {
        name: say("fit-front.j4-fork-in-frame.rated-for-the-front-brake"),
        unit: "count",
        value: UNKNOWN,
        limit: { low: 1, kind: "hard", words: say("fit-front.j4-fork-in-frame.made-for-the-brake") },
        measure: { what: say("fit-front.j4-fork-in-frame.decide-the-front-brake-disc-or"), at: "intent.brakes" },
      },
    ];
  }
  return [
    yesNo(
      say("fit-front.j4-fork-in-frame.rated-for-a-disc"),
      fork.ports.rated_disc,
      say("fit-front.j4-fork-in-frame.made-for-a-disc"),
      {
        what: say("fit-front.j4-fork-in-frame.find-out-whether-the-fork-was"),
        at,
        tool: "eye",
      },
    ),
  ];
}

function tyreLimit(view: FitView, fork: PartOfKind<"fork">): readonly Check[] {
  const tyre = partAt(view, "tyre_front", "tyre")?.ports.size;
  const most = fork.ports.tyre_max;
  if (tyre === undefined) return [];
  const measure: Measure = {
    what: say("fit-front.j4-fork-in-frame.read-the-fork-s-tyre-limit"),
    at: `bin.parts.${fork.id}.ports.tyre_max`,
    tool: "eye",
  };
  const words = say("fit-front.j4-fork-in-frame.the-fork-s-tyre-limit");
  if (most === undefined) {
    // Where both gaps of the fork are measured, J15 judges the tyre and the limit only flags.
    const gaps = fork.ports.blade_inner_at_radius !== undefined && fork.ports.crown_underside_from_axle !== undefined;
    return [
      {
        name: say("fit-front.j4-fork-in-frame.tyre-against-the-fork-s-limit"),
        unit: "mm",
        value: UNKNOWN,
        limit: { high: 0, kind: gaps ? "wanted" : "hard", words },
        measure,
      },
    ];
  }
  const sameSeat = most.bsdMm === tyre.bsdMm;
  return [
    {
      name: say("fit-front.j4-fork-in-frame.tyre-wider-than-the-fork-takes"),
      unit: "mm",
      value: span(tyre.widthMm - most.widthMm),
      // The limit is said for one bead seat; a smaller wheel sits lower between the blades, and its gaps decide (J15).
      limit: {
        high: 0,
        kind: sameSeat ? "hard" : "wanted",
        words: say("fit-front.j4-fork-in-frame.wide-at-most-on", { widthMm: most.widthMm, bsdMm: most.bsdMm }),
      },
      measure,
      ...(sameSeat
        ? {}
        : {
            flag: say("fit-front.j4-fork-in-frame.the-fork-s-tyre-limit-is", {
              limitBsdMm: most.bsdMm,
              limitWidthMm: most.widthMm,
              tyreBsdMm: tyre.bsdMm,
              tyreWidthMm: tyre.widthMm,
            }),
          }),
    },
    {
      name: say("fit-front.j4-fork-in-frame.tyre-radius-over-what-the-fork"),
      unit: "mm",
      value: span(saggedRadiusMm(tyre.bsdMm, tyre.widthMm) - saggedRadiusMm(most.bsdMm, most.widthMm)),
      limit: {
        high: 0,
        kind: "hard",
        words: say("fit-front.j4-fork-in-frame.a-at-most", { bsdMm: most.bsdMm, widthMm: most.widthMm }),
      },
      measure,
    },
  ];
}

interface ToeChecks {
  readonly checks: readonly Check[];
  readonly rules: JointAnswer["rules"];
  readonly cautions: readonly Caution[];
}

/** S14: under the limit it flags; with a child on board, or a novice, it is refused. */
function toeChecks(view: FitView): ToeChecks {
  const { intent, rider } = view.resolved;
  const need = intent.foot_retention === true ? 89 : 100;
  const strict = carriesChild(intent, view.at) || rider.novice === true;
  const toe = toeOf(view);
  const words =
    intent.foot_retention === true
      ? say("fit-front.j4-fork-in-frame.89-with-foot-retention")
      : say("fit-front.j4-fork-in-frame.100-without-foot-retention");
  if (toe.kind === "never") return { checks: [], rules: [], cautions: [] };
  const measure: Measure =
    toe.kind === "unknown"
      ? toe.measure
      : {
          what: say("fit-front.j4-fork-in-frame.turn-the-wheel-with-the-crank"),
          at: "donor.measured",
          tool: "tape",
        };
  const value = toe.kind === "unknown" ? UNKNOWN : span(toe.mm, TOE_HALF_MM);
  const checks: Check[] = [
    {
      name:
        toe.kind === "known" && toe.toGuard
          ? say("fit-front.j4-fork-in-frame.toe-to-guard")
          : say("fit-front.j4-fork-in-frame.toe-to-tyre"),
      unit: "mm",
      value,
      limit: { low: need, kind: strict ? "hard" : "wanted", words },
      measure,
      bandMeans: say("fit-front.j4-fork-in-frame.2-of-the-worked-figures-m8"),
    },
  ];
  if (toe.kind === "known" && toe.bareMm !== undefined) {
    checks.push({
      name: say("fit-front.j4-fork-in-frame.toe-to-tyre-no-guard"),
      unit: "mm",
      value: span(toe.bareMm, TOE_HALF_MM),
      bandMeans: say("fit-front.j4-fork-in-frame.2-of-the-worked-figures-m8"),
    });
  }
  // The flag goes by the figure itself; a refusal only where the whole band is under (else it is measured first).
  const under = toe.kind === "known" && toe.mm + (strict ? TOE_HALF_MM : 0) < need;
  const rules: JointAnswer["rules"] = under
    ? [
        {
          rule: "S14",
          level: strict ? "refuse" : "flag",
          why: say("fit-front.j4-fork-in-frame.toe-clearance-mm", { clearanceMm: rounded(toe.mm), words }),
          place: "fork",
        },
      ]
    : [];
  return { checks, rules, cautions: toe.kind === "known" ? toe.cautions : [] };
}

function fitWords(view: FitView, fork: PartOfKind<"fork">): string {
  const d = change(view) ?? 0;
  const shift =
    Math.abs(d) < 0.05
      ? say("fit-front.j4-fork-in-frame.as-today")
      : say("fit-front.j4-fork-in-frame.than-today", {
          changeDeg: Math.abs(d).toFixed(1),
          slackerOrSteeper: d < 0 ? "slacker" : "steeper",
        });
  return say("fit-front.j4-fork-in-frame.axle-to-crown-head-angle", {
    axleToCrown: plain(fork.ports.axle_to_crown ?? 0),
    headAngleDeg: (view.after?.head_angle_deg ?? 0).toFixed(1),
    shift,
  });
}

function failWords(view: FitView, fork: PartOfKind<"fork">, failed: ReadonlySet<string>): string {
  const d = change(view) ?? 0;
  const reasons: string[] = [];
  if (failed.has("change of head angle"))
    reasons.push(
      say("fit-front.j4-fork-in-frame.head-angle-than-today-too", {
        headAngleDeg: (view.after?.head_angle_deg ?? 0).toFixed(1),
        changeDeg: Math.abs(d).toFixed(1),
        slackerOrSteeper: d < 0 ? "slacker" : "steeper",
        slackOrSteep: d < 0 ? "slack" : "steep",
      }),
    );
  if (failed.has("rated for a disc")) reasons.push(say("fit-front.j4-fork-in-frame.not-made-for-a-disc"));
  const most = fork.ports.tyre_max;
  if (
    most !== undefined &&
    (failed.has("tyre wider than the fork takes") || failed.has("tyre radius over what the fork takes"))
  )
    reasons.push(
      say("fit-front.j4-fork-in-frame.the-tyre-is-bigger-than", { bsdMm: most.bsdMm, widthMm: most.widthMm }),
    );
  if (failed.has("toe to tyre") || failed.has("toe to guard"))
    reasons.push(say("fit-front.j4-fork-in-frame.the-toe-comes-too-near-to"));
  const text = reasons.join("; ");
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function remedies(view: FitView, fork: PartOfKind<"fork">, failed: ReadonlySet<string>): readonly RemedyOffer[] {
  const offers: RemedyOffer[] = [];
  if (failed.has("rated for a disc")) offers.push(offerRemedy(FORK_REMEDIES.disc_fork, view));
  if (failed.has("change of head angle")) {
    const ac = fork.ports.axle_to_crown;
    const d = change(view) ?? 0;
    if (ac !== undefined)
      offers.push(offerRemedy(FORK_REMEDIES.other_fork, view, { values: { ac: Math.round(ac + d * MM_PER_DEG) } }));
    offers.push(offerRemedy(FORK_REMEDIES.builder_fork, view));
  }
  return offers;
}
