/**
 * J12: does the front wheel stay in the fork when the disc brakes?
 * Fits: a fork rated for a disc with closed ends and a through axle. A slot that opens 45 degrees or more forward needs
 * positive retention; a slot that faces down lets the pads push the wheel out (M17): factory-made forks carry the flag S4
 * with secondary retention and a checked clamp, all others are refused (S4, S5). Figures warn; they prove nothing.
 * Sources: fit-m17-retention, fit-wheel-retention-test.
 */

import { AXLE_WORDS } from "../../data/interfaces.js";
import { FORK_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { frontRetention } from "../../mechanics/index.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { DecidingNumber, JointAnswer } from "../joint.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, settle, yesNo } from "../settle.js";
import { span } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { discAt } from "./brakes-wanted.js";

const head = {
  id: "J12",
  title: say("fit.joint-titles.front-wheel-retention-with-disc"),
  between: ["fork", "wheel_front", "rotor_front"],
} as const;

/** A slot that opens less far forward than this faces down (trade 4.2). */
export const FORWARD_SLOT_DEG = 45;
/** M17's worked case: a stop near the pitch limit. */
const DECEL_G = 0.6;
const FRONT_SHARE = 0.9;
const BEARING_DEG = 30;
const CLAMP_N = 3000;
const FRICTION = 0.15;
const USUAL_ROTOR_MM = 160;
/** Rotor flange lies this far inside the hub's end face at the front (M15). */
const ROTOR_INSIDE_MM = 10.5;

export const j12FrontRetention: JointDefinition = {
  ...head,
  attributes: [
    "fork.ports.end",
    "fork.ports.end_opens",
    "fork.ports.axle",
    "fork.ports.rated_disc",
    "fork.ports.mount",
    "fork.ports.end_width",
    "rider.total_mass",
    "rotor_front.ports.diameter",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const fork = partAt(view, "fork", "fork");
    if (fork === undefined) return notChosen(head, "fork");
    const disc = discAt(view, "front");
    if (disc === false) return notChecked(head, say("fit-front.j12-front-retention.no-disc-at-the-front-in"));
    if (disc === undefined)
      return notChecked(head, say("fit-front.j12-front-retention.the-front-brake-is-not-decided"), {
        kind: "decide",
        what: say("fit-front.j4-fork-in-frame.decide-the-front-brake-disc-or"),
        at: "intent.brakes",
      });
    const { end, end_opens, axle, rated_disc, mount } = fork.ports;
    const at = `bin.parts.${fork.id}.ports`;
    const checks: Check[] = [
      yesNo(
        say("fit-front.j4-fork-in-frame.rated-for-a-disc"),
        rated_disc,
        say("fit-front.j4-fork-in-frame.made-for-a-disc"),
        {
          what: say("fit-front.j4-fork-in-frame.find-out-whether-the-fork-was"),
          at: `${at}.rated_disc`,
          tool: "eye",
        },
      ),
    ];
    if (end === undefined)
      checks.push({
        name: say("fit-front.j12-front-retention.closed-end"),
        unit: "count",
        value: span(undefined),
        limit: { low: 1, kind: "hard", words: say("fit-front.j12-front-retention.the-end-encloses-the-axle") },
        measure: {
          what: say("fit-front.j12-front-retention.look-at-the-fork-ends-closed"),
          at: `${at}.end`,
          tool: "eye",
        },
      });
    else if (end === "closed") {
      checks.push(
        yesNo(
          say("fit-front.j12-front-retention.through-axle"),
          axle === undefined ? undefined : axle.startsWith("through"),
          say("fit-front.j12-front-retention.through-axle-12-15-or-20"),
          { what: say("fit-front.j12-front-retention.look-which-axle-the-fork-takes"), at: `${at}.axle`, tool: "eye" },
        ),
      );
    } else {
      // An open slot is never "fits": it needs secondary retention at the least.
      checks.push({
        name: say("fit-front.j12-front-retention.slot-forward-of-straight-down"),
        unit: "deg",
        value: span(end_opens),
        measure: {
          what: say("fit-front.j12-front-retention.measure-how-far-forward-the-slot"),
          at: `${at}.end_opens`,
          tool: "eye",
        },
      });
      checks.push({
        name: say("fit-front.j12-front-retention.closed-end-or-positive-retention"),
        shown: false,
        unit: "count",
        value: end_opens === undefined ? span(undefined) : span(0),
        limit: {
          low: 1,
          kind: "hard",
          words: say("fit-front.j12-front-retention.the-end-encloses-the-axle-or"),
        },
        measure: {
          what: say("fit-front.j12-front-retention.measure-how-far-forward-the-slot"),
          at: `${at}.end_opens`,
          tool: "eye",
          how: say("fit-front.j12-front-retention.0-straight-down-90-straight-forward"),
        },
      });
    }
    const settled = settle(checks);
    const push = end === "open_slot" ? pushOut(view, fork) : undefined;
    const faceDown = end === "open_slot" && (end_opens ?? 0) < FORWARD_SLOT_DEG;
    const remedies =
      settled.outcome === "fails"
        ? [
            offerRemedy(FORK_REMEDIES.disc_fork, view),
            offerRemedy(FORK_REMEDIES.weld_closed_ends, view),
            ...(rated_disc === true && end === "open_slot"
              ? [offerRemedy(FORK_REMEDIES.secondary_retention, view, faceDown ? { rules: ["S4"] } : {})]
              : []),
          ]
        : [];
    return closeJoint(head, {
      settled: { ...settled, numbers: [...settled.numbers, ...(push?.numbers ?? [])] },
      words: {
        fits: say("fit-front.j12-front-retention.no-problem-found-closed-ends-fork", {
          axle: axle === undefined ? "" : AXLE_WORDS[axle],
        }),
        fails: failWords(rated_disc, end, faceDown),
      },
      remedies,
      rules: rulesOf(fork, faceDown, mount !== undefined && mount !== "none"),
      sources: ["fit-m17-retention", "fit-wheel-retention-test"],
      cautions: push?.cautions ?? [],
    });
  },
};

