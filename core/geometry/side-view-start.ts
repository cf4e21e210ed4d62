/**
 * From which rough bicycle may the search for the layout begin? Given measures as given, gaps filled from the rest
 * or from an ordinary bicycle. The fill never shows in an answer: the fit replaces all that the measures fix.
 */
import { RAD } from "./bicycle-points.js";
import type { SideViewInput } from "./frame-measures.js";
import {
  AXIS_LENGTH,
  BACK,
  DROP,
  FRONT_RADIUS,
  HA,
  HEAD_TUBE,
  JOINT,
  LOWER_STACK,
  RAKE,
  REAR_RADIUS,
  SA,
  SEAT_TUBE,
  TX,
  TY,
  UNKNOWNS,
} from "./side-view-model.js";

/** Guesses that replace the ordinary ones where nothing was given. */
export interface Guess {
  readonly headAngleDeg?: number;
  readonly seatAngleDeg?: number;
  readonly slopeDeg?: number;
  /** BB drop as a part of the chainstay. */
  readonly dropShare?: number;
  readonly rakeMm?: number;
  /** Axle-to-crown minus front radius. */
  readonly forkOverTyreMm?: number;
  readonly headTubeMm?: number;
  /** Joint offset as a part of the head tube. */
  readonly jointShare?: number;
  readonly frontMinusRearMm?: number;
}

const leg = (hypotenuse: number, side: number): number =>
  Math.sqrt(Math.max(hypotenuse * hypotenuse - side * side, 0.04 * hypotenuse * hypotenuse));

export function startLayout(input: SideViewInput, guess: Guess = {}): Float64Array {
  const height = input.bb_height_mm;
  const larger = guess.frontMinusRearMm ?? 0;
  const rear =
    input.rear_radius_mm ??
    (height !== undefined && input.bb_drop_mm !== undefined ? height + input.bb_drop_mm : undefined) ??
    (input.front_radius_mm !== undefined ? input.front_radius_mm - larger : undefined) ??
    (height !== undefined ? height + 55 : 340);
  const front = input.front_radius_mm ?? rear + larger;
  const stay = input.chainstay_mm ?? 1.28 * rear;
  const drop =
    input.bb_drop_mm ??
    (height !== undefined && guess.dropShare === undefined ? rear - height : (guess.dropShare ?? 0.13) * stay);
  const head = (input.head_angle_deg ?? guess.headAngleDeg ?? 71.5) * RAD;
  const seat = (input.seat_angle_deg ?? guess.seatAngleDeg ?? 73) * RAD;
  const headTube = input.head_tube_mm ?? guess.headTubeMm ?? 130;
  const lower = input.lower_stack_mm ?? 12;
  const rake = input.rake_mm ?? guess.rakeMm ?? 45;
  const axis = leg(input.axle_to_crown_mm ?? front + (guess.forkOverTyreMm ?? 45), rake);
  const joint = input.top_tube_below_head_tube_top_mm ?? (guess.jointShare ?? 0.25) * headTube;
  const back = leg(stay, drop);
  const frontY = drop + front - rear;
  const span = headTube + lower + axis;
  const cosH = Math.cos(head);
  const sinH = Math.sin(head);

  const { seat_tube_cc_mm: seatTube, top_tube_actual_mm: topTube, bb_to_head_tube_top_mm: diagonal } = input;
  const slope = input.top_tube_slope_deg ?? guess.slopeDeg;
  let ty = frontY + span * sinH - rake * cosH;
  let tx = 0.7 * ty;
  const frontX =
    input.wheelbase_mm !== undefined && (input.chainstay_mm !== undefined || input.front_centre_mm === undefined)
      ? input.wheelbase_mm - back
      : input.front_centre_mm !== undefined
        ? leg(input.front_centre_mm, frontY)
        : undefined;
  if (seatTube !== undefined && topTube !== undefined) {
    const clusterY = seatTube * Math.sin(seat);
    const rise =
      slope !== undefined
        ? Math.sin(slope * RAD)
        : Math.max(-0.8, Math.min(0.8, (ty - joint * sinH - clusterY) / topTube));
    tx = topTube * Math.sqrt(1 - rise * rise) - seatTube * Math.cos(seat) - joint * cosH;
    ty = clusterY + topTube * rise + joint * sinH;
  } else if (frontX !== undefined) tx = frontX - span * cosH - rake * sinH;
  else if (diagonal !== undefined) tx = leg(diagonal, ty);
  else if (topTube !== undefined) tx = topTube * Math.cos((slope ?? 3) * RAD) - 0.3 * ty - joint * cosH;

  const p = new Float64Array(UNKNOWNS);
  p[SA] = seat;
  p[SEAT_TUBE] = seatTube ?? (ty - joint * sinH - (topTube ?? 550) * Math.sin((slope ?? 3) * RAD)) / Math.sin(seat);
  p[TX] = tx;
  p[TY] = ty;
  p[HA] = head;
  p[JOINT] = joint;
  p[HEAD_TUBE] = headTube;
  p[LOWER_STACK] = lower;
  p[AXIS_LENGTH] = axis;
  p[RAKE] = rake;
  p[BACK] = back;
  p[DROP] = drop;
  p[REAR_RADIUS] = rear;
  p[FRONT_RADIUS] = front;
  return p;
}

/** Which other beginnings could lead to another bicycle with the same readings? None where all angles and the drop are known. */
export function otherGuesses(input: SideViewInput): Guess[] {
  const guesses: Guess[] = [];
  const dropKnown =
    input.bb_drop_mm !== undefined || (input.bb_height_mm !== undefined && input.rear_radius_mm !== undefined);
  if (!dropKnown) guesses.push({ dropShare: -0.12 }, { dropShare: 0.3 });
  if (input.head_angle_deg === undefined) guesses.push({ headAngleDeg: 62 }, { headAngleDeg: 80 });
  if (input.top_tube_slope_deg === undefined) guesses.push({ slopeDeg: -15 }, { slopeDeg: 20 });
  if (input.seat_angle_deg === undefined) guesses.push({ seatAngleDeg: 65 }, { seatAngleDeg: 80 });
  if (input.rear_radius_mm === undefined || input.front_radius_mm === undefined) {
    guesses.push({ frontMinusRearMm: -60 }, { frontMinusRearMm: 60 });
  }
  return guesses;
}

const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23] as const;

/** Part of the unit interval in which draw `n` lies, evenly spread (van der Corput). */
function spreadOut(n: number, base: number): number {
  let part = 0;
  let weight = 1 / base;
  for (let left = n; left > 0; left = Math.floor(left / base)) {
    part += weight * (left % base);
    weight /= base;
  }
  return part;
}

/** Beginnings spread over all ordinary bicycles, for sets on which the usual ones fail. Always the same ones. */
export const SPREAD_GUESSES: readonly Guess[] = Array.from({ length: 32 }, (_, k) => {
  const [head, seat, slope, drop, rake, fork, tube, joint, larger] = PRIMES.map((base) => spreadOut(k + 1, base));
  const between = (low: number, high: number, part: number | undefined): number => low + (high - low) * (part ?? 0.5);
  return {
    headAngleDeg: between(63, 78, head),
    seatAngleDeg: between(68, 79, seat),
    slopeDeg: between(-15, 22, slope),
    dropShare: between(-0.05, 0.25, drop),
    rakeMm: between(15, 80, rake),
    forkOverTyreMm: between(15, 110, fork),
    headTubeMm: between(70, 240, tube),
    jointShare: between(0.02, 0.6, joint),
    frontMinusRearMm: between(-40, 40, larger),
  };
});
