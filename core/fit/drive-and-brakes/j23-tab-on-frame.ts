/**
 * J23: has the rear of the frame a tab for a disc, or can one be made?
 * Tab holes 39.9 and 79.1 from the axle, 51.0 apart (M16): seen from the axle they are 33.76 degrees apart, and the tab
 * stands on the dropout plate between the stays, with a brace. Load and heat of the weld (M19, M20) are judged by a
 * qualified person: S6 stays a gate until that is entered. S1 and S3 by the tube.
 * Sources: fit-m16-tab, fit-m16-angle, fit-m19-m20-tab-work.
 */
import { TAB_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import type { Caution } from "../../quantity/index.js";
import { workOnTube } from "../../safety/index.js";
import { closeJoint } from "../close-joint.js";
import { discAt } from "../front-and-wheels/brakes-wanted.js";
import type { DecidingNumber, JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChecked } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, rounded, settle, yesNo } from "../settle.js";
import { minus, span } from "../span.js";
import type { FitView } from "../view.js";
import { MOUNT_WORDS } from "./j22-caliper-on-mount.js";

const head = { id: "J23", title: "tab – frame rear", between: ["frame", "caliper", "caliper_rear"] } as const;

export const TAB_HOLES_MM = { near: 39.9, far: 79.1, apart: 51 } as const;
/** Law of cosines on the three sides: 33.76 degrees. */
export const TAB_ANGLE_DEG =
  (Math.acos(
    (TAB_HOLES_MM.near ** 2 + TAB_HOLES_MM.far ** 2 - TAB_HOLES_MM.apart ** 2) /
      (2 * TAB_HOLES_MM.near * TAB_HOLES_MM.far),
  ) *
    180) /
  Math.PI;
const PLATE = { low: 6, high: 9 } as const;

export const j23TabOnFrame: JointDefinition = {
  ...head,
  attributes: [
    "donor.interfaces.rear_tab",
    "donor.stays.chainstay_angle_from_axle_deg",
    "donor.stays.seatstay_angle_from_axle_deg",
    "donor.tube.class",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    if (discAt(view, "rear") === false) return notChecked(head, "No disc brake is planned at the rear.");
    const { interfaces, stays } = view.resolved.donor;
    const tab = interfaces.rear_tab;
    const lookTab = {
      what: "Look whether the rear dropout has a tab for a disc brake",
      at: "donor.interfaces.rear_tab",
      tool: "eye",
    } as const;
    const there: Check = yesNo(
      "tab on the frame",
      tab === undefined ? undefined : tab !== "none",
      "a tab, straight and without cracks",
      lookTab,
    );
    if (tab !== "none") {
      return closeJoint(head, {
        settled: settle([there]),
        words: { fits: `The frame has a ${tab === undefined ? "tab" : MOUNT_WORDS[tab]}.`, fails: "" },
        sources: ["fit-m16-tab"],
        cautions:
          tab === undefined
            ? []
            : [
                {
                  code: "measure-tab-holes",
                  message: "Measure its holes from the axle before you trust it: 39.9 and 79.1 on a 51 tab, ± 0.1.",
                },
              ],
      });
    }
    const angle: Check = {
      name: "angle between the stays over the tab's",
      unit: "deg",
      value: minus(
        minus(span(stays.seatstay_angle_from_axle_deg, 0.5), span(stays.chainstay_angle_from_axle_deg, 0.5)),
        span(TAB_ANGLE_DEG),
      ),
      limit: { low: 0, kind: "hard", words: `both holes between the stays: ${rounded(TAB_ANGLE_DEG)}° at the axle` },
      measure: {
        what: "Measure the angles of chainstay and seat stay at the rear axle",
        at:
          stays.seatstay_angle_from_axle_deg === undefined
            ? "donor.stays.seatstay_angle_from_axle_deg"
            : "donor.stays.chainstay_angle_from_axle_deg",
        tool: "eye",
        accuracy: "± 0.5°",
        how: "trace the dropout and both stays on card, axle marked, and measure on the card",
      },
    };
    // The tab cannot be designed before the stays are measured.
    if (angle.value.kind === "unknown")
      return closeJoint(head, { settled: settle([angle]), words: { fits: "", fails: "" }, sources: ["fit-m16-tab"] });
    const settled = settle([angle, there, ...plateCheck(view)]);
    const between = angle.value.mid + TAB_ANGLE_DEG;
    const design: readonly DecidingNumber[] = [
      {
        name: "near hole from axle",
        value: TAB_HOLES_MM.near,
        unit: "mm",
        limit: { low: 39.8, high: 40, kind: "hard", words: "39.9 ± 0.1, to be made" },
      },
      {
        name: "far hole from axle",
        value: TAB_HOLES_MM.far,
        unit: "mm",
        limit: { low: 79, high: 79.2, kind: "hard", words: "79.1 ± 0.1, to be made" },
      },
      {
        name: "holes apart",
        value: TAB_HOLES_MM.apart,
        unit: "mm",
        limit: { low: 50.9, high: 51.1, kind: "hard", words: "51.0 ± 0.1, to be made" },
      },
      { name: "angle between the stays", value: between, unit: "deg" },
    ];
    const roomless = settled.judged.get(angle.name) === "outside";
    const work = remedies(view, roomless);
    return closeJoint(head, {
      settled: { ...settled, numbers: [...design, ...settled.numbers] },
      words: {
        fits: "",
        fails: roomless
          ? `The frame has no tab, and ${rounded(between)}° between the stays leaves no room for one.`
          : `The frame has no tab: one is made, holes 39.9 and 79.1 from the axle, between stays ${rounded(between)}° apart.`,
      },
      remedies: work.offers,
      rules: work.rules,
      sources: ["fit-m16-tab", "fit-m16-angle", "fit-m19-m20-tab-work"],
      cautions: work.cautions,
    });
  },
};

