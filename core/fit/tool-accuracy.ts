/**
 * How well does the usual tool of a workshop read this? Half-widths at 95 % in mm or degrees.
 * Common practice, no source; the values are those the papers ask for beside each measurement.
 */
import { say } from "../texts/say.js";

export interface Tool {
  readonly name: string;
  readonly half: number;
  readonly accuracy: string;
}

export const TOOLS = {
  micrometer: { name: say("fit.tool-accuracy.inside-and-outside-micrometer"), half: 0.01, accuracy: "± 0.01 mm" },
  calliper: { name: "calliper", half: 0.05, accuracy: "± 0.05 mm" },
  long_calliper: { name: say("fit.tool-accuracy.long-calliper-or-rod-and-calliper"), half: 0.2, accuracy: "± 0.2 mm" },
  rule: { name: "steel rule", half: 0.5, accuracy: "± 0.5 mm" },
  tape: { name: "tape", half: 1, accuracy: "± 1 mm" },
  eye: { name: say("fit.tool-accuracy.eye-and-light"), half: 0, accuracy: say("fit.tool-accuracy.yes-or-no") },
} as const satisfies Record<string, Tool>;
export type ToolName = keyof typeof TOOLS;
