/**
 * On which grid do all starts and ends of a plan lie? If every time is a multiple of 0.25 h, so is every finish, and
 * a bound may be rounded up to the next one.
 * Inputs: times in hours.
 * Answer: the greatest step, in hours, of which all are multiples; 0 where they have none of 0.0001 h or more.
 */
const STEPS_PER_HOUR = 10_000;

export function timeGrid(timesH: readonly number[]): number {
  let step = 0;
  for (const h of timesH) {
    let a = Math.round(h * STEPS_PER_HOUR);
    if (Math.abs(h * STEPS_PER_HOUR - a) > 1e-4) return 0;
    let b = step;
    while (b > 0) [a, b] = [b, a % b];
    step = a;
  }
  return step / STEPS_PER_HOUR;
}

/** The bound, moved up to the grid. */
export function upToGrid(timeH: number, gridH: number): number {
  return gridH > 0 ? Math.ceil(timeH / gridH - 1e-5) * gridH : timeH;
}
