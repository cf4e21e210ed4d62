/** How does the store say no? */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { StoreRefused } from "./workshop.js";

export const refusedAs = (...refusals: readonly Refusal[]): StoreRefused => ({ kind: "refused", refusals });

export function notFound(kind: string, id: string): Refusal {
  const name = `${kind} ${id}`.slice(0, 80);
  return {
    code: "not-found",
    at: name,
    given: name,
    allowed: say("store.refused-as.a-document-of-this-workshop"),
    message: say("store.refused-as.there-is-no-in-this-workshop", { name }),
  };
}
