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
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import { discAt } from "../front-and-wheels/brakes-wanted.js";
import type { DecidingNumber, JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChecked } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, rounded, settle, yesNo } from "../settle.js";
import { minus, span } from "../span.js";
import type { FitView } from "../view.js";
import { MOUNT_WORDS } from "./j22-caliper-on-mount.js";

const head = {
  id: "J23",
  title: say("fit-drive.j23-tab-on-frame.tab-frame-rear"),
  between: ["frame", "caliper", "caliper_rear"],
} as const;

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
    "donor.tube.stay_filler",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    if (discAt(view, "rear") === false)
      return notChecked(head, say("fit-drive.j20-rotor-plane.no-disc-brake-is-planned-at"));
    const { interfaces, stays } = view.resolved.donor;
    const tab = interfaces.rear_tab;
    const lookTab = {
      what: say("fit-drive.j20-rotor-plane.look-whether-the-rear-dropout-has"),
      at: "donor.interfaces.rear_tab",
      tool: "eye",
    } as const;
    const there: Check = yesNo(
      say("fit-drive.j23-tab-on-frame.tab-on-the-frame"),
      tab === undefined ? undefined : tab !== "none",
      say("fit-drive.j23-tab-on-frame.a-tab-straight-and-without-cracks"),
      lookTab,
    );
    if (tab !== "none") {
      return closeJoint(head, {
        settled: settle([there]),
        words: {
          fits: say("fit-drive.j23-tab-on-frame.the-frame-has-a", {
            tab: tab === undefined ? "tab" : MOUNT_WORDS[tab],
          }),
          fails: "",
        },
        sources: ["fit-m16-tab"],
        cautions:
          tab === undefined
            ? []
            : [
                {
                  code: "measure-tab-holes",
                  message: say("fit-drive.j23-tab-on-frame.measure-its-holes-from-the-axle"),
                },
              ],
      });
    }
    if (view.resolved.donor.tube.stay_filler === "silver") return silverJoints(view);
    const angle: Check = {
      name: say("fit-drive.j23-tab-on-frame.angle-between-the-stays-over-the"),
      unit: "deg",
      value: minus(
        minus(span(stays.seatstay_angle_from_axle_deg, 0.5), span(stays.chainstay_angle_from_axle_deg, 0.5)),
        span(TAB_ANGLE_DEG),
      ),
      limit: {
        low: 0,
        kind: "hard",
        words: say("fit-drive.j23-tab-on-frame.both-holes-between-the-stays-at", {
          tabAngleDeg: rounded(TAB_ANGLE_DEG),
        }),
      },
      measure: {
        what: say("fit-drive.j23-tab-on-frame.measure-the-angles-of-chainstay-and"),
        at:
          stays.seatstay_angle_from_axle_deg === undefined
            ? "donor.stays.seatstay_angle_from_axle_deg"
            : "donor.stays.chainstay_angle_from_axle_deg",
        tool: "eye",
        accuracy: "± 0.5°",
        how: say("fit-drive.j23-tab-on-frame.trace-the-dropout-and-both-stays"),
      },
    };
    // The tab cannot be designed before the stays are measured.
    if (angle.value.kind === "unknown")
      return closeJoint(head, { settled: settle([angle]), words: { fits: "", fails: "" }, sources: ["fit-m16-tab"] });
    const settled = settle([angle, there, ...plateCheck(view)]);
    const between = angle.value.mid + TAB_ANGLE_DEG;
    const design: readonly DecidingNumber[] = [
      {
        name: say("fit-drive.j23-tab-on-frame.near-hole-from-axle"),
        value: TAB_HOLES_MM.near,
        unit: "mm",
        limit: { low: 39.8, high: 40, kind: "hard", words: say("fit-drive.j23-tab-on-frame.39-9-0-1-to-be") },
      },
      {
        name: say("fit-drive.j23-tab-on-frame.far-hole-from-axle"),
        value: TAB_HOLES_MM.far,
        unit: "mm",
        limit: { low: 79, high: 79.2, kind: "hard", words: say("fit-drive.j23-tab-on-frame.79-1-0-1-to-be") },
      },
      {
        name: say("fit-drive.j23-tab-on-frame.holes-apart"),
        value: TAB_HOLES_MM.apart,
        unit: "mm",
        limit: { low: 50.9, high: 51.1, kind: "hard", words: say("fit-drive.j23-tab-on-frame.51-0-0-1-to-be") },
      },
      { name: say("fit-drive.j23-tab-on-frame.angle-between-the-stays"), value: between, unit: "deg" },
    ];
    const roomless = settled.judged.get(angle.name) === "outside";
    const work = remedies(view, roomless);
    return closeJoint(head, {
      settled: { ...settled, numbers: [...design, ...settled.numbers] },
      words: {
        fits: "",
        fails: roomless
          ? say("fit-drive.j23-tab-on-frame.the-frame-has-no-tab-and", { between: rounded(between) })
          : say("fit-drive.j23-tab-on-frame.the-frame-has-no-tab-one", { between: rounded(between) }),
      },
      remedies: work.offers,
      rules: work.rules,
      sources: ["fit-m16-tab", "fit-m16-angle", "fit-m19-m20-tab-work"],
      cautions: work.cautions,
    });
  },
};

