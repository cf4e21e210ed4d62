/**
 * J28: does a cable lever pull as much as the caliper wants?
 * About 7 (short pull) or 14 (long pull); lever and caliper within 2 of each other (M21). Mixed means no brake or a locked
 * wheel: S10 refuses it unless the build names the pulley that changes the pull. Source: fit-m21-pull.
 */

import { LEVER_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { capital } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { TOOLS } from "../tool-accuracy.js";
import { partAt } from "../view.js";
import { actsBy, type CaliperSet, caliperSets } from "./calipers.js";
import { endsTogether } from "./ends-together.js";
import { sameWord } from "./same-word.js";

const head = {
  id: "J28",
  title: say("fit-drive.j28-lever-and-cable-caliper.lever-caliper-cable"),
  between: ["lever", "caliper", "caliper_front", "caliper_rear"],
} as const;

export const PULL_WITHIN_MM = 2;

export const j28LeverAndCableCaliper: JointDefinition = {
  ...head,
  attributes: ["lever.ports.acts", "lever.ports.pull", "caliper.ports.acts", "caliper.ports.pull"],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const lever = partAt(view, "lever", "lever_pair");
    if (lever === undefined) return notChosen(head, "lever");
    if (actsBy(lever.ports) === "hydraulic")
      return notChecked(head, say("fit-drive.j28-lever-and-cable-caliper.the-levers-are-hydraulic-j29-judges"));
    const sets = caliperSets(view);
    if (sets.length === 0) return notChosen(head, "caliper");
    const leverAt = `bin.parts.${lever.id}.ports`;
    const pull = lever.ports.pull;
    const named =
      view.resolved.build.remedies?.some(
        (taken) => taken.joint === "J28" && taken.remedy === LEVER_REMEDIES.pull_pulley.id,
      ) === true;
    const checks: Check[] = [];
    const groups: (readonly RemedyOffer[])[] = [];
    const rules: JointAnswer["rules"][number][] = [];
    const words: string[] = [];
    let fails: string | undefined;
    for (const { part, place, where } of sets) {
      const at = `bin.parts.${part.id}.ports`;
      const end = where === "both" ? "" : `${where} `;
      checks.push(
        sameWord({
          name: say("fit-drive.j28-lever-and-cable-caliper.lever-and-caliper-both-by-cable", { end }),
          a: actsBy(lever.ports),
          b: actsBy(part.ports),
          words: say("fit-drive.j28-lever-and-cable-caliper.both-by-cable"),
          measureA: {
            what: say("fit-drive.j28-lever-and-cable-caliper.look-whether-the-levers-work-by"),
            at: `${leverAt}.acts`,
            tool: "eye",
          },
          measureB: {
            what: say("fit-drive.j28-lever-and-cable-caliper.look-whether-the-caliper-works-by", { end }),
            at: `${at}.acts`,
            tool: "eye",
          },
        }),
      );
      if (actsBy(part.ports) === "hydraulic") {
        fails ??= say("fit-drive.j28-lever-and-cable-caliper.a-cable-lever-cannot-work-the", { end, part: part.id });
        groups.push([offerRemedy(LEVER_REMEDIES.matched_set, view)]);
        continue;
      }
      const half = TOOLS.rule.half;
      checks.push({
        name: say("fit-drive.j28-lever-and-cable-caliper.lever-pull-minus-caliper-pull", { end }),
        unit: "mm",
        value: minus(span(pull, half), span(part.ports.pull, half)),
        limit: {
          low: -PULL_WITHIN_MM,
          high: PULL_WITHIN_MM,
          kind: "hard",
          words: say("fit-drive.j28-lever-and-cable-caliper.within-2-both-short-7-or"),
        },
        measure:
          pull === undefined
            ? {
                what: say("fit-drive.j28-lever-and-cable-caliper.measure-how-much-cable-the-lever"),
                at: `${leverAt}.pull`,
                tool: "rule",
              }
            : {
                what: say("fit-drive.j28-lever-and-cable-caliper.read-or-measure-the-pull-that", { end }),
                at: `${at}.pull`,
                tool: "rule",
              },
      });
      words.push(
        say("fit-drive.j28-lever-and-cable-caliper.lever-pulls-the-caliper-wants", {
          end,
          leverPull: plain(pull ?? 0),
          caliperPull: plain(part.ports.pull ?? 0),
        }),
      );
      if (mixed(pull, part)) {
        const values = { lever: pull ?? 0, caliper: part.ports.pull ?? 0 };
        const why = say("fit-drive.j28-lever-and-cable-caliper.pull-on-a-caliper-for", {
          end: capital(end),
          leverWord: end === "" ? "Lever" : "lever",
          lever: plain(values.lever),
          caliper: plain(values.caliper),
        });
        fails ??= why;
        groups.push([
          offerRemedy(LEVER_REMEDIES.pull_pulley, view, {
            values,
            ...(named ? {} : { refused: say("fit-drive.j28-lever-and-cable-caliper.a-mixed-pair-is-refused-as") }),
          }),
          offerRemedy(LEVER_REMEDIES.suited_lever, view, { values }),
        ]);
        rules.push({ rule: "S10", level: named ? "flag" : "refuse", why, place, part: part.id });
      }
    }
    return closeJoint(head, {
      settled: settle(checks),
      words: { fits: `${capital(words.join("; "))}.`, fails: fails ?? "" },
      remedies: endsTogether(groups),
      rules,
      sources: ["fit-m21-pull"],
    });
  },
};

function mixed(pull: number | undefined, part: CaliperSet["part"]): boolean {
  const wanted = part.ports.pull;
  return pull !== undefined && wanted !== undefined && Math.abs(pull - wanted) > PULL_WITHIN_MM + 2 * TOOLS.rule.half;
}
