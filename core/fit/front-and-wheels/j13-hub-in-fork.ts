/**
 * J13: does the front hub go between the fork ends?
 * Equal within 0.5; otherwise the axle is re-spaced, or a steel fork set by at most 2. Sources: fit-hub-practice.
 */
import { WHEEL_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portSpan, portValue } from "../port.js";
import { plain, settle } from "../settle.js";
import { minus } from "../span.js";
import { type FitView, partAt } from "../view.js";

const head = { id: "J13", title: "hub – frame front", between: ["wheel_front", "fork"] } as const;

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
        name: "front hub minus fork ends",
        unit: "mm",
        value: minus(
          portSpan(view, "wheel_front.width", wheel.ports.width, "calliper"),
          portSpan(view, "fork.end_width", fork.ports.end_width, "calliper"),
        ),
        limit: { low: -0.5, high: 0.5, kind: "hard", words: "equal within 0.5" },
        measure:
          hub === undefined
            ? {
                what: "Measure the front hub between the faces that the ends touch",
                at: `bin.parts.${wheel.id}.ports.width`,
                tool: "calliper",
              }
            : {
                what: "Measure the gap between the fork ends",
                at: `bin.parts.${fork.id}.ports.end_width`,
                tool: "calliper",
              },
      },
    ]);
    return closeJoint(head, {
      settled,
      words: {
        fits: `${plain(hub ?? 0)} hub between ${plain(ends ?? 0)} fork ends.`,
        fails: `${plain(hub ?? 0)} hub, but the fork ends stand ${plain(ends ?? 0)} apart.`,
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
        ? "A carbon fork is never set."
        : fork.ports.carbon === undefined
          ? "Whether the fork is steel is not known: look first."
          : undefined;
    offers.push(
      offerRemedy(WHEEL_REMEDIES.set_fork, view, {
        values,
        conditions: ["steel blades only, not chromed"],
        ...(refused === undefined ? {} : { refused, rules: ["S1"] }),
      }),
    );
  }
  return offers;
}
