/**
 * J9: does the rear hub go between the dropouts, and how is the rear made wider if not?
 * Hub width minus gap: up to 1 by hand, up to 2 sprung in is tolerated, more is set or the hub re-spaced; more than 10 in
 * all is for a frame builder. Set per side and splay by M10 with the chainstay bridge as root (340 where there is none).
 * How far to push is measured first: wall and taper decide. M11 gives a first guess of ± 40 %.
 * Sources: fit-hub-practice, fit-hub-widths, fit-m10-set, fit-m11-push.
 */

import { WHEEL_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { setPerSide } from "../../drive/index.js";
import { type Caution, capital, type NextStep } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { DecidingNumber, JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portSpan, portValue } from "../port.js";
import { type Check, measureStep, plain, rounded, settle } from "../settle.js";
import { minus } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { mayBeColdSet } from "./may-be-cold-set.js";
import { pushFirstGuess } from "./push-first-guess.js";

const head = {
  id: "J9",
  title: say("fit-front.j9-hub-in-frame.hub-frame-rear"),
  between: ["wheel_rear", "frame"],
} as const;

export const BY_HAND_MM = 1;
export const SPRUNG_IN_MM = 2;
export const BUILDER_ABOVE_MM = 10;
/** From dropout to root where no bridge is there (M10, ruling). */
export const ROOT_WITHOUT_BRIDGE_MM = 340;

export const j9HubInFrame: JointDefinition = {
  ...head,
  attributes: [
    "donor.interfaces.rear_spacing",
    "wheel_rear.ports.width",
    "donor.tube.class",
    "donor.tube.chainstay_wall",
    "donor.gaps_rear.chainstay_bridge_from_axle",
  ],
  reads: ["frame.rear_spacing", "wheel_rear.width"],
  changes: ["frame.rear_spacing", "wheel_rear.width"],
  evaluate: (view) => {
    const wheel = partAt(view, "wheel_rear", "wheel_rear");
    if (wheel === undefined) return notChosen(head, "wheel_rear");
    const { donor } = view.resolved;
    const hub = portValue(view, "wheel_rear.width", wheel.ports.width);
    const gap = portValue(view, "frame.rear_spacing", donor.interfaces.rear_spacing);
    const over = minus(
      portSpan(view, "wheel_rear.width", wheel.ports.width, "calliper"),
      portSpan(view, "frame.rear_spacing", donor.interfaces.rear_spacing, "long_calliper"),
    );
    const measure =
      hub === undefined
        ? ({
            what: say("fit-drive.j20-rotor-plane.measure-the-rear-hub-between-the"),
            at: `bin.parts.${wheel.id}.ports.width`,
            tool: "calliper",
          } as const)
        : ({
            what: say("fit-drive.crank-clearance.measure-the-gap-between-the-rear"),
            at: "donor.interfaces.rear_spacing",
            tool: "long_calliper",
          } as const);
    const checks: Check[] = [
      {
        name: say("fit-front.j9-hub-in-frame.hub-wider-than-the-gap"),
        unit: "mm",
        value: over,
        limit: {
          low: -BY_HAND_MM,
          high: SPRUNG_IN_MM,
          kind: "hard",
          words: say("fit-front.j9-hub-in-frame.2-sprung-in-is-tolerated-else"),
        },
        wanted: { low: -BY_HAND_MM, high: BY_HAND_MM, words: say("fit-front.j9-hub-in-frame.1-or-less-by-hand") },
        measure,
        flag: say("fit-front.j9-hub-in-frame.the-hub-is-wider-than-the", {
          kind: plain(over.kind === "known" ? over.mid : 0),
        }),
      },
    ];
    const settled = settle(checks);
    const fails = settled.outcome === "fails";
    const set = fails && hub !== undefined && gap !== undefined ? setting(view, wheel, hub, gap) : undefined;
    return closeJoint(head, {
      settled: { ...settled, numbers: [...settled.numbers, ...(set?.numbers ?? [])] },
      words: {
        fits: say("fit-front.j9-hub-in-frame.hub-in-a-gap-goes-in", {
          hub: plain(hub ?? 0),
          gap: plain(gap ?? 0),
          flaggedCount: settled.flagged.length > 0 ? say("fit-front.j9-hub-in-frame.with-some-force") : "",
        }),
        fails: set?.reason ?? "",
      },
      remedies: set?.offers ?? [],
      rules: set?.rules ?? [],
      sources: ["fit-hub-practice", "fit-hub-widths", ...(set === undefined ? [] : ["fit-m10-set", "fit-m11-push"])],
      cautions: set?.cautions ?? [],
      ...(set?.next === undefined ? {} : { next: set.next }),
    });
  },
};

interface Setting {
  readonly numbers: readonly DecidingNumber[];
  readonly offers: readonly RemedyOffer[];
  readonly rules: JointAnswer["rules"];
  readonly cautions: readonly Caution[];
  readonly reason: string;
  readonly next?: NextStep;
}

function setting(view: FitView, wheel: PartOfKind<"wheel_rear">, hub: number, gap: number): Setting {
  const offers = [
    ...hubOffers(view, wheel, hub, gap),
    offerRemedy(WHEEL_REMEDIES.other_rear_wheel, view, { values: { now: gap } }),
  ];
  if (hub < gap) {
    return {
      numbers: [],
      offers,
      rules: [],
      cautions: [],
      reason: say("fit-front.j9-hub-in-frame.hub-in-a-gap-too-narrow", {
        hub: plain(hub),
        gap: plain(gap),
        narrowerByMm: plain(gap - hub),
      }),
    };
  }
  const { donor, build } = view.resolved;
  const bridge = donor.gaps_rear.chainstay_bridge_from_axle;
  const root = bridge ?? ROOT_WITHOUT_BRIDGE_MM;
  const set = setPerSide({ oldMm: gap, newMm: hub, rootToDropoutMm: root });
  const values = { now: gap, new_spacing: hub, per_side: set.perSideMm, angle: set.dropoutTurnDeg };
  const leave = mayBeColdSet(donor.tube);
  const builderForSize = hub - gap > BUILDER_ABOVE_MM;
  const row = wheel.ports.axle === "through_12" ? WHEEL_REMEDIES.cold_set_through : WHEEL_REMEDIES.cold_set;
  const refusedHere =
    leave.kind !== "here"
      ? leave.why
      : builderForSize
        ? say("fit-front.j9-hub-in-frame.mm-in-all-is-more-than", {
            hub: plain(hub - gap),
            builderAboveMm: BUILDER_ABOVE_MM,
          })
        : undefined;
  const rule = leave.kind === "here" ? undefined : leave.rule;
  offers.push(
    offerRemedy(row, view, {
      values,
      ...(refusedHere === undefined ? {} : { refused: refusedHere }),
      ...(rule === undefined ? {} : { rules: [rule] }),
    }),
  );
  if (leave.kind === "builder" || (leave.kind === "here" && builderForSize)) {
    offers.push(
      offerRemedy(WHEEL_REMEDIES.cold_set_builder, view, { values, ...(rule === undefined ? {} : { rules: [rule] }) }),
    );
  }
  // S1 and S2 fire where the build relies on setting: by name, or because nothing else keeps these parts.
  const named = build.remedies?.find((taken) => taken.joint === "J9")?.remedy.startsWith("cold-set") === true;
  const only = !offers.some(
    (offer) => offer.refused === undefined && offer.replacesPart !== true && !offer.id.startsWith("cold-set"),
  );
  const rules: JointAnswer["rules"] =
    leave.kind === "here" || !(named || only)
      ? []
      : [{ rule: leave.rule, level: leave.kind === "never" ? "refuse" : "gate", why: leave.why }];
  const cautions: Caution[] = [];
  if (bridge === undefined)
    cautions.push({
      code: "root-assumed",
      at: "donor.gaps_rear.chainstay_bridge_from_axle",
      message: say("fit-front.j9-hub-in-frame.no-chainstay-bridge-is-entered-the", {
        rootWithoutBridgeMm: ROOT_WITHOUT_BRIDGE_MM,
      }),
    });
  if (leave.kind === "here" && donor.tube.evidence === undefined)
    cautions.push({
      code: "class-without-evidence",
      at: "donor.tube.evidence",
      message: say("fit-front.j9-hub-in-frame.the-tube-s-class-is-entered"),
    });
  if (leave.kind !== "here") {
    const identify: NextStep | undefined =
      leave.kind === "builder" && leave.identify
        ? {
            kind: "measure",
            what: say("fit-front.j9-hub-in-frame.identify-the-tube-decal-weight-filing"),
            at: "donor.tube.class",
            tool: say("fit-front.j9-hub-in-frame.file-and-scale"),
            accuracy: say("fit-front.j9-hub-in-frame.class-of-the-steel"),
          }
        : undefined;
    return {
      numbers: perSideNumbers(set),
      offers,
      rules,
      cautions,
      reason: say("fit-front.j9-hub-in-frame.hub-in-a-gap-mm-over", {
        hub: plain(hub),
        gap: plain(gap),
        overByMm: plain(hub - gap),
        why: capital(leave.why),
      }),
      ...(identify === undefined ? {} : { next: identify }),
    };
  }
  const guess = pushFirstGuess({
    rootMm: root,
    tubeClass: donor.tube.class,
    chainstayOdMm: donor.stays.chainstay_od,
    setMm: set.perSideMm,
  });
  const wallStep = measureStep({
    what: say("fit-front.j9-hub-in-frame.measure-the-chainstays-wall-and-taper"),
    at: "donor.tube.chainstay_wall",
    tool: "calliper",
    accuracy: "± 0.05 mm",
    how: say("fit-front.j9-hub-in-frame.at-the-bottle-or-rack-eye"),
  });
  return {
    numbers: [...perSideNumbers(set), ...(guess === undefined ? [] : [guess.number])],
    offers,
    rules,
    cautions: [...cautions, ...(guess?.cautions ?? [])],
    reason: say("fit-front.j9-hub-in-frame.hub-in-a-gap-mm-over-2", {
      hub: plain(hub),
      gap: plain(gap),
      overByMm: rounded(hub - gap),
      perSideMm: rounded(set.perSideMm),
    }),
    ...(donor.tube.chainstay_wall === undefined ? { next: wallStep } : {}),
  };
}

function perSideNumbers(set: {
  readonly perSideMm: number;
  readonly dropoutTurnDeg: number;
}): readonly DecidingNumber[] {
  return [
    { name: say("fit-front.j9-hub-in-frame.set-per-side"), value: set.perSideMm, unit: "mm" },
    { name: say("fit-front.j9-hub-in-frame.turn-of-each-dropout"), value: set.dropoutTurnDeg, unit: "deg" },
  ];
}

/** What can be done at the hub: end caps of a 142, washers of a plain axle. A hub gear's width is its maker's. */
function hubOffers(view: FitView, wheel: PartOfKind<"wheel_rear">, hub: number, gap: number): readonly RemedyOffer[] {
  const through = wheel.ports.axle === "through_12";
  if (through) {
    return Math.abs(hub - 142) <= 0.5 && Math.abs(gap - 135) <= SPRUNG_IN_MM
      ? [offerRemedy(WHEEL_REMEDIES.rear_end_caps, view, { values: { caps_width: 135 } })]
      : [];
  }
  if (wheel.ports.drive === "hub_gear" || wheel.ports.drive === undefined || wheel.ports.axle === undefined) return [];
  return Math.abs(hub - gap) <= BUILDER_ABOVE_MM
    ? [offerRemedy(WHEEL_REMEDIES.respace_rear, view, { values: { hub, now: gap } })]
    : [];
}
