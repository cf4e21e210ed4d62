/** The sheet `side-view`: the door to `sideView` for page, command and call. */

import type { Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { MEASURE_FIELDS, type SideViewInput } from "./frame-measures.js";
import { type SideViewValue, sideView } from "./side-view.js";

export const sideViewSheet: Sheet<SideViewInput, SideViewValue> = {
  id: "side-view",
  question: say("geometry.side-view-sheet.what-is-the-geometry-of-this"),
  notes: say("geometry.side-view-sheet.side-view-x-forward-y-up"),
  fields: MEASURE_FIELDS.map((f) => ({ ...f, optional: true })),
  gives: [
    { key: "stack_mm", means: say("geometry.fork-swap-sheet.height-of-the-head-tube-top") },
    { key: "reach_mm", means: say("geometry.fork-swap-sheet.level-distance-of-the-head-tube") },
    { key: "effective_top_tube_mm", means: say("geometry.fork-swap-sheet.level-from-the-head-tube-top") },
    { key: "effective_top_tube_at_crossing_mm", means: say("geometry.fork-swap-sheet.the-same-from-the-crossing-of") },
    { key: "front_centre_mm", means: say("geometry.fork-swap-sheet.straight-bb-to-front-axle") },
    { key: "front_centre_horizontal_mm", means: say("geometry.fork-swap-sheet.its-level-part") },
    { key: "wheelbase_mm", means: say("geometry.fork-swap-sheet.level-distance-between-the-axles") },
    { key: "bb_height_mm", means: say("geometry.fork-swap-sheet.bb-centre-above-the-ground") },
    { key: "trail_mm", means: say("geometry.side-view-sheet.trail-on-the-ground-positive-behind") },
    { key: "mechanical_trail_mm", means: say("geometry.fork-swap-sheet.trail-square-to-the-steering-axis") },
    { key: "wheel_flop_mm", means: say("geometry.fork-swap-sheet.trail-sin-h-cos-h") },
    { key: "measures", means: say("geometry.side-view-sheet.every-measure-that-the-set-fixes") },
    { key: "checked", means: say("geometry.side-view-sheet.readings-that-were-not-needed-with") },
  ],
  run: sideView,
};
