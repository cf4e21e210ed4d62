/** Where does a build stand, in a few words for a list of builds: how many questions are open, settled, and what is refused? */
import { standingRefusals } from "../safety/index.js";
import { aboutWords, ruleSentence } from "./about-words.js";
import type { Reckoning } from "./reckoning.js";

export interface BuildStanding {
  /** What it is to become, as the builder wrote it. */
  readonly becomes: string;
  readonly open: number;
  readonly settled: number;
  readonly notChecked: number;
  /** Each refusal that stands on something chosen, as a sentence with its rule. */
  readonly refused: readonly string[];
}

export function standingOfBuild(r: Reckoning): BuildStanding {
  const notChecked = r.board.filter((b) => b.verdict === "not checked yet").length;
  const open = r.board.filter((b) => b.open).length;
  return {
    becomes: r.resolved.intent.purpose,
    open,
    settled: r.board.length - open - notChecked,
    notChecked,
    refused: [
      ...new Set(standingRefusals(r.rules).map((f) => `${f.rule}, ${aboutWords(r, f.about)}: ${ruleSentence(f)}`)),
    ],
  };
}
