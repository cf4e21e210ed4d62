/** How are sentences and steps set, wherever they come from? */

import type { NextStep } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";

/** With a capital in front and one stop behind. */
export function sentence(text: string): string {
  // An id ("t07") stays as it is written.
  const capital = /^[a-z]+\d/.test(text) ? text : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
  return capital === "" || /[.!?]$/.test(capital) ? capital : `${capital}.`;
}

/** "Measure the chainstay, with long calliper, to ± 0.3 mm" */
export function stepWords(step: NextStep): string {
  return [
    step.what,
    ...(step.tool === undefined ? [] : [say("drawing.words.with", { tool: step.tool })]),
    ...(step.accuracy === undefined ? [] : [say("drawing.words.to", { accuracy: step.accuracy })]),
  ].join(", ");
}
