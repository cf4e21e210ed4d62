/**
 * Which safety rules fire on this build, on which part or work, and which of them stand open?
 * Inputs: the resolved build, the joints' own findings on chosen parts, and on candidates shown beside them.
 * Answer: each rule once per thing it is about; refusals first, then gates, then flags. A gate is closed by evidence
 *   that a person typed for it (evidence.gate = the rule's id, or the operation's id), never by anything reckoned.
 */
import type { SafetyLevel } from "../quantity/index.js";
import type { ResolvedBuild } from "../workshop/index.js";
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
  const all: RuleFinding[] = [...findings, ...frameFindings(build), ...workFindings(build)];
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
  const { condition, tube } = build.donor;
  const out: RuleFinding[] = [];
  if (condition.cracks === "found")
    out.push({ rule: "S7", level: "refuse", here: "A crack was found in the frame.", about: "frame", onChosen: true });
  if (condition.cracks === "suspect")
    out.push({
      rule: "S7",
      level: "refuse",
      here: "A crack is suspected; look with dye before anything else is spent.",
      about: "frame",
      onChosen: true,
    });
  if (build.intent.carries_child === true) {
    const barred = ["aluminium", "carbon", "heat_treated", "air_hardening", "unknown"].includes(tube.class);
    out.push({
      rule: "S13",
      level: barred ? "refuse" : "flag",
      here: barred
        ? `A child is to be carried on a frame of ${tube.class.replaceAll("_", " ")}.`
        : "A child is to be carried: only parts rated for it, by their own sheets and the local law.",
      about: "child seat",
      onChosen: true,
    });
  }
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
        here: `${o.id} (${o.what}) drills: never in steerer, blade, bar, stem or post, no hole over 9, none within 30 of a joint.`,
        about: o.id,
        onChosen: true,
      });
    }
  }
  return out;
}
