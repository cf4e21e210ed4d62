/**
 * J21: does the hub gear's axle reach through, and is it kept from turning?
 * Axle >= hub width + 2 dropouts + 2 (washer + nut), washer 3 and nut 8 unless the sheet says otherwise. Non-turn washers
 * for this axle, these flats and this slot. Source: fit-hub-gear-axle.
 */
import { AXLE_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
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

const head = { id: "J21", title: "hub gear axle – slot", between: ["wheel_rear", "washers", "frame"] } as const;

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
    if (drive !== undefined && drive !== "hub_gear") return notChecked(head, "The rear hub is no hub gear.");
    const washers = partAt(view, "washers", "washers");
    if (washers === undefined) return notChosen(head, "washers");
    const { interfaces } = view.resolved.donor;
    const wheelAt = `bin.parts.${wheel.id}.ports`;
    const washersAt = `bin.parts.${washers.id}.ports`;
    const width = portSpan(view, "wheel_rear.width", wheel.ports.width, "calliper");
    const end = span(interfaces.rear_end_thickness, TOOLS.calliper.half);
    const needed = plus(plus(width, times(end, 2)), span(2 * (WASHER_MM + NUT_MM)));
    const spare = minus(span(wheel.ports.axle_length, TOOLS.rule.half), needed);
    const hubGear = { what: "Look whether the rear hub is a hub gear", at: `${wheelAt}.drive`, tool: "eye" } as const;
    const checks: Check[] = [
      {
        name: "rear hub is a hub gear",
        unit: "count",
        value: span(drive === undefined ? undefined : 1),
        limit: { low: 1, kind: "hard", words: "a hub gear" },
        shown: false,
        measure: hubGear,
      },
      { name: "axle needed", unit: "mm", value: needed },
      {
        name: "axle to spare",
        unit: "mm",
        value: spare,
        limit: { low: 0, kind: "hard", words: "hub, dropouts, washers and nuts all on the axle" },
        measure:
          wheel.ports.axle_length === undefined
            ? { what: "Measure the hub gear's axle from end to end", at: `${wheelAt}.axle_length`, tool: "rule" }
            : wheel.ports.width === undefined
              ? {
                  what: "Measure the rear hub between the faces that the dropouts touch",
                  at: `${wheelAt}.width`,
                  tool: "calliper",
                }
              : {
                  what: "Measure how thick the rear dropout is",
                  at: "donor.interfaces.rear_end_thickness",
                  tool: "calliper",
                },
      },
      sameWord({
        name: "washers for this axle",
        a: wheel.ports.axle,
        b: washers.ports.axle,
        words: "the same axle",
        measureA: { what: "Look which axle the rear hub has", at: `${wheelAt}.axle`, tool: "calliper" },
        measureB: { what: "Measure the bore of the non-turn washers", at: `${washersAt}.axle`, tool: "calliper" },
      }),
      sameWord({
        name: "washers for this slot",
        a: interfaces.rear_end,
        b: washers.ports.slot,
        words: "tab of the washer in the direction of the slot",
        measureA: {
          what: "Look at the rear dropouts: which way the slot runs",
          at: "donor.interfaces.rear_end",
          tool: "eye",
        },
        measureB: { what: "Look for which slot the non-turn washers are", at: `${washersAt}.slot`, tool: "eye" },
      }),
      {
        name: "washer flats over axle flats",
        unit: "mm",
        value: minus(span(washers.ports.flats, TOOLS.calliper.half), span(wheel.ports.axle_flats, TOOLS.calliper.half)),
        limit: { low: -0.1, high: FLATS_WITHIN_MM + 0.1, kind: "hard", words: "0 to 0.2, by calliper" },
        measure:
          wheel.ports.axle_flats === undefined
            ? { what: "Measure the axle across its flats", at: `${wheelAt}.axle_flats`, tool: "calliper" }
            : { what: "Measure the non-turn washers across their flats", at: `${washersAt}.flats`, tool: "calliper" },
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
        fits: `The axle has ${spareWords} to spare and the washers hold it from turning.`,
        fails: length
          ? `The axle is ${spareWords} too short for dropouts, washers and nuts.`
          : "The non-turn washers do not suit this axle and slot.",
      },
      remedies: offers,
      sources: ["fit-hub-gear-axle"],
    });
  },
};
