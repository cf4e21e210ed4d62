/**
 * J8: is the stack of spacers under the stem low enough, and do the spacers go on this steerer?
 * 30 wanted, 40 at most (S12). The steerer ends 3 below the top of the stem (judged in J3). Carbon: expander, no star nut.
 * Sources: fit-clamp-practice.
 */
import { COCKPIT_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import type { Caution } from "../../quantity/index.js";
import { closeJoint } from "../close-joint.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portValue } from "../port.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { TOOLS } from "../tool-accuracy.js";
import { type FitView, partAt } from "../view.js";
import { MOST_SPACERS_MM } from "./steerer-room.js";

const head = { id: "J8", title: "spacers, star nut or expander", between: ["spacers", "fork", "stem"] } as const;

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
      return notChecked(head, "A quill stem is raised in the steerer; no spacers carry it.");
    const stack = portValue(view, "cockpit.spacers_below", view.spacersBelowMm ?? view.resolved.build.spacers_below);
    const measure = { what: "Choose the height of spacers under the stem", at: "build.spacers_below" } as const;
    const checks: Check[] = [
      {
        name: "spacers under the stem",
        unit: "mm",
        value: span(stack),
        limit: { low: 0, high: MOST_SPACERS_MM, kind: "hard", words: `${MOST_SPACERS_MM} at most` },
        wanted: { high: WANTED_SPACERS_MM, words: `${WANTED_SPACERS_MM} or less` },
        measure,
      },
    ];
    const spacers = partAt(view, "spacers", "spacers");
    if (spacers !== undefined && (stack ?? 0) > 0) {
      checks.push({
        name: "spacer bore minus steerer",
        unit: "mm",
        value: minus(
          span(spacers.ports.steerer_od, TOOLS.calliper.half),
          span(fork.ports.steerer_od, TOOLS.calliper.half),
        ),
        limit: { low: -0.15, high: 0.15, kind: "hard", words: "equal by name" },
        measure: {
          what: "Measure the steerer and the spacers' bore",
          at: `bin.parts.${spacers.id}.ports.steerer_od`,
          tool: "calliper",
        },
      });
      const height = spacersAtHand(view, spacers.id, spacers.ports.height);
      checks.push({
        name: "spacers at hand minus stack",
        unit: "mm",
        value: minus(span(height), span(stack)),
        limit: { low: 0, kind: "wanted", words: "as many as the stack is high" },
        measure: {
          what: "Measure the height of one spacer",
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
        message: "Carbon steerer: an expander plug, never a star nut.",
      });
    if (spacers === undefined && (stack ?? 0) > 0)
      cautions.push({
        code: "no-spacers-chosen",
        at: "build.chosen.spacers",
        message: `${plain(stack ?? 0)} mm of spacers are reckoned with, but none are chosen.`,
      });
    const settled = settle(checks);
    const tooHigh = settled.failed.some((check) => check.name === "spacers under the stem");
    return closeJoint(head, {
      settled,
      words: {
        fits: `${plain(stack ?? 0)} mm of spacers under the stem, ${MOST_SPACERS_MM} at most.`,
        fails: tooHigh
          ? `${plain(stack ?? 0)} mm of spacers under the stem: ${MOST_SPACERS_MM} at most.`
          : "These spacers are made for another steerer.",
      },
      remedies: tooHigh
        ? [offerRemedy(COCKPIT_REMEDIES.lower_stack, view, { values: { limit: MOST_SPACERS_MM } })]
        : [],
      rules: tooHigh
        ? [{ rule: "S12", level: "refuse", why: "more than 40 mm of spacers under the stem", place: "spacers" }]
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
