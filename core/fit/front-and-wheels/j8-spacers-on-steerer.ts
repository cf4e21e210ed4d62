/**
 * J8: is the stack of spacers under the stem low enough, and do the spacers go on this steerer?
 * 30 wanted, 40 at most (S12). The steerer ends 3 below the top of the stem (judged in J3). Carbon: expander, no star nut.
 * Sources: fit-clamp-practice.
 */

import { COCKPIT_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portValue } from "../port.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { TOOLS } from "../tool-accuracy.js";
import { type FitView, partAt } from "../view.js";
import { MOST_SPACERS_MM } from "./steerer-room.js";

const head = {
  id: "J8",
  title: say("fit.joint-titles.spacers-star-nut-or-expander"),
  between: ["spacers", "fork", "stem"],
} as const;

/** A stack up to this raises no question (common practice, no source). */
export const WANTED_SPACERS_MM = 30;

export const j8SpacersOnSteerer: JointDefinition = {
  ...head,
  attributes: [
    "build.spacers_below",
    "spacers.ports.steerer_od",
    "spacers.ports.height",
    "fork.ports.steerer_od",
    "fork.ports.carbon",
  ],
  reads: ["cockpit.spacers_below"],
  changes: [],
  evaluate: (view) => {
    const fork = partAt(view, "fork", "fork");
    const stem = view.at.stem;
    if (fork === undefined) return notChosen(head, "fork");
    if (stem === undefined) return notChosen(head, "stem");
    if (stem.kind === "quill_stem")
      return notChecked(head, say("fit-front.j8-spacers-on-steerer.a-quill-stem-is-raised-in"));
    const stack = portValue(view, "cockpit.spacers_below", view.spacersBelowMm ?? view.resolved.build.spacers_below);
    const measure = {
      what: say("fit-front.steerer-room.choose-the-height-of-spacers-under"),
      at: "build.spacers_below",
    } as const;
    const checks: Check[] = [
      {
        name: say("fit-front.j8-spacers-on-steerer.spacers-under-the-stem"),
        unit: "mm",
        value: span(stack),
        limit: {
          low: 0,
          high: MOST_SPACERS_MM,
          kind: "hard",
          words: say("fit-front.j8-spacers-on-steerer.at-most", { mostSpacersMm: MOST_SPACERS_MM }),
        },
        wanted: {
          high: WANTED_SPACERS_MM,
          words: say("fit-front.j8-spacers-on-steerer.or-less", { wantedSpacersMm: WANTED_SPACERS_MM }),
        },
        measure,
      },
    ];
    const spacers = partAt(view, "spacers", "spacers");
    if (spacers !== undefined && (stack ?? 0) > 0) {
      checks.push({
        name: say("fit-front.j8-spacers-on-steerer.spacer-bore-minus-steerer"),
        unit: "mm",
        value: minus(
          span(spacers.ports.steerer_od, TOOLS.calliper.half),
          span(fork.ports.steerer_od, TOOLS.calliper.half),
        ),
        limit: { low: -0.15, high: 0.15, kind: "hard", words: say("fit-front.j3-steerer-in-headset.equal-by-name") },
        measure: {
          what: say("fit-front.j8-spacers-on-steerer.measure-the-steerer-and-the-spacers"),
          at: `bin.parts.${spacers.id}.ports.steerer_od`,
          tool: "calliper",
        },
      });
      const height = spacersAtHand(view, spacers.id, spacers.ports.height);
      checks.push({
        name: say("fit-front.j8-spacers-on-steerer.spacers-at-hand-minus-stack"),
        unit: "mm",
        value: minus(span(height), span(stack)),
        limit: { low: 0, kind: "wanted", words: say("fit-front.j8-spacers-on-steerer.as-many-as-the-stack-is") },
        measure: {
          what: say("fit-front.j8-spacers-on-steerer.measure-the-height-of-one-spacer"),
          at: `bin.parts.${spacers.id}.ports.height`,
          tool: "calliper",
        },
      });
    }
    const cautions: Caution[] = [];
    if (fork.ports.carbon === true)
      cautions.push({
        code: "expander-not-star-nut",
        at: `bin.parts.${fork.id}`,
        message: say("fit-front.j8-spacers-on-steerer.carbon-steerer-an-expander-plug-never"),
      });
    if (spacers === undefined && (stack ?? 0) > 0)
      cautions.push({
        code: "no-spacers-chosen",
        at: "build.chosen.spacers",
        message: say("fit-front.j8-spacers-on-steerer.mm-of-spacers-are-reckoned-with", { stack: plain(stack ?? 0) }),
      });
    const settled = settle(checks);
    const tooHigh = settled.failed.some((check) => check.name === "spacers under the stem");
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-front.j8-spacers-on-steerer.mm-of-spacers-under-the-stem", {
          stack: plain(stack ?? 0),
          mostSpacersMm: MOST_SPACERS_MM,
        }),
        fails: tooHigh
          ? say("fit-front.j8-spacers-on-steerer.mm-of-spacers-under-the-stem-2", {
              stack: plain(stack ?? 0),
              mostSpacersMm: MOST_SPACERS_MM,
            })
          : say("fit-front.j8-spacers-on-steerer.these-spacers-are-made-for-another"),
      },
      remedies: tooHigh
        ? [offerRemedy(COCKPIT_REMEDIES.lower_stack, view, { values: { limit: MOST_SPACERS_MM } })]
        : [],
      rules: tooHigh
        ? [
            {
              rule: "S12",
              level: "refuse",
              why: say("fit-front.j8-spacers-on-steerer.more-than-40-mm-of-spacers"),
              place: "spacers",
            },
          ]
        : [],
      sources: ["fit-clamp-practice"],
      cautions,
    });
  },
};

/** One in the place and those listed under `also`. */
function spacersAtHand(view: FitView, id: string, height: number | undefined): number | undefined {
  if (height === undefined) return undefined;
  const more = view.resolved.also.filter((row) => row.part.id === id).reduce((sum, row) => sum + row.qty, 0);
  return height * (1 + more);
}
