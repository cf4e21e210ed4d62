/**
 * What does a safety rule speak of? "J23, tab – frame rear", "t12, hose guides and eyelet", "FC, fork". An id alone says nothing to a
 * builder. Where nothing of that id is known it stands as it is.
 */

import type { FiredRule } from "../safety/index.js";
import { say } from "../texts/say.js";
import type { Reckoning } from "./reckoning.js";

export function aboutWords(r: Reckoning, about: string): string {
  const joint = r.joints.joints.find((j) => j.id === about)?.title;
  const work = r.resolved.build.operations.find((o) => o.id === about)?.what;
  const parts = [
    ...Object.values(r.resolved.at),
    ...r.forks.map((f) => f.part),
    ...r.others.map((o) => o.part),
    ...r.resolved.also.map((a) => a.part),
  ];
  const part = parts.find((p) => p?.id === about)?.kind.replaceAll("_", " ");
  const words = joint ?? work ?? part;
  return words === undefined ? about : `${about}, ${words}`;
}

/** The rule's own sentence, beginning with a capital and ending with a stop; a task's id in front is said as a task. */
export function ruleSentence(f: FiredRule): string {
  const words = f.here.startsWith(`${f.about} (`)
    ? say("questions.about-words.task", { here: f.here })
    : `${f.here.charAt(0).toUpperCase()}${f.here.slice(1)}`;
  return /[.!?]$/.test(words) ? words : `${words}.`;
}

export interface RuleGroup {
  readonly rule: string;
  readonly level: FiredRule["level"];
  readonly why: string;
  readonly insteadDo: string;
  readonly fired: readonly FiredRule[];
}

/** Rules that say the same of several places stand together, in the order in which they first fire. */
export function ruleGroups(rules: readonly FiredRule[]): readonly RuleGroup[] {
  const groups = new Map<string, FiredRule[]>();
  for (const f of rules) {
    const key = JSON.stringify([f.rule, f.level, f.why, f.insteadDo, f.evidenceNeeded, f.evidence, f.open]);
    groups.set(key, [...(groups.get(key) ?? []), f]);
  }
  return [...groups.values()].flatMap((fired): RuleGroup[] => {
    const first = fired[0];
    return first === undefined
      ? []
      : [{ rule: first.rule, level: first.level, why: first.why, insteadDo: first.insteadDo, fired }];
  });
}
