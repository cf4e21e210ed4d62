/** What do these documents answer, read together as this build? */

import { type Reckoning, reckon } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { resolveBuild } from "@coldset/core/workshop";
import type { OpenDoc } from "./laid.js";

export function reckonDocs(
  docs: readonly OpenDoc[],
  buildId: string,
  before?: Reckoning,
): { readonly reckoning?: Reckoning; readonly problems?: readonly string[] } {
  try {
    const resolved = resolveBuild(
      docs.map((d) => d.doc),
      buildId,
    );
    if (resolved.kind === "refused") return { problems: resolved.refusals.map((r) => r.message) };
    return { reckoning: reckon(resolved.resolved, before) };
  } catch (cause) {
    // A fault of ours must not cost anybody what they typed: it is shown beside the text, which stays.
    const word = cause instanceof Error ? cause.message : String(cause);
    return { problems: [say("web.reckon-docs.a-fault-of-ours-not-of", { word })] };
  }
}
