/**
 * J7: do the levers clamp on this bar?
 * Both 22.2 (flat) or both within 23.8 to 24.2 (drop); nothing is shimmed: pick the lever for the bar.
 * Sources: fit-clamp-practice.
 */

import { GRIP_ROWS } from "../../data/interfaces.js";
import { COCKPIT_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { TOOLS } from "../tool-accuracy.js";
import { partAt } from "../view.js";

const head = { id: "J7", title: "lever – bar", between: ["lever", "bar"] } as const;

export const j7LeverOnBar: JointDefinition = {
  ...head,
  attributes: ["lever.ports.grip", "bar.ports.grip"],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const lever = partAt(view, "lever", "lever_pair");
    const bar = partAt(view, "bar", "bar");
    if (lever === undefined) return notChosen(head, "lever");
    if (bar === undefined) return notChosen(head, "bar");
    const a = lever.ports.grip;
    const b = bar.ports.grip;
    const row = GRIP_ROWS.find((r) => b !== undefined && b >= r.low && b <= r.high);
    const sameRow = row !== undefined && a !== undefined && a >= row.low && a <= row.high;
    const reach = sameRow ? row.high - row.low + 0.1 : 0.1;
    const settled = settle([
      {
        name: say("fit-front.j7-lever-on-bar.lever-clamp-minus-bar"),
        unit: "mm",
        value: minus(span(a, TOOLS.calliper.half), span(b, TOOLS.calliper.half)),
        limit: {
          low: -reach,
          high: reach,
          kind: "hard",
          words:
            row === undefined
              ? say("fit-front.j5-stem-on-steerer.equal-within-0-1")
              : say("fit-front.j7-lever-on-bar.both", { row: row.words }),
        },
        measure:
          a === undefined
            ? {
                what: say("fit-front.j7-lever-on-bar.measure-the-lever-s-clamp"),
                at: `bin.parts.${lever.id}.ports.grip`,
                tool: "calliper",
              }
            : {
                what: say("fit-front.j7-lever-on-bar.measure-the-bar-where-the-levers"),
                at: `bin.parts.${bar.id}.ports.grip`,
                tool: "calliper",
              },
      },
    ]);
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-front.j7-lever-on-bar.lever-on-a-bar", { leverClamp: plain(a ?? 0), barGrip: plain(b ?? 0) }),
        fails: say("fit-front.j7-lever-on-bar.lever-does-not-belong-on-a", {
          leverClamp: plain(a ?? 0),
          barGrip: plain(b ?? 0),
        }),
      },
      remedies:
        settled.outcome === "fails" && b !== undefined
          ? [offerRemedy(COCKPIT_REMEDIES.other_lever, view, { values: { bar: b } })]
          : [],
      rulesIfStuck:
        settled.outcome === "fails"
          ? [
              {
                rule: "S12",
                level: "refuse",
                why: say("fit-front.j7-lever-on-bar.lever-clamp-and-bar-do-not"),
                place: "lever",
                part: lever.id,
              },
            ]
          : [],
      sources: ["fit-clamp-practice"],
    });
  },
};
