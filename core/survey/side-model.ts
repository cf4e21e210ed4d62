import { say } from "../texts/say.js";
import { MEASUREMENT_KINDS } from "./measurement-kinds.js";

/** Places of the unknowns in the vector of the model. Lengths in mm, angles in radians. */
export const U = {
  bbHeight: 0,
  rearBehind: 1,
  rearHeight: 2,
  seatAngle: 3,
  seatTube: 4,
  topTube: 5,
  slope: 6,
  headAngle: 7,
  headTube: 8,
  axleToCrown: 9,
  rake: 10,
  topJoint: 11,
  downJoint: 12,
} as const;
export const UNKNOWN_COUNT = 13;

/** The unknowns in workshop words, in the order of U. */
export const UNKNOWN_LABELS: readonly string[] = [
  say("survey.side-model.bb-height"),
  say("survey.side-model.rear-axle-behind-the-bb"),
  say("survey.side-model.rear-axle-height"),
  say("survey.measurement-kinds.seat-angle"),
  say("survey.side-model.seat-tube"),
  say("survey.side-model.top-tube"),
  say("survey.measurement-kinds.slope-of-the-top-tube"),
  say("survey.measurement-kinds.head-angle"),
  say("survey.side-model.head-tube"),
  say("survey.side-model.axle-to-crown"),
  say("survey.measurement-kinds.fork-rake"),
  say("survey.measurement-kinds.top-tube-joint-below-the-head"),
  say("survey.measurement-kinds.down-tube-joint-above-the-head"),
];

export const DEGREES = 180 / Math.PI;
const N = UNKNOWN_COUNT;

/** A point of the frame from the BB centre, x forward, y up, with its slopes by every unknown. */
export interface ModelPoint {
  x: number;
  y: number;
  readonly dx: Float64Array;
  readonly dy: Float64Array;
}

const point = (): ModelPoint => ({ x: 0, y: 0, dx: new Float64Array(N), dy: new Float64Array(N) });

/** The points of one frame in side view. Fill it with `placePoints`. */
export interface SideModel {
  readonly u: Float64Array;
  readonly bb: ModelPoint;
  readonly rear: ModelPoint;
  readonly cluster: ModelPoint;
  readonly joint: ModelPoint;
  readonly top: ModelPoint;
  readonly bottom: ModelPoint;
  readonly downJoint: ModelPoint;
  readonly front: ModelPoint;
  lowerStack: number;
}

export function newSideModel(): SideModel {
  return {
    u: new Float64Array(N),
    bb: point(),
    rear: point(),
    cluster: point(),
    joint: point(),
    top: point(),
    bottom: point(),
    downJoint: point(),
    front: point(),
    lowerStack: 0,
  };
}

/**
 * Where do the points of the frame lie, from the unknowns in `model.u`?
 *
 * Steering axis upwards a = (−cos HA, sin HA), its forward normal n = (sin HA, cos HA). Seat cluster S = ST (−cos SA,
 * sin SA); joint J = S + TT (cos slope, sin slope); head tube top = J + d1 a; bottom = top − HT a; front axle =
 * bottom − (lower stack + sqrt(AC² − rake²)) a + rake n. Slopes are analytic.
 *
 * @returns false where the rake is not shorter than axle to crown: no such fork.
 */
