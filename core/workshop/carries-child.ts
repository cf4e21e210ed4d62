/** Is a child carried on this bicycle? The intent says so, or a child seat among the chosen parts does. */
import type { Part } from "./part.js";
import type { IntentDoc } from "./people.js";
import type { Place } from "./words.js";

export function carriesChild(intent: IntentDoc, at: Readonly<Partial<Record<Place, Part>>>): boolean {
  return intent.carries_child === true || at.child_seat !== undefined;
}
