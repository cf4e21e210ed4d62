/** What is this interface's value, once the remedies reckoned with are done? The changed value wins over the entered one. */
import { type Span, span } from "./span.js";
import { TOOLS, type ToolName } from "./tool-accuracy.js";
import type { FitView } from "./view.js";

/** The number, or undefined where it is not known. */
export function portValue(view: FitView, path: string, entered: number | undefined): number | undefined {
  return view.ports[path] ?? entered;
}

/** The number with the half-width of the tool it is usually taken with. */
export function portSpan(view: FitView, path: string, entered: number | undefined, tool: ToolName): Span {
  return span(portValue(view, path, entered), TOOLS[tool].half);
}