export function placePoints(model: SideModel): boolean {
  const { u } = model;
  const height = u[U.bbHeight] as number;
  const behind = u[U.rearBehind] as number;
  const st = u[U.seatTube] as number;
  const tt = u[U.topTube] as number;
  const ht = u[U.headTube] as number;
  const ac = u[U.axleToCrown] as number;
  const rake = u[U.rake] as number;
  const d1 = u[U.topJoint] as number;
  const d2 = u[U.downJoint] as number;
  const sinS = Math.sin(u[U.seatAngle] as number);
  const cosS = Math.cos(u[U.seatAngle] as number);
  const sinH = Math.sin(u[U.headAngle] as number);
  const cosH = Math.cos(u[U.headAngle] as number);
  const sinT = Math.sin(u[U.slope] as number);
  const cosT = Math.cos(u[U.slope] as number);
  // A grossly wrong reading may bend the frame to a shape that none has; the fit must still say which one it is.
  if (!(ac > Math.abs(rake))) return false;

  const { rear, cluster, joint, top, bottom, downJoint, front } = model;
  rear.x = -behind;
  rear.y = (u[U.rearHeight] as number) - height;
  rear.dx[U.rearBehind] = -1;
  rear.dy[U.rearHeight] = 1;
  rear.dy[U.bbHeight] = -1;

  cluster.x = -st * cosS;
  cluster.y = st * sinS;
  cluster.dx[U.seatAngle] = st * sinS;
  cluster.dy[U.seatAngle] = st * cosS;
  cluster.dx[U.seatTube] = -cosS;
  cluster.dy[U.seatTube] = sinS;

  copySlopes(cluster, joint);
  joint.x = cluster.x + tt * cosT;
  joint.y = cluster.y + tt * sinT;
  joint.dx[U.topTube] = cosT;
  joint.dy[U.topTube] = sinT;
  joint.dx[U.slope] = -tt * sinT;
  joint.dy[U.slope] = tt * cosT;

  alongAxis(joint, top, d1, sinH, cosH);
  top.dx[U.topJoint] = -cosH;
  top.dy[U.topJoint] = sinH;

  alongAxis(joint, bottom, d1 - ht, sinH, cosH);
  bottom.dx[U.topJoint] = -cosH;
  bottom.dy[U.topJoint] = sinH;
  bottom.dx[U.headTube] = cosH;
  bottom.dy[U.headTube] = -sinH;

  alongAxis(joint, downJoint, d1 - ht + d2, sinH, cosH);
  downJoint.dx[U.topJoint] = -cosH;
  downJoint.dy[U.topJoint] = sinH;
  downJoint.dx[U.headTube] = cosH;
  downJoint.dy[U.headTube] = -sinH;
  downJoint.dx[U.downJoint] = -cosH;
  downJoint.dy[U.downJoint] = sinH;

  const along = Math.sqrt(ac * ac - rake * rake);
  alongAxis(joint, front, d1 - ht - model.lowerStack - along, sinH, cosH);
  front.x += rake * sinH;
  front.y += rake * cosH;
  front.dx[U.headAngle] = (front.dx[U.headAngle] as number) + rake * cosH;
  front.dy[U.headAngle] = (front.dy[U.headAngle] as number) - rake * sinH;
  front.dx[U.topJoint] = -cosH;
  front.dy[U.topJoint] = sinH;
  front.dx[U.headTube] = cosH;
  front.dy[U.headTube] = -sinH;
  front.dx[U.axleToCrown] = (ac / along) * cosH;
  front.dy[U.axleToCrown] = (-ac / along) * sinH;
  front.dx[U.rake] = (-rake / along) * cosH + sinH;
  front.dy[U.rake] = (rake / along) * sinH + cosH;
  return true;
}

function copySlopes(from: ModelPoint, to: ModelPoint): void {
  to.dx.set(from.dx);
  to.dy.set(from.dy);
}

function alongAxis(from: ModelPoint, to: ModelPoint, distance: number, sinH: number, cosH: number): void {
  copySlopes(from, to);
  to.x = from.x - distance * cosH;
  to.y = from.y + distance * sinH;
  to.dx[U.headAngle] = distance * sinH;
  to.dy[U.headAngle] = distance * cosH;
}

/**
 * What would this measurement read on the frame of the model? mm or degrees.
 * @param kindIndex place in MEASUREMENT_KINDS. @param slopes filled with the 13 slopes where given.
 * @returns NaN where two points fall together and no distance has a direction.
 */
