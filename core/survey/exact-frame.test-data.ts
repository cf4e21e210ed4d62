/**
 * Only for the tests of this folder: all readings of a frame without error, worked out the other way round from the
 * model (method M1: from the front axle up the steering axis), so that the two can check each other.
 */
export interface ExactFrame {
  readonly head: number;
  readonly seat: number;
  readonly chainstay: number;
  readonly drop: number;
  readonly rearRadius: number;
  readonly frontRadius: number;
  readonly crown: number;
  readonly rake: number;
  readonly headTube: number;
  readonly lowerStack: number;
  readonly frontCentre: number;
  readonly seatTube: number;
  readonly topJoint: number;
  readonly downJoint: number;
}

/** Every reading that the survey takes, by its name. */
export function exactReadings(f: ExactFrame): Record<string, number> {
  const rad = Math.PI / 180;
  const a = [-Math.cos(f.head * rad), Math.sin(f.head * rad)] as const;
  const n = [Math.sin(f.head * rad), Math.cos(f.head * rad)] as const;
  type Point = readonly [number, number];
  const go = (p: Point, d: Point, s: number): Point => [p[0] + s * d[0], p[1] + s * d[1]];
  const gap = (p: Point, q: Point): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
  const bb: Point = [0, 0];
  const rear: Point = [-Math.sqrt(f.chainstay ** 2 - f.drop ** 2), f.drop];
  const height = f.drop + f.frontRadius - f.rearRadius;
  const front: Point = [Math.sqrt(f.frontCentre ** 2 - height ** 2), height];
  const foot = go(front, n, -f.rake);
  const crown = go(foot, a, Math.sqrt(f.crown ** 2 - f.rake ** 2));
  const bottom = go(crown, a, f.lowerStack);
  const top = go(bottom, a, f.headTube);
  const joint = go(top, a, -f.topJoint);
  const down = go(bottom, a, f.downJoint);
  const cluster: Point = [-f.seatTube * Math.cos(f.seat * rad), f.seatTube * Math.sin(f.seat * rad)];
  return {
    seat_tube_cc_mm: f.seatTube,
    top_tube_actual_mm: gap(cluster, joint),
    top_tube_slope_deg: Math.atan2(joint[1] - cluster[1], joint[0] - cluster[0]) / rad,
    head_angle_deg: f.head,
    seat_angle_deg: f.seat,
    head_tube_mm: f.headTube,
    axle_to_crown_mm: f.crown,
    rake_mm: f.rake,
    bb_height_mm: f.rearRadius - f.drop,
    rear_axle_height_mm: f.rearRadius,
    front_axle_height_mm: f.frontRadius,
    chainstay_mm: f.chainstay,
    wheelbase_mm: front[0] - rear[0],
    front_centre_mm: gap(bb, front),
    bb_to_head_tube_top_mm: gap(bb, top),
    bb_to_head_tube_bottom_mm: gap(bb, bottom),
    rear_axle_to_seat_cluster_mm: gap(rear, cluster),
    rear_axle_to_head_tube_top_mm: gap(rear, top),
    front_axle_to_seat_cluster_mm: gap(front, cluster),
    front_axle_to_head_tube_top_mm: gap(front, top),
    down_tube_cc_mm: gap(bb, down),
    top_tube_below_head_tube_top_mm: f.topJoint,
    down_tube_joint_above_head_tube_bottom_mm: f.downJoint,
    // Not readings: what the tests compare with.
    "=stack_mm": top[1],
    "=reach_mm": top[0],
    "=trail_mm": (f.frontRadius * Math.cos(f.head * rad) - f.rake) / Math.sin(f.head * rad),
  };
}

/** The frame of the worked example of method M4 in the trade's page. */
export const WORKED_FRAME: ExactFrame = {
  head: 71,
  seat: 73,
  chainstay: 442,
  drop: 58,
  rearRadius: 346,
  frontRadius: 346,
  crown: 392,
  rake: 45,
  headTube: 145,
  lowerStack: 12,
  frontCentre: 616,
  seatTube: 490,
  topJoint: 35,
  downJoint: 32,
};

/** Donors of the three scenarios (trade's page 7.1 to 7.3), as measured, with one blunder each. Invented for the demo. */
export const DONORS = {
  quayside: {
    lowerHeadsetStackMm: 12,
    rearRadiusMm: 346,
    frontRadiusMm: 346,
    measured: {
      chainstay: 442,
      seat_tube_cc: 491,
      top_tube_cc: 537,
      top_tube_joint_below_head_top: 35,
      down_tube_cc: 625,
      down_tube_joint_above_head_bottom: 32,
      head_tube: 145,
      front_centre: 615,
      wheelbase: 1052,
      bb_height: 289,
      fork_ac: 392,
      fork_rake: 45,
      head_angle: 71.2,
      seat_angle: 72.8,
      rear_axle_to_head_top: 971,
      front_axle_to_head_top: 549,
      bb_to_head_top: 683,
      seat_cluster_to_rear_axle: 505,
    },
  },
  moorside: {
    lowerHeadsetStackMm: 13,
    rearRadiusMm: 339,
    frontRadiusMm: 339,
    measured: {
      chainstay: 430,
      seat_tube_cc: 534,
      top_tube_cc: 549,
      top_tube_joint_below_head_top: 28,
      down_tube_cc: 614,
      down_tube_joint_above_head_bottom: 30,
      head_tube: 135,
      front_centre: 592,
      wheelbase: 1032,
      bb_height: 268,
      fork_ac: 377,
      fork_rake: 50,
      head_angle: 72.4,
      seat_angle: 73.2,
      rear_axle_to_head_top: 940,
      front_axle_to_head_top: 523,
      bb_to_head_top: 672,
      seat_cluster_to_rear_axle: 517,
    },
  },
  canalside: {
    lowerHeadsetStackMm: 12.5,
    rearRadiusMm: 328.5,
    frontRadiusMm: 328.5,
    measured: {
      chainstay: 431,
      seat_tube_cc: 430,
      top_tube_cc: 537,
      top_tube_joint_below_head_top: 35,
      down_tube_cc: 608,
      down_tube_joint_above_head_bottom: 30,
      head_tube: 115,
      front_centre: 612,
      wheelbase: 1040,
      bb_height: 296,
      fork_ac: 405,
      fork_rake: 42,
      head_angle: 70.6,
      seat_angle: 72.4,
      rear_axle_to_head_top: 956,
      front_axle_to_head_top: 533,
      bb_to_head_top: 651,
      seat_cluster_to_rear_axle: 466,
    },
  },
} as const;
