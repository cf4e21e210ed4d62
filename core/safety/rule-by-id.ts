/** Which rule is this? An unknown id is our fault, not the builder's. */
import { SAFETY_RULES, type SafetyRule } from "../data/safety-rules.js";

const BY_ID = new Map(SAFETY_RULES.map((r) => [r.id as string, r]));

export function ruleById(id: string): SafetyRule {
  const rule = BY_ID.get(id);
  if (rule === undefined) throw new Error(`no safety rule ${id}`);
  return rule;
}
