import { MEASUREMENT_KINDS } from "./measurement-kinds.js";
import {
  DEGREES,
  directUnknown,
  newSideModel,
  placePoints,
  predictMeasurement,
  U,
  UNKNOWN_COUNT,
} from "./side-model.js";
import type { ReadSurvey } from "./survey-input.js";

/** An ordinary diamond frame, only to begin the search from (common practice, no source). In the order of U. */
const ORDINARY: readonly number[] = [
  285,
  433,
  340,
  73 / DEGREES,
  520,
  560,
  1 / DEGREES,
  72 / DEGREES,
  140,
  390,
  45,
  35,
  30,
];

/**
 * From which frame should the search begin?
 *
 * An ordinary frame is brought to the size of this one by the middle one of the ratios measured/ordinary of all
 * lengths, so that one wrong reading does not move it. Unknowns that are read directly then take their reading, where it
 * is within 0.6 to 1.7 of the guess (angles within 12, slope within 25 degrees).
 *
 * @param without indices of measurements to leave out. @param plain true: take no direct readings.
 */
export function startGeometry(read: ReadSurvey, without: readonly number[] = [], plain = false): Float64Array {
  const u = Float64Array.from(ORDINARY);
  const model = newSideModel();
  model.u.set(u);
  model.lowerStack = 12;
  placePoints(model);
  const ratios: number[] = [];
  read.kinds.forEach((kind, i) => {
    if (without.includes(i) || MEASUREMENT_KINDS[kind]?.unit === "deg") return;
    const direct = directUnknown(kind);
    if (direct === U.rake || direct === U.headTube || direct >= U.topJoint) return;
    ratios.push((read.values[i] ?? 0) / predictMeasurement(model, kind, undefined));
  });
  ratios.sort((a, b) => a - b);
  const size = ratios[Math.floor(ratios.length / 2)] ?? 1;
  for (let j = 0; j < UNKNOWN_COUNT; j++) {
    if (j !== U.seatAngle && j !== U.headAngle && j !== U.slope) u[j] = (u[j] ?? 0) * size;
  }
  if (!plain) {
    read.kinds.forEach((kind, i) => {
      const direct = directUnknown(kind);
      if (direct < 0 || without.includes(i)) return;
      const value = read.values[i] ?? 0;
      const guess = u[direct] ?? 0;
      if (MEASUREMENT_KINDS[kind]?.unit === "deg") {
        const limit = direct === U.slope ? 25 : 12;
        if (Math.abs(value - guess * DEGREES) <= limit) u[direct] = value / DEGREES;
      } else if (value >= 0.6 * guess && value <= 1.7 * guess) {
        u[direct] = value;
      }
    });
  }
  if (read.topJointMm !== undefined) u[U.topJoint] = read.topJointMm;
  if (read.downJointMm !== undefined) u[U.downJoint] = read.downJointMm;
  return u;
}
