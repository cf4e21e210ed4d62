/** What was answered about this build, as long as its documents stand as they do? Whoever asks while it is being made shares it. */

import type { DocumentOfBuild } from "./documents-of-build.js";

/** So many builds are remembered; one that was not asked for the longest time goes first. */
const MOST_KEPT = 64;

export type KeptText = (
  buildId: string,
  documents: readonly Pick<DocumentOfBuild, "kind" | "id" | "revision">[],
  make: () => string | Promise<string>,
) => Promise<string>;

/** How a build stands: each of its documents with its revision. */
export const stateOf = (documents: Parameters<KeptText>[1]) =>
  documents.map((d) => `${d.kind} ${d.id} ${d.revision}`).join("\n");

/** The answer is made once for each state; between edits many ask for the same one. One that could not be made is not kept. */
export function keptText(): KeptText {
  const kept = new Map<string, { readonly state: string; readonly text: Promise<string> }>();
  return (buildId, documents, make) => {
    const state = stateOf(documents);
    const hit = kept.get(buildId);
    const now = hit?.state === state ? hit : { state, text: made(make) };
    kept.delete(buildId);
    kept.set(buildId, now);
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    if (now !== hit)
      now.text.catch(() => {
        if (kept.get(buildId) === now) kept.delete(buildId);
      });
    return now.text;
  };
}

async function made(make: () => string | Promise<string>): Promise<string> {
  return make();
}
