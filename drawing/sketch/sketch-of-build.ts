/**
 * How does this build look, before and after, to scale? Points from the reckoning, ready for `beforeAfter`.
 * undefined where the survey does not settle the frame yet: then there is nothing honest to draw.
 */
import type { BicyclePoints } from "@coldset/core/geometry";
import type { Reckoning } from "@coldset/core/questions";
import type { BicycleSketch } from "../bicycle/index.js";

/** Rim bead seat of a wheel that is not known stands this far inside the tyre, for the eye only. */
const TYRE_FOR_THE_EYE_MM = 35;

export function sketchBefore(r: Reckoning): BicycleSketch | undefined {
  const before = r.geometry.before;
  if (before === undefined) return undefined;
  const tyre = r.resolved.donor.wheels_now.tyre;
  const bead = tyre === undefined ? before.points.rearRadiusMm - TYRE_FOR_THE_EYE_MM : tyre.bsdMm / 2;
  return {
    ...pointsOf(before.points),
    rearBeadMm: bead,
    frontBeadMm: bead,
    ...seatTube(r, before.points),
    ...tubes(r),
  };
}

export function sketchAfter(r: Reckoning): BicycleSketch | undefined {
  const after = r.after;
  if (after === undefined) return undefined;
  const { at } = r.resolved;
  const bead = (place: "tyre_front" | "tyre_rear", radius: number) => {
    const tyre = at[place];
    return tyre?.kind === "tyre" && tyre.ports.size !== undefined
      ? tyre.ports.size.bsdMm / 2
      : radius - TYRE_FOR_THE_EYE_MM;
  };
  const contact = r.cockpit.points;
  const crank = at.crank?.kind === "crank" ? at.crank.ports : undefined;
  const ring =
    at.ring?.kind === "ring" ? at.ring.ports.teeth : (crank?.ring ?? (crank?.rings && Math.max(...crank.rings)));
  const onRim = (end: "front" | "rear") => {
    const one = at[`caliper_${end}`] ?? at.caliper;
    const kind = one?.kind === "caliper" || one?.kind === "caliper_pair" ? one.ports.kind : undefined;
    return kind !== undefined && kind !== "disc";
  };
  const rotor = (place: "rotor_front" | "rotor_rear") => {
    const part = at[place];
    return part?.kind === "rotor" && part.ports.diameter !== undefined ? part.ports.diameter / 2 : undefined;
  };
  const front = rotor("rotor_front");
  const rear = rotor("rotor_rear");
  return {
    ...pointsOf(after.points),
    rearBeadMm: bead("tyre_rear", after.points.rearRadiusMm),
    frontBeadMm: bead("tyre_front", after.points.frontRadiusMm),
    ...seatTube(r, after.points),
    ...tubes(r),
    ...(contact === undefined
      ? {}
      : {
          saddle: { x: contact.saddleTop.xMm, y: contact.saddleTop.yMm },
          steererTop: { x: contact.stemTop.xMm, y: contact.stemTop.yMm },
          barClamp: { x: contact.barClamp.xMm, y: contact.barClamp.yMm },
          palm: { x: contact.hand.xMm, y: contact.hand.yMm },
        }),
    ...(crank?.length === undefined ? {} : { crankLengthMm: crank.length }),
    ...(ring === undefined ? {} : { chainringRadiusMm: 6.35 / Math.sin(Math.PI / ring) }),
    ...(at.bar?.kind === "bar" && at.bar.ports.shape === "drop" ? { dropBar: true } : {}),
    rimBrakes: { front: onRim("front"), rear: onRim("rear") },
    ...(front === undefined && rear === undefined
      ? {}
      : { rotorRadiusMm: { ...(front === undefined ? {} : { front }), ...(rear === undefined ? {} : { rear }) } }),
    guards: at.guards !== undefined,
    notDrawn: notDrawn(r),
  };
}

const LEFT_OUT = ["child_seat", "rack", "stand", "derailleur_front", "derailleur_rear", "tensioner", "light"] as const;
const LEFT_OUT_KINDS = ["chain_guard", "spoke_guard"] as const;

/** What the build has and the drawing has not. */
function notDrawn(r: Reckoning): readonly string[] {
  const places = LEFT_OUT.filter((place) => r.resolved.at[place] !== undefined);
  const kinds = LEFT_OUT_KINDS.filter((kind) => r.resolved.also.some((row) => row.part.kind === kind));
  return [...places, ...kinds].map((word) => {
    const [what, end] = word.split("_");
    return end === "front" || end === "rear" ? `${end} ${what}` : word.replaceAll("_", " ");
  });
}

function pointsOf(p: BicyclePoints) {
  const {
    bb,
    rearAxle,
    frontAxle,
    seatCluster,
    headCrossing,
    headTop,
    headBottom,
    crownSeat,
    rearRadiusMm,
    frontRadiusMm,
    groundY,
  } = p;
  return {
    bb,
    rearAxle,
    frontAxle,
    seatCluster,
    headCrossing,
    headTop,
    headBottom,
    crownSeat,
    rearRadiusMm,
    frontRadiusMm,
    groundY,
  };
}

function seatTube(r: Reckoning, p: BicyclePoints) {
  const ct = r.resolved.donor.interfaces.seat_tube_ct;
  const angle = (p.seatAngleDeg * Math.PI) / 180;
  return ct === undefined ? {} : { seatTubeTop: { x: -ct * Math.cos(angle), y: ct * Math.sin(angle) } };
}

function tubes(r: Reckoning) {
  const { interfaces, tube, stays } = r.resolved.donor;
  const known = Object.entries({
    seat: interfaces.seat_tube_od,
    top: tube.top_tube_od,
    down: tube.down_tube_od,
    head: tube.head_tube_od,
    // Seen from the side: an oval stay shows its height.
    chainstay: stays.chainstay_high ?? stays.chainstay_od,
    seatstay: stays.seatstay_od,
  }).filter(([, v]) => v !== undefined);
  return known.length === 0 ? {} : { tubesMm: Object.fromEntries(known) as NonNullable<BicycleSketch["tubesMm"]> };
}
