/**
 * J33: does the crank arm clear the chainstay once the wheel is in?
 * Smallest gap of both arms from 50 mm of the BB axis to the pedal (M28): 4 wanted, 3 the least, each ± 1 until the dry fit.
 * A right cup spacer gives to the right arm what it takes from the left. An arm is never filed. Sources: drive-arm-gap, drive-spread.
 */

import { CRANK_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { ARM_GAP_LEAST_MM, ARM_GAP_WANTED_MM, type ArmGapAnswer, GAP_BAND_MM } from "../../drive/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, rounded, settle } from "../settle.js";
import { span, UNKNOWN } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { asOffered, otherBottomBrackets } from "./bins.js";
import { CLEARANCE_ATTRIBUTES, CLEARANCE_READS, crankClearance } from "./crank-clearance.js";
import { dimpleRefused } from "./dimple.js";

const head = { id: "J33", title: "arm – chainstay", between: ["crank", "bb", "wheel_rear", "frame"] } as const;

const UNTIL_DRY_FIT = say("fit-drive.j33-arm-at-chainstay.1-until-the-dry-fit-common");

export const j33ArmAtChainstay: JointDefinition = {
  ...head,
  attributes: CLEARANCE_ATTRIBUTES,
  reads: CLEARANCE_READS,
  changes: [],
  evaluate: (view) => {
    const crank = partAt(view, "crank", "crank");
    const bb = partAt(view, "bb", "bb");
    if (crank === undefined) return notChosen(head, "crank");
    if (bb === undefined) return notChosen(head, "bb");
    const found = crankClearance(view, crank, bb, []);
    const wanted = { low: ARM_GAP_WANTED_MM, words: "4 or more" } as const;
    const least = {
      low: ARM_GAP_LEAST_MM,
      kind: "hard",
      words: say("fit-drive.j33-arm-at-chainstay.3-is-the-least-4-wanted"),
    } as const;
    if (found.kind === "missing") {
      const settled = settle([
        {
          name: say("fit-drive.j33-arm-at-chainstay.gap-at-the-chainstay"),
          unit: "mm",
          value: UNKNOWN,
          limit: least,
          measure: found.measure,
        },
      ]);
      return closeJoint(head, {
        settled,
        words: { fits: "", fails: "", open: say("fit-drive.j33-arm-at-chainstay.not-known-yet-the-arms-gap") },
        sources: ["drive-arm-gap"],
      });
    }
    const gap = found.gap;
    const smaller = Math.min(gap.arm_gap_mm, gap.left_arm_gap_mm);
    const measure = {
      what: say("fit-drive.j33-arm-at-chainstay.look-at-the-arms-gap-at"),
      at: "donor.gaps_rear.chainstay_outer_at_bb_radius",
      tool: "rule",
      how: say("fit-drive.j33-arm-at-chainstay.wheel-clamped-arms-turned-past-the"),
    } as const;
    const covered = !found.cautions.some((caution) => caution.code === "stay-not-measured-everywhere");
    const name = say("fit-drive.j33-arm-at-chainstay.gap-at-the-chainstay-from-the", {
      armGapAtRadiusMm: rounded(gap.arm_gap_at_radius_mm),
    });
    const checks: Check[] = [
      {
        name,
        unit: "mm",
        value: span(smaller, GAP_BAND_MM),
        limit: least,
        wanted,
        measure,
        bandMeans: UNTIL_DRY_FIT,
        flag: say("fit-drive.j33-arm-at-chainstay.the-arm-passes-the-stay-with", {
          smaller: rounded(smaller),
          gapBandMm: GAP_BAND_MM,
        }),
      },
      ...(covered
        ? []
        : [
            {
              name: say("fit-drive.j33-arm-at-chainstay.stay-measured-along-the-whole-arm"),
              unit: "count" as const,
              value: UNKNOWN,
              limit: {
                low: 1,
                kind: "hard" as const,
                words: say("fit-drive.j33-arm-at-chainstay.from-50-mm-of-the-bb"),
              },
              measure: {
                what: say("fit-drive.j33-arm-at-chainstay.measure-the-rest-of-the-chainstay"),
                at: "donor.gaps_rear.chainstay_outer_at_bb_radius",
                tool: "rule" as const,
              },
            },
          ]),
    ];
    const settled = settle(checks);
    return closeJoint(head, {
      settled: {
        ...settled,
        numbers: [
          ...settled.numbers,
          ...(gap.arm_gap_mm === gap.left_arm_gap_mm
            ? []
            : [
                {
                  name: say("fit-drive.j33-arm-at-chainstay.gap-of-the-right-arm"),
                  value: gap.arm_gap_mm,
                  unit: "mm" as const,
                },
                {
                  name: say("fit-drive.j33-arm-at-chainstay.gap-of-the-left-arm"),
                  value: gap.left_arm_gap_mm,
                  unit: "mm" as const,
                },
              ]),
          { name: say("fit-drive.j32-crank-on-spindle.q-as-fitted"), value: gap.q_fitted_mm, unit: "mm" },
          { name: say("fit-drive.j33-arm-at-chainstay.stay-set-out-per-side"), value: found.perSideMm, unit: "mm" },
        ],
      },
      words: {
        fits: say("fit-drive.j33-arm-at-chainstay.the-arms-pass-the-stays-with", {
          smaller: rounded(smaller),
          armGapAtRadiusMm: rounded(gap.arm_gap_at_radius_mm),
        }),
        fails: say("fit-drive.j33-arm-at-chainstay.the-arms-pass-the-stays-with-2", { smaller: rounded(smaller) }),
      },
      remedies: settled.outcome === "fits" ? [] : remedies(view, bb, gap, smaller),
      sources: ["drive-arm-gap", "drive-spread", "fit-dimple"],
      cautions: found.cautions.filter((caution) => caution.code === "bridge-not-measured"),
    });
  },
};

function remedies(view: FitView, bb: PartOfKind<"bb">, gap: ArmGapAnswer, smaller: number): readonly RemedyOffer[] {
  const half = Math.max(0.5, ARM_GAP_WANTED_MM - smaller);
  const more = Math.ceil(half * 2);
  const own = bb.ports.spindle_length ?? 0;
  const longer = otherBottomBrackets(view, bb).find((part) => (part.ports.spindle_length ?? 0) >= own + more);
  const at = gap.arm_gap_at_radius_mm;
  const deep = Math.round(half * 10) / 10;
  const refused = dimpleRefused(view, deep, at);
  return [
    offerRemedy(CRANK_REMEDIES.longer_spindle_arm, view, {
      values: { more, bin: longer === undefined ? "" : `: ${longer.id}` },
      ...(longer === undefined ? {} : { part: asOffered(longer) }),
    }),
    offerRemedy(CRANK_REMEDIES.other_arm, view, { values: { half } }),
    offerRemedy(CRANK_REMEDIES.dimple_arm, view, {
      values: { deep, at },
      ...(refused === undefined ? {} : { refused }),
    }),
    offerRemedy(CRANK_REMEDIES.file_arm, view),
  ];
}
