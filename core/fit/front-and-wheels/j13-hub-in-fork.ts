/**
 * J13: does the front hub go between the fork ends?
 * Equal within 0.5; otherwise the axle is re-spaced, or a steel fork set by at most 2. Sources: fit-hub-practice.
 */

import { WHEEL_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portSpan, portValue } from "../port.js";
import { plain, settle } from "../settle.js";
import { minus } from "../span.js";
import { type FitView, partAt } from "../view.js";

const head = {
  id: "J13",
  title: say("fit-front.j13-hub-in-fork.hub-frame-front"),
  between: ["wheel_front", "fork"],
} as const;

/** A steel fork is set by no more than this (trade 4.2). */
const MOST_SET_MM = 2;

export const j13HubInFork: JointDefinition = {
  ...head,
  attributes: ["wheel_front.ports.width", "fork.ports.end_width"],
  reads: ["wheel_front.width", "fork.end_width"],
  changes: ["wheel_front.width", "fork.end_width"],
  evaluate: (view) => {
    const fork = partAt(view, "fork", "fork");
    const wheel = partAt(view, "wheel_front", "wheel_front");
    if (fork === undefined) return notChosen(head, "fork");
    if (wheel === undefined) return notChosen(head, "wheel_front");
    const hub = portValue(view, "wheel_front.width", wheel.ports.width);
    const ends = portValue(view, "fork.end_width", fork.ports.end_width);
    const settled = settle([
      {
        name: say("fit-front.j13-hub-in-fork.front-hub-minus-fork-ends"),
        unit: "mm",
        value: minus(
          portSpan(view, "wheel_front.width", wheel.ports.width, "calliper"),
          portSpan(view, "fork.end_width", fork.ports.end_width, "calliper"),
        ),
        limit: { low: -0.5, high: 0.5, kind: "hard", words: say("fit-front.j13-hub-in-fork.equal-within-0-5") },
        measure:
          hub === undefined
            ? {
                what: say("fit-front.j13-hub-in-fork.measure-the-front-hub-between-the"),
                at: `bin.parts.${wheel.id}.ports.width`,
                tool: "calliper",
              }
            : {
                what: say("fit-front.j13-hub-in-fork.measure-the-gap-between-the-fork"),
                at: `bin.parts.${fork.id}.ports.end_width`,
                tool: "calliper",
              },
      },
    ]);
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-front.j13-hub-in-fork.hub-between-fork-ends", { hub: plain(hub ?? 0), ends: plain(ends ?? 0) }),
        fails: say("fit-front.j13-hub-in-fork.hub-but-the-fork-ends-stand", {
          hub: plain(hub ?? 0),
          ends: plain(ends ?? 0),
        }),
      },
      remedies:
        settled.outcome === "fails" && hub !== undefined && ends !== undefined
          ? remedies(view, fork, wheel, hub, ends)
          : [],
      sources: ["fit-hub-practice", "fit-hub-widths"],
    });
  },
};

function remedies(
  view: FitView,
  fork: PartOfKind<"fork">,
  wheel: PartOfKind<"wheel_front">,
  hub: number,
  ends: number,
): readonly RemedyOffer[] {
  const values = { hub, fork: ends };
  const offers: RemedyOffer[] = [offerRemedy(WHEEL_REMEDIES.other_front_wheel, view, { values })];
  const through = wheel.ports.axle?.startsWith("through") === true || fork.ports.end === "closed";
  if (!through && Math.abs(hub - ends) <= 10) offers.push(offerRemedy(WHEEL_REMEDIES.respace_front, view, { values }));
  if (!through && Math.abs(hub - ends) <= MOST_SET_MM) {
    const refused =
      fork.ports.carbon === true
        ? say("fit-front.j13-hub-in-fork.a-carbon-fork-is-never-set")
        : fork.ports.carbon === undefined
          ? say("fit-front.j13-hub-in-fork.whether-the-fork-is-steel-is")
          : undefined;
    offers.push(
      offerRemedy(WHEEL_REMEDIES.set_fork, view, {
        values,
        conditions: [say("fit-front.j13-hub-in-fork.steel-blades-only-not-chromed")],
        ...(refused === undefined ? {} : { refused, rules: ["S1"] }),
      }),
    );
  }
  return offers;
}
