/**
 * J29: do hydraulic lever, hose and caliper belong to one family?
 * One fluid in all (S9 refuses a mix), one hose fitting. Another fitting of the same fluid is made up with barbs and olives.
 * That piston sizes suit each other is read on the sheets. Source: fit-fluid-family.
 */
import { LEVER_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import type { Caution } from "../../quantity/index.js";
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
  title: "hydraulic lever – caliper",
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
    if (actsBy(lever.ports) === "cable") return notChecked(head, "The levers work by cable: J28 judges them.");
    const sets = caliperSets(view);
    if (sets.length === 0) return notChosen(head, "caliper");
    const { fluid, fitting } = lever.ports;
    const acts = actsBy(lever.ports);
    const leverAt = `bin.parts.${lever.id}.ports`;
    const lookActs = {
      what: "Look whether the levers work by cable or by fluid",
      at: `${leverAt}.acts`,
      tool: "eye",
    } as const;
    const lookFluid = {
      what: "Read the fluid on the lever's cap or sheet; never guess it",
      at: `${leverAt}.fluid`,
      tool: "eye",
    } as const;
    const lookFitting = {
      what: "Look which hose fitting the levers have",
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
          name: `${end}lever and caliper both by fluid`,
          a: acts,
          b: actsBy(part.ports),
          words: "both by fluid",
          measureA: lookActs,
          measureB: {
            what: `Look whether the ${end}caliper works by cable or by fluid`,
            at: `${at}.acts`,
            tool: "eye",
          },
        }),
      );
      if (actsBy(part.ports) === "cable") {
        fails ??= `A hydraulic lever cannot work the ${end}cable caliper ${part.id}.`;
        groups.push([offerRemedy(LEVER_REMEDIES.matched_set, view)]);
        continue;
      }
      checks.push(
        sameWord({
          name: `${end}caliper fluid as the lever's`,
          a: fluid,
          b: part.ports.fluid,
          words: "one fluid",
          measureA: lookFluid,
          measureB: {
            what: `Read the ${end}caliper's fluid on its body or sheet; never guess it`,
            at: `${at}.fluid`,
            tool: "eye",
          },
        }),
        sameWord({
          name: `${end}caliper fitting as the lever's`,
          a: fitting,
          b: part.ports.fitting,
          words: "one fitting",
          measureA: lookFitting,
          measureB: { what: `Look which hose fitting the ${end}caliper has`, at: `${at}.fitting`, tool: "eye" },
          suits: sameText,
        }),
      );
      const values = { end: where === "both" ? "front and rear" : where, fluid: fluid ?? "the lever's" };
      if (fluid !== undefined && part.ports.fluid !== undefined && fluid !== part.ports.fluid) {
        const why = `The levers ${lever.id} are for ${fluid}, the ${end}caliper ${part.id} for ${part.ports.fluid}: fluids are never mixed.`;
        fails ??= why;
        rules.push({ rule: "S9", level: "refuse", why, place, part: part.id });
        groups.push([
          offerRemedy(LEVER_REMEDIES.one_family, view, { values }),
          offerRemedy(LEVER_REMEDIES.mix_fluids, view, { values }),
        ]);
      } else if (fitting !== undefined && part.ports.fitting !== undefined && !sameText(fitting, part.ports.fitting)) {
        fails ??= `Lever fitting ${fitting}, ${end}caliper fitting ${part.ports.fitting}.`;
        groups.push([offerRemedy(LEVER_REMEDIES.hose_ends, view, { values })]);
        cautions.push({
          code: "piston-family-not-known",
          at: `${at}.fitting`,
          message: "Another fitting may mean other pistons: read both sheets before you buy ends.",
        });
      }
    }
    const hose = partAt(view, "hose", "hose_kit");
    if (hose === undefined)
      cautions.push({
        code: "no-hose-chosen",
        at: "build.chosen.hose",
        message: "No hose is chosen: judge the hoses that hang on the parts by fluid, fitting and length.",
      });
    else {
      const at = `bin.parts.${hose.id}.ports`;
      checks.push(
        sameWord({
          name: "hose fluid as the lever's",
          a: fluid,
          b: hose.ports.fluid,
          words: "one fluid",
          measureA: lookFluid,
          measureB: { what: "Read the fluid that the hose is for", at: `${at}.fluid`, tool: "eye" },
        }),
        sameWord({
          name: "hose fitting as the lever's",
          a: fitting,
          b: hose.ports.fitting,
          words: "one fitting",
          measureA: lookFitting,
          measureB: { what: "Look which fittings come with the hose", at: `${at}.fitting`, tool: "eye" },
          suits: sameText,
        }),
      );
      const values = { fluid: fluid ?? "the lever's", end: "new" };
      if (fluid !== undefined && hose.ports.fluid !== undefined && fluid !== hose.ports.fluid) {
        const why = `The hose ${hose.id} is for ${hose.ports.fluid}, the levers are for ${fluid}: fluids are never mixed.`;
        fails ??= why;
        rules.push({ rule: "S9", level: "refuse", why, place: "hose", part: hose.id });
        groups.push([offerRemedy(LEVER_REMEDIES.suited_hose, view, { values })]);
      } else if (fitting !== undefined && hose.ports.fitting !== undefined && !sameText(fitting, hose.ports.fitting)) {
        fails ??= `The hose has fitting ${hose.ports.fitting}, the levers ${fitting}.`;
        groups.push([
          offerRemedy(LEVER_REMEDIES.suited_hose, view, { values }),
          offerRemedy(LEVER_REMEDIES.hose_ends, view, { values }),
        ]);
      }
    }
    return closeJoint(head, {
      settled: settle(checks),
      words: {
        fits: `Lever, ${hose === undefined ? "" : "hose "}and caliper: ${fluid ?? ""} fluid, fitting ${fitting ?? ""}.`,
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
