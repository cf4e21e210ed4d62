import { chiSquareQuantile, element } from "../numeric/index.js";
import { say } from "../texts/say.js";
import { fitSurvey, predictFromFit } from "./fit-survey.js";
import { MEASUREMENT_KINDS } from "./measurement-kinds.js";
import { newSideModel, placePoints, predictMeasurement } from "./side-model.js";
import { startGeometry } from "./start-geometry.js";
import type { ReadSurvey } from "./survey-input.js";

/** What the others say of one reading when it is left out. */
export interface LeftOut {
  readonly index: number;
  readonly predicted: number;
  readonly predictedSd: number;
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
}

/** What was found from the usual start; several questions ask for the same. */
const FOUND = new WeakMap<ReadSurvey, Map<number, LeftOut | undefined>>();

/** What do the others say of this reading? Undefined where they do not settle the frame without it. */
export function leaveOut(read: ReadSurvey, index: number, start?: Float64Array): LeftOut | undefined {
  if (start !== undefined) return fitWithout(read, index, start);
  const found = FOUND.get(read) ?? new Map<number, LeftOut | undefined>();
  FOUND.set(read, found);
  if (!found.has(index)) found.set(index, fitWithout(read, index, undefined));
  return found.get(index);
}

function fitWithout(read: ReadSurvey, index: number, start: Float64Array | undefined): LeftOut | undefined {
  const rest = fitSurvey(read, start === undefined ? { without: [index] } : { without: [index], start });
  if (rest.kind !== "fitted") return undefined;
  const predicted = predictFromFit(rest, element(read.kinds, index));
  const { chiSquare, degreesOfFreedom } = rest.fit;
  return { index, predicted: predicted.value, predictedSd: predicted.sd, chiSquare, degreesOfFreedom };
}

/** How many of the oddest readings are left out in turn before all others are tried. */
const ODDEST = 5;
/** Beyond this oddness a reading is far from any frame of this size (a factor of two, or 20 degrees). */
const FAR = Math.LN2;

/**
 * Which one reading, left out, lets all others agree? For readings so far off that they bend the whole fit (a wrong
 * unit, a nought too many), where normalised residuals may name another one.
 *
 * The readings that stand oddest against an ordinary frame of this size are tried first, then those with the largest
 * normalised residuals; all others only where none of these is the one.
 * @param normalised normalised residuals of the bent fit, where there is one.
 * @returns those whose leaving brings chi-square within its 99.9 % limit, the best first; empty with too few to check.
 */
export function grossCulprits(read: ReadSurvey, normalised?: ArrayLike<number>): LeftOut[] {
  const oddness = oddAgainstOrdinary(read);
  const all = read.kinds.map((_, i) => i);
  const size = (i: number): number => Math.abs(normalised?.[i] ?? 0) || 0;
  const first = new Set([
    ...[...all].sort((a, b) => (oddness[b] ?? 0) - (oddness[a] ?? 0)).slice(0, ODDEST),
    ...(normalised === undefined ? [] : [...all].sort((a, b) => size(b) - size(a)).slice(0, ODDEST - 2)),
  ]);
  const found = tryEach(read, [...first]);
  if (found.length > 0) return found;
  // With several readings far from any frame, leaving out one of the others cannot help.
  if (oddness.filter((odd) => odd > FAR).length > ODDEST) return [];
  return tryEach(
    read,
    all.filter((i) => !first.has(i)),
  );
}

function tryEach(read: ReadSurvey, indices: readonly number[]): LeftOut[] {
  const found: LeftOut[] = [];
  for (const i of indices) {
    const left = leaveOut(read, i);
    if (left === undefined || left.degreesOfFreedom < 1) continue;
    if (left.chiSquare <= chiSquareQuantile(0.999, left.degreesOfFreedom)) found.push(left);
  }
  // Where two would do equally well, the one that needs the smaller slip for its standard deviation.
  const slip = (l: LeftOut): number =>
    Math.abs(element(read.values, l.index) - l.predicted) / element(read.sds, l.index);
  return found.sort((a, b) =>
    Math.abs(a.chiSquare - b.chiSquare) > 1e-3 ? a.chiSquare - b.chiSquare : slip(a) - slip(b),
  );
}

/** How far is each reading from that of an ordinary frame of this size? As the logarithm of a ratio; 30 degrees count 1. */
function oddAgainstOrdinary(read: ReadSurvey): number[] {
  const model = newSideModel();
  model.u.set(startGeometry(read, [], true));
  model.lowerStack = read.lowerStackMm;
  placePoints(model);
  return read.kinds.map((kind, i) => {
    const value = element(read.values, i);
    const ordinary = predictMeasurement(model, kind, undefined);
    if (MEASUREMENT_KINDS[kind]?.unit === "deg") return Math.abs(value - ordinary) / 30;
    return value > 0 && ordinary > 0 ? Math.abs(Math.log(value / ordinary)) : 0;
  });
}

/** One sentence for the builder: which reading it is, what it should be about, and which others it may be as well. */
export function culpritSentence(read: ReadSurvey, culprits: readonly LeftOut[]): string {
  const [left, ...rest] = culprits;
  if (left === undefined) return "";
  const value = element(read.values, left.index);
  const equals = rest.filter((other) => other.chiSquare - left.chiSquare < 1e-3).map((other) => read.keys[other.index]);
  const pair =
    equals.length === 0 ? "" : say("survey.leave-out.or-it-is-the-numbers-cannot", { equals: equals.join(" or ") });
  return say("survey.leave-out.reads-but-the-others-agree-among", {
    keys: read.keys[left.index],
    value,
    predicted: left.predicted.toFixed(1),
    pair,
  });
}
