/**
 * Which of the given measures lay the bicycle out, which only check it, and what is still missing?
 *
 * This depends only on which measures are given, not on their values: it is decided on one crooked bicycle whose
 * numbers have nothing special about them, and kept. Order of trust: the fourteen frame measures as given, then level
 * ground, then the BB height (it stands for the drop), then of the other whole-bicycle measures the one that adds
 * most. A measure that adds nothing checks the rest.
 */
import { SIDE_VIEW_KEYS, type SideViewInput, type SideViewKey } from "./frame-measures.js";
import {
  at,
  FIGURE_KEYS,
  figureSlopes,
  LEVEL_ROW,
  layout,
  ROW_SD,
  ROWS,
  rowValue,
  UNIT,
  UNKNOWNS,
} from "./side-view-model.js";

export interface Subset {
  /** Rows that fix the layout. */
  readonly used: readonly number[];
  /** Given rows (and perhaps the level row) that the others already foretell. */
  readonly checks: readonly number[];
  /** Figures that stay open, by place in FIGURE_KEYS. */
  readonly open: readonly number[];
  /** For each unknown: is it fixed? */
  readonly fixed: readonly boolean[];
  /** For each measure of SIDE_VIEW_KEYS: does the layout tell what it must read? */
  readonly told: readonly boolean[];
}

const FRAME_COUNT = 14;
const BB_HEIGHT = SIDE_VIEW_KEYS.indexOf("bb_height_mm");
const CROOKED = Float64Array.from([
  1.2817, 487.3, 371.9, 601.7, 1.2309, 41.3, 133.7, 13.9, 377.1, 53.3, 411.7, 47.9, 331.3, 337.9,
]);
const CROOKED_SLOPES = (() => {
  const l = layout(CROOKED);
  return Array.from({ length: LEVEL_ROW + 1 }, (_, row) => {
    const d = new Float64Array(UNKNOWNS);
    rowValue(row, CROOKED, l, d);
    return d.map((x, i) => (x * at(UNIT, i)) / at(ROW_SD, row));
  });
})();
const CROOKED_FIGURES = figureSlopes(CROOKED).map((g) => g.map((x, i) => x * at(UNIT, i)));

/** The figures span this many directions, so no smaller set can fix them. */
const FEWEST = 7;

/** A row or figure that keeps less than this part of its length outside the others adds nothing. */
const SAME = 1e-7;

function length(v: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < UNKNOWNS; i++) sum += at(v, i) ** 2;
  return Math.sqrt(sum);
}

/** What of `v` lies outside the span of `basis`? Twice over, against rounding. */
function outside(basis: readonly Float64Array[], v: Float64Array): Float64Array {
  const rest = Float64Array.from(v);
  for (let pass = 0; pass < 2; pass++) {
    for (const b of basis) {
      let dot = 0;
      for (let i = 0; i < UNKNOWNS; i++) dot += at(b, i) * at(rest, i);
      for (let i = 0; i < UNKNOWNS; i++) rest[i] = at(rest, i) - dot * at(b, i);
    }
  }
  return rest;
}

function take(basis: Float64Array[], row: number): boolean {
  const slopes = CROOKED_SLOPES[row];
  if (!slopes) return false;
  const rest = outside(basis, slopes);
  const left = length(rest);
  if (left <= SAME * length(slopes)) return false;
  basis.push(rest.map((x) => x / left));
  return true;
}

const kept = new Map<number, Subset>();

/** `mask`: bit i set where SIDE_VIEW_KEYS[i] is given. `groundLast`: readings lay the bicycle out, the ground only checks. */
export function subsetOf(mask: number, groundLast = false): Subset {
  const name = groundLast ? mask | (1 << ROWS) : mask;
  const known = kept.get(name);
  if (known) return known;
  const basis: Float64Array[] = [];
  const used: number[] = [];
  const checks: number[] = [];
  const has = (row: number): boolean => ((mask >> row) & 1) === 1;
  for (let row = 0; row < FRAME_COUNT; row++) if (has(row)) (take(basis, row) ? used : checks).push(row);
  const ground = (): void => {
    (take(basis, LEVEL_ROW) ? used : checks).push(LEVEL_ROW);
  };
  if (!groundLast) ground();
  if (has(BB_HEIGHT)) (take(basis, BB_HEIGHT) ? used : checks).push(BB_HEIGHT);
  const rest: number[] = [];
  for (let row = FRAME_COUNT; row < LEVEL_ROW; row++) if (row !== BB_HEIGHT && has(row)) rest.push(row);
  while (rest.length > 0) {
    const gain = rest.map((row) => length(outside(basis, CROOKED_SLOPES[row] ?? new Float64Array(UNKNOWNS))));
    const best = gain.indexOf(Math.max(...gain));
    const row = rest.splice(best, 1)[0];
    if (row !== undefined) (take(basis, row) ? used : checks).push(row);
  }
  if (groundLast) ground();
  const settled = (g: Float64Array): boolean => length(outside(basis, g)) <= SAME * length(g);
  const subset: Subset = {
    used,
    checks,
    open: FIGURE_KEYS.map((_, i) => i).filter((i) => !settled(CROOKED_FIGURES[i] ?? new Float64Array(UNKNOWNS))),
    fixed: Array.from({ length: UNKNOWNS }, (_, i) => {
      const unit = new Float64Array(UNKNOWNS);
      unit[i] = 1;
      return settled(unit);
    }),
    told: SIDE_VIEW_KEYS.map((_, row) => settled(CROOKED_SLOPES[row] ?? new Float64Array(UNKNOWNS))),
  };
  if (kept.size > 4096) kept.clear();
  kept.set(name, subset);
  return subset;
}

export function maskOf(input: SideViewInput): number {
  let mask = 0;
  SIDE_VIEW_KEYS.forEach((key, i) => {
    if (input[key] !== undefined) mask |= 1 << i;
  });
  return mask;
}

const nothingOpen = new Map<number, boolean>();

/** Does this set fix all figures? The quick form of `subsetOf(mask).open`. */
function done(mask: number): boolean {
  const known = nothingOpen.get(mask);
  if (known !== undefined) return known;
  const basis: Float64Array[] = [];
  for (let row = 0; row < LEVEL_ROW; row++) if (((mask >> row) & 1) === 1) take(basis, row);
  take(basis, LEVEL_ROW);
  const yes = basis.length >= FEWEST && CROOKED_FIGURES.every((g) => length(outside(basis, g)) <= SAME * length(g));
  if (nothingOpen.size > 65536) nothingOpen.clear();
  nothingOpen.set(mask, yes);
  return yes;
}

/** Which further measures would complete this set? The smallest sets of one or two, else one longer set. */
export function whatWouldComplete(mask: number): readonly (readonly SideViewKey[])[] {
  const free = SIDE_VIEW_KEYS.map((_, i) => i).filter((i) => ((mask >> i) & 1) === 0);
  const names = (rows: readonly number[]): SideViewKey[] => rows.flatMap((i) => SIDE_VIEW_KEYS[i] ?? []);
  const one = free.filter((i) => done(mask | (1 << i)));
  if (one.length > 0) return one.map((i) => names([i]));
  const two: SideViewKey[][] = [];
  free.forEach((i, k) => {
    for (const j of free.slice(k + 1)) if (done(mask | (1 << i) | (1 << j))) two.push(names([i, j]));
  });
  if (two.length > 0) return two;
  let chosen = [...free];
  for (const i of [...free].reverse()) {
    const without = chosen.filter((c) => c !== i);
    if (done(without.reduce((m, c) => m | (1 << c), mask))) chosen = without;
  }
  return [names(chosen)];
}
