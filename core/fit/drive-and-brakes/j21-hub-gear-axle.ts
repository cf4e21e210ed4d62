/**
 * J21: does the hub gear's axle reach through, and is it kept from turning?
 * Axle >= hub width + 2 dropouts + 2 (washer + nut), washer 3 and nut 8 unless the sheet says otherwise. Non-turn washers
 * for this axle, these flats and this slot. Source: fit-hub-gear-axle.
 */

import { AXLE_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portSpan } from "../port.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, plus, span, times } from "../span.js";
import { TOOLS } from "../tool-accuracy.js";
import { partAt } from "../view.js";
import { sameWord } from "./same-word.js";

const head = {
  id: "J21",
  title: say("fit.joint-titles.hub-gear-axle-slot"),
  between: ["wheel_rear", "washers", "frame"],
} as const;

export const WASHER_MM = 3;
export const NUT_MM = 8;
const FLATS_WITHIN_MM = 0.2;

export const j21HubGearAxle: JointDefinition = {
  ...head,
  attributes: [
    "wheel_rear.ports.drive",
    "wheel_rear.ports.axle_length",
    "wheel_rear.ports.axle_flats",
    "wheel_rear.ports.width",
    "wheel_rear.ports.axle",
    "donor.interfaces.rear_end_thickness",
    "donor.interfaces.rear_end",
    "washers.ports.axle",
    "washers.ports.flats",
    "washers.ports.slot",
  ],
  reads: ["wheel_rear.width"],
  changes: [],
  evaluate: (view) => {
    const wheel = partAt(view, "wheel_rear", "wheel_rear");
    if (wheel === undefined) return notChosen(head, "wheel_rear");
    const drive = wheel.ports.drive;
    if (drive !== undefined && drive !== "hub_gear")
      return notChecked(head, say("fit-drive.j21-hub-gear-axle.the-rear-hub-is-no-hub"));
    const washers = partAt(view, "washers", "washers");
    if (washers === undefined) return notChosen(head, "washers");
    const { interfaces } = view.resolved.donor;
    const wheelAt = `bin.parts.${wheel.id}.ports`;
    const washersAt = `bin.parts.${washers.id}.ports`;
    const width = portSpan(view, "wheel_rear.width", wheel.ports.width, "calliper");
    const end = span(interfaces.rear_end_thickness, TOOLS.calliper.half);
    const needed = plus(plus(width, times(end, 2)), span(2 * (WASHER_MM + NUT_MM)));
    const spare = minus(span(wheel.ports.axle_length, TOOLS.rule.half), needed);
    const hubGear = {
      what: say("fit-drive.j21-hub-gear-axle.look-whether-the-rear-hub-is"),
      at: `${wheelAt}.drive`,
      tool: "eye",
    } as const;
    const checks: Check[] = [
      {
        name: say("fit-drive.j21-hub-gear-axle.rear-hub-is-a-hub-gear"),
        unit: "count",
        value: span(drive === undefined ? undefined : 1),
        limit: { low: 1, kind: "hard", words: say("fit-drive.j21-hub-gear-axle.a-hub-gear") },
        shown: false,
        measure: hubGear,
      },
      { name: say("fit-drive.j21-hub-gear-axle.axle-needed"), unit: "mm", value: needed },
      {
        name: say("fit-drive.j21-hub-gear-axle.axle-to-spare"),
        unit: "mm",
        value: spare,
        limit: { low: 0, kind: "hard", words: say("fit-drive.j21-hub-gear-axle.hub-dropouts-washers-and-nuts-all") },
        measure:
          wheel.ports.axle_length === undefined
            ? {
                what: say("fit-drive.j21-hub-gear-axle.measure-the-hub-gear-s-axle"),
                at: `${wheelAt}.axle_length`,
                tool: "rule",
              }
            : wheel.ports.width === undefined
              ? {
                  what: say("fit-drive.j20-rotor-plane.measure-the-rear-hub-between-the"),
                  at: `${wheelAt}.width`,
                  tool: "calliper",
                }
              : {
                  what: say("fit-drive.j21-hub-gear-axle.measure-how-thick-the-rear-dropout"),
                  at: "donor.interfaces.rear_end_thickness",
                  tool: "calliper",
                },
      },
      sameWord({
        name: say("fit-drive.j21-hub-gear-axle.washers-for-this-axle"),
        a: wheel.ports.axle,
        b: washers.ports.axle,
        words: say("fit-drive.j21-hub-gear-axle.the-same-axle"),
        measureA: {
          what: say("fit-drive.j20-rotor-plane.look-which-axle-the-rear-hub"),
          at: `${wheelAt}.axle`,
          tool: "calliper",
        },
        measureB: {
          what: say("fit-drive.j21-hub-gear-axle.measure-the-bore-of-the-non"),
          at: `${washersAt}.axle`,
          tool: "calliper",
        },
      }),
      sameWord({
        name: say("fit-drive.j21-hub-gear-axle.washers-for-this-slot"),
        a: interfaces.rear_end,
        b: washers.ports.slot,
        words: say("fit-drive.j21-hub-gear-axle.tab-of-the-washer-in-the"),
        measureA: {
          what: say("fit-drive.j21-hub-gear-axle.look-at-the-rear-dropouts-which"),
          at: "donor.interfaces.rear_end",
          tool: "eye",
        },
        measureB: {
          what: say("fit-drive.j21-hub-gear-axle.look-for-which-slot-the-non"),
          at: `${washersAt}.slot`,
          tool: "eye",
        },
      }),
      {
        name: say("fit-drive.j21-hub-gear-axle.washer-flats-over-axle-flats"),
        unit: "mm",
        value: minus(span(washers.ports.flats, TOOLS.calliper.half), span(wheel.ports.axle_flats, TOOLS.calliper.half)),
        limit: {
          low: -0.1,
          high: FLATS_WITHIN_MM + 0.1,
          kind: "hard",
          words: say("fit-drive.j21-hub-gear-axle.0-to-0-2-by-calliper"),
        },
        measure:
          wheel.ports.axle_flats === undefined
            ? {
                what: say("fit-drive.j21-hub-gear-axle.measure-the-axle-across-its-flats"),
                at: `${wheelAt}.axle_flats`,
                tool: "calliper",
              }
            : {
                what: say("fit-drive.j21-hub-gear-axle.measure-the-non-turn-washers-across"),
                at: `${washersAt}.flats`,
                tool: "calliper",
              },
      },
    ];
    const settled = settle(checks);
    const length = settled.failed.some((check) => check.name === "axle to spare");
    const offers: RemedyOffer[] = [];
    if (settled.outcome === "fails") {
      if (length)
        offers.push(
          offerRemedy(AXLE_REMEDIES.longer_axle_hub, view, {
            values: { needed: needed.kind === "known" ? needed.mid : 0 },
          }),
        );
      else offers.push(offerRemedy(AXLE_REMEDIES.torque_arm, view), offerRemedy(AXLE_REMEDIES.suited_washers, view));
    }
    const spareWords = spare.kind === "known" ? plain(Math.abs(spare.mid)) : "";
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-drive.j21-hub-gear-axle.the-axle-has-to-spare-and", { spareWords }),
        fails: length
          ? say("fit-drive.j21-hub-gear-axle.the-axle-is-too-short-for", { spareWords })
          : say("fit-drive.j21-hub-gear-axle.the-non-turn-washers-do-not"),
      },
      remedies: offers,
      sources: ["fit-hub-gear-axle"],
    });
  },
};