function failWords(rated: boolean | undefined, end: string | undefined, faceDown: boolean): string {
  if (rated === false) return say("fit-front.j12-front-retention.the-fork-was-not-made-for");
  if (end === "closed") return say("fit-front.j12-front-retention.closed-ends-but-no-through-axle");
  return faceDown
    ? say("fit-front.j12-front-retention.the-slots-face-down-the-pads")
    : say("fit-front.j12-front-retention.the-slots-open-forward-lips-or");
}

/** A mount on a fork that is not rated was added to it: that is a home-modified fork (S4, S5). */
function rulesOf(fork: PartOfKind<"fork">, faceDown: boolean, hasMount: boolean): JointAnswer["rules"] {
  const on = { place: "fork" as const, part: fork.id };
  const { rated_disc, end } = fork.ports;
  if (rated_disc === undefined) return [];
  if (!rated_disc) {
    const rules: JointAnswer["rules"][number][] = [
      {
        rule: "S5",
        level: "refuse",
        why: hasMount
          ? say("fit-front.j12-front-retention.a-disc-mount-on-a-fork")
          : say("fit-front.j12-front-retention.a-disc-with-a-fork-that"),
        ...on,
      },
    ];
    if (hasMount && faceDown)
      rules.push({
        rule: "S4",
        level: "refuse",
        why: say("fit-front.j12-front-retention.open-slots-that-face-down-on"),
        ...on,
      });
    return rules;
  }
  return faceDown && end === "open_slot"
    ? [
        {
          rule: "S4",
          level: "flag",
          why: say("fit-front.j12-front-retention.disc-with-open-slots-that-face"),
          ...on,
        },
      ]
    : [];
}

/** M17 with this build's mass, radius and rotor; what is not known stands at M17's worked case and is named. */
function pushOut(
  view: FitView,
  fork: PartOfKind<"fork">,
): { readonly numbers: readonly DecidingNumber[]; readonly cautions: readonly Caution[] } {
  const mass = view.resolved.rider.total_mass;
  const radius = view.frontRadiusMm;
  const width = fork.ports.end_width;
  const opens = fork.ports.end_opens;
  if (mass === undefined || radius === undefined || width === undefined || opens === undefined) {
    const missing = [
      mass === undefined ? say("fit-front.j12-front-retention.total-mass") : "",
      radius === undefined ? say("fit-front.j12-front-retention.front-tyre") : "",
      width === undefined ? say("fit-front.j12-front-retention.width-of-the-fork-ends") : "",
      opens === undefined ? say("fit-front.j12-front-retention.direction-of-the-slots") : "",
    ].filter((w) => w !== "");
    return {
      numbers: [],
      cautions: [
        {
          code: "push-out-not-worked",
          at: `bin.parts.${fork.id}.ports.end_opens`,
          message: say("fit-front.j12-front-retention.how-hard-the-pads-push-the", { missing: missing.join(", ") }),
        },
      ],
    };
  }
  const rotor = partAt(view, "rotor_front", "rotor")?.ports.diameter ?? fork.ports.mount_rotor;
  const answer = frontRetention({
    total_mass_kg: mass,
    decel_g: DECEL_G,
    front_load_share: FRONT_SHARE,
    front_radius_mm: radius,
    rotor_diameter_mm: rotor ?? USUAL_ROTOR_MM,
    caliper_bearing_deg: BEARING_DEG,
    slot_forward_deg: opens,
    dropout_from_centre_mm: width / 2,
    rotor_from_centre_mm: width / 2 - ROTOR_INSIDE_MM,
    clamp_n: CLAMP_N,
    friction: FRICTION,
  });
  if (answer.kind === "refused")
    return {
      numbers: [],
      cautions: [
        {
          code: "push-out-not-worked",
          message: answer.refusals[0]?.message ?? say("fit-front.j12-front-retention.the-push-out-force-could-not"),
        },
      ],
    };
  const { out_total_n, out_left_n, out_right_n, grip_per_end_n } = answer.value;
  const grip = grip_per_end_n ?? 0;
  const limit = {
    high: grip,
    kind: "wanted" as const,
    words: say("fit-front.j12-front-retention.n-grip-of-one-end-with", { grip: Math.round(grip), clampN: CLAMP_N }),
  };
  return {
    numbers: [
      {
        name: say("fit-front.j12-front-retention.push-out-both-ends"),
        value: out_total_n,
        unit: "N",
        limit: {
          high: 2 * grip,
          kind: "wanted",
          words: say("fit-front.j12-front-retention.n-grip-of-both-ends", { grip: Math.round(2 * grip) }),
        },
      },
      { name: say("fit-front.j12-front-retention.push-out-left-end"), value: out_left_n, unit: "N", limit },
      { name: say("fit-front.j12-front-retention.push-out-right-end"), value: out_right_n, unit: "N", limit },
    ],
    cautions: [
      {
        code: "push-out-assumptions",
        message: say("fit-front.j12-front-retention.worked-for-a-stop-of-g", {
          decelG: DECEL_G,
          frontShare: FRONT_SHARE * 100,
          bearingDeg: BEARING_DEG,
          rotor:
            rotor === undefined
              ? say("fit-front.j12-front-retention.a-rotor-of", { usualRotorMm: USUAL_ROTOR_MM })
              : "",
        }),
      },
      ...answer.cautions,
    ],
  };
}
