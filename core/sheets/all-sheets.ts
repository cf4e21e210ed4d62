/** Which sheets are there? Every calculation that has a door of its own, in the order a builder meets them. */
import { armGapSheet, chainlineSheet, chainOnFixedCentresSheet, dishSheet, hoseLengthSheet } from "../drive/index.js";
import { forkSwapSheet, sideViewSheet, toeClearanceSheet, tyreGapSheet } from "../geometry/index.js";
import { frontRetentionSheet, rotorPlaneSheet } from "../mechanics/index.js";
import { scheduleSheet } from "../plan/index.js";
import { cockpitSheet, saddleSheet, steererSheet, steererThreadedSheet } from "../position/index.js";
import type { AnySheet } from "../sheet/index.js";
import { surveySheet } from "../survey/index.js";

export const ALL_SHEETS: readonly AnySheet[] = [
  sideViewSheet,
  forkSwapSheet,
  surveySheet,
  cockpitSheet,
  saddleSheet,
  steererSheet,
  steererThreadedSheet,
  chainlineSheet,
  chainOnFixedCentresSheet,
  dishSheet,
  armGapSheet,
  toeClearanceSheet,
  tyreGapSheet,
  frontRetentionSheet,
  rotorPlaneSheet,
  hoseLengthSheet,
  scheduleSheet,
];

const BY_ID: ReadonlyMap<string, AnySheet> = new Map(ALL_SHEETS.map((sheet) => [sheet.id, sheet]));

export function sheetById(id: string): AnySheet | undefined {
  return BY_ID.get(id);
}
