import { element, openDirections, type RankDeficient } from "../numeric/index.js";
import type { Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { MEASUREMENT_KINDS } from "./measurement-kinds.js";
import {
  newSideModel,
  placePoints,
  predictMeasurement,
  type SideModel,
  U,
  UNKNOWN_COUNT,
  UNKNOWN_LABELS,
} from "./side-model.js";
import { startGeometry } from "./start-geometry.js";
import type { ReadSurvey } from "./survey-input.js";

/** Angles count per 500 mm when directions are compared with lengths. */
const ARM_MM = 500;

export interface Undetermined {
  /** Unknowns that the measurements leave open, in workshop words. */
  readonly open: readonly string[];
  /** Names of further measurements that together would close it. */
  readonly measure: readonly string[];
}

/** Which unknowns do these measurements leave open, and which further ones would settle them? */
export function undetermined(read: ReadSurvey, answer: RankDeficient): Undetermined {
  const { active } = read;
  const model = modelAt(read, answer.unknowns);
  const open = new Set<string>();
  let directions: readonly Float64Array[] = answer.openDirections;
  for (const d of directions) {
    const sizes = Array.from(d, (part, j) => Math.abs(part) * (isAngle(element(active, j)) ? ARM_MM : 1));
    const largest = Math.max(...sizes);
    sizes.forEach((size, j) => {
      if (size > 1e-3 * largest) open.add(UNKNOWN_LABELS[element(active, j)] ?? "");
    });
  }
  const measure: string[] = [];
  while (directions.length > 0) {
    const best = bestCandidate(read, model, directions);
    if (best === undefined) break;
    measure.push(best.name);
    directions = closeOne(directions, best.seen);
  }
  return { open: [...open], measure };
}

function bestCandidate(
  read: ReadSurvey,
  model: SideModel,
  directions: readonly Float64Array[],
): { readonly name: string; readonly seen: readonly number[] } | undefined {
  const slopes = new Float64Array(UNKNOWN_COUNT);
  let best: { name: string; seen: number[] } | undefined;
  let bestSize = 1e-6;
  MEASUREMENT_KINDS.forEach((kind, index) => {
    if (kind.name === "down_tube_cc_mm" && read.downJointMm === undefined && !read.active.includes(U.downJoint)) return;
    if (Number.isNaN(predictMeasurement(model, index, slopes))) return;
    const seen = directions.map((d) => {
      let sum = 0;
      let size = 0;
      d.forEach((part, j) => {
        const place = element(read.active, j);
        sum += part * element(slopes, place);
        size += (part * (isAngle(place) ? ARM_MM : 1)) ** 2;
      });
      return sum / (kind.sd * Math.sqrt(size));
    });
    const size = Math.hypot(...seen);
    if (size > bestSize * 1.0001) {
      bestSize = size;
      best = { name: kind.name, seen };
    }
  });
  return best;
}

/** The directions that stay open once a measurement sees each of them by `seen`. */
function closeOne(directions: readonly Float64Array[], seen: readonly number[]): Float64Array[] {
  let pivot = 0;
  seen.forEach((s, k) => {
    if (Math.abs(s) > Math.abs(seen[pivot] ?? 0)) pivot = k;
  });
  const strong = directions[pivot];
  if (strong === undefined) return [];
  const rest: Float64Array[] = [];
  directions.forEach((d, k) => {
    if (k === pivot) return;
    const factor = (seen[k] ?? 0) / (seen[pivot] ?? 1);
    rest.push(d.map((part, j) => part - factor * element(strong, j)));
  });
  return rest;
}

/** Do the measurements settle an ordinary frame, so that only their figures are to blame? */
export function settlesAnOrdinaryFrame(read: ReadSurvey): boolean {
  const model = newSideModel();
  model.u.set(startGeometry(read, [], true));
  model.lowerStack = read.lowerStackMm;
  if (!placePoints(model)) return false;
  const n = read.active.length;
  const jacobian = new Float64Array(read.kinds.length * n);
  const slopes = new Float64Array(UNKNOWN_COUNT);
  read.kinds.forEach((kind, i) => {
    predictMeasurement(model, kind, slopes);
    for (let j = 0; j < n; j++) jacobian[i * n + j] = element(slopes, element(read.active, j));
  });
  return openDirections(jacobian, read.kinds.length, n).length === 0;
}

/** The refusal for measurements that leave the frame open. */
export function refuseUndetermined(read: ReadSurvey, answer: RankDeficient): Refusal {
  const { open, measure } = undetermined(read, answer);
  return {
    code: "undetermined",
    at: "measurements",
    given: read.keys,
    allowed: say("survey.undetermined.or-more-measurements-that-settle-every", { activeCount: read.active.length }),
    message: say("survey.undetermined.measurements-do-not-settle-the-frame", {
      keysCount: read.keys.length,
      open: open.join(", "),
      measure: measure.join(", "),
    }),
  };
}

function modelAt(read: ReadSurvey, unknowns: Float64Array): SideModel {
  const model = newSideModel();
  model.u.set(startGeometry(read));
  model.lowerStack = read.lowerStackMm;
  read.active.forEach((place, j) => {
    model.u[place] = element(unknowns, j);
  });
  placePoints(model);
  return model;
}

function isAngle(place: number): boolean {
  return place === U.seatAngle || place === U.slope || place === U.headAngle;
}
