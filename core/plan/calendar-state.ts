/**
 * What may be done next, and how early could the whole job still end? The step and the bound that both the quick
 * plan and the proof use.
 * A plan is built in order of start: each operation is put at its first possible place after all chosen before it.
 * docs/methods/schedule.md shows that some such order gives an optimal plan, which operations may be left out of the
 * choice, and why the bound never lies above the true finish.
 */
import { at } from "./at.js";
import { type Calendar, CLOCK_EPS_H, firstStartAt, type Place, placeCut, placeWhole } from "./calendar.js";
import { fewestWindows } from "./fewest-windows.js";
import { leastWaste } from "./least-waste.js";
import { everythingBefore, type Network } from "./network.js";
import { timeGrid, upToGrid } from "./time-grid.js";

export interface CalendarQuestion {
  readonly network: Network;
  readonly calendar: Calendar;
  /** People who work at the same time, each on an operation of his own; 1 or more. */
  readonly builders: number;
  /** True: an operation may be put down at closing time and taken up at the next opening. */
  readonly cutAtClosing: boolean;
}

/** What was chosen, last choice first. */
export interface Chosen {
  readonly operation: number;
  readonly place: Place;
  readonly builder: number;
  readonly earlier: Chosen | undefined;
}

export interface State {
  readonly done: Uint8Array;
  readonly doneCount: number;
  /** Same text or number for the same set of finished operations. */
  readonly key: number | string;
  /** When each builder is free. */
  readonly freeH: Float64Array;
  readonly lastStartH: number;
  /** End of the latest operation so far. */
  readonly endH: number;
  /** First possible start of each open operation, its open predecessors left out of account. */
  readonly earliestH: Float64Array;
  readonly boundH: number;
  readonly chosen: Chosen | undefined;
}

export interface Stepper {
  readonly root: State;
  /** All next states that a best plan may need; bounds below `belowH` only. */
  readonly expand: (state: State, belowH: number) => State[];
  /** Longest way from the start of an operation to the end of the job, no calendar, hours. */
  readonly tailH: readonly number[];
}

