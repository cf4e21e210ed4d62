/**
 * Where does the brake rotor run, and how far inside the dropout face does the tab's plane lie?
 *
 * Rotor seat from the centre plane = OLN_ref / 2 - offset: 135 / 2 - 15.3 = 52.2 rear, 100 / 2 - 10.5 = 39.5 front.
 * The tab's reference plane stays OLN_ref / 2 from centre (67.5 rear, 50 front) whatever the dropouts are set to, so it
 * lies (gap between dropout faces - OLN_ref) / 2 inside each face: 3.5 for flat faces at 142, 5.0 where inner
 * shoulders of 1.5 make them stand at 145. Forgetting it moves the caliper by more than its slots allow (about 2).
 * Sources: M15 and the rulings on hub widths; offsets from memory of six-bolt hub practice, not re-read.
 */

import { type Answer, answered, type Caution, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";

export interface RotorPlaneInput {
  readonly end: "rear" | "front";
  /** Between the inner faces of the dropouts (or inserts) as set, mm; left out = the reference width. */
  readonly dropout_gap_mm?: number;
  /** Measured rotor seat inside the hub's end face, where the hub differs from the usual. */
  readonly rotor_offset_mm?: number;
}

export interface RotorPlaneValue {
  readonly reference_oln_mm: number;
  /** Rotor seat (outer face of the hub's rotor flange) from the centre plane. */
  readonly rotor_plane_from_centre_mm: number;
  /** Plane that the tab's holes and face are dimensioned from. */
  readonly tab_plane_from_centre_mm: number;
  /** Positive: the tab plane lies inside the dropout face by this much. */
  readonly tab_plane_inside_dropout_face_mm: number;
  readonly dropout_gap_mm: number;
}

const USUAL = {
  rear: { oln: 135, offset: 15.3 },
  front: { oln: 100, offset: 10.5 },
} as const;
/** Half of what the slots of a caliper allow (common practice, no source), mm. */
const CALIPER_TRAVEL_MM = 2;

export function rotorPlane(input: RotorPlaneInput): Answer<RotorPlaneValue> {
  const { oln, offset } = USUAL[input.end];
  const gap = input.dropout_gap_mm ?? oln;
  const seat = input.rotor_offset_mm ?? offset;
  const refusals: Refusal[] = [];
  if (!(gap >= 60 && gap <= 250)) {
    refusals.push({
      code: "out-of-range",
      at: "dropout_gap_mm",
      given: gap,
      allowed: say("mechanics.rotor-plane.60-to-250-mm"),
      message: say("mechanics.rotor-plane.dropouts-mm-apart-hold-no-hub", { gap }),
    });
  }
  if (!(seat >= 0 && seat < oln / 2)) {
    refusals.push({
      code: "out-of-range",
      at: "rotor_offset_mm",
      given: seat,
      allowed: say("mechanics.rotor-plane.0-to-under-mm", { oln: oln / 2 }),
      message: say("mechanics.rotor-plane.a-rotor-seat-mm-inside-the", { seat, oln: oln / 2 }),
    });
  }
  if (refusals.length > 0) return refused(refusals);
  const inside = (gap - oln) / 2;
  const cautions: Caution[] = [];
  if (Math.abs(inside) > CALIPER_TRAVEL_MM) {
    cautions.push({
      code: "tab-plane-not-at-dropout",
      at: "dropout_gap_mm",
      message: say("mechanics.rotor-plane.the-tab-plane-lies-mm-the", {
        inside: Math.abs(inside).toFixed(1),
        inside2: inside > 0 ? "inside" : "outside",
      }),
    });
  }
  if (input.rotor_offset_mm === undefined) {
    cautions.push({
      code: "measure-hub",
      at: "rotor_offset_mm",
      message: say("mechanics.rotor-plane.the-rotor-seat-is-taken-where"),
    });
  }
  return answered(
    {
      reference_oln_mm: oln,
      rotor_plane_from_centre_mm: oln / 2 - seat,
      tab_plane_from_centre_mm: oln / 2,
      tab_plane_inside_dropout_face_mm: inside,
      dropout_gap_mm: gap,
    },
    { sources: ["m15-rotor-plane"], cautions },
  );
}
