/**
 * How near does the toe come to the front tyre or guard on this build? M8 with the parts chosen.
 * Pedal centre at Q / 2 + 50; Q grows with the spindle beyond the crank's own. A guard stands 14 over the tyre.
 * Source: fit-m8-toe.
 */

import { toeDistances } from "../../geometry/index.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { spindleLonger } from "../drive-and-brakes/ring-on-crank.js";
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
  if (crank === undefined) return unknown(say("fit-front.toe-of.choose-a-crank-so-that-the"), "build.chosen.crank");
  if (tyre?.ports.size === undefined || frontRadiusMm === undefined)
    return unknown(say("fit-front.toe-of.choose-a-front-tyre-so-that"), "build.chosen.tyre_front");
  if (rearRadiusMm === undefined)
    return unknown(say("fit-front.toe-of.choose-a-rear-tyre-so-that"), "build.chosen.tyre_rear");
  if (fork?.ports.rake === undefined || after === undefined)
    return unknown(say("fit-front.toe-of.measure-frame-and-fork-so-that"), "donor.measured", "tape");
  const { length, q } = crank.ports;
  if (length === undefined)
    return unknown(
      say("fit-front.toe-of.measure-the-crank-centre-to-centre"),
      `bin.parts.${crank.id}.ports.length`,
      "rule",
    );
  if (q === undefined)
    return unknown(say("fit-front.toe-of.measure-the-width-over-both-pedal"), `bin.parts.${crank.id}.ports.q`, "rule");
  const bb = partAt(view, "bb", "bb");
  const longer = spindleLonger(crank, bb);
  const cautions: Caution[] =
    longer === undefined
      ? [
          {
            code: "q-of-the-crank",
            at: "build.chosen.bb",
            message: say("fit-front.toe-of.the-spindle-is-not-known-q"),
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
