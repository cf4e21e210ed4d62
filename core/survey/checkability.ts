import { element } from "../numeric/index.js";
import { say } from "../texts/say.js";
import { type SurveyFit, varianceOf } from "./fit-survey.js";
import { MEASUREMENT_KINDS, measurementKindIndex } from "./measurement-kinds.js";
import { predictMeasurement, U, UNKNOWN_COUNT } from "./side-model.js";

/** Below this redundancy the other measurements cannot check a reading (method M2). */
export const CHECKABLE_FROM = 0.1;

/** A reading that the others cannot check, and what would change that. */
export interface Uncheckable {
  readonly measurement: string;
  readonly redundancy: number;
  /** Name of the one further measurement that helps most; the same name means: read it again. */
  readonly measure_also: string;
  /** Redundancy with that further measurement. */
  readonly redundancy_then: number;
}

/**
 * Which readings can the others not check, and which one further measurement would make each checkable?
 *
 * Every kind of measurement not yet taken is tried with its workshop sd: r' = r + (a Cx c)²/((s² + c Cx c) σ²), where a
 * and c are the slopes of the reading and of the further one. Where none brings r to 0.1, a second reading of the same
 * does (it finds a slip of the eye, not a wrong way of measuring).
 */
export function uncheckable(fitted: SurveyFit): Uncheckable[] {
  const { fit, read, rows } = fitted;
  const out: Uncheckable[] = [];
  const taken = new Set(rows.map((i) => element(read.kinds, i)));
  const candidates: { name: string; variance: number; slopes: Float64Array }[] = [];
  const weak = rows.map((_, row) => row).filter((row) => element(fit.redundancy, row) < CHECKABLE_FROM);
  if (weak.length === 0) return out;
  MEASUREMENT_KINDS.forEach((kind, index) => {
    if (taken.has(index)) return;
    if (kind.name === "down_tube_cc_mm" && read.downJointMm === undefined && !read.active.includes(U.downJoint)) return;
    const slopes = new Float64Array(UNKNOWN_COUNT);
    if (Number.isNaN(predictMeasurement(fitted.model, index, slopes))) return;
    candidates.push({ name: kind.name, variance: kind.sd * kind.sd + varianceOf(fitted, slopes, slopes), slopes });
  });
  const own = new Float64Array(UNKNOWN_COUNT);
  for (const row of weak) {
    const index = element(rows, row);
    const kind = element(read.kinds, index);
    const variance = element(read.sds, index) ** 2;
    const redundancy = element(fit.redundancy, row);
    predictMeasurement(fitted.model, kind, own);
    let name = "";
    let then = redundancy;
    for (const candidate of candidates) {
      const shared = varianceOf(fitted, own, candidate.slopes);
      const r = redundancy + (shared * shared) / (candidate.variance * variance);
      if (r > then * 1.0001) {
        then = r;
        name = candidate.name;
      }
    }
    if (then < CHECKABLE_FROM || name === "") {
      name = MEASUREMENT_KINDS[kind]?.name ?? "";
      then = 1 / (2 - redundancy);
    }
    out.push({
      measurement: read.keys[index] ?? "",
      redundancy,
      measure_also: name,
      redundancy_then: Math.min(1, then),
    });
  }
  return out;
}

/** One sentence for the builder about a reading that cannot be checked. */
export function uncheckableSentence(u: Uncheckable): string {
  const own = u.measurement.replace(/#\d+$/, "");
  const label = MEASUREMENT_KINDS[measurementKindIndex(own)]?.label ?? own;
  const start = say("survey.checkability.the-others-cannot-check-redundancy", {
    measurement: u.measurement,
    label,
    redundancy: u.redundancy.toFixed(3),
  });
  if (u.measure_also === own) return say("survey.checkability.read-it-a-second-time-starting", { start });
  return say("survey.checkability.measuring-as-well-would-make-it", {
    start,
    measureAlso: u.measure_also,
    redundancyThen: u.redundancy_then.toFixed(2),
  });
}
