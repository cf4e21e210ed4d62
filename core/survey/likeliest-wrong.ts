/**
 * Which reading is likeliest wrong? The one of the first explanation that does explain the disagreement; where no usual
 * slip does, the suspect without which the others agree best. A cause that explains nothing never names a reading.
 */
import type { BlunderExplanation, Explanation } from "./explain-blunder.js";
import type { Suspect } from "./slip-trials.js";

export interface LikeliestWrong {
  readonly measurement: string;
  /** Only where it explains. */
  readonly explanation?: Explanation;
  /** The same reading as a suspect: what the others say of it. */
  readonly suspect?: Suspect;
}

export function likeliestWrong(
  blunder: Pick<BlunderExplanation, "explanations" | "suspects">,
): LikeliestWrong | undefined {
  const explanation = blunder.explanations.find((e) => e.explains);
  const measurement = explanation?.measurements[0] ?? blunder.suspects[0]?.measurement;
  if (measurement === undefined) return undefined;
  const suspect = blunder.suspects.find((s) => s.measurement === measurement);
  return {
    measurement,
    ...(explanation === undefined ? {} : { explanation }),
    ...(suspect === undefined ? {} : { suspect }),
  };
}
