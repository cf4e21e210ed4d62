/**
 * J20: does the rear caliper stand over the rotor?
 * Rotor flange = reference width / 2 - 15.3 from the centre plane, reference 135 for a 135 or 142 hub: 52.2. The tab's face
 * stands 15.3 further out, 67.5 (M15). A tab that is there stands flush with its dropout face: with flat faces 142 apart
 * that is 3.5 too far out; with the recessed faces of a closed 12 end it is 67.5. Within ± 1.5.
 * No tab yet: the tab is made to 67.5 and measured when it is tacked. Source: fit-m15-rotor-plane.
 */

import { ROTOR_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import { discAt } from "../front-and-wheels/brakes-wanted.js";
import type { DecidingNumber, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portSpan, portValue } from "../port.js";
import { plain, settle } from "../settle.js";
import { minus, span, times } from "../span.js";
import { type FitView, partAt } from "../view.js";

const head = {
  id: "J20",
  title: say("fit.joint-titles.rotor-plane-tab-plane"),
  between: ["wheel_rear", "rotor_rear", "frame"],
} as const;

export const FLANGE_INSIDE_FACE_MM = 15.3;
export const PLANE_OFF_MM = 1.5;
const MOST_SHIM_MM = 2.5;
const MOST_ROTOR_SPACER_MM = 2;
/** A 142 hub carries rotor and sprockets where a 135 one does; its ends reach 3.5 further on each side. */
const THROUGH_ENDS_MM = 7;

export const j20RotorPlane: JointDefinition = {
  ...head,
  attributes: [
    "donor.interfaces.rear_tab",
    "donor.interfaces.rear_end",
    "donor.interfaces.rear_spacing",
    "wheel_rear.ports.width",
    "wheel_rear.ports.axle",
  ],
  reads: ["frame.rear_spacing", "wheel_rear.width"],
  changes: [],
  evaluate: (view) => {
    if (discAt(view, "rear") === false)
      return notChecked(head, say("fit-drive.j20-rotor-plane.no-disc-brake-is-planned-at"));
    const wheel = partAt(view, "wheel_rear", "wheel_rear");
    if (wheel === undefined) return notChosen(head, "wheel_rear");
    const { interfaces } = view.resolved.donor;
    const tab = interfaces.rear_tab;
    const axle = wheel.ports.axle;
    const width = portValue(view, "wheel_rear.width", wheel.ports.width);
    const reference = axle === undefined || width === undefined ? undefined : referenceWidth(axle, width);
    const rotorPlane = reference === undefined ? undefined : reference / 2 - FLANGE_INSIDE_FACE_MM;
    const rotor: readonly DecidingNumber[] =
      rotorPlane === undefined
        ? []
        : [{ name: say("fit-drive.j20-rotor-plane.rotor-flange-from-centre"), value: rotorPlane, unit: "mm" }];
    const measureHub =
      width === undefined
        ? ({
            what: say("fit-drive.j20-rotor-plane.measure-the-rear-hub-between-the"),
            at: `bin.parts.${wheel.id}.ports.width`,
            tool: "calliper",
          } as const)
        : ({
            what: say("fit-drive.j20-rotor-plane.look-which-axle-the-rear-hub"),
            at: `bin.parts.${wheel.id}.ports.axle`,
            tool: "eye",
          } as const);
    if (tab === "none" && reference !== undefined && rotorPlane !== undefined) {
      const face = rotorPlane + FLANGE_INSIDE_FACE_MM;
      return {
        ...notChecked(
          head,
          say("fit-drive.j20-rotor-plane.as-designed-there-is-no-tab", {
            face: plain(face),
            rotorPlane: plain(rotorPlane),
          }),
          {
            kind: "do",
            what: say("fit-drive.j20-rotor-plane.measure-rotor-flange-and-tab-face"),
            tool: say("fit-drive.j20-rotor-plane.straight-edge-and-calliper"),
            accuracy: "± 0.5 mm",
            how: say("fit-drive.j20-rotor-plane.wheel-clamped-rotor-on-the-tab"),
          },
        ),
        numbers: [
          ...rotor,
          {
            name: say("fit-drive.j20-rotor-plane.tab-face-from-centre-to-be"),
            value: face,
            unit: "mm",
            limit: {
              low: face - PLANE_OFF_MM,
              high: face + PLANE_OFF_MM,
              kind: "hard",
              words: say("fit-drive.j20-rotor-plane.1-5-measured-when-tacked", { face: plain(face) }),
            },
          },
        ],
        sources: ["fit-m15-rotor-plane"],
        cautions: [
          {
            code: "hub-flange-not-measured",
            message: say("fit-drive.j20-rotor-plane.the-flange-is-taken-15-3"),
          },
        ],
      };
    }
    const recessed = interfaces.rear_end === "closed_12";
    const faces = portSpan(view, "frame.rear_spacing", interfaces.rear_spacing, "long_calliper");
    const tabFace =
      interfaces.rear_end === undefined
        ? span(undefined)
        : times(recessed ? minus(faces, span(THROUGH_ENDS_MM)) : faces, 0.5);
    const off =
      tab === undefined || tab === "none"
        ? span(undefined)
        : minus(minus(tabFace, span(FLANGE_INSIDE_FACE_MM)), span(rotorPlane));
    const settled = settle([
      {
        name: say("fit-drive.j20-rotor-plane.tab-over-rotor-outward"),
        unit: "mm",
        value: off,
        limit: {
          low: -PLANE_OFF_MM,
          high: PLANE_OFF_MM,
          kind: "hard",
          words: say("fit-drive.j20-rotor-plane.within-1-5"),
        },
        measure:
          tab === undefined
            ? {
                what: say("fit-drive.j20-rotor-plane.look-whether-the-rear-dropout-has"),
                at: "donor.interfaces.rear_tab",
                tool: "eye",
              }
            : reference === undefined
              ? measureHub
              : interfaces.rear_end === undefined
                ? {
                    what: say("fit-drive.j20-rotor-plane.look-at-the-rear-dropouts-slot"),
                    at: "donor.interfaces.rear_end",
                    tool: "eye",
                  }
                : {
                    what: say("fit-drive.j20-rotor-plane.measure-the-gap-between-the-rear"),
                    at: "donor.interfaces.rear_spacing",
                    tool: "long_calliper",
                  },
      },
    ]);
    const mid = off.kind === "known" ? off.mid : 0;
    return closeJoint(head, {
      settled: { ...settled, numbers: [...rotor, ...settled.numbers] },
      words: {
        fits: say("fit-drive.j20-rotor-plane.the-tab-stands-off-the-rotor", { mid: plain(Math.abs(mid)) }),
        fails: say("fit-drive.j20-rotor-plane.the-tab-stands-too-far-for", {
          offByMm: plain(Math.abs(mid)),
          outOrIn: mid > 0 ? "out" : "in",
        }),
      },
      remedies: settled.outcome === "fails" ? remedies(view, mid) : [],
      sources: ["fit-m15-rotor-plane"],
      cautions: [
        {
          code: "tab-face-taken-flush",
          at: "donor.interfaces.rear_tab",
          message: say("fit-drive.j20-rotor-plane.the-tab-s-face-is-taken"),
        },
      ],
    });
  },
};

function referenceWidth(axle: string, widthMm: number): number {
  return axle === "through_12" && widthMm >= 140 ? widthMm - THROUGH_ENDS_MM : widthMm;
}

function remedies(view: FitView, off: number): readonly RemedyOffer[] {
  const shim = Math.round(Math.abs(off) * 10) / 10;
  const values = { shim };
  if (off < 0)
    return [
      offerRemedy(ROTOR_REMEDIES.face_tab, view, {
        values,
        ...(shim > 3 ? { refused: say("fit-drive.j20-rotor-plane.so-much-off-the-tab-leaves") } : {}),
      }),
    ];
  const sixBolt = partAt(view, "rotor_rear", "rotor")?.ports.mount === "six_bolt";
  return [
    offerRemedy(ROTOR_REMEDIES.adapter_shims, view, {
      values,
      ...(shim > MOST_SHIM_MM
        ? {
            refused: say("fit-drive.j20-rotor-plane.washers-up-to-only-would-be", {
              mostShimMm: MOST_SHIM_MM,
              shim: plain(shim),
            }),
          }
        : {}),
    }),
    ...(sixBolt
      ? [
          offerRemedy(ROTOR_REMEDIES.rotor_spacer, view, {
            values,
            ...(shim > MOST_ROTOR_SPACER_MM
              ? {
                  refused: say("fit-drive.j20-rotor-plane.a-rotor-spacer-up-to-only", {
                    mostRotorSpacerMm: MOST_ROTOR_SPACER_MM,
                    shim: plain(shim),
                  }),
                }
              : {}),
          }),
        ]
      : []),
  ];
}
