/** How does a safety rule that fires stand in print? */

import { aboutWords, type Reckoning, type RuleGroup, ruleGroups, ruleSentence } from "@coldset/core/questions";
import type { FiredRule } from "@coldset/core/safety";
import { say } from "@coldset/core/texts";
import type { CautionsBlock } from "../book/index.js";
import { sentence } from "./words.js";

export function ruleCautions(r: Reckoning, rules: readonly FiredRule[]): readonly CautionsBlock[] {
  if (rules.length === 0) return [];
  return [{ kind: "cautions", items: ruleGroups(rules).map((g) => ({ first: `${headOf(r, g)}.`, text: textOf(g) })) }];
}

function headOf(r: Reckoning, g: RuleGroup): string {
  const open = g.fired[0]?.open === true;
  const level = {
    refuse: "Refused",
    gate: open ? say("drawing.rule-cautions.gate-shut") : say("drawing.rule-cautions.gate-evidence-entered"),
    flag: "Flag",
  }[g.level];
  return say("drawing.rule-cautions.on", {
    level,
    rule: g.rule,
    fired: g.fired.map((f) => aboutWords(r, f.about)).join("; "),
  });
}

function textOf(g: RuleGroup): string {
  const f = g.fired[0];
  if (f === undefined) return "";
  const here = [...new Set(g.fired.map(ruleSentence))].join(" ");
  const evidence =
    f.level !== "gate"
      ? ""
      : f.evidence === undefined
        ? f.evidenceNeeded === undefined
          ? ""
          : say("drawing.rule-cautions.evidence-asked-for", { evidenceNeeded: sentence(f.evidenceNeeded) })
        : say("drawing.rule-cautions.entered-by-on", { by: f.evidence.by, on: f.evidence.on, what: f.evidence.what });
  return say("drawing.rule-cautions.instead", { here, why: f.why, insteadDo: f.insteadDo, evidence });
}
