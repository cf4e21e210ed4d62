/**
 * J29: do hydraulic lever, hose and caliper belong to one family?
 * One fluid in all (S9 refuses a mix), one hose fitting. Another fitting of the same fluid is made up with barbs and olives.
 * That piston sizes suit each other is read on the sheets. Source: fit-fluid-family.
 */

import { LEVER_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, settle } from "../settle.js";
import { partAt } from "../view.js";
import { actsBy, caliperSets } from "./calipers.js";
import { endsTogether } from "./ends-together.js";
import { sameWord } from "./same-word.js";

const head = {
  id: "J29",
  title: say("fit-drive.j29-lever-and-hydraulic-caliper.hydraulic-lever-caliper"),
  between: ["lever", "caliper", "caliper_front", "caliper_rear", "hose"],
} as const;

export const j29LeverAndHydraulicCaliper: JointDefinition = {
  ...head,
  attributes: [
    "lever.ports.acts",
    "lever.ports.fluid",
    "lever.ports.fitting",
    "caliper.ports.acts",
    "caliper.ports.fluid",
    "caliper.ports.fitting",
    "hose.ports.fluid",
    "hose.ports.fitting",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const lever = partAt(view, "lever", "lever_pair");
    if (lever === undefined) return notChosen(head, "lever");
    if (actsBy(lever.ports) === "cable")
      return notChecked(head, say("fit-drive.j29-lever-and-hydraulic-caliper.the-levers-work-by-cable-j28"));
    const sets = caliperSets(view);
    if (sets.length === 0) return notChosen(head, "caliper");
    const { fluid, fitting } = lever.ports;
    const acts = actsBy(lever.ports);
    const leverAt = `bin.parts.${lever.id}.ports`;
    const lookActs = {
      what: say("fit-drive.j28-lever-and-cable-caliper.look-whether-the-levers-work-by"),
      at: `${leverAt}.acts`,
      tool: "eye",
    } as const;
    const lookFluid = {
      what: say("fit-drive.j29-lever-and-hydraulic-caliper.read-the-fluid-on-the-lever"),
      at: `${leverAt}.fluid`,
      tool: "eye",
    } as const;
    const lookFitting = {
      what: say("fit-drive.j29-lever-and-hydraulic-caliper.look-which-hose-fitting-the-levers"),
      at: `${leverAt}.fitting`,
      tool: "eye",
    } as const;
    const checks: Check[] = [];
    const groups: (readonly RemedyOffer[])[] = [];
    const rules: JointAnswer["rules"][number][] = [];
    const cautions: Caution[] = [];
    let fails: string | undefined;
    for (const { part, place, where } of sets) {
      const at = `bin.parts.${part.id}.ports`;
      const end = where === "both" ? "" : `${where} `;
      checks.push(
        sameWord({
          name: say("fit-drive.j29-lever-and-hydraulic-caliper.lever-and-caliper-both-by-fluid", { end }),
          a: acts,
          b: actsBy(part.ports),
          words: say("fit-drive.j29-lever-and-hydraulic-caliper.both-by-fluid"),
          measureA: lookActs,
          measureB: {
            what: say("fit-drive.j28-lever-and-cable-caliper.look-whether-the-caliper-works-by", { end }),
            at: `${at}.acts`,
            tool: "eye",
          },
        }),
      );
      if (actsBy(part.ports) === "cable") {
        fails ??= say("fit-drive.j29-lever-and-hydraulic-caliper.a-hydraulic-lever-cannot-work-the", {
          end,
          part: part.id,
        });
        groups.push([offerRemedy(LEVER_REMEDIES.matched_set, view)]);
        continue;
      }
      checks.push(
        sameWord({
          name: say("fit-drive.j29-lever-and-hydraulic-caliper.caliper-fluid-as-the-lever-s", { end }),
          a: fluid,
          b: part.ports.fluid,
          words: say("fit-drive.j29-lever-and-hydraulic-caliper.one-fluid"),
          measureA: lookFluid,
          measureB: {
            what: say("fit-drive.j29-lever-and-hydraulic-caliper.read-the-caliper-s-fluid-on", { end }),
            at: `${at}.fluid`,
            tool: "eye",
          },
        }),
        sameWord({
          name: say("fit-drive.j29-lever-and-hydraulic-caliper.caliper-fitting-as-the-lever-s", { end }),
          a: fitting,
          b: part.ports.fitting,
          words: say("fit-drive.j29-lever-and-hydraulic-caliper.one-fitting"),
          measureA: lookFitting,
          measureB: {
            what: say("fit-drive.j29-lever-and-hydraulic-caliper.look-which-hose-fitting-the-caliper", { end }),
            at: `${at}.fitting`,
            tool: "eye",
          },
          suits: sameText,
        }),
      );
      const values = {
        end: where === "both" ? say("fit-drive.j29-lever-and-hydraulic-caliper.front-and-rear") : where,
        fluid: fluid ?? "the lever's",
      };
      if (fluid !== undefined && part.ports.fluid !== undefined && fluid !== part.ports.fluid) {
        const why = say("fit-drive.j29-lever-and-hydraulic-caliper.the-levers-are-for-the-caliper", {
          lever: lever.id,
          leverFluid: fluid,
          end,
          part: part.id,
          caliperFluid: part.ports.fluid,
        });
        fails ??= why;
        rules.push({ rule: "S9", level: "refuse", why, place, part: part.id });
        groups.push([
          offerRemedy(LEVER_REMEDIES.one_family, view, { values }),
          offerRemedy(LEVER_REMEDIES.mix_fluids, view, { values }),
        ]);
      } else if (fitting !== undefined && part.ports.fitting !== undefined && !sameText(fitting, part.ports.fitting)) {
        fails ??= say("fit-drive.j29-lever-and-hydraulic-caliper.lever-fitting-caliper-fitting", {
          fitting,
          end,
          fitting2: part.ports.fitting,
        });
        groups.push([offerRemedy(LEVER_REMEDIES.hose_ends, view, { values })]);
        cautions.push({
          code: "piston-family-not-known",
          at: `${at}.fitting`,
          message: say("fit-drive.j29-lever-and-hydraulic-caliper.another-fitting-may-mean-other-pistons"),
        });
      }
    }
    const hose = partAt(view, "hose", "hose_kit");
    if (hose === undefined)
      cautions.push({
        code: "no-hose-chosen",
        at: "build.chosen.hose",
        message: say("fit-drive.j29-lever-and-hydraulic-caliper.no-hose-is-chosen-judge-the"),
      });
    else {
      const at = `bin.parts.${hose.id}.ports`;
      checks.push(
        sameWord({
          name: say("fit-drive.j29-lever-and-hydraulic-caliper.hose-fluid-as-the-lever-s"),
          a: fluid,
          b: hose.ports.fluid,
          words: say("fit-drive.j29-lever-and-hydraulic-caliper.one-fluid"),
          measureA: lookFluid,
          measureB: {
            what: say("fit-drive.j29-lever-and-hydraulic-caliper.read-the-fluid-that-the-hose"),
            at: `${at}.fluid`,
            tool: "eye",
          },
        }),
        sameWord({
          name: say("fit-drive.j29-lever-and-hydraulic-caliper.hose-fitting-as-the-lever-s"),
          a: fitting,
          b: hose.ports.fitting,
          words: say("fit-drive.j29-lever-and-hydraulic-caliper.one-fitting"),
          measureA: lookFitting,
          measureB: {
            what: say("fit-drive.j29-lever-and-hydraulic-caliper.look-which-fittings-come-with-the"),
            at: `${at}.fitting`,
            tool: "eye",
          },
          suits: sameText,
        }),
      );
      const values = { fluid: fluid ?? "the lever's", end: "new" };
      if (fluid !== undefined && hose.ports.fluid !== undefined && fluid !== hose.ports.fluid) {
        const why = say("fit-drive.j29-lever-and-hydraulic-caliper.the-hose-is-for-the-levers", {
          hose: hose.id,
          hoseFluid: hose.ports.fluid,
          leverFluid: fluid,
        });
        fails ??= why;
        rules.push({ rule: "S9", level: "refuse", why, place: "hose", part: hose.id });
        groups.push([offerRemedy(LEVER_REMEDIES.suited_hose, view, { values })]);
      } else if (fitting !== undefined && hose.ports.fitting !== undefined && !sameText(fitting, hose.ports.fitting)) {
        fails ??= say("fit-drive.j29-lever-and-hydraulic-caliper.the-hose-has-fitting-the-levers", {
          fitting: hose.ports.fitting,
          fitting2: fitting,
        });
        groups.push([
          offerRemedy(LEVER_REMEDIES.suited_hose, view, { values }),
          offerRemedy(LEVER_REMEDIES.hose_ends, view, { values }),
        ]);
      }
    }
    return closeJoint(head, {
      settled: settle(checks),
      words: {
        fits: say("fit-drive.j29-lever-and-hydraulic-caliper.lever-and-caliper-fluid-fitting", {
          hose: hose === undefined ? "" : "hose ",
          fluid: fluid ?? "",
          fitting: fitting ?? "",
        }),
        fails: fails ?? "",
      },
      remedies: endsTogether(groups),
      rules,
      sources: ["fit-fluid-family"],
      cautions,
    });
  },
};

function sameText(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}
