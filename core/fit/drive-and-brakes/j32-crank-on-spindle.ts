/**
 * J32: does the crank go on this spindle?
 * One system: square taper of one kind, spline, 24 or 30. A spindle longer by d than the one the crank was made for adds d
 * to Q and d/2 to arm and chainline; J33, J34 and J36 judge that. Source: fit-taper-practice.
 */
import { BB_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import type { Caution } from "../../quantity/index.js";
import { closeJoint } from "../close-joint.js";
import type { DecidingNumber } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { plain, settle } from "../settle.js";
import { partAt } from "../view.js";
import { sameWord } from "./same-word.js";

const head = { id: "J32", title: "crank – spindle", between: ["crank", "bb"] } as const;

const SYSTEM_WORDS = {
  taper_jis: "square taper JIS",
  taper_iso: "square taper ISO",
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
        name: "arm and spindle of one system",
        a: arm,
        b: spindle,
        words: "the same",
        measureA: {
          what: "Look which spindle the crank takes",
          at: `bin.parts.${crank.id}.ports.spindle`,
          tool: "calliper",
        },
        measureB: {
          what: "Look which spindle the bottom bracket has",
          at: `bin.parts.${bb.id}.ports.spindle`,
          tool: "calliper",
        },
      }),
    ]);
    const { design_spindle: design, q, chainline } = crank.ports;
    const length = bb.ports.spindle_length;
    const longer = design === undefined || length === undefined ? undefined : length - design;
    const numbers: DecidingNumber[] = [];
    const cautions: Caution[] = [];
    if (longer === undefined) {
      const at =
        length === undefined ? `bin.parts.${bb.id}.ports.spindle_length` : `bin.parts.${crank.id}.ports.design_spindle`;
      cautions.push({
        code: "spindle-length-not-known",
        at,
        message:
          "How much longer or shorter the spindle is than the crank was made for is not known: Q and chainline cannot be told.",
      });
    } else {
      numbers.push({ name: "spindle longer than the crank was made for", value: longer, unit: "mm" });
      if (q !== undefined) numbers.push({ name: "Q as fitted", value: q + longer, unit: "mm" });
      if (chainline !== undefined)
        numbers.push({ name: "chainline as fitted", value: chainline + longer / 2, unit: "mm" });
    }
    const moved =
      longer === undefined || longer === 0
        ? ""
        : `, ${plain(Math.abs(longer))} ${longer > 0 ? "longer" : "shorter"} than it was made for`;
    const failed = settled.outcome === "fails" && arm !== undefined;
    return closeJoint(head, {
      settled: { ...settled, numbers: [...settled.numbers, ...numbers] },
      words: {
        fits: `Both ${arm === undefined ? "" : SYSTEM_WORDS[arm]}${moved}.`,
        fails: `The crank is for ${arm === undefined ? "another spindle" : SYSTEM_WORDS[arm]}, the spindle is ${spindle === undefined ? "another" : SYSTEM_WORDS[spindle]}.`,
      },
      remedies: failed ? [offerRemedy(BB_REMEDIES.other_spindle, view, { values: { system: SYSTEM_WORDS[arm] } })] : [],
      sources: ["fit-taper-practice"],
      cautions,
    });
  },
};