/** The plate in the build that the tab is cut from, where one is named. */
function plateCheck(view: FitView): readonly Check[] {
  const plate = view.resolved.also.map((row) => row.part).find((part) => part.kind === "plate");
  if (plate?.kind !== "plate") return [];
  return [
    {
      name: "plate for the tab",
      unit: "mm",
      value: span(plate.ports.thickness, 0.05),
      limit: { low: PLATE.low - 0.1, high: PLATE.high + 0.1, kind: "wanted", words: "6 to 9 thick" },
      measure: { what: "Measure the plate for the tab", at: `bin.parts.${plate.id}.ports.thickness`, tool: "calliper" },
    },
  ];
}

function remedies(
  view: FitView,
  roomless: boolean,
): {
  readonly offers: readonly RemedyOffer[];
  readonly rules: JointAnswer["rules"];
  readonly cautions: readonly Caution[];
} {
  const tube = view.resolved.donor.tube;
  const heat = workOnTube(tube, "heat");
  const barred = heat.find((rule) => rule.level === "refuse");
  const gated = heat.filter((rule) => rule.level === "gate");
  const named = view.resolved.build.remedies?.find((taken) => taken.joint === "J23")?.remedy;
  const refused = barred?.here ?? (roomless ? "The stays stand too close together for the tab's holes." : undefined);
  const heated = {
    ...(refused === undefined ? {} : { refused }),
    ...(gated.length > 0 ? { builderOnly: true } : {}),
    rules: heat.map((rule) => rule.rule),
  };
  const offers = [
    offerRemedy(TAB_REMEDIES.weld_tab, view, heated),
    offerRemedy(TAB_REMEDIES.braze_tab, view, heated),
    offerRemedy(TAB_REMEDIES.clamped_tab, view, {
      ...(named === TAB_REMEDIES.clamped_tab.id
        ? {}
        : {
            refused:
              "Only where a person has proven the path of the torque into the stay and the build names it: never taken by itself.",
          }),
    }),
    offerRemedy(TAB_REMEDIES.rim_brake, view),
  ];
  const onClamp = named === TAB_REMEDIES.clamped_tab.id;
  const rules: JointAnswer["rules"] = [
    onClamp
      ? {
          rule: "S6",
          level: "flag" as const,
          why: "A clamped tab holds only as well as its torque path into the stay.",
        }
      : {
          rule: "S6",
          level: "gate" as const,
          why: "A tab is added at the rear: load, heat and brace are looked at by a qualified person first.",
        },
    ...(onClamp ? [] : heat.map((rule) => ({ rule: rule.rule, level: rule.level, why: rule.here }))),
  ];
  return {
    offers,
    rules,
    cautions: [
      {
        code: "weld-not-known-from-numbers",
        message:
          "Weld quality and the stay's life cannot be known from your measurements: a qualified welder tacks and welds, dye check afterwards and at every wear check.",
      },
      {
        code: "weld-away-from-brass",
        message:
          "Keep the weld 15 or more from brazed joints, never on brass, silver, zinc or chrome; short beads, cooling between.",
      },
      {
        code: "turn-of-tab-by-outline",
        message:
          "How far the tab is turned about the axle is decided on a traced outline with caliper, adapter and bolt tools, both stays clear.",
      },
    ],
  };
}
