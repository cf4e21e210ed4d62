/**
 * J10: does the rear axle stand in the slot of the dropout?
 * Slot = axle + 0.1 to 0.5. A through axle wants a closed 12 bore; a slot's end may be bored to 12.1 only where a web of 4
 * is left all round: web left = web - (12.1 - slot) / 2 (S8). Sources: fit-hub-practice.
 */

import { AXLE_DIAMETER_MM, AXLE_WORDS } from "../../data/interfaces.js";
import { WHEEL_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { capital } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { DecidingNumber, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portSpan, portValue } from "../port.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { type FitView, partAt } from "../view.js";

const head = {
  id: "J10",
  title: say("fit.joint-titles.axle-dropout-slot-rear"),
  between: ["wheel_rear", "frame"],
} as const;

export const BORE_MM = 12.1;
/** Least web round a bore in the rear dropout (S8). */
export const LEAST_WEB_MM = 4;
const MOST_FILED_MM = 0.7;

export const j10AxleInSlot: JointDefinition = {
  ...head,
  attributes: [
    "donor.interfaces.rear_end",
    "donor.interfaces.rear_slot",
    "donor.interfaces.rear_web_min",
    "wheel_rear.ports.axle",
  ],
  reads: ["frame.rear_slot"],
  changes: ["frame.rear_slot", "frame.rear_web_min"],
  evaluate: (view) => {
    const wheel = partAt(view, "wheel_rear", "wheel_rear");
    if (wheel === undefined) return notChosen(head, "wheel_rear");
    const { interfaces } = view.resolved.donor;
    const axle = wheel.ports.axle;
    const end = interfaces.rear_end;
    const closed = end === "closed_12";
    const slot = closed ? 12 : portValue(view, "frame.rear_slot", interfaces.rear_slot);
    const diameter = axle === undefined ? undefined : AXLE_DIAMETER_MM[axle];
    const room = closed
      ? minus(span(slot), span(diameter))
      : minus(portSpan(view, "frame.rear_slot", interfaces.rear_slot, "calliper"), span(diameter));
    const measure =
      axle === undefined
        ? ({
            what: say("fit-drive.j20-rotor-plane.look-which-axle-the-rear-hub"),
            at: `bin.parts.${wheel.id}.ports.axle`,
            tool: "calliper",
          } as const)
        : ({
            what:
              slot === undefined
                ? say("fit-front.j10-axle-in-slot.measure-the-slot-of-the-rear")
                : say("fit-front.j10-axle-in-slot.try-the-axle-in-the-slot"),
            at: "donor.interfaces.rear_slot",
            tool: "calliper",
          } as const);
    const through = axle === "through_12" || axle === "through_15" || axle === "through_20";
    const checks: Check[] = [
      {
        name: say("fit-front.j10-axle-in-slot.slot-minus-axle"),
        unit: "mm",
        value: room,
        limit: { low: 0, high: 0.5, kind: "hard", words: say("fit-front.j10-axle-in-slot.the-axle-goes-in-and-not") },
        wanted: { low: closed ? 0 : 0.1, high: 0.5, words: say("fit-front.j10-axle-in-slot.0-1-to-0-5-of") },
        measure,
      },
      {
        name: say("fit-front.j10-axle-in-slot.end-suits-the-axle"),
        shown: false,
        unit: "count",
        value: span(axle === undefined || end === undefined ? undefined : through === closed ? 1 : 0),
        limit: { low: 1, kind: "hard", words: say("fit-front.j10-axle-in-slot.a-through-axle-in-a-closed") },
        measure:
          end === undefined
            ? {
                what: say("fit-drive.j20-rotor-plane.look-at-the-rear-dropouts-slot"),
                at: "donor.interfaces.rear_end",
                tool: "eye",
              }
            : measure,
      },
    ];
    const settled = settle(checks);
    const fails = settled.outcome === "fails";
    const web = fails && through && !closed && slot !== undefined ? webLeft(interfaces.rear_web_min, slot) : undefined;
    return closeJoint(head, {
      settled: { ...settled, numbers: [...settled.numbers, ...(web === undefined ? [] : [web])] },
      words: {
        fits: say("fit-front.j10-axle-in-slot.in-a-mm-of-room", {
          axle: axle === undefined ? say("fit-front.j10-axle-in-slot.the-axle") : capital(AXLE_WORDS[axle]),
          slot: plain(slot ?? 0),
          closed: closed ? "bore" : "slot",
          kind: plain(room.kind === "known" ? room.mid : 0),
        }),
        fails: failWords(axle, slot, closed, through),
        ...(axle !== undefined && slot !== undefined && end !== undefined
          ? {
              open: say("fit-front.j10-axle-in-slot.in-a-slot-the-calliper-cannot", {
                axleWords: capital(AXLE_WORDS[axle]),
                slot: plain(slot),
              }),
            }
          : {}),
      },
      remedies:
        fails && slot !== undefined && diameter !== undefined ? remedies(view, slot, diameter, through, closed) : [],
      sources: ["fit-hub-practice"],
    });
  },
};

function failWords(
  axle: keyof typeof AXLE_WORDS | undefined,
  slot: number | undefined,
  closed: boolean,
  through: boolean,
): string {
  const words = axle === undefined ? say("fit-front.j10-axle-in-slot.the-axle") : capital(AXLE_WORDS[axle]);
  if (through && !closed)
    return say("fit-front.j10-axle-in-slot.in-a-slot-the-axle-is", { words, slot: plain(slot ?? 0) });
  if (!through && closed) return say("fit-front.j10-axle-in-slot.in-a-closed-12-bore", { words });
  return say("fit-front.j10-axle-in-slot.in-a-slot-it-does-not", { words, slot: plain(slot ?? 0) });
}

function webLeft(web: number | undefined, slot: number): DecidingNumber | undefined {
  if (web === undefined) return undefined;
  return {
    name: say("fit-front.j10-axle-in-slot.web-left-round-a-12-1"),
    value: web - (BORE_MM - slot) / 2,
    unit: "mm",
    limit: { low: LEAST_WEB_MM, kind: "hard", words: say("fit-front.j10-axle-in-slot.4-or-more-all-round") },
  };
}

function remedies(
  view: FitView,
  slot: number,
  diameter: number,
  through: boolean,
  closed: boolean,
): readonly RemedyOffer[] {
  const offers: RemedyOffer[] = [offerRemedy(WHEEL_REMEDIES.axle_to_suit, view, { values: { slot } })];
  if (closed) return offers;
  if (through) {
    const web = view.resolved.donor.interfaces.rear_web_min;
    const left = web === undefined ? undefined : web - (BORE_MM - slot) / 2;
    const refused =
      left === undefined
        ? say("fit-front.j10-axle-in-slot.the-web-round-the-slot-is")
        : left < LEAST_WEB_MM
          ? say("fit-front.j10-axle-in-slot.only-mm-of-web-would-be", { left: plain(left) })
          : undefined;
    offers.push(
      offerRemedy(WHEEL_REMEDIES.bore_slot_end, view, {
        values: { slot, web_left: left ?? say("fit-front.j10-axle-in-slot.not-known") },
        ...(refused === undefined ? {} : { refused, rules: ["S8"] }),
      }),
    );
  } else if (slot < diameter && diameter - slot <= MOST_FILED_MM) {
    offers.push(offerRemedy(WHEEL_REMEDIES.file_rear_slot, view, { values: { slot, to_slot: diameter + 0.1 } }));
  }
  return offers;
}
