/**
 * How is a build reckoned again and again as it changes? Each time upon the state before, which gives the same and takes
 * less. The newest `MOST_KNOWN` builds are remembered; one that was forgotten is reckoned anew.
 */
import type { ResolvedBuild } from "../workshop/index.js";
import { reckon } from "./reckon.js";
import type { Reckoning } from "./reckoning.js";

const MOST_KNOWN = 32;

/** Gives a function that answers as `reckon` does, and remembers what it answered. */
export function reckonUpon(): (resolved: ResolvedBuild) => Reckoning {
  const known = new Map<string, Reckoning>();
  return (resolved) => {
    const { id } = resolved.build;
    const now = reckon(resolved, known.get(id));
    known.delete(id);
    known.set(id, now);
    const [oldest] = known.keys();
    if (known.size > MOST_KNOWN && oldest !== undefined) known.delete(oldest);
    return now;
  };
}
