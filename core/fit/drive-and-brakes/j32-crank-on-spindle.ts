/**
 * J32: does the crank go on this spindle?
 * One system: square taper of one kind, spline, 24 or 30. A spindle longer by d than the one the crank was made for adds d
 * to Q and d/2 to arm and chainline; J33, J34 and J36 judge that. Source: fit-taper-practice.
 */

import { BB_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { DecidingNumber } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { plain, settle } from "../settle.js";
import { partAt } from "../view.js";
import { ringsHere, spindleLonger, statedChainline } from "./ring-on-crank.js";
import { sameWord } from "./same-word.js";

const head = { id: "J32", title: "crank – spindle", between: ["crank", "bb"] } as const;

const SYSTEM_WORDS = {
  taper_jis: say("fit-drive.j32-crank-on-spindle.square-taper-jis"),
  taper_iso: say("fit-drive.j32-crank-on-spindle.square-taper-iso"),
  spline: "splined",
  "24": "24",
  "30": "30",
} as const;

export const j32CrankOnSpindle: JointDefinition = {
  ...head,
  attributes: [
    "crank.ports.spindle",
    "bb.ports.spindle",
    "crank.ports.design_spindle",
    "bb.ports.spindle_length",
    "crank.ports.q",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const crank = partAt(view, "crank", "crank");
    const bb = partAt(view, "bb", "bb");
    if (crank === undefined) return notChosen(head, "crank");
    if (bb === undefined) return notChosen(head, "bb");
    const arm = crank.ports.spindle;
    const spindle = bb.ports.spindle;
    const settled = settle([
      sameWord({
        name: say("fit-drive.j32-crank-on-spindle.arm-and-spindle-of-one-system"),
        a: arm,
        b: spindle,
        words: say("fit-drive.j32-crank-on-spindle.the-same"),
        measureA: {
          what: say("fit-drive.j32-crank-on-spindle.look-which-spindle-the-crank-takes"),
          at: `bin.parts.${crank.id}.ports.spindle`,
          tool: "calliper",
        },
        measureB: {
          what: say("fit-drive.j32-crank-on-spindle.look-which-spindle-the-bottom-bracket"),
          at: `bin.parts.${bb.id}.ports.spindle`,
          tool: "calliper",
        },
      }),
    ]);
    const { q } = crank.ports;
    const chainline = statedChainline(crank, ringsHere(view));
    const length = bb.ports.spindle_length;
    const longer = spindleLonger(crank, bb);
    const numbers: DecidingNumber[] = [];
    const cautions: Caution[] = [];
    if (longer === undefined) {
      const at =
        length === undefined ? `bin.parts.${bb.id}.ports.spindle_length` : `bin.parts.${crank.id}.ports.design_spindle`;
      cautions.push({
        code: "spindle-length-not-known",
        at,
        message: say("fit-drive.j32-crank-on-spindle.how-much-longer-or-shorter-the"),
      });
    } else {
      numbers.push({
        name: say("fit-drive.j32-crank-on-spindle.spindle-longer-than-the-crank-was"),
        value: longer,
        unit: "mm",
      });
      if (q !== undefined)
        numbers.push({ name: say("fit-drive.j32-crank-on-spindle.q-as-fitted"), value: q + longer, unit: "mm" });
      if (chainline !== undefined)
        numbers.push({
          name: say("fit-drive.j32-crank-on-spindle.chainline-as-fitted"),
          value: chainline + longer / 2,
          unit: "mm",
        });
    }
    const moved =
      longer === undefined || longer === 0
        ? ""
        : say("fit-drive.j32-crank-on-spindle.than-it-was-made-for", {
            longer: plain(Math.abs(longer)),
            longer2: longer > 0 ? "longer" : "shorter",
          });
    const failed = settled.outcome === "fails" && arm !== undefined;
    return closeJoint(head, {
      settled: { ...settled, numbers: [...settled.numbers, ...numbers] },
      words: {
        fits: say("fit-drive.j32-crank-on-spindle.both", { arm: arm === undefined ? "" : SYSTEM_WORDS[arm], moved }),
        fails: say("fit-drive.j32-crank-on-spindle.the-crank-is-for-the-spindle", {
          arm: arm === undefined ? say("fit-drive.j32-crank-on-spindle.another-spindle") : SYSTEM_WORDS[arm],
          spindle: spindle === undefined ? "another" : SYSTEM_WORDS[spindle],
        }),
      },
      remedies: failed ? [offerRemedy(BB_REMEDIES.other_spindle, view, { values: { system: SYSTEM_WORDS[arm] } })] : [],
      sources: ["fit-taper-practice"],
      cautions,
    });
  },
};
