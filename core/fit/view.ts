/** What does a joint look at? The resolved build, the geometry before and after, and the ports as remedies leave them. */
import type { Part, PartKind, PartOfKind, Place, ResolvedBuild } from "../workshop/index.js";

/** The frame in the `fork-swap` sheet's parameters, from the survey; sd in the same keys. */
export interface FrameFacts {
  readonly seat_tube_cc_mm: number;
  readonly top_tube_actual_mm: number;
  readonly top_tube_slope_deg: number;
  readonly head_angle_deg: number;
  readonly seat_angle_deg: number;
  readonly head_tube_mm: number;
  readonly top_tube_below_head_tube_top_mm: number;
  readonly lower_stack_mm: number;
  readonly axle_to_crown_mm: number;
  readonly rake_mm: number;
  readonly chainstay_mm: number;
  readonly bb_drop_mm: number;
  readonly rear_radius_mm: number;
  readonly front_radius_mm: number;
}

/** Side-view figures of the bicycle, keys of the `fork-swap` sheet. */
export interface SideFigures {
  readonly rotation_nose_up_deg: number;
  readonly head_angle_deg: number;
  readonly seat_angle_deg: number;
  readonly bb_height_mm: number;
  readonly bb_drop_mm: number;
  readonly stack_mm: number;
  readonly reach_mm: number;
  readonly effective_top_tube_mm: number;
  readonly front_centre_mm: number;
  readonly front_centre_horizontal_mm: number;
  readonly wheelbase_mm: number;
  readonly trail_mm: number;
  readonly mechanical_trail_mm: number;
  readonly wheel_flop_mm: number;
}

export interface FitView {
  readonly resolved: ResolvedBuild;
  /** Parts by place for this evaluation (a candidate may stand in for the chosen one). */
  readonly at: Readonly<Partial<Record<Place, Part>>>;
  /** undefined where the survey is not sufficient: the joints that need it say measure first. */
  readonly frame?: FrameFacts;
  readonly frameSd?: Partial<FrameFacts>;
  readonly before?: SideFigures;
  readonly after?: SideFigures;
  /** Loaded radii after, by M6 (BSD/2 + width) or as entered. */
  readonly frontRadiusMm?: number;
  readonly rearRadiusMm?: number;
  /** Spacers under the stem that the build stands on (chosen or the cockpit's best), and the seatpost's extension along the seat tube. */
  readonly spacersBelowMm?: number;
  readonly postExtensionMm?: number;
  /** Port values changed by remedies reckoned with, e.g. {"frame.rear_spacing": 135}. */
  readonly ports: Readonly<Record<string, number>>;
}

/** The part in a place, if it is of this kind. */
export function partAt<K extends PartKind>(view: FitView, place: Place, kind: K): PartOfKind<K> | undefined {
  const part = view.at[place];
  return part?.kind === kind ? (part as PartOfKind<K>) : undefined;
}
