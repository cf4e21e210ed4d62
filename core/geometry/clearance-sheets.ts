/** The sheets `toe-clearance` and `tyre-gap`. Start values: the worked bicycle of M8 and Quayside's rear triangle. */
import type { NumberField, Sheet } from "../sheet/index.js";
import { type ToeClearanceInput, type ToeClearanceValue, toeClearance } from "./toe-clearance.js";
import { type TyreGapInput, type TyreGapValue, tyreGap } from "./tyre-gap.js";

const mm = (
  key: string,
  label: string,
  min: number,
  max: number,
  start: number,
  rest: Partial<NumberField> = {},
): NumberField => ({
  kind: "number",
  unit: "mm",
  key,
  label,
  min,
  max,
  start,
  ...rest,
});

export const toeClearanceSheet: Sheet<ToeClearanceInput, ToeClearanceValue> = {
  id: "toe-clearance",
  question: "How far is the toe from the front tyre or guard when the wheel is turned?",
  notes:
    "Measured straight forward from the pedal centre, crank level, parallel to the bicycle, over all turns of the bar up to 70 deg. " +
    "Tyre and guard are rings of round section. Shoe, toe clip and a loose guard are not in it.",
  fields: [
    mm("front_centre_horizontal_mm", "Front axle ahead of the BB, level", 150, 3000, 613.3),
    mm("front_axle_above_bb_mm", "Front axle above the BB", -300, 400, 58, {
      help: "BB drop + front radius - rear radius.",
    }),
    { ...mm("head_angle_deg", "Head angle", 40, 90, 71), unit: "deg" },
    mm("rake_mm", "Fork rake", -150, 250, 45),
    mm("front_radius_mm", "Front tyre radius", 50, 600, 346),
    mm("tyre_width_mm", "Tyre width", 10, 150, 35),
    mm("guard_over_tyre_mm", "Guard stands over the tyre by", 0, 60, 14, {
      optional: true,
      help: "Leave out without a guard.",
    }),
    mm("crank_mm", "Crank length", 50, 250, 170),
    mm("pedal_from_centre_mm", "Pedal centre from the centre plane", 50, 300, 137, {
      help: "Usually half the Q plus 50.",
    }),
  ],
  gives: [
    { key: "toe_clearance_mm", means: "Straight forward, negative where they overlap, null where they never meet" },
    { key: "at_steer_deg", means: "Turn of the bar at which it is least" },
    { key: "shortest_line_mm", means: "Shortest line in any direction" },
    { key: "shortest_at_steer_deg", means: "Turn of the bar at which that is least" },
  ],
  run: toeClearance,
};

export const tyreGapSheet: Sheet<TyreGapInput, TyreGapValue> = {
  id: "tyre-gap",
  question: "Does this tyre pass between the stays or blades, and with how much air?",
  notes:
    "Side gap at the tyre's widest radius, read between measured stations by straight line and never beyond them; radial gap to " +
    "bridges and crown. Wanted 6, least 4, to the guard where there is one. A wheel out of true or dish is not in it.",
  fields: [
    mm("bsd_mm", "Bead seat diameter", 200, 700, 584),
    mm("tyre_width_mm", "Tyre width, as named", 15, 130, 47),
    mm("rim_inner_mm", "Inner rim width", 8, 100, 23, { optional: true }),
    mm("radius_mm", "Loaded radius, if measured", 100, 450, 339, { optional: true }),
    {
      kind: "list",
      key: "stations",
      label: "Inner gaps",
      help: "Distance from the axle, and the clear width between the inner faces there.",
      of: [mm("radius_mm", "From the axle", 50, 600, 315.5), mm("inner_gap_mm", "Inner gap", 5, 250, 60)],
      minItems: 1,
      maxItems: 40,
      start: [
        { radius_mm: 300, inner_gap_mm: 64 },
        { radius_mm: 315.5, inner_gap_mm: 60 },
        { radius_mm: 329.5, inner_gap_mm: 55 },
        { radius_mm: 345, inner_gap_mm: 49 },
      ],
    },
    {
      kind: "list",
      key: "constrictions",
      label: "Bridges and crown",
      optional: true,
      of: [
        { kind: "text", key: "name", label: "Which", maxLength: 60, start: "brake bridge" },
        mm("from_axle_mm", "Nearest face from the axle", 50, 700, 366),
      ],
      minItems: 0,
      maxItems: 20,
      start: [{ name: "brake bridge", from_axle_mm: 366 }],
    },
    mm("guard_width_mm", "Guard width", 15, 150, 60, { optional: true }),
    mm("guard_over_tyre_mm", "Guard stands over the tyre by", 0, 60, 14, { optional: true }),
  ],
  gives: [
    { key: "side_gap_mm", means: "Air on each side, to the guard where there is one" },
    { key: "radial_gaps", means: "Air to each bridge or crown" },
    { key: "least_gap_mm", means: "The least of them" },
    { key: "judgement", means: "refuse under 4, flag from 4 to 6, else no problem found" },
    { key: "tyre_width_on_rim_mm", means: "Width on this rim" },
    { key: "radius_mm", means: "Loaded radius used" },
    { key: "widest_radius_mm", means: "Where the tyre is widest, from the axle" },
    { key: "inner_gap_there_mm", means: "Clear width there" },
  ],
  run: tyreGap,
};

export const clearanceSheets = [toeClearanceSheet, tyreGapSheet] as const;
