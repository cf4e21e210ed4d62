/**
 * What does the check of a build say, and where does the build stand? Reckoned in the thread that asks, with one memory
 * for both: the same documents are reckoned once, changed ones upon what was reckoned before.
 */
import { type BuildStanding, type Reckoning, reckonUpon, standingOfBuild } from "@coldset/core/questions";
import { type AnyDoc, resolveBuild } from "@coldset/core/workshop";

export interface ReckonsHere {
  /** JSON text: what `checkOf` makes of it, or why the documents do not make a build. */
  readonly check: (docs: readonly AnyDoc[], buildId: string) => string;
  /** null where the documents do not make a build. */
  readonly standing: (docs: readonly AnyDoc[], buildId: string) => BuildStanding | null;
}

/** As many as `reckonUpon` remembers: each holds on to the same documents. */
const MOST_KNOWN = 32;

type Answer = Reckoning | Extract<ReturnType<typeof resolveBuild>, { readonly kind: "refused" }>;
const isRefused = (answer: Answer) => "kind" in answer;

export function reckonHere(checkOf: (reckoning: Reckoning) => unknown): ReckonsHere {
  const reckoned = reckonUpon();
  const known = new Map<string, { readonly docs: readonly AnyDoc[]; readonly answer: Answer }>();
  const make = (docs: readonly AnyDoc[], buildId: string): Answer => {
    const found = resolveBuild(docs, buildId);
    return found.kind === "refused" ? found : reckoned(found.resolved);
  };
  const answerOf = (docs: readonly AnyDoc[], buildId: string): Answer => {
    const hit = known.get(buildId);
    // A document is never changed in place, so the same one says the same.
    const same = hit !== undefined && hit.docs.length === docs.length && hit.docs.every((d, i) => d === docs[i]);
    const answer = same ? hit.answer : make(docs, buildId);
    known.delete(buildId);
    known.set(buildId, { docs, answer });
    const [oldest] = known.keys();
    if (known.size > MOST_KNOWN && oldest !== undefined) known.delete(oldest);
    return answer;
  };
  return {
    check: (docs, buildId) => {
      const answer = answerOf(docs, buildId);
      return JSON.stringify(isRefused(answer) ? answer : checkOf(answer));
    },
    standing: (docs, buildId) => {
      const answer = answerOf(docs, buildId);
      return isRefused(answer) ? null : standingOfBuild(answer);
    },
  };
}
