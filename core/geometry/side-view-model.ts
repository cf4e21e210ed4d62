/**
 * How does every measure follow from the layout of a bicycle? The fourteen unknowns, the equation of each measure
 * with its slopes, and the figures a builder asks for with theirs. Lengths mm, angles radians inside.
 *
 * Unknowns: seat angle SA, seat tube s, head-tube top (Tx, Ty), head angle HA, joint offset o, head tube, lower
 * stack, length L of the fork along the axis, rake r, rear axle behind the BB h, drop d, the two radii.
 * With a = (-cos HA, sin HA), n = (sin HA, cos HA), S = head tube + lower stack + L:
 *   C = s (-cos SA, sin SA)   X = T - o a   F = T - S a + r n   top tube = |X - C|   axle-to-crown = sqrt(L^2 + r^2)
 *   chainstay = sqrt(h^2 + d^2)   wheelbase = h + Fx   level: Fy - d - R_front + R_rear = 0
 * Source: M1.
 */
import { SIDE_VIEW_KEYS, USUAL_SD } from "./frame-measures.js";
import { trailFigures } from "./trail.js";

export const SA = 0;
export const SEAT_TUBE = 1;
export const TX = 2;
export const TY = 3;
export const HA = 4;
export const JOINT = 5;
export const HEAD_TUBE = 6;
export const LOWER_STACK = 7;
export const AXIS_LENGTH = 8;
export const RAKE = 9;
export const BACK = 10;
export const DROP = 11;
export const REAR_RADIUS = 12;
export const FRONT_RADIUS = 13;
export const UNKNOWNS = 14;

/** Rows 0 to 17 are the measures in the order of SIDE_VIEW_KEYS; the last one says that both tyres touch the ground. */
export const LEVEL_ROW = SIDE_VIEW_KEYS.length;
export const ROWS = LEVEL_ROW + 1;

const RAD = Math.PI / 180;

/** Step of each unknown that counts as 1 inside the solver: 0.3 deg or 1.5 mm. */
export const UNIT: Float64Array = Float64Array.from({ length: UNKNOWNS }, (_, i) =>
  i === SA || i === HA ? 0.3 * RAD : 1.5,
);

/** One standard deviation of each row, radians or mm. */
export const ROW_SD: Float64Array = Float64Array.from([
  ...SIDE_VIEW_KEYS.map((key) => USUAL_SD[key] * (key.endsWith("_deg") ? RAD : 1)),
  0.05,
]);

/** One and the same weight for every row, for landing on readings exactly: there the spread does not matter. */
export const EVEN_SD: Float64Array = Float64Array.from([
  ...SIDE_VIEW_KEYS.map((key) => (key.endsWith("_deg") ? 0.3 * RAD : 1.5)),
  1.5,
]);

/** Read a number of an array by place; a place that is not there gives NaN, which shows. */
export const at = (a: ArrayLike<number>, i: number): number => a[i] ?? Number.NaN;

/** The points that the rows share. */
interface Layout {
  readonly dx: number;
  readonly dy: number;
  readonly fx: number;
  readonly fy: number;
  readonly cosH: number;
  readonly sinH: number;
  readonly cosS: number;
  readonly sinS: number;
  readonly span: number;
}

export function layout(p: Float64Array): Layout {
  const cosH = Math.cos(at(p, HA));
  const sinH = Math.sin(at(p, HA));
  const cosS = Math.cos(at(p, SA));
  const sinS = Math.sin(at(p, SA));
  const o = at(p, JOINT);
  const s = at(p, SEAT_TUBE);
  const r = at(p, RAKE);
  const span = at(p, HEAD_TUBE) + at(p, LOWER_STACK) + at(p, AXIS_LENGTH);
  const tx = at(p, TX);
  const ty = at(p, TY);
  return {
    dx: tx + o * cosH + s * cosS,
    dy: ty - o * sinH - s * sinS,
    fx: tx + span * cosH + r * sinH,
    fy: ty - span * sinH + r * cosH,
    cosH,
    sinH,
    cosS,
    sinS,
    span,
  };
}

