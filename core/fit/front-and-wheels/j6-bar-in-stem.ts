/**
 * J6: does the bar go into the stem's clamp?
 * Equal within 0.1 by name. A shim only up to a size that can be had and only in a clamp of four bolts, or one made for
 * it (S12). Sources: fit-clamp-practice.
 */

import { BAR_SHIMS } from "../../data/interfaces.js";
import { COCKPIT_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { TOOLS } from "../tool-accuracy.js";
import type { FitView } from "../view.js";
import { partAt } from "../view.js";

const head = { id: "J6", title: "bar – stem", between: ["bar", "stem"] } as const;

export const j6BarInStem: JointDefinition = {
  ...head,
  attributes: ["bar.ports.clamp", "stem.ports.bar_clamp", "stem.ports.bolts"],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const bar = partAt(view, "bar", "bar");
    const stem = view.at.stem;
    if (bar === undefined) return notChosen(head, "bar");
    if (stem?.kind !== "stem" && stem?.kind !== "quill_stem") return notChosen(head, "stem");
    const own = bar.ports.clamp;
    const clamp = stem.ports.bar_clamp;
    const settled = settle([
      {
        name: say("fit-front.j6-bar-in-stem.stem-clamp-minus-bar"),
        unit: "mm",
        value: minus(span(clamp, TOOLS.calliper.half), span(own, TOOLS.calliper.half)),
        limit: { low: -0.1, high: 0.1, kind: "hard", words: say("fit-front.j5-stem-on-steerer.equal-within-0-1") },
        measure:
          own === undefined
            ? {
                what: say("fit-front.j6-bar-in-stem.measure-the-bar-in-the-middle"),
                at: `bin.parts.${bar.id}.ports.clamp`,
                tool: "calliper",
              }
            : {
                what: say("fit-front.j6-bar-in-stem.measure-the-stem-s-bar-clamp"),
                at: `bin.parts.${stem.id}.ports.bar_clamp`,
                tool: "calliper",
              },
      },
    ]);
    const fails = settled.outcome === "fails";
    const bolts = stem.kind === "stem" ? stem.ports.bolts : undefined;
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-front.j6-bar-in-stem.bar-in-a-clamp", { own: plain(own ?? 0), clamp: plain(clamp ?? 0) }),
        fails: say("fit-front.j6-bar-in-stem.bar-does-not-belong-in-a", {
          own: plain(own ?? 0),
          clamp: plain(clamp ?? 0),
        }),
      },
      remedies: fails && own !== undefined && clamp !== undefined ? remedies(view, own, clamp, bolts) : [],
      rulesIfStuck: fails
        ? [
            {
              rule: "S12",
              level: "refuse",
              why: say("fit-front.j6-bar-in-stem.bar-and-stem-clamp-do-not"),
              place: "bar",
              part: bar.id,
            },
          ]
        : [],
      sources: ["fit-clamp-practice"],
    });
  },
};

function remedies(view: FitView, bar: number, clamp: number, bolts: number | undefined): readonly RemedyOffer[] {
  const values = { bar, clamp };
  const offers: RemedyOffer[] = [offerRemedy(COCKPIT_REMEDIES.other_bar, view, { values })];
  if (BAR_SHIMS.some(([from, to]) => Math.abs(from - bar) <= 0.1 && Math.abs(to - clamp) <= 0.1)) {
    offers.push(
      bolts === 4
        ? offerRemedy(COCKPIT_REMEDIES.bar_shim, view, { values })
        : offerRemedy(COCKPIT_REMEDIES.bar_shim, view, {
            values,
            rules: ["S12"],
            refused:
              bolts === undefined
                ? say("fit-front.j6-bar-in-stem.a-shim-belongs-only-in-a")
                : say("fit-front.j6-bar-in-stem.a-shim-belongs-only-in-a-2", { bolts }),
          }),
    );
  }
  offers.push(offerRemedy(COCKPIT_REMEDIES.crush_clamp, view));
  return offers;
}
