/** How does a safety rule that fires stand in print? */
import type { FiredRule } from "@coldset/core/safety";
import type { CautionsBlock } from "../book/index.js";

export function ruleCautions(rules: readonly FiredRule[]): readonly CautionsBlock[] {
  if (rules.length === 0) return [];
  return [{ kind: "cautions", items: rules.map((f) => ({ first: `${headOf(f)}.`, text: textOf(f) })) }];
}

function headOf(f: FiredRule): string {
  const level = { refuse: "Refused", gate: f.open ? "Gate, shut" : "Gate, evidence entered", flag: "Flag" }[f.level];
  return `${level} (${f.rule}) on ${f.about}`;
}

function textOf(f: FiredRule): string {
  const here = /[.!?]$/.test(f.here) ? f.here : `${f.here}.`;
  const evidence =
    f.level !== "gate"
      ? ""
      : f.evidence === undefined
        ? f.evidenceNeeded === undefined
          ? ""
          : ` Evidence asked for: ${f.evidenceNeeded}.`
        : ` Entered by ${f.evidence.by} on ${f.evidence.on}: ${f.evidence.what}`;
  return `${here.charAt(0).toUpperCase()}${here.slice(1)} ${f.why} Instead: ${f.insteadDo}${evidence}`;
}
