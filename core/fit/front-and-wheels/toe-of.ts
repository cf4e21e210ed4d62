/**
 * How near does the toe come to the front tyre or guard on this build? M8 with the parts chosen.
 * Pedal centre at Q / 2 + 50; Q grows with the spindle beyond the crank's own. A guard stands 14 over the tyre.
 * Source: fit-m8-toe.
 */
import { toeDistances } from "../../geometry/index.js";
import type { Caution } from "../../quantity/index.js";
import type { Measure } from "../settle.js";
import { type FitView, partAt } from "../view.js";

/** How far a guard stands over the tyre in the toe figures (trade 7, M8), mm. */
export const GUARD_OVER_TYRE_MM = 14;
const PEDAL_BEYOND_HALF_Q_MM = 50;

export type ToeFigure =
  | {
      readonly kind: "known";
      readonly mm: number;
      readonly toGuard: boolean;
      readonly bareMm?: number;
      readonly cautions: readonly Caution[];
    }
  /** The wheel never comes before the pedal. */
  | { readonly kind: "never" }
  | { readonly kind: "unknown"; readonly measure: Measure };

export function toeOf(view: FitView): ToeFigure {
  const { after, frontRadiusMm, rearRadiusMm } = view;
  const crank = partAt(view, "crank", "crank");
  const tyre = partAt(view, "tyre_front", "tyre");
  const fork = partAt(view, "fork", "fork");
  const unknown = (what: string, at: string, tool?: Measure["tool"]): ToeFigure => ({
    kind: "unknown",
    measure: { what, at, ...(tool === undefined ? {} : { tool }) },
  });
  if (crank === undefined)
    return unknown("Choose a crank, so that the toe clearance can be judged", "build.chosen.crank");
  if (tyre?.ports.size === undefined || frontRadiusMm === undefined)
    return unknown("Choose a front tyre, so that the toe clearance can be judged", "build.chosen.tyre_front");
  if (rearRadiusMm === undefined)
    return unknown("Choose a rear tyre, so that the side view can be worked out", "build.chosen.tyre_rear");
  if (fork?.ports.rake === undefined || after === undefined)
    return unknown("Measure frame and fork, so that the toe clearance can be judged", "donor.measured", "tape");
  const { length, q, design_spindle } = crank.ports;
  if (length === undefined)
    return unknown("Measure the crank, centre to centre", `bin.parts.${crank.id}.ports.length`, "rule");
  if (q === undefined)
    return unknown(
      "Measure the width over both pedal faces of the cranks (Q)",
      `bin.parts.${crank.id}.ports.q`,
      "rule",
    );
  const bb = partAt(view, "bb", "bb");
  const spindle = bb?.ports.spindle_length;
  const longer = spindle === undefined || design_spindle === undefined ? undefined : spindle - design_spindle;
  const cautions: Caution[] =
    longer === undefined
      ? [
          {
            code: "q-of-the-crank",
            at: "build.chosen.bb",
            message: "The spindle is not known: Q is taken as the crank's own.",
          },
        ]
      : [];
  const input = {
    front_centre_horizontal_mm: after.front_centre_horizontal_mm,
    front_axle_above_bb_mm: after.bb_drop_mm + frontRadiusMm - rearRadiusMm,
    head_angle_deg: after.head_angle_deg,
    rake_mm: fork.ports.rake,
    front_radius_mm: frontRadiusMm,
    tyre_width_mm: tyre.ports.size.widthMm,
    crank_mm: length,
    pedal_from_centre_mm: (q + (longer ?? 0)) / 2 + PEDAL_BEYOND_HALF_Q_MM,
  };
  const bare = toeDistances(input).toe_clearance_mm;
  const guarded = view.at.guards !== undefined || view.resolved.intent.guards;
  if (!guarded) return bare === null ? { kind: "never" } : { kind: "known", mm: bare, toGuard: false, cautions };
  const mm = toeDistances({ ...input, guard_over_tyre_mm: GUARD_OVER_TYRE_MM }).toe_clearance_mm;
  if (mm === null) return { kind: "never" };
  return { kind: "known", mm, toGuard: true, ...(bare === null ? {} : { bareMm: bare }), cautions };
}
