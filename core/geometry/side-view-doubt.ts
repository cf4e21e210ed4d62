/**
 * Which readings do not agree with the rest, and which one is the likeliest culprit?
 *
 * A check that is off by more than 3.29 of its standard deviation is named. Then all readings are adjusted together;
 * w = v / (sd sqrt(r)), v measured minus adjusted, r the redundancy number, says which one stands out.
 * Sources: M2; Baarda's test at 0.1 % (from memory, not re-read).
 */

import type { Caution } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { RAD } from "./bicycle-points.js";
import { measureLabel, SIDE_VIEW_KEYS, type SideViewInput, type SideViewKey, USUAL_SD } from "./frame-measures.js";
import { ALL_UNKNOWNS, figureSd, fitLayout } from "./side-view-fit.js";
import { at, LEVEL_ROW, layout, ROW_SD, rowValue, type SideFigures, sideFigures, UNKNOWNS } from "./side-view-model.js";
import { findLayouts, whyNoBicycle } from "./side-view-solve.js";
import { maskOf, type Subset, subsetOf } from "./side-view-subset.js";

export const LIMIT_SD = 3.29;
/** Level ground is judged like a BB height, the measure of the same kind, mm. */
const LEVEL_SD = USUAL_SD.bb_height_mm;

interface Checked {
  readonly measure: SideViewKey | "level_ground_mm";
  readonly given: number;
  readonly foretold: number;
}

export interface Doubt {
  readonly checked: readonly Checked[];
  readonly cautions: readonly Caution[];
  readonly more: {
    readonly least_squares?: SideFigures;
    readonly without_likely_wrong?: SideFigures & { readonly measure: SideViewKey; readonly foretold: number };
  };
}

export function doubts(input: SideViewInput, given: Float64Array, p: Float64Array, subset: Subset): Doubt {
  const l = layout(p);
  const checked: Checked[] = [];
  const cautions: Caution[] = [];
  const judge = (row: number): void => {
    const key = SIDE_VIEW_KEYS[row];
    if (key === undefined) {
      // The level row is front-axle height minus what drop and radii ask for: how high the front tyre hangs.
      const hang = rowValue(LEVEL_ROW, p, l);
      checked.push({ measure: "level_ground_mm", given: 0, foretold: hang });
      if (Math.abs(hang) <= LIMIT_SD * LEVEL_SD) return;
      cautions.push({
        code: "disagrees",
        at: "front_radius_mm",
        message: say("geometry.side-view-doubt.by-these-measures-the-front-tyre", {
          byMm: Math.abs(hang).toFixed(1),
          aboveOrBelow: hang > 0 ? "above" : "below",
        }),
      });
      return;
    }
    const unit = key.endsWith("_deg") ? RAD : 1;
    const foretold = rowValue(row, p, l) / unit;
    const reading = input[key] ?? Number.NaN;
    if (subset.checks.includes(row)) checked.push({ measure: key, given: reading, foretold });
    const off = reading - foretold;
    if (Math.abs(off) <= LIMIT_SD * USUAL_SD[key]) return;
    cautions.push({
      code: "disagrees",
      at: key,
      message: say("geometry.side-view-doubt.reads-the-others-foretell-off-by", {
        label: measureLabel(key),
        key,
        reading,
        foretold: foretold.toFixed(1),
        off: off.toFixed(1),
        limitSd: (LIMIT_SD * USUAL_SD[key]).toFixed(1),
      }),
    });
  };
  for (const row of [...subset.used.filter((r) => r !== LEVEL_ROW), ...subset.checks]) judge(row);
  if (checked.length === 0) return { checked, cautions, more: {} };
  const together = fitLayout([...subset.used, ...subset.checks], given, p, ALL_UNKNOWNS, ROW_SD);
  if (!together.settled || whyNoBicycle(together.p, subset) !== undefined) return { checked, cautions, more: {} };
  if (cautions.length === 0) return { checked, cautions, more: { least_squares: sideFigures(together.p) } };
  const culprit = findCulprit(input, given, together.p, subset);
  return { checked, cautions: [...cautions, ...culprit.cautions], more: culprit.more };
}

/** Which one stands out when all readings are adjusted together (`p`, their least-squares layout)? */
function findCulprit(
  input: SideViewInput,
  given: Float64Array,
  p: Float64Array,
  subset: Subset,
): Pick<Doubt, "cautions" | "more"> {
  const rows = [...subset.used, ...subset.checks];
  const l = layout(p);
  const slopes = rows.map((row) => {
    const d = new Float64Array(UNKNOWNS);
    rowValue(row, p, l, d);
    return d;
  });
  const sds = figureSd(rows, p, slopes);
  const tests = rows.flatMap((row, i) => {
    const key = SIDE_VIEW_KEYS[row];
    const sd = at(ROW_SD, row);
    const redundancy = 1 - (at(sds, i) / sd) ** 2;
    if (key === undefined || USUAL_SD[key] < 0.1 || redundancy < 1e-6) return [];
    const w = (at(given, row) - rowValue(row, p, l)) / (sd * Math.sqrt(redundancy));
    return [{ key, size: Math.abs(w) }];
  });
  tests.sort((a, b) => b.size - a.size);
  const least_squares = sideFigures(p);
  const top = tests[0];
  if (!top || top.size <= LIMIT_SD) {
    const message = say("geometry.side-view-doubt.taken-all-together-the-readings-still");
    return { cautions: [{ code: "within-joint-spread", message }], more: { least_squares } };
  }
  const level = tests.filter((t) => t.size > LIMIT_SD && t.size >= 0.98 * top.size);
  const names = level.map((t) => measureLabel(t.key)).join(", ");
  if (level.length > 1) {
    const message = say("geometry.side-view-doubt.any-of-these-may-be-the", { size: top.size.toFixed(1), names });
    return { cautions: level.map((t) => ({ code: "likely-wrong", at: t.key, message })), more: { least_squares } };
  }
  const message = say("geometry.side-view-doubt.the-likeliest-wrong-reading-is-the", {
    names,
    size: top.size.toFixed(1),
  });
  const without = withoutOne(input, given, top.key);
  return {
    cautions: [{ code: "likely-wrong", at: top.key, message }],
    more: without ? { least_squares, without_likely_wrong: without } : { least_squares },
  };
}

/** The least-squares figures of all readings but one, with what they foretell for it. */
function withoutOne(
  input: SideViewInput,
  given: Float64Array,
  key: SideViewKey,
): (SideFigures & { readonly measure: SideViewKey; readonly foretold: number }) | undefined {
  const { [key]: _left, ...rest } = input;
  const subset = subsetOf(maskOf(rest));
  if (subset.open.length > 0) return undefined;
  const found = findLayouts(rest, given, subset);
  const fit = fitLayout(
    [...subset.used, ...subset.checks],
    given,
    found.exact[0] ?? found.nearest.p,
    ALL_UNKNOWNS,
    ROW_SD,
  );
  if (!fit.settled || whyNoBicycle(fit.p, subset) !== undefined) return undefined;
  const row = SIDE_VIEW_KEYS.indexOf(key);
  const foretold = rowValue(row, fit.p, layout(fit.p)) / (key.endsWith("_deg") ? RAD : 1);
  return { ...sideFigures(fit.p), measure: key, foretold };
}