/** Any heat for a tab runs into the stays' joints beside it, and silver flows at 600 to 700 °C: it is refused here. */
function silverJoints(view: FitView): JointAnswer {
  const refused = say("fit-drive.j23-tab-on-frame.the-stays-are-brazed-in-with");
  const work = remedies(view, false);
  return closeJoint(head, {
    settled: settle([
      {
        name: say("fit-drive.j23-tab-on-frame.stays-joints-bear-the-heat-of"),
        unit: "count",
        value: span(0),
        limit: { low: 1, kind: "hard", words: say("fit-drive.j23-tab-on-frame.no-silver-joint-within-15-of") },
        shown: false,
      },
    ]),
    words: { fits: "", fails: refused },
    remedies: work.offers.map((offer) =>
      offer.id === TAB_REMEDIES.weld_tab.id || offer.id === TAB_REMEDIES.braze_tab.id ? { ...offer, refused } : offer,
    ),
    rules: [
      {
        rule: "S6",
        level: "gate",
        why: say("fit-drive.j23-tab-on-frame.a-tab-would-stand-within-15"),
      },
    ],
    sources: ["fit-m19-m20-tab-work"],
    cautions: work.cautions.filter((c) => c.code !== "turn-of-tab-by-outline"),
  });
}

/** The plate in the build that the tab is cut from, where one is named. */
function plateCheck(view: FitView): readonly Check[] {
  const plate = view.resolved.also.map((row) => row.part).find((part) => part.kind === "plate");
  if (plate?.kind !== "plate") return [];
  return [
    {
      name: say("fit-drive.j23-tab-on-frame.plate-for-the-tab"),
      unit: "mm",
      value: span(plate.ports.thickness, 0.05),
      limit: {
        low: PLATE.low - 0.1,
        high: PLATE.high + 0.1,
        kind: "wanted",
        words: say("fit-drive.j23-tab-on-frame.6-to-9-thick"),
      },
      measure: {
        what: say("fit-drive.j23-tab-on-frame.measure-the-plate-for-the-tab"),
        at: `bin.parts.${plate.id}.ports.thickness`,
        tool: "calliper",
      },
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
  const refused =
    barred?.here ?? (roomless ? say("fit-drive.j23-tab-on-frame.the-stays-stand-too-close-together") : undefined);
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
            refused: say("fit-drive.j23-tab-on-frame.only-where-a-person-has-proven"),
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
          why: say("fit-drive.j23-tab-on-frame.a-clamped-tab-holds-only-as"),
        }
      : {
          rule: "S6",
          level: "gate" as const,
          why: say("fit-drive.j23-tab-on-frame.a-tab-is-added-at-the"),
        },
    ...(onClamp ? [] : heat.map((rule) => ({ rule: rule.rule, level: rule.level, why: rule.here }))),
  ];
  return {
    offers,
    rules,
    cautions: [
      {
        code: "weld-not-known-from-numbers",
        message: say("fit-drive.j23-tab-on-frame.weld-quality-and-the-stay-s"),
      },
      {
        code: "weld-away-from-brass",
        message: say("fit-drive.j23-tab-on-frame.keep-the-weld-15-or-more"),
      },
      {
        code: "turn-of-tab-by-outline",
        message: say("fit-drive.j23-tab-on-frame.how-far-the-tab-is-turned"),
      },
    ],
  };
}
