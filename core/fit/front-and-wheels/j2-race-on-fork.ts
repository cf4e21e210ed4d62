/**
 * J2: does the crown race sit tight on the fork?
 * Two sizes that bear the same name (30.0 race, 30.0 seat) fit by class: the race is ground smaller than its name.
 * Measured diameters are held against a press of 0.05 to 0.15. Sources: fit-headset-practice, fit-headset-codes.
 */
import { RACE_SEATS } from "../../data/interfaces.js";
import { HEAD_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portValue } from "../port.js";
import { plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { TOOLS } from "../tool-accuracy.js";
import { type FitView, partAt } from "../view.js";

const head = { id: "J2", title: "crown race – fork", between: ["headset", "fork"] } as const;

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
    const seat = portValue(view, "fork.race_seat", fork.ports.race_seat);
    const race = headset.ports.race_id;
    const name = RACE_SEATS.find((row) => row.seat === seat);
    const sources = ["fit-headset-practice", "fit-headset-codes"];
    if (seat !== undefined && race === seat && name !== undefined) {
      return closeJoint(head, {
        settled: settle([{ name: "seat and race by name", unit: "mm", value: span(seat) }]),
        words: { fits: `${seat.toFixed(1)} race on a ${seat.toFixed(1)} seat (${name.words}): same class.`, fails: "" },
        sources,
        cautions: [
          {
            code: "judged-by-name",
            at: `bin.parts.${headset.id}.ports.race_id`,
            message:
              "Race and seat are both given by name. Measured, the race is 0.05 to 0.15 smaller; if it slides on by hand, measure both.",
          },
        ],
      });
    }
    const press = minus(span(seat, TOOLS.micrometer.half), span(race, TOOLS.micrometer.half));
    const settled = settle([
      {
        name: "seat over race",
        unit: "mm",
        value: press,
        limit: { low: 0.05, high: 0.15, kind: "hard", words: "0.05 to 0.15 press, measured" },
        measure:
          seat === undefined
            ? { what: "Measure the crown race seat", at: `bin.parts.${fork.id}.ports.race_seat`, tool: "micrometer" }
            : {
                what: "Measure the inside of the crown race",
                at: `bin.parts.${headset.id}.ports.race_id`,
                tool: "micrometer",
              },
      },
    ]);
    const value = press.kind === "known" ? press.mid : 0;
    const figures = `${plain(race ?? 0)} race on a ${plain(seat ?? 0)} seat`;
    return closeJoint(head, {
      settled,
      words: {
        fits: `${figures}: ${plain(value)} tight, as it should be.`,
        fails:
          value > 0.15
            ? `${figures}: ${plain(value)} too big for the race to go on.`
            : `${figures}: ${value <= 0 ? `${plain(-value)} loose` : "too little press"}, the race will work loose.`,
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
