/**
 * J14: is the front axle the one that this fork's ends are made for?
 * The same word fits; solid and hollow M9 both go into a 9 slot. Hubs with end caps may be changed (15, 12, skewer).
 * Sources: fit-hub-widths.
 */

import { AXLE_DIAMETER_MM, AXLE_WORDS } from "../../data/interfaces.js";
import { WHEEL_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { settle } from "../settle.js";
import { span } from "../span.js";
import { partAt } from "../view.js";

const head = {
  id: "J14",
  title: say("fit.joint-titles.front-axle-fork-end"),
  between: ["wheel_front", "fork"],
} as const;

export const j14AxleInForkEnd: JointDefinition = {
  ...head,
  attributes: ["wheel_front.ports.axle", "fork.ports.axle"],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const fork = partAt(view, "fork", "fork");
    const wheel = partAt(view, "wheel_front", "wheel_front");
    if (fork === undefined) return notChosen(head, "fork");
    if (wheel === undefined) return notChosen(head, "wheel_front");
    const hub = wheel.ports.axle;
    const end = fork.ports.axle;
    const throughHub = hub?.startsWith("through") === true;
    const throughEnd = end?.startsWith("through") === true;
    const same =
      hub !== undefined &&
      end !== undefined &&
      throughHub === throughEnd &&
      AXLE_DIAMETER_MM[hub] === AXLE_DIAMETER_MM[end];
    const settled = settle([
      {
        name: say("fit-front.j14-axle-in-fork-end.axle-as-the-fork-end-wants"),
        shown: false,
        unit: "count",
        value: hub === undefined || end === undefined ? span(undefined) : span(same ? 1 : 0),
        limit: { low: 1, kind: "hard", words: say("fit-front.j14-axle-in-fork-end.the-same-axle") },
        measure:
          hub === undefined
            ? {
                what: say("fit-front.j14-axle-in-fork-end.look-which-axle-the-front-hub"),
                at: `bin.parts.${wheel.id}.ports.axle`,
                tool: "eye",
              }
            : {
                what: say("fit-front.j14-axle-in-fork-end.look-which-axle-the-fork-ends"),
                at: `bin.parts.${fork.id}.ports.axle`,
                tool: "eye",
              },
      },
    ]);
    const offers: RemedyOffer[] = [];
    if (settled.outcome === "fails" && hub !== undefined && end !== undefined) {
      const values = { fork_axle: AXLE_WORDS[end] };
      // Caps only make an axle thinner: 15 to 12 to skewer.
      if (throughHub && AXLE_DIAMETER_MM[hub] <= 15 && AXLE_DIAMETER_MM[hub] > AXLE_DIAMETER_MM[end])
        offers.push(offerRemedy(WHEEL_REMEDIES.front_end_caps, view, { values }));
      offers.push(offerRemedy(WHEEL_REMEDIES.other_front_axle, view, { values }));
    }
    const hubWords = hub === undefined ? "" : AXLE_WORDS[hub];
    const endWords = end === undefined ? "" : AXLE_WORDS[end];
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-front.j14-axle-in-fork-end.hub-and-fork-both-for", { endWords }),
        fails: say("fit-front.j14-axle-in-fork-end.the-hub-has-a-the-fork", { hubWords, endWords }),
      },
      remedies: offers,
      sources: ["fit-hub-widths"],
    });
  },
};
