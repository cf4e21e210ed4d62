/**
 * How far is the toe from the front tyre or guard when the wheel is turned?
 *
 * The tyre is a ring of round section: centre circle of radius R - w/2, section radius w/2 (+ what a guard stands over
 * it). The front wheel turns about the steering axis; from the pedal centre, crank level and forward, a line runs
 * straight forward, parallel to the bicycle, until it meets the ring. The least such distance over all turns of the bar
 * is the answer (the standard's way, from memory, not re-read); the shortest line in any direction stands beside it.
 * Frame: x forward, y left, z up from the BB. Both sides are alike: the left pedal is
 * worked, with the bar turned right, which brings the rear of the tyre to it.
 * Limits: bar turned up to `lockDeg`; bar ends, toe clips, shoe shape and a drooping guard are not in it.
 * Sources: M8; limits 100 and 89 mm: ISO 4210-2 (from memory), 16 CFR 1512.17(d).
 */

import { type Answer, answered, type Caution, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { type BicyclePoints, RAD } from "./bicycle-points.js";

export interface ToeClearanceInput {
  /** Front axle ahead of the BB, level, mm. */
  readonly front_centre_horizontal_mm: number;
  /** Front axle above the BB, mm (BB drop + front radius - rear radius). */
  readonly front_axle_above_bb_mm: number;
  readonly head_angle_deg: number;
  readonly rake_mm: number;
  readonly front_radius_mm: number;
  readonly tyre_width_mm: number;
  /** How far a guard stands over the tyre all round; left out = no guard. Usual 14. */
  readonly guard_over_tyre_mm?: number;
  readonly crank_mm: number;
  /** Pedal centre from the centre plane; usual Q/2 + 50 (common practice, no source). */
  readonly pedal_from_centre_mm: number;
}

export interface ToeClearanceValue {
  /** Straight forward from the pedal centre; negative = they overlap. `null`: the wheel never comes before the pedal. */
  readonly toe_clearance_mm: number | null;
  /** Turn of the bar at which it is least. */
  readonly at_steer_deg: number | null;
  /** Shortest line from the pedal centre to the tyre or guard, in any direction. */
  readonly shortest_line_mm: number;
  readonly shortest_at_steer_deg: number;
  /** Limits of new bicycles without foot retention: ISO city class and the United States rule. */
  readonly wanted_mm: 100;
  readonly least_mm: 89;
}

const LOCK_DEG = 70;
const TWO_PLACES = 0.01;

type Vec = readonly [number, number, number];

/** Centre of the wheel and direction of its axle when the bar is turned by `steerRad` to the right: its rear comes left. */
function turnedWheel(input: ToeClearanceInput, steerRad: number): { readonly centre: Vec; readonly axle: Vec } {
  const head = input.head_angle_deg * RAD;
  const sin = Math.sin(head);
  const cos = Math.cos(head);
  const c = Math.cos(steerRad);
  const s = Math.sin(steerRad);
  // axis up (-cos, 0, sin), forward of it (sin, 0, cos), left (0, 1, 0); turning right carries forward to right
  const out: Vec = [sin * c, -s, cos * c];
  const footX = input.front_centre_horizontal_mm - input.rake_mm * sin;
  const footZ = input.front_axle_above_bb_mm - input.rake_mm * cos;
  return {
    centre: [footX + input.rake_mm * out[0], input.rake_mm * out[1], footZ + input.rake_mm * out[2]],
    axle: [sin * s, c, cos * s],
  };
}

/** Turn of the bar at which the rear of the ring, at BB height, stands as far out as the pedal; the lock where it never does. */
function steerToPedalDeg(input: ToeClearanceInput, ringMm: number): number {
  const beyond = (steerDeg: number): boolean => {
    const { centre, axle } = turnedWheel(input, steerDeg * RAD);
    const level = Math.hypot(axle[0], axle[1]);
    const sin = -centre[2] / (ringMm * level);
    const back = ringMm * Math.sqrt(Math.max(1 - sin * sin, 0));
    // the level line in the wheel's plane is (axle y, -axle x) / level, forward; the crossing at BB height also shifts by -sin * (axle x, axle y) axle z / level
    const side = centre[1] + (back * axle[0]) / level - (ringMm * sin * axle[1] * axle[2]) / level;
    return side >= input.pedal_from_centre_mm;
  };
  if (!beyond(LOCK_DEG)) return LOCK_DEG;
  let [low, high] = [0, LOCK_DEG];
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (beyond(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Distance of a point at BB height from the surface of the ring; negative inside it. Run some thousand times an answer. */
function fromRing(px: number, py: number, centre: Vec, axle: Vec, ringMm: number, sectionMm: number): number {
  const x = px - centre[0];
  const y = py - centre[1];
  const z = -centre[2];
  const along = x * axle[0] + y * axle[1] + z * axle[2];
  const across = Math.sqrt(Math.max(x * x + y * y + z * z - along * along, 0));
  const out = across - ringMm;
  return Math.sqrt(out * out + along * along) - sectionMm;
}

/** Least value of a smooth function between two places, by golden section. */
function leastBetween(f: (t: number) => number, from: number, to: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  let [c, d] = [b - share * (b - a), a + share * (b - a)];
  let [fc, fd] = [f(c), f(d)];
  while (b - a > 1e-5) {
    if (fc <= fd) {
      [b, d, fd] = [d, c, fc];
      c = b - share * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + share * (b - a);
      fd = f(d);
    }
  }
  return (a + b) / 2;
}

/** The two distances as plain numbers, without limits. Angles degrees, lengths mm. */
export function toeDistances(
  input: ToeClearanceInput,
): Pick<ToeClearanceValue, "toe_clearance_mm" | "at_steer_deg" | "shortest_line_mm" | "shortest_at_steer_deg"> {
  const ring = input.front_radius_mm - input.tyre_width_mm / 2;
  const section = input.tyre_width_mm / 2 + (input.guard_over_tyre_mm ?? 0);
  const pedal: Vec = [input.crank_mm, input.pedal_from_centre_mm, 0];
  const reachMm = input.front_centre_horizontal_mm + ring + section;
  const ahead = (steerDeg: number): number => {
    const { centre, axle } = turnedWheel(input, steerDeg * RAD);
    let x = pedal[0];
    let gap = fromRing(pedal[0], pedal[1], centre, axle, ring, section);
    if (gap < 0) {
      // overlapping: back out of the ring to its rear face
      for (let i = 0; i < 500 && gap < -1e-9; i++) {
        x += gap;
        gap = fromRing(x, pedal[1], centre, axle, ring, section);
      }
      return x - pedal[0];
    }
    // no part of the ring is nearer than `gap`, so a step of `gap` never passes its surface
    for (let i = 0; i < 2000 && gap > 1e-9; i++) {
      x += gap;
      if (x > reachMm) return Number.POSITIVE_INFINITY;
      gap = fromRing(x, pedal[1], centre, axle, ring, section);
    }
    return gap < 1e-4 ? x - pedal[0] : Number.POSITIVE_INFINITY;
  };
  const straight = (steerDeg: number): number => {
    const { centre, axle } = turnedWheel(input, steerDeg * RAD);
    return fromRing(pedal[0], pedal[1], centre, axle, ring, section);
  };
  const least = (f: (t: number) => number, from: number, to: number, steps: number): readonly [number, number] => {
    const step = (to - from) / steps;
    let best = from;
    let value = Number.POSITIVE_INFINITY;
    for (let k = 0; k <= steps; k++) {
      const v = f(from + k * step);
      if (v < value) [best, value] = [from + k * step, v];
    }
    if (value === Number.POSITIVE_INFINITY) return [best, value];
    const at = leastBetween(f, Math.max(from, best - step), Math.min(to, best + step));
    return f(at) < value ? [at, f(at)] : [best, value];
  };
  // The line meets the tyre only while its rear stands at the pedal's side; through a wheel turned further it passes.
  const there = steerToPedalDeg(input, ring);
  const width = Math.max((2 * section) / (ring * Math.max(Math.cos(there * RAD), 0.2)) / RAD, 0.2);
  const [steer, forward] = least(ahead, Math.max(0, there - width), Math.min(LOCK_DEG, there + width), 48);
  const [shortAt, short] = least(straight, 0, LOCK_DEG, 35);
  const met = Number.isFinite(forward);
  return {
    toe_clearance_mm: met ? forward : null,
    at_steer_deg: met ? steer : null,
    shortest_line_mm: short,
    shortest_at_steer_deg: shortAt,
  };
}

/** How far is the toe from the tyre or guard? mm; cautions under 100 and under 89. */
export function toeClearance(input: ToeClearanceInput): Answer<ToeClearanceValue> {
  const refusals: Refusal[] = [];
  const needPositive = (key: keyof ToeClearanceInput): void => {
    const given = input[key];
    if (given === undefined || (Number.isFinite(given) && given > 0)) return;
    refusals.push({
      code: "out-of-range",
      at: key,
      given,
      allowed: say("geometry.toe-clearance.more-than-0"),
      message: say("geometry.toe-clearance.is-it-must-be-more-than", { key, given }),
    });
  };
  needPositive("front_centre_horizontal_mm");
  needPositive("front_radius_mm");
  needPositive("tyre_width_mm");
  needPositive("crank_mm");
  needPositive("pedal_from_centre_mm");
  if (input.tyre_width_mm >= input.front_radius_mm) {
    refusals.push({
      code: "cannot-close",
      at: "tyre_width_mm",
      given: input.tyre_width_mm,
      allowed: say("geometry.toe-clearance.under-the-front-radius-mm", { frontRadiusMm: input.front_radius_mm }),
      message: say("geometry.toe-clearance.a-tyre-mm-wide-does-not", {
        tyreWidthMm: input.tyre_width_mm,
        frontRadiusMm: input.front_radius_mm,
      }),
    });
  }
  if (refusals.length > 0) return refused(refusals);
  const value: ToeClearanceValue = { ...toeDistances(input), wanted_mm: 100, least_mm: 89 };
  return answered(value, {
    sources: ["m8-toe-clearance", "iso-4210-2-toe", "cfr-1512-17"],
    cautions: toeCautions(value, input),
  });
}

function toeCautions(value: ToeClearanceValue, input: ToeClearanceInput): Caution[] {
  const gap = value.toe_clearance_mm;
  if (gap === null || gap >= value.wanted_mm - TWO_PLACES) return [];
  const to = input.guard_over_tyre_mm === undefined ? "tyre" : "guard";
  const shown = say("geometry.toe-clearance.toe-to-is-mm-at-deg", {
    to,
    gap: gap.toFixed(0),
    atSteerDeg: (value.at_steer_deg ?? 0).toFixed(0),
  });
  if (gap < value.least_mm - TWO_PLACES) {
    return [
      {
        code: "toe-overlap",
        at: "value.toe_clearance_mm",
        message: say("geometry.toe-clearance.under-89-which-new-bicycles-must", { shown }),
      },
    ];
  }
  return [
    {
      code: "toe-near",
      at: "value.toe_clearance_mm",
      message: say("geometry.toe-clearance.under-100-which-new-city-bicycles", { shown }),
    },
  ];
}

/** The same for a bicycle laid out by `bicyclePoints`. */
export function toeInputOf(
  points: BicyclePoints,
  rest: Pick<ToeClearanceInput, "tyre_width_mm" | "guard_over_tyre_mm" | "crank_mm" | "pedal_from_centre_mm">,
): ToeClearanceInput {
  return {
    front_centre_horizontal_mm: points.frontAxle.x,
    front_axle_above_bb_mm: points.frontAxle.y,
    head_angle_deg: points.headAngleDeg,
    rake_mm: points.rakeMm,
    front_radius_mm: points.frontRadiusMm,
    ...rest,
  };
}
