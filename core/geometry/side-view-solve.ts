/**
 * Which bicycles have exactly these readings? All sensible layouts that the used rows allow, best first.
 */
import { say } from "../texts/say.js";
import { RAD } from "./bicycle-points.js";
import { MEASURE_FIELDS, SIDE_VIEW_KEYS, type SideViewInput } from "./frame-measures.js";
import { ALL_UNKNOWNS, type Fit, fitLayout } from "./side-view-fit.js";
import {
  AXIS_LENGTH,
  at,
  BACK,
  DIRECT,
  DROP,
  EVEN_SD,
  FRONT_RADIUS,
  HA,
  HEAD_TUBE,
  LEVEL_ROW,
  layout,
  REAR_RADIUS,
  ROW_SD,
  ROWS,
  rowValue,
  SA,
  TX,
  TY,
} from "./side-view-model.js";
import { type Guess, otherGuesses, SPREAD_GUESSES, startLayout } from "./side-view-start.js";
import type { Subset } from "./side-view-subset.js";

/** Sum of squared residuals (in standard deviations) under which readings are met exactly. */
const EXACT = 1e-16;
/** Where a triangle lies flat the search creeps; a miss under a ten-thousandth of a unit is then met as well. */
const NEARLY = 1e-8;
/** Two layouts are the same where no unknown differs by more, mm (head top and rear axle). */
const SAME_MM = 0.02;

/** Newton's way is short where there is one; a beginning that has not arrived by then is given up. */
const MOST_ROUNDS = 30;

const SLOPE_ROW = SIDE_VIEW_KEYS.indexOf("top_tube_slope_deg");

export interface Layouts {
  /** Sensible layouts that meet the used readings exactly. */
  readonly exact: readonly Float64Array[];
  /** Exact, but no bicycle: why the first of them is none. */
  readonly senseless: string | undefined;
  /** The nearest miss, where none is exact. */
  readonly nearest: Fit;
}

/** Readings as the model wants them: mm and radians, 0 for the level row. */
export function readings(input: SideViewInput): Float64Array {
  const given = new Float64Array(ROWS);
  SIDE_VIEW_KEYS.forEach((key, row) => {
    given[row] = (input[key] ?? Number.NaN) * (key.endsWith("_deg") ? RAD : 1);
  });
  given[LEVEL_ROW] = 0;
  return given;
}

/** Why is this layout no bicycle? `undefined` where it is one. Only what the measures fix is judged. */
export function whyNoBicycle(p: Float64Array, subset: Subset): string | undefined {
  const l = layout(p);
  if (at(p, TY) <= 0) return say("geometry.side-view-solve.the-head-tube-would-lie-below");
  if (l.fx <= 0) return say("geometry.side-view-solve.the-front-axle-would-lie-behind");
  if (at(p, BACK) <= 0) return say("geometry.side-view-solve.the-rear-axle-would-lie-ahead");
  if (subset.fixed[AXIS_LENGTH] && at(p, AXIS_LENGTH) <= 0)
    return say("geometry.side-view-solve.the-fork-would-point-up");
  if (at(p, TX) + at(p, BACK) <= 0) return say("geometry.side-view-solve.the-head-tube-would-lie-behind");
  for (let row = 0; row < SIDE_VIEW_KEYS.length; row++) {
    const field = MEASURE_FIELDS[row];
    if (!field || !subset.told[row]) continue;
    const value = rowValue(row, p, l) / (field.unit === "deg" ? RAD : 1);
    // what follows from other measures may be rarer than what a form takes
    const angle = field.unit === "deg";
    const low = angle ? field.min : field.min > 0 ? 0 : 2 * field.min;
    const high = angle ? field.max : 2 * field.max;
    if (!(value >= low - 1e-6 && value <= high + 1e-6)) {
      const label = field.label.startsWith("BB") ? field.label : field.label.toLowerCase();
      return say("geometry.side-view-solve.the-would-be-outside-to", {
        label,
        value: value.toFixed(1),
        unit: field.unit,
        low,
        high,
      });
    }
  }
  return undefined;
}

export function findLayouts(input: SideViewInput, given: Float64Array, subset: Subset): Layouts {
  const exact: Float64Array[] = [];
  let senseless: string | undefined;
  let nearest: Fit = { p: startLayout(input), cost: Number.POSITIVE_INFINITY, settled: false };
  const rows = subset.used.filter((row) => !DIRECT.has(row));
  const known = new Set(subset.used.map((row) => DIRECT.get(row)));
  const free = ALL_UNKNOWNS.filter((i) => !known.has(i));
  const land = (start: Float64Array): void => {
    for (const [row, unknown] of DIRECT) if (subset.used.includes(row)) start[unknown] = at(given, row);
    const fit = fitLayout(rows, given, start, free, EVEN_SD, MOST_ROUNDS);
    if (fit.cost < nearest.cost) nearest = fit;
    if (fit.cost > EXACT) return;
    const why = whyNoBicycle(fit.p, subset);
    if (why) senseless ??= why;
    else if (!exact.some((p) => sameLayout(p, fit.p))) exact.push(fit.p);
  };
  const attempt = (guess: Guess): void => land(startLayout(input, guess));
  for (const guess of [{}, ...otherGuesses(input)]) attempt(guess);
  for (const guess of SPREAD_GUESSES) {
    if (exact.length > 0) break;
    attempt(guess);
  }
  if (exact.length > 0 && subset.checks.length > 0) {
    // The readings left over may point to a twin that no beginning above came near: look where all of them point.
    const all = [...subset.used, ...subset.checks];
    for (const p of [...exact]) land(Float64Array.from(fitLayout(all, given, p, ALL_UNKNOWNS, EVEN_SD, MOST_ROUNDS).p));
  }
  if (exact.length === 0 && nearest.cost <= NEARLY && whyNoBicycle(nearest.p, subset) === undefined)
    exact.push(nearest.p);
  exact.sort(
    (a, b) => missOfChecks(a, given, subset) + strangeness(a) - missOfChecks(b, given, subset) - strangeness(b),
  );
  return { exact, senseless, nearest };
}

function sameLayout(a: Float64Array, b: Float64Array): boolean {
  const near = (i: number, tolerance: number): boolean => Math.abs(at(a, i) - at(b, i)) <= tolerance;
  return near(TX, SAME_MM) && near(TY, SAME_MM) && near(BACK, SAME_MM) && near(HA, 1e-6) && near(SA, 1e-6);
}

/** How far are the checking readings off on this layout? Sum of squares in standard deviations. */
export function missOfChecks(p: Float64Array, given: Float64Array, subset: Subset): number {
  const l = layout(p);
  let miss = 0;
  for (const row of subset.checks) {
    const sd = row === LEVEL_ROW ? 2 : at(ROW_SD, row);
    miss += ((at(given, row) - rowValue(row, p, l)) / sd) ** 2;
  }
  return miss;
}

/** How far is this from an ordinary bicycle? Decides only between twins that the readings cannot tell apart. */
function strangeness(p: Float64Array): number {
  const head = (at(p, HA) / RAD - 71.5) / 4;
  const seat = (at(p, SA) / RAD - 73) / 3;
  const drop = (at(p, DROP) - 55) / 40;
  const wheels = (at(p, FRONT_RADIUS) - at(p, REAR_RADIUS)) / 25;
  const tube = (at(p, HEAD_TUBE) - 140) / 60;
  const l = layout(p);
  const slope = (rowValue(SLOPE_ROW, p, l) / RAD - 4) / 8;
  return head * head + seat * seat + drop * drop + wheels * wheels + tube * tube + slope * slope;
}
