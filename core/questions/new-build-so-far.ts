/** What is known while a new build is being entered? The same reckoning as that of the board, from the entries so far. */
import { say } from "../texts/say.js";
import {
  loadText,
  NEW_BUILD_ENTRIES,
  type NewBuildEntries,
  newBuild,
  readEntry,
  resolveBuild,
  SIDE_VIEW_KEYS,
} from "../workshop/index.js";
import { reckon } from "./reckon.js";
import type { Reckoning } from "./reckoning.js";

export interface NewBuildSoFar {
  readonly entered: number;
  /** Of the twelve readings that close the side view. */
  readonly sideView: { readonly have: number; readonly of: number };
  readonly reckoning?: Reckoning;
}

/** Until a name is given. */
const NAMELESS = say("questions.new-build-so-far.new-build");

export function newBuildSoFar(entries: NewBuildEntries): NewBuildSoFar {
  // What cannot be read is shown where it is typed; here it counts as not entered.
  const good = Object.fromEntries(
    NEW_BUILD_ENTRIES.flatMap((e) => (readEntry(e, entries).kind === "read" ? [[e.key, entries[e.key] ?? ""]] : [])),
  );
  const counts = {
    entered: Object.keys(good).length,
    sideView: { have: SIDE_VIEW_KEYS.filter((key) => good[key] !== undefined).length, of: SIDE_VIEW_KEYS.length },
  };
  const made = newBuild({ entries: { ...good, name: NAMELESS } });
  if (made.kind === "refused") return counts;
  const loaded = loadText(made.text, say("questions.new-build-so-far.new-build-2"));
  if (loaded.kind === "refused") throw new Error(loaded.refusals[0]?.message ?? "a new build cannot be read");
  const resolved = resolveBuild(loaded.docs.map((d) => d.doc));
  if (resolved.kind === "refused")
    throw new Error(resolved.refusals[0]?.message ?? "a new build does not hang together");
  return { ...counts, reckoning: reckon(resolved.resolved) };
}
