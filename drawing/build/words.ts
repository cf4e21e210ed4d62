/** How are sentences and steps set, wherever they come from? */
import type { NextStep } from "@coldset/core/quantity";

/** With a capital in front and one stop behind. */
export function sentence(text: string): string {
  const capital = `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
  return capital === "" || /[.!?]$/.test(capital) ? capital : `${capital}.`;
}

/** "Measure the chainstay, with long calliper, to ± 0.3 mm" */
export function stepWords(step: NextStep): string {
  return [
    step.what,
    ...(step.tool === undefined ? [] : [`with ${step.tool}`]),
    ...(step.accuracy === undefined ? [] : [`to ${step.accuracy}`]),
  ].join(", ");
}
