import type { Point, Segment } from "./drawing.js";
import { flattened } from "./path.js";
import { HATCHES, type HatchName } from "./roles.js";

/**
 * Which strokes and dots fill this area with that hatch? Real lines, cut at the edge (even-odd rule), so that every program
 * and every printer shows the same. `mmPerPx` = world mm of one px of the look at the size it will be shown.
 * Strokes are pairs of points, dots single points, world mm.
 */
export function hatchLines(
  path: readonly Segment[],
  hatch: HatchName,
  mmPerPx: number,
): { readonly strokes: readonly (readonly [Point, Point])[]; readonly dots: readonly Point[] } {
  const rings = flattened(path);
  const style = HATCHES[hatch];
  const pitchMm = style.pitchPx * mmPerPx;
  const strokes: [Point, Point][] = [];
  if (!(pitchMm > 0)) return { strokes, dots: [] };
  for (const angleDeg of style.anglesDeg) {
    for (const offsetPx of style.atPx) strokes.push(...family(rings, angleDeg, pitchMm, offsetPx * mmPerPx));
  }
  const dots: Point[] = [];
  if (style.anglesDeg.length === 0) {
    for (const offsetPx of style.atPx) {
      const offsetMm = offsetPx * mmPerPx;
      for (const [a, b] of family(rings, 0, pitchMm, offsetMm)) {
        const first = Math.ceil((Math.min(a.x, b.x) - offsetMm) / pitchMm);
        for (let x = first * pitchMm + offsetMm; x <= Math.max(a.x, b.x); x += pitchMm) dots.push({ x, y: a.y });
      }
    }
  }
  return { strokes, dots };
}

function family(
  rings: readonly (readonly Point[])[],
  angleDeg: number,
  pitchMm: number,
  offsetMm: number,
): [Point, Point][] {
  const cos = Math.cos((angleDeg * Math.PI) / 180);
  const sin = Math.sin((angleDeg * Math.PI) / 180);
  // u along the line, v across it
  const turned = rings.map((ring) => ring.map((p) => ({ u: p.x * cos + p.y * sin, v: -p.x * sin + p.y * cos })));
  const all = turned.flat();
  if (all.length === 0) return [];
  const low = Math.min(...all.map((p) => p.v));
  const high = Math.max(...all.map((p) => p.v));
  const found: [Point, Point][] = [];
  for (let k = Math.ceil((low - offsetMm) / pitchMm); k * pitchMm + offsetMm < high; k++) {
    const v = k * pitchMm + offsetMm;
    const cuts: number[] = [];
    for (const ring of turned) {
      ring.forEach((a, index) => {
        const b = ring[(index + 1) % ring.length];
        if (b !== undefined && a.v <= v !== b.v <= v) cuts.push(a.u + ((b.u - a.u) * (v - a.v)) / (b.v - a.v));
      });
    }
    cuts.sort((a, b) => a - b);
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      const from = cuts[i];
      const to = cuts[i + 1];
      if (from === undefined || to === undefined || to - from < 1e-9) continue;
      found.push([
        { x: from * cos - v * sin, y: from * sin + v * cos },
        { x: to * cos - v * sin, y: to * sin + v * cos },
      ]);
    }
  }
  return found;
}
