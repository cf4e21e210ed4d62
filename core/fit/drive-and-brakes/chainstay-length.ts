import type { FitView } from "../view.js";

export const CHAINSTAY_NEEDED_MM = 0.3;
/** Half-width at 95 % over one standard deviation of a normal spread. */
const HALF_OVER_SD = 1.959964;

export interface ChainstayLength {
  readonly mm: number;
  /** Half-width at 95 %; left out where nobody knows it. */
  readonly halfMm?: number;
  readonly from: "measured" | "survey" | "reading";
}

export function chainstayLength(view: FitView): ChainstayLength | undefined {
  const reading = view.resolved.donor.measured.chainstay;
  if (reading?.plusMinus !== undefined && reading.plusMinus <= CHAINSTAY_NEEDED_MM)
    return { mm: reading.value, halfMm: reading.plusMinus, from: "measured" };
  const survey = view.frame?.chainstay_mm;
  if (survey !== undefined) {
    const sd = view.frameSd?.chainstay_mm;
    return { mm: survey, ...(sd === undefined ? {} : { halfMm: sd * HALF_OVER_SD }), from: "survey" };
  }
  if (reading === undefined) return undefined;
  return {
    mm: reading.value,
    ...(reading.plusMinus === undefined ? {} : { halfMm: reading.plusMinus }),
    from: "reading",
  };
}
