import { at, type Item, type LineRole, onCircle, type Point, pathOf, type Segment } from "../model/index.js";
import { dropBar, rimBrake } from "./bar-and-rim-brake.js";
import { type BicycleSketch, drawnWidthMm, type TubeName } from "./bicycle-sketch.js";

function along(a: Point, b: Point, mm: number): Point {
  const long = Math.hypot(b.x - a.x, b.y - a.y);
  if (long === 0) return a;
  return { x: a.x + ((b.x - a.x) * mm) / long, y: a.y + ((b.y - a.y) * mm) / long };
}

function lerp(a: Point, b: Point, t: number): Point {
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}

/** Where does the down tube's centre line meet the head tube's? */
export function downCrossing(sketch: BicycleSketch): Point {
  return sketch.downCrossing ?? lerp(sketch.headBottom, sketch.headTop, 0.25);
}

/** How do the blades run, from the crown seat along the steering axis and then forward to the axle? */
export function forkPath(sketch: BicycleSketch): readonly Segment[] {
  const { crownSeat, frontAxle, headTop } = sketch;
  const down = along(crownSeat, headTop, -1);
  const u = { x: down.x - crownSeat.x, y: down.y - crownSeat.y };
  const longMm = (frontAxle.x - crownSeat.x) * u.x + (frontAxle.y - crownSeat.y) * u.y;
  const onAxis = (share: number) => ({ x: crownSeat.x + u.x * longMm * share, y: crownSeat.y + u.y * longMm * share });
  return [
    { op: "move", to: crownSeat },
    { op: "line", to: onAxis(0.38) },
    { op: "quad", control: onAxis(0.79), to: frontAxle },
  ];
}

function wheel(axle: Point, tyreMm: number, beadMm: number, rotorMm: number | undefined): readonly Item[] {
  const spokes: Item[] = [];
  const rimMm = beadMm - 12;
  for (let i = 0; i < 32; i++) {
    const rimDeg = (360 / 32) * i;
    const hubDeg = rimDeg + (i % 2 === 0 ? 76 : -76);
    spokes.push({
      kind: "line",
      role: "ornament",
      from: onCircle(axle, 22, hubDeg),
      to: onCircle(axle, rimMm, rimDeg),
    });
  }
  const ring = (role: LineRole, radiusMm: number): Item => ({ kind: "circle", role, centre: axle, radiusMm });
  return [
    { kind: "group", name: "spokes", items: [...spokes, ring("ornament", 24)] },
    ring("after", tyreMm),
    ring("dimension", beadMm),
    ring("construction", rimMm),
    ...(rotorMm === undefined ? [] : [ring("dimension", rotorMm), ring("construction", rotorMm - 14)]),
  ];
}

function saddleItems(sketch: BicycleSketch, saddle: Point): readonly Item[] {
  const s = (x: number, y: number) => at(saddle.x + x, saddle.y + y);
  const top = sketch.seatTubeTop ?? along(sketch.seatCluster, sketch.bb, -35);
  const clamp = s(0, -46);
  return [
    { kind: "tube", role: "after", path: pathOf([top, clamp]), outsideMm: drawnWidthMm(sketch, "seat") - 2 },
    { kind: "path", role: "dimension", path: pathOf([s(60, -14), s(34, -46), s(-34, -46), s(-70, -18)]) },
    {
      kind: "path",
      role: "after",
      fill: "sheet",
      path: [
        { op: "move", to: s(142, -6) },
        { op: "quad", control: s(90, 2), to: s(20, 0) },
        { op: "quad", control: s(-60, 1), to: s(-122, 14) },
        { op: "quad", control: s(-152, 16), to: s(-148, -6) },
        { op: "quad", control: s(-132, -36), to: s(-74, -32) },
        { op: "quad", control: s(10, -22), to: s(132, -20) },
        { op: "quad", control: s(148, -16), to: s(142, -6) },
        { op: "close" },
      ],
    },
  ];
}

