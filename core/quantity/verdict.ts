/**
 * Which words may a verdict use? Joints have four, limits of money, time and mass three, safety rules three.
 * Nothing says "safe": the strongest word of the board is "no problem found", followed by what was not checked.
 */
export const JOINT_VERDICTS = ["fits", "fits with work", "will not fit", "measure first", "not checked yet"] as const;
export type JointVerdict = (typeof JOINT_VERDICTS)[number];

export const LIMIT_VERDICTS = ["within", "over", "measure first"] as const;
export type LimitVerdict = (typeof LIMIT_VERDICTS)[number];

export const SAFETY_LEVELS = ["refuse", "gate", "flag"] as const;
export type SafetyLevel = (typeof SAFETY_LEVELS)[number];

export type BoardVerdict = JointVerdict | LimitVerdict | SafetyLevel | "no problem found";

/** The one measurement (or decision) that would settle an open answer. */
export interface NextStep {
  readonly kind: "measure" | "decide" | "do";
  /** What, in a few words of the workshop: "Re-measure the top tube, centre to centre". */
  readonly what: string;
  /** Path of the attribute where it is entered, e.g. "donor.measured.top_tube_cc". */
  readonly at?: string;
  readonly tool?: string;
  /** Half-width needed to decide, with unit, e.g. "± 0.3 mm". */
  readonly accuracy?: string;
  readonly how?: string;
}
