/**
 * When is the workshop open? Windows of equal length on given days, clock zero at the start of the first.
 * Inputs: days (rising, first evening's day number first), length of a window in hours (over 0, up to 24).
 * Answer: start of window i in clock hours; the first window that ends at or after a time; where an operation of
 *   h hours fits first.
 * Past the listed days the list is carried on in its own rhythm, so that a plan that runs over can say by how much;
 * `listed` says how many windows were really given.
 */
import { at } from "./at.js";

/** Hours by which a piece may overrun a window through rounding: 0.36 ms. */
export const CLOCK_EPS_H = 1e-7;

export interface Place {
  readonly startH: number;
  readonly endH: number;
  /** Window of the start and of the end, first = 0; they differ only where work is cut at closing time. */
  readonly window: number;
  readonly endWindow: number;
}

/** So many windows in so many days, again and again. */
export interface Rhythm {
  readonly windows: number;
  readonly days: number;
}

export interface Calendar {
  readonly listed: number;
  readonly lengthH: number;
  /** Listed days and the block that carries them on. */
  readonly days: readonly number[];
  readonly rhythm: Rhythm;
  /** Start of window i in clock hours from the start of the first. */
  readonly startOf: (window: number) => number;
  /** First window that ends at or after the time. */
  readonly windowAt: (clockH: number) => number;
  /** Hours the shop is open between clock zero and the time. */
  readonly openHoursBefore: (clockH: number) => number;
  /** Clock time at which so many open hours have passed. */
  readonly clockAfterOpenHours: (openH: number) => number;
}

/** Shortest block of days that repeats itself through the whole list (3 days in 7, say); one single day: weekly. */
export function rhythmOf(days: readonly number[]): Rhythm {
  for (let k = 1; k < days.length; k++) {
    const step = at(days, k) - at(days, 0);
    if (days.every((d, i) => i + k >= days.length || Math.abs(at(days, i + k) - d - step) < 1e-9)) {
      return { windows: k, days: step };
    }
  }
  return { windows: 1, days: 7 };
}

export function makeCalendar(days: readonly number[], lengthH: number, rhythm: Rhythm = rhythmOf(days)): Calendar {
  const first = at(days, 0);
  const starts = days.map((d) => (d - first) * 24);
  const startOf = (window: number): number => {
    while (starts.length <= window) {
      // carried on from the window one rhythm earlier
      const from = Math.max(starts.length - rhythm.windows, 0);
      starts.push(at(starts, from) + rhythm.days * 24);
    }
    return at(starts, window);
  };
  const windowAt = (clockH: number): number => {
    while (startOf(starts.length - 1) + lengthH < clockH - CLOCK_EPS_H) startOf(starts.length);
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (at(starts, mid) + lengthH >= clockH - CLOCK_EPS_H) high = mid;
      else low = mid + 1;
    }
    return low;
  };
  return {
    listed: days.length,
    lengthH,
    days,
    rhythm,
    startOf,
    windowAt,
    openHoursBefore: (clockH) => {
      const w = windowAt(clockH);
      return w * lengthH + Math.min(Math.max(clockH - startOf(w), 0), lengthH);
    },
    clockAfterOpenHours: (openH) => {
      const w = Math.max(Math.ceil((openH - CLOCK_EPS_H) / lengthH) - 1, 0);
      return startOf(w) + openH - w * lengthH;
    },
  };
}

/** Clock time of the first possible start at or after a time; whole pieces need handsOnH <= calendar.lengthH. */
export function firstStartAt(calendar: Calendar, fromH: number, handsOnH: number, cutAtClosing: boolean): number {
  let w = calendar.windowAt(fromH);
  // cut work starts wherever a moment of the evening is left, whole work only where all of it is
  const room = cutAtClosing ? Math.min(handsOnH, 2 * CLOCK_EPS_H) : handsOnH;
  for (; ; w++) {
    const startH = Math.max(fromH, calendar.startOf(w));
    if (startH + room <= calendar.startOf(w) + calendar.lengthH + CLOCK_EPS_H) return startH;
  }
}

/** First place for an operation in one piece, at or after a time. Needs handsOnH <= calendar.lengthH. */
export function placeWhole(calendar: Calendar, fromH: number, handsOnH: number): Place {
  if (handsOnH > calendar.lengthH + CLOCK_EPS_H) throw new RangeError("operation is longer than a window");
  const startH = firstStartAt(calendar, fromH, handsOnH, false);
  let window = calendar.windowAt(startH);
  const endH = startH + handsOnH;
  // at the seam of two windows that touch, work belongs to the later one
  if (endH > calendar.startOf(window) + calendar.lengthH + CLOCK_EPS_H) window++;
  return { startH, endH, window, endWindow: window };
}

/** First place for an operation that may be put down at closing time and taken up at the next opening. */
export function placeCut(calendar: Calendar, fromH: number, handsOnH: number): Place {
  const startH = firstStartAt(calendar, fromH, handsOnH, true);
  let window = calendar.windowAt(startH);
  if (handsOnH === 0) return { startH, endH: startH, window, endWindow: window };
  if (startH >= calendar.startOf(window) + calendar.lengthH - CLOCK_EPS_H) window++;
  const openH = window * calendar.lengthH + Math.max(startH - calendar.startOf(window), 0);
  const endH = calendar.clockAfterOpenHours(openH + handsOnH);
  return { startH, endH, window, endWindow: calendar.windowAt(endH) };
}

/** Last place for an operation in one piece that ends by a time; undefined where there is none. */
export function placeWholeBefore(calendar: Calendar, byH: number, handsOnH: number): Place | undefined {
  for (let w = calendar.windowAt(byH); w >= 0; w--) {
    const opens = calendar.startOf(w);
    const endH = Math.min(byH, opens + calendar.lengthH);
    if (endH - handsOnH >= opens - CLOCK_EPS_H && endH >= opens) {
      return { startH: endH - handsOnH, endH, window: w, endWindow: w };
    }
  }
  return undefined;
}
