/**
 * Which safety rules fire on this build, on which part or work, and which of them stand open?
 * Inputs: the resolved build, the joints' own findings on chosen parts, and on candidates shown beside them.
 * Answer: each rule once per thing it is about; refusals first, then gates, then flags. A gate is closed by evidence
 *   that a person typed for it (evidence.gate = the rule's id, or the operation's id), never by anything reckoned.
 */

import type { SafetyLevel } from "../quantity/index.js";
import { say } from "../texts/say.js";
import type { ResolvedBuild } from "../workshop/index.js";
import { childSeatFindings } from "./child-seat.js";
import type { FiredRule } from "./fired-rule.js";
import { ruleById } from "./rule-by-id.js";
import { workOnTube } from "./work-on-tube.js";

export interface RuleFinding {
  readonly rule: string;
  readonly level: SafetyLevel;
  readonly here: string;
  readonly about: string;
  readonly onChosen: boolean;
}

const RANK: Readonly<Record<SafetyLevel, number>> = { refuse: 0, gate: 1, flag: 2 };

export function fireRules(build: ResolvedBuild, findings: readonly RuleFinding[]): readonly FiredRule[] {
  const all: RuleFinding[] = [
    ...findings,
    ...frameFindings(build),
    ...childSeatFindings(build),
    ...workFindings(build),
  ];
  const evidence = build.build.evidence ?? [];
  const seen = new Set<string>();
  const fired: FiredRule[] = [];
  for (const f of all) {
    const key = `${f.rule} ${f.level} ${f.about} ${f.onChosen}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const rule = ruleById(f.rule);
    const shown = f.level === "gate" ? evidence.find((e) => e.gate === f.rule || e.gate === f.about) : undefined;
    fired.push({
      rule: f.rule,
      level: f.level,
      situation: rule.situation,
      why: rule.why,
      insteadDo: rule.insteadDo,
      here: f.here,
      onChosen: f.onChosen,
      about: f.about,
      ...(rule.evidence === undefined ? {} : { evidenceNeeded: rule.evidence }),
      ...(shown === undefined ? {} : { evidence: { by: shown.by, on: shown.on, what: shown.what } }),
      open: !(f.level === "gate" && shown !== undefined),
    });
  }
  return fired.sort(
    (a, b) => Number(b.onChosen) - Number(a.onChosen) || RANK[a.level] - RANK[b.level] || order(a) - order(b),
  );
}

const order = (f: FiredRule) => Number(f.rule.slice(1));

function frameFindings(build: ResolvedBuild): RuleFinding[] {
  const { condition } = build.donor;
  const out: RuleFinding[] = [];
  if (condition.cracks === "found")
    out.push({
      rule: "S7",
      level: "refuse",
      here: say("safety.fire-rules.a-crack-was-found-in-the"),
      about: "frame",
      onChosen: true,
    });
  if (condition.cracks === "suspect")
    out.push({
      rule: "S7",
      level: "refuse",
      here: say("safety.fire-rules.a-crack-is-suspected-look-with"),
      about: "frame",
      onChosen: true,
    });
  return out;
}

function workFindings(build: ResolvedBuild): RuleFinding[] {
  const out: RuleFinding[] = [];
  for (const o of build.build.operations) {
    const needs = o.needs ?? [];
    const bends = o.irreversible === "bend" || needs.includes("cold_set");
    const heats = o.irreversible === "heat" || needs.includes("weld") || needs.includes("braze");
    if (bends) for (const r of workOnTube(build.donor.tube, "bend")) out.push({ ...r, about: o.id, onChosen: true });
    if (heats) for (const r of workOnTube(build.donor.tube, "heat")) out.push({ ...r, about: o.id, onChosen: true });
    if (o.irreversible === "drill") {
      out.push({
        rule: "S16",
        level: "flag",
        here: say("safety.fire-rules.drills-never-in-steerer-blade-bar", { operation: o.id, what: o.what }),
        about: o.id,
        onChosen: true,
      });
    }
  }
  return out;
}
