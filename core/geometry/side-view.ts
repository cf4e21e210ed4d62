/**
 * What is the geometry of this frame and fork, from the measurements given?
 *
 * Any sufficient subset lays the bicycle out exactly; every other reading is compared with what that layout foretells.
 * Order of trust: the fourteen frame measures, level ground, BB height, then the other whole-bicycle measures. A check that is off
 * by more than 3.29 of its standard deviation (M2's) is named; then all readings are also adjusted together by least
 * squares, which shows the likeliest culprit. Where the first readings fix the bicycle only roughly and none is off,
 * the figures come from all readings together; where only the ground disagrees, it steps back.
 * Equations: M1, M5. Solver: damped Gauss-Newton to 1e-9 mm.
 */

import { type Answer, answered, type Band, type Caution, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { RAD } from "./bicycle-points.js";
import { steeringCautions } from "./fork-swap.js";
import { measureLabel, SIDE_VIEW_KEYS, type SideViewInput, type SideViewKey } from "./frame-measures.js";
import { frameProblems } from "./frame-problems.js";
import { type Doubt, doubts, LIMIT_SD } from "./side-view-doubt.js";
import { ALL_UNKNOWNS, type Fit, figureSd, fitLayout } from "./side-view-fit.js";
import {
  at,
  FIGURE_KEYS,
  figureSlopes,
  HA,
  LEVEL_ROW,
  layout,
  ROW_SD,
  rowValue,
  type SideFigures,
  sideFigures,
} from "./side-view-model.js";
import { findLayouts, readings, whyNoBicycle } from "./side-view-solve.js";
import { maskOf, type Subset, subsetOf, whatWouldComplete } from "./side-view-subset.js";

const Z95 = 1.959963984540054;
/** A figure whose 95 % band reaches further than this to either side is called weakly fixed, mm. */
const WEAK_HALF_BAND_MM = 20;
/** A figure that may lie ten metres to either side is open, mm. */
const OPEN_HALF_BAND_MM = 10_000;
/** A miss of 3.29 x 2 mm, the widest usual spread, over the solver's 1.5 mm, squared: readings that only just miss. */
const USUAL_MISS = ((3.29 * 2) / 1.5) ** 2;
/** Exact layouts shakier than this give way to all readings together, where those are surer by half. */
const SHAKY_HALF_BAND_MM = 10;

export interface SideViewValue extends SideFigures {
  /** Every measure that the layout fixes, given or not; the full set may go straight into fork-swap. */
  readonly measures: SideViewInput;
  /** Readings that were not needed, with what the others foretell. */
  readonly checked: readonly {
    readonly measure: SideViewKey | "level_ground_mm";
    readonly given: number;
    readonly foretold: number;
  }[];
  /** Only where there is something to check: all readings adjusted together by least squares, blunders and all. */
  readonly least_squares?: SideFigures;
  /** Only where one reading stands out: the figures of the others without it. */
  readonly without_likely_wrong?: SideFigures & { readonly measure: SideViewKey; readonly foretold: number };
}

/** Lengths mm, angles degrees, all optional. Refuses what cannot close and what is not enough, with what would complete it. */
export function sideView(input: SideViewInput): Answer<SideViewValue> {
  const problems = frameProblems(input);
  if (problems.length > 0) return refused(problems);
  const mask = maskOf(input);
  const subset = subsetOf(mask);
  if (subset.open.length > 0) return notEnough(input, mask, subset);

  const given = readings(input);
  const layouts = findLayouts(input, given, subset);
  const [best, twin] = layouts.exact;
  if (best) {
    const better = weighedTogether(input, given, best, subset);
    if (better) return better;
    const loose = openHere(input, best, subset);
    if (loose) return loose;
    const doubt = doubts(input, given, best, subset);
    const hanging = doubt.cautions.length > 0 ? offTheGround(input, given, best, subset) : undefined;
    if (hanging) return hanging;
    const cautions = [...doubt.cautions];
    if (twin) cautions.push(twinCaution(twin));
    return answer(best, subset, doubt, cautions);
  }
  const hanging = offTheGround(input, given, layouts.nearest.p, subset);
  if (hanging) return hanging;
  if (subset.checks.some((row) => row !== LEVEL_ROW) || layouts.senseless) {
    const together = fitTogether(given, subset, layouts.nearest.p);
    if (together) {
      const doubt = doubts(input, given, together.p, subset);
      return answer(together.p, subset, doubt, [noExactCaution(), ...doubt.cautions]);
    }
  }
  if (layouts.nearest.cost <= USUAL_MISS) {
    const loose = openHere(input, layouts.nearest.p, subset);
    if (loose) return loose;
  }
  return cannotClose(input, given, subset, layouts.nearest.p, layouts.senseless);
}

/**
 * Is the exact layout shaky although readings left over would settle it? A top tube that only follows from level
 * ground moves by many millimetres for a tenth in a radius, while the wheelbase would tell it. Then all readings count
 * by their spread, unless one of them is off: a wrong reading must not pull the figures.
 */
function weighedTogether(
  input: SideViewInput,
  given: Float64Array,
  best: Float64Array,
  subset: Subset,
): Answer<SideViewValue> | undefined {
  if (!subset.checks.some((row) => row !== LEVEL_ROW)) return undefined;
  const rows = [...subset.used, ...subset.checks];
  const slopes = figureSlopes(best);
  const few = figureSd(subset.used, best, slopes);
  const all = figureSd(rows, best, slopes);
  if (!few.some((sd, i) => Z95 * sd > SHAKY_HALF_BAND_MM && sd > 2 * at(all, i))) return undefined;
  const together = fitTogether(given, subset, best);
  // no |w| can be over 3.29 where all squares together stay under its square
  if (!together || together.cost > LIMIT_SD * LIMIT_SD) return undefined;
  const doubt = doubts(input, given, together.p, subset);
  if (doubt.cautions.length > 0) return undefined;
  const shown = sideFigures(together.p);
  const exact = sideFigures(best);
  const moved = Math.max(...FIGURE_KEYS.map((key) => Math.abs(shown[key] - exact[key])));
  return answer(together.p, { ...subset, used: rows }, doubt, moved > 0.1 ? [weighedCaution(moved)] : []);
}

/**
 * Do the readings agree among themselves while only the ground under the tyres does not? Then they lay the bicycle out
 * without it, and the answer says how far the front tyre hangs. Asks for a reading that bears them out, or for a
 * layout that is shaky with the ground (`p`) and sure without it.
 */
function offTheGround(
  input: SideViewInput,
  given: Float64Array,
  p: Float64Array,
  subset: Subset,
): Answer<SideViewValue> | undefined {
  if (!subset.used.includes(LEVEL_ROW)) return undefined;
  const alone = subsetOf(maskOf(input), true);
  if (!alone.checks.includes(LEVEL_ROW)) return undefined;
  const [best] = findLayouts(input, given, alone).exact;
  if (!best || openHere(input, best, alone)) return undefined;
  const l = layout(best);
  const others = alone.checks.filter((row) => row !== LEVEL_ROW);
  if (others.some((row) => Math.abs(at(given, row) - rowValue(row, best, l)) > LIMIT_SD * at(ROW_SD, row)))
    return undefined;
  if (others.length === 0) {
    const withGround = figureSd(subset.used, p, figureSlopes(p));
    const without = figureSd(alone.used, best, figureSlopes(best));
    if (!withGround.some((sd, i) => Z95 * sd > SHAKY_HALF_BAND_MM && sd > 2 * at(without, i))) return undefined;
  }
  const doubt = doubts(input, given, best, alone);
  return answer(best, alone, doubt, [...doubt.cautions]);
}

function weighedCaution(movedMm: number): Caution {
  return {
    code: "weighed-together",
    message: say("geometry.side-view.the-first-readings-alone-would-fix", { movedMm: movedMm.toFixed(1) }),
  };
}

/**
 * Do the measures leave a figure open on this very bicycle, though they would fix it on another? A level top tube of
 * unknown length, say: the ground under the tyres tells nothing about it. A number from there would be made up.
 */
function openHere(input: SideViewInput, p: Float64Array, subset: Subset): Answer<SideViewValue> | undefined {
  const slopes = figureSlopes(p);
  const rows = [...subset.used, ...subset.checks];
  const openWith = (more: readonly number[]): readonly string[] => {
    const sds = figureSd([...rows, ...more], p, slopes);
    return FIGURE_KEYS.filter((_, i) => !(Z95 * at(sds, i) <= OPEN_HALF_BAND_MM));
  };
  const open = openWith([]);
  if (open.length === 0) return undefined;
  const settles = SIDE_VIEW_KEYS.filter((key, row) => input[key] === undefined && openWith([row]).length === 0);
  return refused([
    {
      code: "not-enough",
      at: "",
      given: givenKeys(input),
      allowed: say("geometry.side-view.one-of", { settles: settles.join("; ") }),
      message: say("geometry.side-view.on-this-bicycle-these-measures-leave", {
        open: open.join(", "),
        measureLabel: settles.map(measureLabel).join(say("geometry.side-view.or")),
      }),
    },
  ]);
}

const givenKeys = (input: SideViewInput): readonly SideViewKey[] =>
  SIDE_VIEW_KEYS.filter((key) => input[key] !== undefined);

function fitTogether(given: Float64Array, subset: Subset, start: Float64Array): Fit | undefined {
  if (subset.checks.length === 0) return undefined;
  const fit = fitLayout([...subset.used, ...subset.checks], given, start, ALL_UNKNOWNS, ROW_SD);
  return fit.settled && whyNoBicycle(fit.p, subset) === undefined ? fit : undefined;
}

function answer(p: Float64Array, subset: Subset, doubt: Doubt, cautions: Caution[]): Answer<SideViewValue> {
  const figures = sideFigures(p);
  const l = layout(p);
  const measures: Partial<Record<SideViewKey, number>> = {};
  SIDE_VIEW_KEYS.forEach((key, row) => {
    if (subset.told[row]) measures[key] = rowValue(row, p, l) / (key.endsWith("_deg") ? RAD : 1);
  });
  const bands: Record<string, Band> = {};
  const weak: string[] = [];
  const sds = figureSd(subset.used, p, figureSlopes(p));
  FIGURE_KEYS.forEach((key, i) => {
    const half = Z95 * at(sds, i);
    bands[key] = {
      low: figures[key] - half,
      high: figures[key] + half,
      means: say("geometry.side-view.95-from-the-usual-spread-of"),
    };
    if (!(half <= WEAK_HALF_BAND_MM))
      weak.push(`${key} ± ${half < 1000 ? half.toFixed(0) : say("geometry.side-view.over-1000")}`);
  });
  if (weak.length > 0) {
    cautions.push({
      code: "weakly-fixed",
      message: say("geometry.side-view.these-measures-hardly-fix-mm-measure", { weak: weak.join(", ") }),
    });
  }
  cautions.push(...steeringCautions(at(p, HA) / RAD, figures.trail_mm));
  const value: SideViewValue = { ...figures, measures, checked: doubt.checked, ...doubt.more };
  return answered(value, {
    bands,
    sources: ["m1-planar-solve", "m2-usual-spread", "baarda-3-29", "m5-trail"],
    cautions,
  });
}

function twinCaution(twin: Float64Array): Caution {
  const other = sideFigures(twin);
  return {
    code: "two-solutions",
    message: say("geometry.side-view.two-bicycles-fit-these-readings-shown", {
      stackMm: other.stack_mm.toFixed(1),
      reachMm: other.reach_mm.toFixed(1),
      bbHeightMm: other.bb_height_mm.toFixed(1),
    }),
  };
}

function noExactCaution(): Caution {
  return {
    code: "no-exact-layout",
    message: say("geometry.side-view.no-bicycle-has-the-first-of"),
  };
}

function notEnough(input: SideViewInput, mask: number, subset: Subset): Answer<SideViewValue> {
  const sets = whatWouldComplete(mask);
  const words = sets.slice(0, 6).map((set) => set.join(" + "));
  const first = sets[0] ?? [];
  const allowed =
    first.length > 2
      ? say("geometry.side-view.these-as-well", { words: words.join("") })
      : say("geometry.side-view.one-of-2", { words: words.join("; ") });
  const open = subset.open.flatMap((i) => FIGURE_KEYS[i] ?? []);
  return refused([
    {
      code: "not-enough",
      at: "",
      given: givenKeys(input),
      allowed,
      message:
        say("geometry.side-view.these-measures-leave-open", { open: open.join(", ") }) +
        (first.length > 2
          ? say("geometry.side-view.measure-as-well", { measureLabel: first.map(measureLabel).join(", ") })
          : say("geometry.side-view.it-would-be-enough-to-measure", {
              sets: sets
                .slice(0, 6)
                .map((set) => set.map(measureLabel).join(" and "))
                .join(say("geometry.side-view.or")),
            })),
    },
  ]);
}

function cannotClose(
  input: SideViewInput,
  given: Float64Array,
  subset: Subset,
  nearest: Float64Array,
  senseless: string | undefined,
): Answer<SideViewValue> {
  const l = layout(nearest);
  const missed = subset.used
    .map((row) => ({ key: SIDE_VIEW_KEYS[row], off: Math.abs(at(given, row) - rowValue(row, nearest, l)) }))
    .flatMap(({ key, off }) => (key && off > 1e-3 * (key.endsWith("_deg") ? RAD : 1) ? [key] : []));
  const named: readonly SideViewKey[] =
    missed.length > 0 ? missed : SIDE_VIEW_KEYS.filter((key) => input[key] !== undefined);
  return refused([
    {
      code: "cannot-close",
      at: named.length === 1 ? (named[0] ?? "") : "",
      given: Object.fromEntries(named.map((key) => [key, input[key]])),
      allowed: say("geometry.side-view.measures-that-close-to-one-bicycle"),
      message: senseless
        ? say("geometry.side-view.these-measures-fit-no-bicycle-measure", { senseless })
        : say("geometry.side-view.no-bicycle-has-these-measures-together", {
            measureLabel: named.map(measureLabel).join(", "),
          }),
    },
  ]);
}
