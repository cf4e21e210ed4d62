/** The sheet `side-view`: the door to `sideView` for page, command and call. */
import type { Sheet } from "../sheet/index.js";
import { MEASURE_FIELDS, type SideViewInput } from "./frame-measures.js";
import { type SideViewValue, sideView } from "./side-view.js";

export const sideViewSheet: Sheet<SideViewInput, SideViewValue> = {
  id: "side-view",
  question: "What is the geometry of this frame and fork, from the measurements given?",
  notes:
    "Side view, x forward, y up, BB centre at the origin, both tyres on level ground. Any sufficient set will do. The fourteen frame " +
    "measures lay the bicycle out where they are given, then level ground, then the whole-bicycle measures; every reading that is " +
    "not needed is checked against the rest and named where it is off by more than 3.29 of its standard deviation. " +
    "Where the first readings fix the bicycle only roughly, all of them count by their spread; where only the ground disagrees, the readings stand. " +
    "For many readings that should share the blame, use the survey.",
  fields: MEASURE_FIELDS.map((f) => ({ ...f, optional: true })),
  gives: [
    { key: "stack_mm", means: "Height of the head-tube top above the BB" },
    { key: "reach_mm", means: "Level distance of the head-tube top ahead of the BB" },
    { key: "effective_top_tube_mm", means: "Level, from the head-tube top back to the seat-tube centre line" },
    { key: "effective_top_tube_at_crossing_mm", means: "The same from the crossing of top tube and head tube" },
    { key: "front_centre_mm", means: "Straight, BB to front axle" },
    { key: "front_centre_horizontal_mm", means: "Its level part" },
    { key: "wheelbase_mm", means: "Level distance between the axles" },
    { key: "bb_height_mm", means: "BB centre above the ground" },
    { key: "trail_mm", means: "Trail on the ground, positive behind the axis" },
    { key: "mechanical_trail_mm", means: "Trail square to the steering axis" },
    { key: "wheel_flop_mm", means: "trail sin H cos H" },
    { key: "measures", means: "Every measure that the set fixes, given or not" },
    { key: "checked", means: "Readings that were not needed, with what the others foretell" },
  ],
  run: sideView,
};