function cockpitItems(sketch: BicycleSketch): readonly Item[] {
  const { steererTop, barClamp, palm, headTop } = sketch;
  const items: Item[] = [];
  if (steererTop !== undefined)
    items.push({ kind: "tube", role: "after", path: pathOf([headTop, steererTop]), outsideMm: 26 });
  if (steererTop !== undefined && barClamp !== undefined) {
    items.push({ kind: "tube", role: "after", path: pathOf([steererTop, barClamp]), outsideMm: 30 });
  }
  if (barClamp !== undefined && palm !== undefined && sketch.dropBar === true) items.push(...dropBar(barClamp, palm));
  else if (barClamp !== undefined && palm !== undefined) {
    const lift = Math.max(8, Math.abs(palm.y - barClamp.y));
    items.push({
      kind: "tube",
      role: "after",
      outsideMm: 22.2,
      roundEnds: true,
      path: [
        { op: "move", to: barClamp },
        {
          op: "cubic",
          control1: at(barClamp.x + 4, barClamp.y + lift),
          control2: at(lerp(barClamp, palm, 0.45).x, palm.y),
          to: palm,
        },
        { op: "line", to: along(palm, barClamp, palm.x < barClamp.x ? -50 : -20) },
      ],
    });
  }
  if (barClamp !== undefined)
    items.push({ kind: "circle", role: "after", centre: barClamp, radiusMm: 17, fill: "sheet" });
  return items;
}

/** What does the bicycle in ink consist of, from the back to the front? */
export function inkBicycle(sketch: BicycleSketch): readonly Item[] {
  const tube = (name: TubeName, points: readonly Point[], extraMm = 0): Item => ({
    kind: "tube",
    role: "after",
    path: pathOf(points),
    outsideMm: drawnWidthMm(sketch, name) + extraMm,
  });
  const { bb, rearAxle, frontAxle, seatCluster, headTop, headBottom, headCrossing, crownSeat } = sketch;
  const seatTop = sketch.seatTubeTop ?? along(seatCluster, bb, -35);
  const items: Item[] = [
    ...wheel(rearAxle, sketch.rearRadiusMm, sketch.rearBeadMm, sketch.rotorRadiusMm?.rear),
    ...wheel(frontAxle, sketch.frontRadiusMm, sketch.frontBeadMm, sketch.rotorRadiusMm?.front),
  ];
  if (sketch.guards === true) {
    const arc = (centre: Point, radiusMm: number, startDeg: number, endDeg: number): Item => ({
      kind: "arc",
      role: "cut",
      centre,
      radiusMm: radiusMm + 14,
      startDeg,
      endDeg,
    });
    items.push(arc(rearAxle, sketch.rearRadiusMm, 20, 188), arc(frontAxle, sketch.frontRadiusMm, 28, 170));
  }
  items.push(
    tube("chainstay", [bb, rearAxle]),
    tube("seatstay", [seatCluster, rearAxle]),
    { kind: "tube", role: "after", path: forkPath(sketch), outsideMm: drawnWidthMm(sketch, "fork") },
    tube("head", [crownSeat, headBottom]),
    ...cockpitItems(sketch),
    ...(sketch.saddle === undefined ? [] : saddleItems(sketch, sketch.saddle)),
    ...(sketch.rimBrakes?.front === true ? rimBrake(frontAxle, crownSeat, sketch.frontBeadMm, 24) : []),
    ...(sketch.rimBrakes?.rear === true ? rimBrake(rearAxle, seatCluster, sketch.rearBeadMm, -20) : []),
    tube("top", [seatCluster, headCrossing]),
    tube("down", [bb, downCrossing(sketch)]),
    tube("seat", [bb, seatTop]),
    tube("head", [headBottom, headTop]),
    tube("head", [headBottom, along(headBottom, headTop, 10)], 6),
    tube("head", [along(headTop, headBottom, 10), headTop], 6),
    { kind: "circle", role: "after", centre: bb, radiusMm: 20, fill: "sheet" },
  );
  if (sketch.chainringRadiusMm !== undefined) {
    items.push(
      { kind: "circle", role: "dimension", centre: bb, radiusMm: sketch.chainringRadiusMm },
      { kind: "circle", role: "construction", centre: bb, radiusMm: sketch.chainringRadiusMm - 7 },
    );
  }
  if (sketch.crankLengthMm !== undefined) {
    const pedal = pedalOf(sketch, sketch.crankLengthMm);
    items.push(
      { kind: "tube", role: "after", path: pathOf([bb, pedal]), outsideMm: 24, roundEnds: true },
      {
        kind: "path",
        role: "after",
        fill: "sheet",
        path: pathOf(
          [
            at(pedal.x - 48, pedal.y - 10),
            at(pedal.x + 48, pedal.y - 10),
            at(pedal.x + 48, pedal.y + 10),
            at(pedal.x - 48, pedal.y + 10),
          ],
          true,
        ),
      },
    );
  }
  for (const axle of [rearAxle, frontAxle]) {
    items.push(
      { kind: "circle", role: "after", centre: axle, radiusMm: 12, fill: "sheet" },
      { kind: "circle", role: "construction", centre: axle, radiusMm: 4, fill: "ink" },
    );
  }
  items.push({ kind: "circle", role: "dimension", centre: bb, radiusMm: 12, fill: "sheet" });
  return items;
}

