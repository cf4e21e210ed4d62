import type { Point, Segment } from "./drawing.js";

/** Shorthand for a point, mm. */
export function at(x: number, y: number): Point {
  return { x, y };
}

/** Which path runs straight from point to point? Closed on wish. */
export function pathOf(points: readonly Point[], closed = false): readonly Segment[] {
  const segments: Segment[] = points.map((to, index) => ({ op: index === 0 ? "move" : "line", to }));
  return closed ? [...segments, { op: "close" }] : segments;
}

/** Which path is this upright rectangle? From its lower left corner, mm. */
export function rectangle(xMm: number, yMm: number, widthMm: number, heightMm: number): readonly Segment[] {
  return pathOf(
    [at(xMm, yMm), at(xMm + widthMm, yMm), at(xMm + widthMm, yMm + heightMm), at(xMm, yMm + heightMm)],
    true,
  );
}

/** Where on a circle lies this direction? Degrees anticlockwise from x. */
export function onCircle(centre: Point, radiusMm: number, angleDeg: number): Point {
  const angleRad = (angleDeg * Math.PI) / 180;
  return { x: centre.x + radiusMm * Math.cos(angleRad), y: centre.y + radiusMm * Math.sin(angleRad) };
}

function mix(a: Point, b: Point, t: number): Point {
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}

const STEPS = 24;

/** Which straight pieces follow this path closely enough for hatching? A list of rings or chains, mm. */
export function flattened(path: readonly Segment[]): readonly (readonly Point[])[] {
  const chains: Point[][] = [];
  let chain: Point[] = [];
  let here: Point = { x: 0, y: 0 };
  const add = (p: Point) => {
    chain.push(p);
    here = p;
  };
  for (const segment of path) {
    if (segment.op === "move") {
      chain = [];
      chains.push(chain);
      add(segment.to);
    } else if (segment.op === "line") {
      add(segment.to);
    } else if (segment.op === "arc") {
      if (chains.length === 0) chains.push(chain);
      const sweep = segment.endDeg - segment.startDeg;
      const steps = Math.max(2, Math.ceil(Math.abs(sweep) / 6));
      for (let i = 0; i <= steps; i++) {
        add(onCircle(segment.centre, segment.radiusMm, segment.startDeg + (sweep * i) / steps));
      }
    } else if (segment.op === "quad" || segment.op === "cubic") {
      const start = here;
      for (let i = 1; i <= STEPS; i++) {
        const t = i / STEPS;
        if (segment.op === "quad") {
          add(mix(mix(start, segment.control, t), mix(segment.control, segment.to, t), t));
        } else {
          const a = mix(mix(start, segment.control1, t), mix(segment.control1, segment.control2, t), t);
          const b = mix(mix(segment.control1, segment.control2, t), mix(segment.control2, segment.to, t), t);
          add(mix(a, b, t));
        }
      }
    } else {
      const first = chain[0];
      if (first !== undefined) add(first);
    }
  }
  return chains.filter((c) => c.length > 1);
}
