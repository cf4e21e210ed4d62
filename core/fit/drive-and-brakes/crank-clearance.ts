/**
 * Where do arm and ring pass the chainstay, with the rear as wide as the hub holds it? The numbers of the parts and of the
 * frame go through `armGap`; while one is missing, the first missing one is what to measure.
 * The stay was measured at the frame's own width; with the wheel in, each dropout stands half the difference further out.
 * Sources: drive-arm-gap, drive-spread.
 */

import { type ArmGapAnswer, armGap, setPerSide } from "../../drive/index.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { portValue } from "../port.js";
import type { Measure } from "../settle.js";
import { type FitView, partAt } from "../view.js";
import { chainstayLength } from "./chainstay-length.js";
import { spindleLonger } from "./ring-on-crank.js";

export const CLEARANCE_READS = ["wheel_rear.width", "frame.rear_spacing", "bb.right_spacer"] as const;
export const CLEARANCE_ATTRIBUTES = [
  "crank.ports.q",
  "crank.ports.z0",
  "crank.ports.t_end",
  "crank.ports.length",
  "crank.ports.design_spindle",
  "bb.ports.spindle_length",
  "wheel_rear.ports.width",
  "donor.interfaces.rear_spacing",
  "donor.gaps_rear.chainstay_outer_at_bb_radius",
] as const;

export type Clearance =
  | { readonly kind: "missing"; readonly measure: Measure }
  | {
      readonly kind: "known";
      readonly gap: ArmGapAnswer;
      readonly longerMm: number;
      readonly perSideMm: number;
      readonly cautions: readonly Caution[];
    };

export interface RingAsked {
  readonly teeth: number;
  readonly width: "3/32" | "1/8";
  /** Where this ring stands on the crank's design spindle; undefined: nobody knows. */
  readonly chainlineMm: number | undefined;
}

export function crankClearance(
  view: FitView,
  crank: PartOfKind<"crank">,
  bb: PartOfKind<"bb">,
  rings: readonly RingAsked[],
  extraSpacerMm = 0,
): Clearance {
  const { q, z0, t_end, length, design_spindle } = crank.ports;
  const { interfaces, gaps_rear } = view.resolved.donor;
  const crankAt = `bin.parts.${crank.id}.ports`;
  const wheel = partAt(view, "wheel_rear", "wheel_rear");
  const own = interfaces.rear_spacing;
  const width = portValue(view, "wheel_rear.width", wheel?.ports.width);
  const held = wheel === undefined ? portValue(view, "frame.rear_spacing", own) : width;
  const stay = gaps_rear.chainstay_outer_at_bb_radius;
  const chainstay = chainstayLength(view);
  const longerMm = spindleLonger(crank, bb);
  const noLine = rings.find((ring) => ring.chainlineMm === undefined);
  const several = new Set(rings.map((ring) => ring.teeth)).size > 1;
  const missing = (measure: Measure): Clearance => ({ kind: "missing", measure });
  if (q === undefined)
    return missing({
      what: say("fit-drive.crank-clearance.measure-q-pedal-face-to-pedal"),
      at: `${crankAt}.q`,
      tool: "rule",
    });
  if (z0 === undefined)
    return missing({
      what: say("fit-drive.crank-clearance.measure-the-arm-s-inner-face"),
      at: `${crankAt}.z0`,
      tool: "rule",
    });
  if (t_end === undefined)
    return missing({
      what: say("fit-drive.crank-clearance.measure-the-arm-s-thickness-at"),
      at: `${crankAt}.t_end`,
      tool: "calliper",
    });
  if (length === undefined)
    return missing({
      what: say("fit-drive.crank-clearance.read-the-crank-s-length"),
      at: `${crankAt}.length`,
      tool: "rule",
    });
  if (longerMm === undefined && design_spindle === undefined)
    return missing({
      what: say("fit-drive.crank-clearance.find-out-for-which-spindle-the"),
      at: `${crankAt}.design_spindle`,
      tool: "rule",
    });
  if (longerMm === undefined)
    return missing({
      what: say("fit-drive.crank-clearance.measure-the-spindle-from-end-to"),
      at: `bin.parts.${bb.id}.ports.spindle_length`,
      tool: "rule",
    });
  if (noLine !== undefined)
    return missing({
      what: say("fit-drive.crank-clearance.measure-the-ring-to-the-side", {
        several: several ? `${noLine.teeth} ` : "",
      }),
      at: several ? `${crankAt}.ring_chainlines` : `${crankAt}.chainline`,
      tool: "calliper",
    });
  if (stay === undefined || stay.length < 2)
    return missing({
      what: say("fit-drive.crank-clearance.measure-the-chainstay-s-outer-face"),
      at: "donor.gaps_rear.chainstay_outer_at_bb_radius",
      tool: "rule",
    });
  if (own === undefined)
    return missing({
      what: say("fit-drive.crank-clearance.measure-the-gap-between-the-rear"),
      at: "donor.interfaces.rear_spacing",
      tool: "long_calliper",
    });
  if (held === undefined)
    return missing({
      what: say("fit-drive.j20-rotor-plane.measure-the-rear-hub-between-the"),
      at: wheel === undefined ? "build.chosen.wheel_rear" : `bin.parts.${wheel.id}.ports.width`,
      tool: "calliper",
    });
  if (chainstay === undefined)
    return missing({
      what: say("fit-drive.crank-clearance.measure-the-chainstay-rear-axle-to"),
      at: "donor.measured.chainstay",
      tool: "tape",
    });
  const bridge = gaps_rear.chainstay_bridge_from_axle;
  const { perSideMm } = setPerSide({ oldMm: own, newMm: held, rootToDropoutMm: bridge ?? 340 });
  const answer = armGap({
    q_mm: q,
    arm_inner_at_spindle_mm: z0,
    arm_end_thickness_mm: t_end,
    crank_length_mm: length,
    spindle_longer_by_mm: longerMm,
    right_cup_spacer_mm: (view.ports["bb.right_spacer"] ?? 0) + extraSpacerMm,
    stay_radius_mm: stay.map(([r]) => r),
    stay_outer_mm: stay.map(([, outer]) => outer),
    chainstay_mm: chainstay.mm,
    ...(bridge === undefined ? {} : { chainstay_bridge_from_axle_mm: bridge }),
    set_per_side_mm: perSideMm,
    ...(rings.length === 0
      ? {}
      : {
          rings: rings.flatMap(({ teeth, width, chainlineMm }) =>
            chainlineMm === undefined ? [] : [{ teeth, chainline_mm: chainlineMm, width }],
          ),
        }),
  });
  if (answer.kind === "refused") {
    const first = answer.refusals[0];
    return missing({
      what: say("fit-drive.crank-clearance.measure-again", {
        first: first?.message ?? say("fit-drive.crank-clearance.the-crank-and-the-stay-contradict"),
      }),
      at: "donor.gaps_rear.chainstay_outer_at_bb_radius",
      tool: "rule",
    });
  }
  return { kind: "known", gap: answer.value, longerMm, perSideMm, cautions: answer.cautions };
}