/** Where is the pedal axle, crank level and forward? */
export function pedalOf(sketch: BicycleSketch, crankLengthMm: number): Point {
  return at(sketch.bb.x + crankLengthMm, sketch.bb.y);
}

/** What does the bicycle as it stands look like, in pencil, over the other? Two lines a tube, nothing hidden. */
export function pencilBicycle(sketch: BicycleSketch): readonly Item[] {
  const items: Item[] = [];
  const pair = (a: Point, b: Point, widthMm: number) => {
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    if (long === 0) return;
    const n = { x: (-(b.y - a.y) / long) * (widthMm / 2), y: ((b.x - a.x) / long) * (widthMm / 2) };
    for (const side of [1, -1]) {
      items.push({
        kind: "line",
        role: "before",
        from: at(a.x + n.x * side, a.y + n.y * side),
        to: at(b.x + n.x * side, b.y + n.y * side),
      });
    }
  };
  const { bb, rearAxle, frontAxle, seatCluster, headTop, headBottom, headCrossing, crownSeat } = sketch;
  items.push(
    { kind: "circle", role: "before", centre: rearAxle, radiusMm: sketch.rearRadiusMm },
    { kind: "circle", role: "before", centre: frontAxle, radiusMm: sketch.frontRadiusMm },
  );
  pair(bb, seatCluster, drawnWidthMm(sketch, "seat"));
  pair(seatCluster, headCrossing, drawnWidthMm(sketch, "top"));
  pair(bb, downCrossing(sketch), drawnWidthMm(sketch, "down"));
  pair(bb, rearAxle, drawnWidthMm(sketch, "chainstay"));
  pair(seatCluster, rearAxle, drawnWidthMm(sketch, "seatstay"));
  pair(headBottom, headTop, drawnWidthMm(sketch, "head"));
  pair(crownSeat, headBottom, drawnWidthMm(sketch, "head"));
  const blade = forkPath(sketch);
  items.push(
    { kind: "path", role: "before", path: shifted(blade, -12.5) },
    { kind: "path", role: "before", path: shifted(blade, 12.5) },
  );
  if (sketch.saddle !== undefined) {
    items.push({
      kind: "line",
      role: "before",
      from: at(sketch.saddle.x - 130, sketch.saddle.y),
      to: at(sketch.saddle.x + 140, sketch.saddle.y),
    });
  }
  if (sketch.steererTop !== undefined && sketch.barClamp !== undefined) {
    items.push({
      kind: "polyline",
      role: "before",
      points: [headTop, sketch.steererTop, sketch.barClamp, ...(sketch.palm === undefined ? [] : [sketch.palm])],
    });
  }
  return items;
}

function shifted(path: readonly Segment[], dx: number): readonly Segment[] {
  const s = (p: Point) => at(p.x + dx, p.y);
  return path.map((piece) => {
    if (piece.op === "move" || piece.op === "line") return { ...piece, to: s(piece.to) };
    if (piece.op === "quad") return { ...piece, control: s(piece.control), to: piece.to };
    return piece;
  });
}