export function makeStepper(question: CalendarQuestion): Stepper {
  const { network, calendar, builders, cutAtClosing } = question;
  const { count, handsOnH, cureAfterH, before, next, order } = network;
  const place = cutAtClosing ? placeCut : placeWhole;
  const ancestors = everythingBefore(network).map((set) => [...set]);
  const twinOf = twins(network);

  const tailH = new Array<number>(count).fill(0);
  for (let k = count - 1; k >= 0; k--) {
    const i = at(order, k);
    let tail = 0;
    for (const s of at(next, i)) tail = Math.max(tail, at(cureAfterH, i) + at(tailH, s));
    tailH[i] = at(handsOnH, i) + tail;
  }

  const first = calendar.days[0] ?? 0;
  const gridH = timeGrid([
    ...handsOnH,
    ...cureAfterH,
    ...calendar.days.map((d) => (d - first) * 24),
    calendar.rhythm.days * 24,
    ...(cutAtClosing ? [calendar.lengthH] : []),
  ]);

  const firstStart = new Float64Array(count);
  const firstEnd = new Float64Array(count);
  /** Least time at which the job can end, from the open operations and their first starts. */
  const bound = (done: Uint8Array, earliestH: Float64Array, endH: number, belowH: number): number => {
    const open: number[] = [];
    let best = endH;
    for (const i of order) {
      if (done[i]) continue;
      let from = at(earliestH, i);
      let ancestorWork = 0;
      let ancestorsFrom = Number.POSITIVE_INFINITY;
      for (const a of at(ancestors, i)) {
        if (done[a]) continue;
        ancestorWork += at(handsOnH, a);
        ancestorsFrom = Math.min(ancestorsFrom, at(earliestH, a));
      }
      if (ancestorWork > 0) {
        const hours = calendar.openHoursBefore(ancestorsFrom) + ancestorWork / builders;
        from = Math.max(from, calendar.clockAfterOpenHours(hours));
      }
      for (const p of at(before, i)) {
        if (!done[p]) from = Math.max(from, at(firstEnd, p) + at(cureAfterH, p));
      }
      const h = at(handsOnH, i);
      const startH = firstStartAt(calendar, from, h, cutAtClosing);
      const endH =
        cutAtClosing && h > 0 ? calendar.clockAfterOpenHours(calendar.openHoursBefore(startH) + h) : startH + h;
      firstStart[i] = startH;
      firstEnd[i] = endH;
      best = Math.max(best, endH);
      open.push(i);
    }
    // All work that cannot start before a given time must fit in behind it; the latest comers first.
    open.sort((a, b) => at(firstStart, b) - at(firstStart, a));
    let work = 0;
    let big = 0;
    let leastBig = Number.POSITIVE_INFINITY;
    let least = Number.POSITIVE_INFINITY;
    for (const i of open) {
      const h = at(handsOnH, i);
      const start = at(firstStart, i);
      work += h;
      least = Math.min(least, h);
      best = Math.max(best, calendar.clockAfterOpenHours(calendar.openHoursBefore(start) + work / builders));
      if (!cutAtClosing && h > calendar.lengthH / 2 + CLOCK_EPS_H) {
        // two such do not fit into one evening of one builder
        big++;
        leastBig = Math.min(leastBig, h);
        const lastWindow = calendar.windowAt(start) + Math.ceil(big / builders) - 1;
        best = Math.max(best, calendar.startOf(lastWindow) + leastBig);
      }
    }
    const last = open.at(-1);
    if (!cutAtClosing && last !== undefined && best < belowH) {
      const start = at(firstStart, last);
      const window = calendar.windowAt(start);
      const used = builders === 1 ? Math.max(start - calendar.startOf(window), 0) : 0;
      const pieces = open.map((i) => at(handsOnH, i));
      const windows = fewestWindows(used > 0 ? [...pieces, used] : pieces, calendar.lengthH);
      best = Math.max(best, calendar.startOf(window + Math.ceil(windows / builders) - 1) + least);
      if (builders === 1 && best < belowH) {
        const hours = calendar.openHoursBefore(start) + work + leastWaste(pieces, calendar.lengthH, used);
        best = Math.max(best, calendar.clockAfterOpenHours(hours));
      }
    }
    return upToGrid(best, gridH);
  };

  const keyOf = (done: Uint8Array): number | string => {
    if (count <= 30) {
      let mask = 0;
      for (let i = 0; i < count; i++) if (done[i]) mask |= 1 << i;
      return mask;
    }
    let text = "";
    for (let i = 0; i < count; i += 15) {
      let word = 0;
      for (let b = 0; b < 15 && i + b < count; b++) if (done[i + b]) word |= 1 << b;
      text += String.fromCharCode(word);
    }
    return text;
  };

  const rootEarliest = Float64Array.from(handsOnH, (h) => place(calendar, 0, h).startH);
  const rootDone = new Uint8Array(count);
  const root: State = {
    done: rootDone,
    doneCount: 0,
    key: keyOf(rootDone),
    freeH: new Float64Array(builders),
    lastStartH: 0,
    endH: 0,
    earliestH: rootEarliest,
    boundH: bound(rootDone, rootEarliest, 0, Number.POSITIVE_INFINITY),
    chosen: undefined,
  };

  const expand = (state: State, belowH: number): State[] => {
    const { done, earliestH } = state;
    const ready: number[] = [];
    for (let i = 0; i < count; i++) {
      if (done[i] || at(before, i).some((p) => !done[p])) continue;
      const twin = at(twinOf, i);
      if (twin >= 0 && !done[twin]) continue; // of two equal operations the first in the list goes first
      ready.push(i);
    }
    const places = ready.map((i) => place(calendar, at(earliestH, i), at(handsOnH, i)));
    let soonest = 0;
    for (let k = 1; k < ready.length; k++) if (at(places, k).endH < at(places, soonest).endH) soonest = k;
    const soonestEndH = ready.length > 0 ? at(places, soonest).endH : 0;

    const states: State[] = [];
    ready.forEach((i, k) => {
      const where = at(places, k);
      // whatever starts only after another could be over may as well come after it
      if (k !== soonest && where.startH >= soonestEndH - CLOCK_EPS_H) return;
      const child = after(state, i, where, belowH);
      if (child !== undefined) states.push(child);
    });
    return states;
  };

  const nextDone = new Uint8Array(count);
  const nextEarliest = new Float64Array(count);
  /** The state after one more operation; undefined where its bound is not below `belowH`. */
  const after = (state: State, i: number, where: Place, belowH: number): State | undefined => {
    nextDone.set(state.done);
    nextDone[i] = 1;
    const freeH = state.freeH.slice();
    let builder = 0; // the one who waited least
    for (let b = 1; b < builders; b++) {
      const free = at(freeH, b);
      if (free <= where.startH + CLOCK_EPS_H && (at(freeH, builder) > where.startH || free > at(freeH, builder))) {
        builder = b;
      }
    }
    freeH[builder] = where.endH;
    const handsFreeH = Math.max(Math.min(...freeH), where.startH);
    const readyAgainH = where.endH + at(cureAfterH, i);
    for (let j = 0; j < count; j++) {
      const was = nextDone[j] ? 0 : at(state.earliestH, j);
      nextEarliest[j] = was;
      if (nextDone[j]) continue;
      let from = Math.max(was, handsFreeH);
      if (at(before, j).includes(i)) from = Math.max(from, readyAgainH);
      if (from > was) nextEarliest[j] = firstStartAt(calendar, from, at(handsOnH, j), cutAtClosing);
    }
    const endH = Math.max(state.endH, where.endH);
    const boundH = bound(nextDone, nextEarliest, endH, belowH);
    if (boundH >= belowH) return undefined;
    return {
      done: nextDone.slice(),
      doneCount: state.doneCount + 1,
      key: keyOf(nextDone),
      freeH,
      lastStartH: where.startH,
      endH,
      earliestH: nextEarliest.slice(),
      boundH,
      chosen: { operation: i, place: where, builder, earlier: state.chosen },
    };
  };

  return { root, expand, tailH };
}

/** For each operation the nearest earlier one in the list that is its equal in all that matters, or -1. */
function twins(network: Network): number[] {
  const seen = new Map<string, number>();
  return network.handsOnH.map((h, i) => {
    const sorted = (list: readonly number[]) => [...list].sort((a, b) => a - b).join(",");
    const key = [h, at(network.cureAfterH, i), sorted(at(network.before, i)), sorted(at(network.next, i))].join("|");
    const twin = seen.get(key) ?? -1;
    seen.set(key, i);
    return twin;
  });
}

/** True where state a is at least as good as b, both with the same operations done. */
export function coversState(a: State, b: State): boolean {
  if (a.endH > b.endH + CLOCK_EPS_H && a.doneCount === a.done.length) return false;
  for (let i = 0; i < a.earliestH.length; i++) {
    if (at(a.earliestH, i) > at(b.earliestH, i) + CLOCK_EPS_H) return false;
  }
  if (a.freeH.length === 1) return true;
  if (a.endH > b.endH + CLOCK_EPS_H || a.lastStartH > b.lastStartH + CLOCK_EPS_H) return false;
  const fa = a.freeH.slice().sort();
  const fb = b.freeH.slice().sort();
  return fa.every((f, k) => f <= at(fb, k) + CLOCK_EPS_H);
}
