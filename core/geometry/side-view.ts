/**
 * What is the geometry of this frame and fork, from the measurements given?
 *
 * Any sufficient subset lays the bicycle out exactly; every other reading is compared with what that layout foretells.
 * Order of trust: the fourteen frame measures, level ground, BB height, then the other whole-bicycle measures. A check that is off
 * by more than 3.29 of its standard deviation (M2's) is named; then all readings are also adjusted together by least
 * squares, which shows the likeliest culprit. Equations: M1, M5. Solver: damped Gauss-Newton to 1e-9 mm.
 */
import { type Answer, answered, type Band, type Caution, refused } from "../quantity/index.js";
import { RAD } from "./bicycle-points.js";
import { steeringCautions } from "./fork-swap.js";
import { measureLabel, SIDE_VIEW_KEYS, type SideViewInput, type SideViewKey } from "./frame-measures.js";
import { frameProblems } from "./frame-problems.js";
import { type Doubt, doubts } from "./side-view-doubt.js";
import { ALL_UNKNOWNS, figureSd, fitLayout } from "./side-view-fit.js";
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
    const doubt = doubts(input, given, best, subset);
    const cautions = [...doubt.cautions];
    if (twin) cautions.push(twinCaution(twin));
    return answer(best, subset, doubt, cautions);
  }
  if (subset.checks.some((row) => row !== LEVEL_ROW) || layouts.senseless) {
    const together = fitTogether(given, subset, layouts.nearest.p);
    if (together) {
      const doubt = doubts(input, given, together, subset);
      return answer(together, subset, doubt, [noExactCaution(), ...doubt.cautions]);
    }
  }
  return cannotClose(input, given, subset, layouts.nearest.p, layouts.senseless);
}

function fitTogether(given: Float64Array, subset: Subset, start: Float64Array): Float64Array | undefined {
  if (subset.checks.length === 0) return undefined;
  const fit = fitLayout([...subset.used, ...subset.checks], given, start, ALL_UNKNOWNS, ROW_SD);
  return fit.settled && whyNoBicycle(fit.p, subset) === undefined ? fit.p : undefined;
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
      means: "95 %, from the usual spread of workshop measuring (M2)",
    };
    if (!(half <= WEAK_HALF_BAND_MM)) weak.push(`${key} ± ${half < 1000 ? half.toFixed(0) : "over 1000"}`);
  });
  if (weak.length > 0) {
    cautions.push({
      code: "weakly-fixed",
      message: `These measures hardly fix: ${weak.join(", ")} mm. Measure an angle, the BB height or the wheelbase as well.`,
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
    message:
      `Two bicycles fit these readings. Shown is the more ordinary one; the other has stack ${other.stack_mm.toFixed(1)}, ` +
      `reach ${other.reach_mm.toFixed(1)}, BB height ${other.bb_height_mm.toFixed(1)}. Measure the BB height or an angle to decide.`,
  };
}

function noExactCaution(): Caution {
  return {
    code: "no-exact-layout",
    message: "No bicycle has the first of these readings exactly. Shown is the least-squares fit of all of them.",
  };
}

function notEnough(input: SideViewInput, mask: number, subset: Subset): Answer<SideViewValue> {
  const sets = whatWouldComplete(mask);
  const words = sets.slice(0, 6).map((set) => set.join(" + "));
  const first = sets[0] ?? [];
  const allowed = first.length > 2 ? `these as well: ${words.join("")}` : `one of: ${words.join("; ")}`;
  const open = subset.open.flatMap((i) => FIGURE_KEYS[i] ?? []);
  return refused([
    {
      code: "not-enough",
      at: "",
      given: Object.keys(input).filter((key) => input[key as SideViewKey] !== undefined),
      allowed,
      message:
        `These measures leave open: ${open.join(", ")}. ` +
        (first.length > 2
          ? `Measure as well: ${first.map(measureLabel).join(", ")}.`
          : `It would be enough to measure ${sets
              .slice(0, 6)
              .map((set) => set.map(measureLabel).join(" and "))
              .join("; or ")}.`),
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
      allowed: "measures that close to one bicycle",
      message: senseless
        ? `These measures fit no bicycle: ${senseless}. Measure again, one more length than before.`
        : `No bicycle has these measures together: ${named.map(measureLabel).join(", ")}. One of them is wrong; the triangle does not close.`,
    },
  ]);
}
