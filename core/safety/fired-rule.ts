/** What does a rule that fires say? */
import type { SafetyLevel } from "../quantity/index.js";

export interface FiredRule {
  /** S1 … S18 */
  readonly rule: string;
  readonly level: SafetyLevel;
  readonly situation: string;
  readonly why: string;
  /** The way that is usually taken instead. */
  readonly insteadDo: string;
  /** Why it fires here, in one sentence. */
  readonly here: string;
  /** It stands on a part or work that the build has chosen (a refusal then ends `check` with 3), not on a candidate. */
  readonly onChosen: boolean;
  /** Part, place or operation it is about. */
  readonly about: string;
  /** What a gate asks to be shown. */
  readonly evidenceNeeded?: string;
  /** Evidence a person has entered, if any. A gate never opens by itself. */
  readonly evidence?: { readonly by: string; readonly on: string; readonly what: string };
  /** A refusal stands; a gate without evidence is shut; a flag stays. */
  readonly open: boolean;
}
