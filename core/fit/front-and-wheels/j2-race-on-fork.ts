/**
 * J2: does the crown race sit tight on the fork?
 * Two sizes that bear the same name (30.0 race, 30.0 seat) fit by class: the race is ground smaller than its name.
 * Measured diameters are held against a press of 0.05 to 0.15. Sources: fit-headset-practice, fit-headset-codes.
 */

import { RACE_SEATS } from "../../data/interfaces.js";
import { HEAD_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portValue } from "../port.js";
import { plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { asTheyAre } from "../stay-as-they-are.js";
import { TOOLS } from "../tool-accuracy.js";
import { type FitView, partAt } from "../view.js";

const head = {
  id: "J2",
  title: say("fit-front.j2-race-on-fork.crown-race-fork"),
  between: ["headset", "fork"],
} as const;

export const j2RaceOnFork: JointDefinition = {
  ...head,
  attributes: ["fork.ports.race_seat", "headset.ports.race_id"],
  reads: ["fork.race_seat"],
  changes: ["fork.race_seat"],
  evaluate: (view) => {
    const fork = partAt(view, "fork", "fork");
    const headset = partAt(view, "headset", "headset");
    if (fork === undefined) return notChosen(head, "fork");
    if (headset === undefined) return notChosen(head, "headset");
    const own = asTheyAre(
      head,
      [fork, headset],
      {
        stays: say("fit-front.j2-race-on-fork.the-donor-s-own-race-stays"),
        look: say("fit-front.j2-race-on-fork.look-at-the-race-when-the"),
      },
      ["fit-headset-practice"],
    );
    if (own !== undefined) return own;
    const seat = portValue(view, "fork.race_seat", fork.ports.race_seat);
    const race = headset.ports.race_id;
    const name = RACE_SEATS.find((row) => row.seat === seat);
    const sources = ["fit-headset-practice", "fit-headset-codes"];
    if (seat !== undefined && race === seat && name !== undefined) {
      return closeJoint(head, {
        settled: settle([
          { name: say("fit-front.j2-race-on-fork.seat-and-race-by-name"), unit: "mm", value: span(seat) },
        ]),
        words: {
          fits: say("fit-front.j2-race-on-fork.race-on-a-seat-same-class", { seat: seat.toFixed(1), name: name.words }),
          fails: "",
        },
        sources,
        cautions: [
          {
            code: "judged-by-name",
            at: `bin.parts.${headset.id}.ports.race_id`,
            message: say("fit-front.j2-race-on-fork.race-and-seat-are-both-given"),
          },
        ],
      });
    }
    const press = minus(span(seat, TOOLS.micrometer.half), span(race, TOOLS.micrometer.half));
    const settled = settle([
      {
        name: say("fit-front.j2-race-on-fork.seat-over-race"),
        unit: "mm",
        value: press,
        limit: { low: 0.05, high: 0.15, kind: "hard", words: say("fit-front.j2-race-on-fork.0-05-to-0-15-press") },
        measure:
          seat === undefined
            ? {
                what: say("fit-front.j2-race-on-fork.measure-the-crown-race-seat"),
                at: `bin.parts.${fork.id}.ports.race_seat`,
                tool: "micrometer",
              }
            : {
                what: say("fit-front.j2-race-on-fork.measure-the-inside-of-the-crown"),
                at: `bin.parts.${headset.id}.ports.race_id`,
                tool: "micrometer",
              },
      },
    ]);
    const value = press.kind === "known" ? press.mid : 0;
    const figures = say("fit-front.j2-race-on-fork.race-on-a-seat", { race: plain(race ?? 0), seat: plain(seat ?? 0) });
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-front.j1-cup-in-head-tube.tight-as-it-should-be", { figures, value: plain(value) }),
        fails:
          value > 0.15
            ? say("fit-front.j2-race-on-fork.too-big-for-the-race-to", { figures, value: plain(value) })
            : say("fit-front.j2-race-on-fork.the-race-will-work-loose", {
                figures,
                value:
                  value <= 0
                    ? say("fit-front.j1-cup-in-head-tube.loose", { value: plain(-value) })
                    : say("fit-front.j2-race-on-fork.too-little-press"),
              }),
      },
      remedies:
        settled.outcome === "fails" && seat !== undefined && race !== undefined ? remedies(view, seat, race) : [],
      sources,
    });
  },
};

/** Only what the trade's rows name: 27.0 cut to 26.4, 30 adapted to 39.8, a split race for a slightly big seat. */
function remedies(view: FitView, seat: number, race: number): readonly RemedyOffer[] {
  const offers: RemedyOffer[] = [];
  const near = (value: number, to: number) => Math.abs(value - to) <= 0.2;
  if (near(seat, 27) && near(race, 26.4))
    offers.push(offerRemedy(HEAD_REMEDIES.mill_seat, view, { values: { seat, race } }));
  if (near(seat, 30) && race >= 39.7 && race <= 40.1)
    offers.push(offerRemedy(HEAD_REMEDIES.race_adapter, view, { values: { seat, race } }));
  if (seat - race > 0.15 && seat - race <= 0.3) offers.push(offerRemedy(HEAD_REMEDIES.split_race, view));
  return offers;
}
