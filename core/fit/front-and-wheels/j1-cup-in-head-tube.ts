/**
 * J1: does the headset cup sit tight in the head tube, and not too tight?
 * Press = cup outside diameter - bore: 0.10 to 0.20 (44 cups about 0.05). The oval of the bore takes half of itself away
 * at its widest place. Sources: fit-headset-guide, fit-headset-practice.
 */

import { headTubeByBore, headTubeByCup } from "../../data/interfaces.js";
import { HEAD_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portSpan, portValue } from "../port.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, span, times } from "../span.js";
import { asTheyAre } from "../stay-as-they-are.js";
import { TOOLS } from "../tool-accuracy.js";
import { type FitView, partAt } from "../view.js";

const head = {
  id: "J1",
  title: say("fit.joint-titles.headset-cup-head-tube"),
  between: ["headset", "frame"],
} as const;

/** How much a reamer takes in one head tube: 1 in JIS to ISO is 0.2; more is another head tube. */
const MOST_REAMED_MM = 0.5;
/** How loose a bore may be for shim and compound (common practice, no source). */
const MOST_SHIMMED_MM = 0.3;
/** Too loose or too tight by more than this: cup and tube are of different sizes. */
const ANOTHER_SIZE_MM = 0.6;

export const j1CupInHeadTube: JointDefinition = {
  ...head,
  attributes: ["donor.interfaces.head_bore", "donor.interfaces.head_bore_oval", "headset.ports.cup_od"],
  reads: ["frame.head_bore"],
  changes: ["frame.head_bore", "frame.paint"],
  evaluate: (view) => {
    const headset = partAt(view, "headset", "headset");
    if (headset === undefined) return notChosen(head, "headset");
    const own = asTheyAre(
      head,
      [headset],
      {
        stays: say("fit-front.j1-cup-in-head-tube.the-donor-s-own-headset-stays"),
        look: say("fit-front.j1-cup-in-head-tube.turn-the-fork-slowly-and-rock"),
      },
      ["fit-headset-practice"],
    );
    if (own !== undefined) return own;
    const { interfaces } = view.resolved.donor;
    const cup = headset.ports.cup_od;
    const bore = portValue(view, "frame.head_bore", interfaces.head_bore);
    const row = cup === undefined ? undefined : headTubeByCup(cup);
    const low = row?.pressLow ?? 0.1;
    const high = row?.pressHigh ?? 0.2;
    const cupSpan = span(cup, TOOLS.micrometer.half);
    const press = minus(cupSpan, portSpan(view, "frame.head_bore", interfaces.head_bore, "micrometer"));
    const oval = span(interfaces.head_bore_oval, 0);
    const checks: Check[] = [
      {
        name: say("fit-front.j1-cup-in-head-tube.cup-over-bore"),
        unit: "mm",
        value: press,
        limit: {
          low,
          high,
          kind: "hard",
          words: say("fit-front.j1-cup-in-head-tube.to-press", { low: plain(low), high: plain(high) }),
        },
        measure:
          cup === undefined
            ? {
                what: say("fit-front.j1-cup-in-head-tube.measure-the-outside-of-the-cup"),
                at: `bin.parts.${headset.id}.ports.cup_od`,
                tool: "micrometer",
              }
            : {
                what: say("fit-front.j1-cup-in-head-tube.measure-the-bore-of-the-head"),
                at: "donor.interfaces.head_bore",
                tool: "micrometer",
                how: say("fit-front.j1-cup-in-head-tube.cups-out-burrs-off-two-readings"),
              },
      },
      {
        name: say("fit-front.j1-cup-in-head-tube.cup-over-bore-where-the-bore"),
        unit: "mm",
        value: minus(span(press.kind === "known" ? press.mid : undefined), times(oval, 0.5)),
        limit: { low, kind: "wanted", words: say("fit-front.j1-cup-in-head-tube.or-more", { low: plain(low) }) },
        measure: {
          what: say("fit-front.j1-cup-in-head-tube.measure-how-oval-the-bore-is"),
          at: "donor.interfaces.head_bore_oval",
          tool: "micrometer",
        },
      },
    ];
    const settled = settle(checks);
    const figures = say("fit-front.j1-cup-in-head-tube.cup-in-a-bore", {
      cup: plain(cup ?? 0),
      bore: plain(bore ?? 0),
    });
    const value = press.kind === "known" ? press.mid : 0;
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-front.j1-cup-in-head-tube.tight-as-it-should-be", { figures, value: plain(value) }),
        fails:
          value < low
            ? say("fit-front.j1-cup-in-head-tube.the-cup-will-not-hold", {
                figures,
                value:
                  value < 0
                    ? say("fit-front.j1-cup-in-head-tube.loose", { value: plain(-value) })
                    : say("fit-front.j1-cup-in-head-tube.only-tight", { value: plain(value) }),
              })
            : value > ANOTHER_SIZE_MM
              ? say("fit-front.j1-cup-in-head-tube.the-head-tube-is-another-size", { figures })
              : say("fit-front.j1-cup-in-head-tube.tight-too-much-to-press", { figures, value: plain(value) }),
      },
      remedies:
        settled.outcome === "fails" && bore !== undefined && cup !== undefined ? remedies(view, bore, cup, low) : [],
      sources: [row?.source ?? "fit-headset-practice", "fit-headset-practice"],
      cautions:
        cup !== undefined && row === undefined
          ? [
              {
                code: "cup-not-in-table",
                at: `bin.parts.${headset.id}.ports.cup_od`,
                message: say("fit-front.j1-cup-in-head-tube.a-cup-is-in-no-row", { cup: plain(cup) }),
              },
            ]
          : [],
    });
  },
};

function remedies(view: FitView, bore: number, cup: number, low: number): readonly RemedyOffer[] {
  const offers: RemedyOffer[] = [];
  const row = headTubeByCup(cup);
  if (row !== undefined && bore < row.boreLow && row.boreLow - bore <= MOST_REAMED_MM) {
    const to = Math.round(((row.boreLow + row.boreHigh) / 2) * 1000) / 1000;
    const outside = view.resolved.donor.tube.head_tube_od;
    const conditions = [
      outside === undefined
        ? say("fit-front.j1-cup-in-head-tube.measure-the-head-tube-s-outside")
        : say("fit-front.j1-cup-in-head-tube.wall-left-mm", { outside: plain((outside - to) / 2) }),
    ];
    offers.push(offerRemedy(HEAD_REMEDIES.ream, view, { values: { bore, to_bore: to }, conditions }));
  }
  const press = cup - bore;
  if (press < low && low - press <= MOST_SHIMMED_MM) offers.push(offerRemedy(HEAD_REMEDIES.shim, view));
  const own = headTubeByBore(bore);
  if (own !== undefined && own !== row)
    offers.push(offerRemedy(HEAD_REMEDIES.other_headset, view, { values: { cup_wanted: own.cups.at(-1) ?? 0 } }));
  if (Math.abs(press) > ANOTHER_SIZE_MM) offers.push(offerRemedy(HEAD_REMEDIES.head_tube, view));
  return offers;
}
