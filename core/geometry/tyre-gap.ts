/**
 * Does this tyre (and guard) pass between the stays, blades and bridges, and with how much air?
 *
 * side gap = (inner gap at the tyre's widest radius - width) / 2, widest radius = R - width / 2, the gap read off
 * between the measured stations by straight line. radial gap = constriction's distance from the axle - R.
 * Width: nominal on a rim of inner width nominal / 1.9, plus 0.4 per mm of inner width from there. With a guard the
 * gaps are taken to the guard. Nothing is read beyond the measured stations: measure there instead.
 * R: loaded radius as measured, else BSD / 2 + nominal width (± 3).
 * Sources: M6, M9 (common practice, no source); S14; least 6 on new bicycles: ISO 4210-2 (from memory).
 */

import { type Answer, answered, type Band, type Caution, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { SAGGED_RADIUS_HALF_BAND_MM, saggedRadiusMm } from "./sagged-radius.js";

export interface GapStation {
  /** Distance from the axle, mm. */
  readonly radius_mm: number;
  /** Clear width between the two inner faces there, mm. */
  readonly inner_gap_mm: number;
}

export interface TyreGapInput {
  readonly bsd_mm: number;
  readonly tyre_width_mm: number;
  /** Inner width of the rim; left out = the width as named on the tyre. */
  readonly rim_inner_mm?: number;
  /** Loaded radius, where it was measured. */
  readonly radius_mm?: number;
  readonly stations: readonly GapStation[];
  /** Bridge or crown: distance of its nearest face from the axle. */
  readonly constrictions?: readonly { readonly name: string; readonly from_axle_mm: number }[];
  readonly guard_width_mm?: number;
  readonly guard_over_tyre_mm?: number;
}

export interface TyreGapValue {
  readonly tyre_width_on_rim_mm: number;
  readonly radius_mm: number;
  readonly widest_radius_mm: number;
  readonly inner_gap_there_mm: number;
  /** Each side, to the guard where there is one. */
  readonly side_gap_mm: number;
  readonly radial_gaps: readonly { readonly name: string; readonly gap_mm: number }[];
  readonly least_gap_mm: number;
  /** S14: under 4 refuse, 4 to 6 flag. */
  readonly judgement: "refuse" | "flag" | "no problem found";
}

/** Least gap wanted and least gap at all, mm (M9, S14). */
export const GAP_WANTED_MM = 6;
export const GAP_LEAST_MM = 4;

const ROUNDING = 1e-9;

/** How wide is this tyre on this rim? mm; both inner rim width and nominal width in mm. */
export function tyreWidthOnRimMm(nominalMm: number, rimInnerMm: number): number {
  return nominalMm + 0.4 * (rimInnerMm - nominalMm / 1.9);
}

/** Clear width at a radius, by straight line between stations; `undefined` outside them. */
export function gapAtRadiusMm(stations: readonly GapStation[], radiusMm: number): number | undefined {
  const sorted = [...stations].sort((a, b) => a.radius_mm - b.radius_mm);
  for (let i = 0; i < sorted.length; i++) {
    const low = sorted[i];
    const high = sorted[i + 1];
    if (!low) break;
    if (Math.abs(low.radius_mm - radiusMm) < ROUNDING) return low.inner_gap_mm;
    if (high && radiusMm > low.radius_mm && radiusMm < high.radius_mm) {
      const share = (radiusMm - low.radius_mm) / (high.radius_mm - low.radius_mm);
      return low.inner_gap_mm + share * (high.inner_gap_mm - low.inner_gap_mm);
    }
  }
  return undefined;
}

function judge(leastMm: number): TyreGapValue["judgement"] {
  if (leastMm < GAP_LEAST_MM - ROUNDING) return "refuse";
  return leastMm < GAP_WANTED_MM - ROUNDING ? "flag" : "no problem found";
}

export function tyreGap(input: TyreGapInput): Answer<TyreGapValue> {
  const width =
    input.rim_inner_mm === undefined ? input.tyre_width_mm : tyreWidthOnRimMm(input.tyre_width_mm, input.rim_inner_mm);
  const radius = input.radius_mm ?? saggedRadiusMm(input.bsd_mm, input.tyre_width_mm);
  const widest = radius - width / 2;
  const refusals: Refusal[] = [];
  if (!(width > 0 && widest > 0)) {
    refusals.push({
      code: "cannot-close",
      at: "tyre_width_mm",
      given: input.tyre_width_mm,
      allowed: say("geometry.tyre-gap.more-than-0-and-less-than"),
      message: say("geometry.tyre-gap.a-tyre-mm-wide-does-not", { tyreWidthMm: input.tyre_width_mm, radius }),
    });
  }
  const inner = gapAtRadiusMm(input.stations, widest);
  if (inner === undefined && refusals.length === 0) {
    const radii = input.stations.map((s) => s.radius_mm);
    refusals.push({
      code: "measure-first",
      at: "stations",
      given: radii,
      allowed: say("geometry.tyre-gap.stations-on-both-sides-of-mm", { widest: widest.toFixed(1) }),
      message: say("geometry.tyre-gap.the-tyre-is-widest-mm-from", { widest: widest.toFixed(1) }),
    });
  }
  if (inner === undefined || refusals.length > 0) return refused(refusals);
  const guard = input.guard_over_tyre_mm !== undefined || input.guard_width_mm !== undefined;
  const over = input.guard_over_tyre_mm ?? (guard ? 14 : 0);
  const outer = guard ? Math.max(input.guard_width_mm ?? width, width) : width;
  const side = (inner - outer) / 2;
  const radial = (input.constrictions ?? []).map(({ name, from_axle_mm }) => ({
    name,
    gap_mm: from_axle_mm - radius - over,
  }));
  const least = Math.min(side, ...radial.map((r) => r.gap_mm));
  const value: TyreGapValue = {
    tyre_width_on_rim_mm: width,
    radius_mm: radius,
    widest_radius_mm: widest,
    inner_gap_there_mm: inner,
    side_gap_mm: side,
    radial_gaps: radial,
    least_gap_mm: least,
    judgement: judge(least),
  };
  return answered(value, {
    sources: ["m6-sagged-radius", "m9-tyre-clearance", "iso-4210-2-clearance"],
    bands: input.radius_mm === undefined ? radiusBand(radius) : {},
    cautions: gapCautions(value, input, guard),
  });
}

function radiusBand(radius: number): Record<string, Band> {
  const means = say("geometry.tyre-gap.bsd-2-width-is-good-to");
  return { radius_mm: { low: radius - SAGGED_RADIUS_HALF_BAND_MM, high: radius + SAGGED_RADIUS_HALF_BAND_MM, means } };
}

function gapCautions(value: TyreGapValue, input: TyreGapInput, guard: boolean): Caution[] {
  const cautions: Caution[] = [];
  const to = guard ? "guard" : "tyre";
  if (value.judgement === "refuse") {
    cautions.push({
      code: "gap-under-4",
      at: "value.least_gap_mm",
      message: say("geometry.tyre-gap.only-mm-to-the-under-4", { leastGapMm: value.least_gap_mm.toFixed(1), to }),
    });
  } else if (value.judgement === "flag") {
    cautions.push({
      code: "gap-under-6",
      at: "value.least_gap_mm",
      message: say("geometry.tyre-gap.mm-to-the-new-bicycles-keep", { leastGapMm: value.least_gap_mm.toFixed(1), to }),
    });
  }
  if (input.rim_inner_mm === undefined) {
    cautions.push({
      code: "rim-width-not-stated",
      at: "rim_inner_mm",
      message: say("geometry.tyre-gap.rim-width-not-stated-the-tyre"),
    });
  }
  return cautions;
}