/** Measures that read one unknown directly: row to unknown. */
export const DIRECT: ReadonlyMap<number, number> = new Map([
  [0, SEAT_TUBE],
  [3, HA],
  [4, SA],
  [5, HEAD_TUBE],
  [6, JOINT],
  [7, LOWER_STACK],
  [9, RAKE],
  [11, DROP],
  [12, REAR_RADIUS],
  [13, FRONT_RADIUS],
]);

/** What should measure `row` read on this bicycle? The slopes to the unknowns are written into `d`, when it is given. */
export function rowValue(row: number, p: Float64Array, l: Layout, d?: Float64Array): number {
  d?.fill(0);
  const direct = DIRECT.get(row);
  if (direct !== undefined) {
    if (d) d[direct] = 1;
    return at(p, direct);
  }
  switch (row) {
    case 1: {
      const length = Math.hypot(l.dx, l.dy);
      if (d) addJoint(p, l, l.dx / length, l.dy / length, d);
      return length;
    }
    case 2: {
      if (d) {
        const square = l.dx * l.dx + l.dy * l.dy;
        addJoint(p, l, -l.dy / square, l.dx / square, d);
      }
      return Math.atan2(l.dy, l.dx);
    }
    case 8:
      return leg(p, AXIS_LENGTH, RAKE, d);
    case 10:
      return leg(p, BACK, DROP, d);
    case 14:
      if (d) {
        addFrontAxle(p, l, 1, 0, d);
        d[BACK] = 1;
      }
      return at(p, BACK) + l.fx;
    case 15: {
      const length = Math.hypot(l.fx, l.fy);
      if (d) addFrontAxle(p, l, l.fx / length, l.fy / length, d);
      return length;
    }
    case 16:
      if (d) {
        d[REAR_RADIUS] = 1;
        d[DROP] = -1;
      }
      return at(p, REAR_RADIUS) - at(p, DROP);
    case 17:
      return leg(p, TX, TY, d);
    default:
      if (d) {
        addFrontAxle(p, l, 0, 1, d);
        d[DROP] = -1;
        d[FRONT_RADIUS] = -1;
        d[REAR_RADIUS] = 1;
      }
      return l.fy - at(p, DROP) - at(p, FRONT_RADIUS) + at(p, REAR_RADIUS);
  }
}

function leg(p: Float64Array, i: number, j: number, d: Float64Array | undefined): number {
  const length = Math.hypot(at(p, i), at(p, j));
  if (d) {
    d[i] = at(p, i) / length;
    d[j] = at(p, j) / length;
  }
  return length;
}

/** Slopes of gx·Fx + gy·Fy. */
function addFrontAxle(p: Float64Array, l: Layout, gx: number, gy: number, d: Float64Array): void {
  const r = at(p, RAKE);
  const along = gx * l.cosH - gy * l.sinH;
  d[TX] = gx;
  d[TY] = gy;
  d[HEAD_TUBE] = along;
  d[LOWER_STACK] = along;
  d[AXIS_LENGTH] = along;
  d[RAKE] = gx * l.sinH + gy * l.cosH;
  d[HA] = gx * (r * l.cosH - l.span * l.sinH) - gy * (l.span * l.cosH + r * l.sinH);
}

/** Slopes of gx·Dx + gy·Dy, D = X - C from the seat cluster to the crossing at the head tube. */
function addJoint(p: Float64Array, l: Layout, gx: number, gy: number, d: Float64Array): void {
  const o = at(p, JOINT);
  const s = at(p, SEAT_TUBE);
  d[TX] = gx;
  d[TY] = gy;
  d[JOINT] = gx * l.cosH - gy * l.sinH;
  d[HA] = -o * (gx * l.sinH + gy * l.cosH);
  d[SEAT_TUBE] = gx * l.cosS - gy * l.sinS;
  d[SA] = -s * (gx * l.sinS + gy * l.cosS);
}

