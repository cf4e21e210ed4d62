/** Which refusals stand on a part or work that the build has chosen? Nothing is planned or drawn while one does. */
import type { FiredRule } from "./fired-rule.js";

export function standingRefusals(rules: readonly FiredRule[]): readonly FiredRule[] {
  return rules.filter((f) => f.level === "refuse" && f.onChosen && f.open);
}