export function predictMeasurement(model: SideModel, kindIndex: number, slopes: Float64Array | undefined): number {
  const { u, bb, rear, cluster, top, bottom, downJoint, front } = model;
  const direct = DIRECT[kindIndex] as number;
  if (direct >= 0) {
    const factor = FACTOR[kindIndex] as number;
    if (slopes) {
      slopes.fill(0);
      slopes[direct] = factor;
    }
    return (u[direct] as number) * factor;
  }
  switch (SPAN[kindIndex] as number) {
    case SPANS.frontHeight:
      if (slopes) {
        slopes.set(front.dy);
        slopes[U.bbHeight] = 1;
      }
      return (u[U.bbHeight] as number) + front.y;
    case SPANS.wheelbase:
      if (slopes) {
        slopes.set(front.dx);
        slopes[U.rearBehind] = 1;
      }
      return front.x - rear.x;
    case SPANS.chainstay:
      return distance(bb, rear, slopes);
    case SPANS.frontCentre:
      return distance(bb, front, slopes);
    case SPANS.bbTop:
      return distance(bb, top, slopes);
    case SPANS.bbBottom:
      return distance(bb, bottom, slopes);
    case SPANS.rearCluster:
      return distance(rear, cluster, slopes);
    case SPANS.rearTop:
      return distance(rear, top, slopes);
    case SPANS.frontCluster:
      return distance(front, cluster, slopes);
    case SPANS.frontTop:
      return distance(front, top, slopes);
    case SPANS.downTube:
      return distance(bb, downJoint, slopes);
    default:
      return Number.NaN;
  }
}

const SPANS = {
  frontHeight: 0,
  wheelbase: 1,
  chainstay: 2,
  frontCentre: 3,
  bbTop: 4,
  bbBottom: 5,
  rearCluster: 6,
  rearTop: 7,
  frontCluster: 8,
  frontTop: 9,
  downTube: 10,
} as const;
const SPAN_NAMES: Readonly<Record<string, number>> = {
  front_axle_height_mm: SPANS.frontHeight,
  wheelbase_mm: SPANS.wheelbase,
  chainstay_mm: SPANS.chainstay,
  front_centre_mm: SPANS.frontCentre,
  bb_to_head_tube_top_mm: SPANS.bbTop,
  bb_to_head_tube_bottom_mm: SPANS.bbBottom,
  rear_axle_to_seat_cluster_mm: SPANS.rearCluster,
  rear_axle_to_head_tube_top_mm: SPANS.rearTop,
  front_axle_to_seat_cluster_mm: SPANS.frontCluster,
  front_axle_to_head_tube_top_mm: SPANS.frontTop,
  down_tube_cc_mm: SPANS.downTube,
};
const SPAN = Int32Array.from(MEASUREMENT_KINDS, (k) => SPAN_NAMES[k.name] ?? -1);
const FACTOR = Float64Array.from(MEASUREMENT_KINDS, (k) => (k.unit === "deg" ? DEGREES : 1));

const DIRECT_NAMES: Readonly<Record<string, number>> = {
  bb_height_mm: U.bbHeight,
  rear_axle_height_mm: U.rearHeight,
  seat_angle_deg: U.seatAngle,
  seat_tube_cc_mm: U.seatTube,
  top_tube_actual_mm: U.topTube,
  top_tube_slope_deg: U.slope,
  head_angle_deg: U.headAngle,
  head_tube_mm: U.headTube,
  axle_to_crown_mm: U.axleToCrown,
  rake_mm: U.rake,
  top_tube_below_head_tube_top_mm: U.topJoint,
  down_tube_joint_above_head_tube_bottom_mm: U.downJoint,
};
const DIRECT = Int32Array.from(MEASUREMENT_KINDS, (k) => DIRECT_NAMES[k.name] ?? -1);

/** Which unknown is read directly by this kind of measurement? -1 where it is none. */
export function directUnknown(kindIndex: number): number {
  return DIRECT[kindIndex] ?? -1;
}

function distance(a: ModelPoint, b: ModelPoint, slopes: Float64Array | undefined): number {
  const x = b.x - a.x;
  const y = b.y - a.y;
  const length = Math.sqrt(x * x + y * y);
  if (length < 1e-9) return Number.NaN;
  if (slopes) {
    for (let j = 0; j < N; j++) {
      slopes[j] =
        (x * ((b.dx[j] as number) - (a.dx[j] as number)) + y * ((b.dy[j] as number) - (a.dy[j] as number))) / length;
    }
  }
  return length;
}