export interface SideFigures {
  readonly stack_mm: number;
  readonly reach_mm: number;
  readonly effective_top_tube_mm: number;
  readonly effective_top_tube_at_crossing_mm: number;
  readonly front_centre_mm: number;
  readonly front_centre_horizontal_mm: number;
  readonly wheelbase_mm: number;
  readonly bb_height_mm: number;
  readonly trail_mm: number;
  readonly mechanical_trail_mm: number;
  readonly wheel_flop_mm: number;
}

/** Which figures does this layout have? */
export function sideFigures(p: Float64Array): SideFigures {
  const l = layout(p);
  const cot = l.cosS / l.sinS;
  const trail = trailFigures(at(p, FRONT_RADIUS), at(p, HA), at(p, RAKE));
  const o = at(p, JOINT);
  return {
    stack_mm: at(p, TY),
    reach_mm: at(p, TX),
    effective_top_tube_mm: at(p, TX) + at(p, TY) * cot,
    effective_top_tube_at_crossing_mm: at(p, TX) + o * l.cosH + (at(p, TY) - o * l.sinH) * cot,
    front_centre_mm: Math.hypot(l.fx, l.fy),
    front_centre_horizontal_mm: l.fx,
    wheelbase_mm: at(p, BACK) + l.fx,
    bb_height_mm: at(p, REAR_RADIUS) - at(p, DROP),
    trail_mm: trail.trailMm,
    mechanical_trail_mm: trail.mechanicalTrailMm,
    wheel_flop_mm: trail.wheelFlopMm,
  };
}

export const FIGURE_KEYS = [
  "stack_mm",
  "reach_mm",
  "effective_top_tube_mm",
  "effective_top_tube_at_crossing_mm",
  "front_centre_mm",
  "front_centre_horizontal_mm",
  "wheelbase_mm",
  "bb_height_mm",
  "trail_mm",
  "mechanical_trail_mm",
  "wheel_flop_mm",
] as const satisfies readonly (keyof SideFigures)[];

/** Slopes of every figure to the unknowns, in the order of FIGURE_KEYS. */
export function figureSlopes(p: Float64Array): Float64Array[] {
  const l = layout(p);
  const rows = FIGURE_KEYS.map(() => new Float64Array(UNKNOWNS));
  const [stack, reach, ett, ettCrossing, fc, fch, wheelbase, height, trail, mechanical, flop] = rows;
  const cot = l.cosS / l.sinS;
  const csc2 = 1 / (l.sinS * l.sinS);
  const o = at(p, JOINT);
  const radius = at(p, FRONT_RADIUS);
  const n = radius * l.cosH - at(p, RAKE);
  if (stack) stack[TY] = 1;
  if (reach) reach[TX] = 1;
  if (ett) {
    ett[TX] = 1;
    ett[TY] = cot;
    ett[SA] = -at(p, TY) * csc2;
  }
  if (ettCrossing) {
    ettCrossing[TX] = 1;
    ettCrossing[TY] = cot;
    ettCrossing[JOINT] = l.cosH - l.sinH * cot;
    ettCrossing[HA] = -o * (l.sinH + l.cosH * cot);
    ettCrossing[SA] = -(at(p, TY) - o * l.sinH) * csc2;
  }
  if (fc) rowValue(15, p, l, fc);
  if (fch) addFrontAxle(p, l, 1, 0, fch);
  if (wheelbase) rowValue(14, p, l, wheelbase);
  if (height) rowValue(16, p, l, height);
  if (trail) {
    trail[FRONT_RADIUS] = l.cosH / l.sinH;
    trail[RAKE] = -1 / l.sinH;
    trail[HA] = -radius - (n * l.cosH) / (l.sinH * l.sinH);
  }
  if (mechanical) {
    mechanical[FRONT_RADIUS] = l.cosH;
    mechanical[RAKE] = -1;
    mechanical[HA] = -radius * l.sinH;
  }
  if (flop) {
    flop[FRONT_RADIUS] = l.cosH * l.cosH;
    flop[RAKE] = -l.cosH;
    flop[HA] = -radius * l.sinH * l.cosH - n * l.sinH;
  }
  return rows;
}
