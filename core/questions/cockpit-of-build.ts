/** Where do hands and saddle come to stand with the chosen stem, bar, post and saddle, and what would do better? */

import type { ForkSwapValue } from "../geometry/index.js";
import {
  type BarCandidate,
  type BestCockpit,
  bestCockpit,
  type CockpitChoice,
  type ContactPoints,
  contactPoints,
  handError,
  type SaddleAnswer,
  type StemCandidate,
  saddle,
  spacerSums,
} from "../position/index.js";
import type { Answer, Answered } from "../quantity/index.js";
import { say } from "../texts/say.js";
import type { Part, PartOfKind, ResolvedBuild } from "../workshop/index.js";

/** Spacers under a stem are wanted up to here, mm; more is refused by S12 at 40. Common practice, no source. */
const MOST_SPACERS_MM = 40;

export interface CockpitOfBuild {
  /** The chosen stem and bar at their best height, or at the height the build states. */
  readonly chosen?: CockpitChoice;
  /** Half-width of the hand's place, 95 %, from the survey's spread. */
  readonly handHalfWidthMm?: number;
  /** All stems of the comparison with the chosen bar, best first. */
  readonly ranked?: Answer<BestCockpit>;
  /** Other bars of the comparison, each at its own best with the same stems. */
  readonly otherBars: readonly { readonly id: string; readonly best: CockpitChoice | null }[];
  readonly saddle?: Answer<SaddleAnswer>;
  /** Post of the build with its row of the saddle answer. */
  readonly post?: {
    readonly id: string;
    readonly extensionMm: number;
    readonly railShiftBackMm: number;
    readonly withinRails: boolean;
  };
  readonly points?: ContactPoints;
  readonly missing: readonly string[];
}

function stemCandidate(part: Part): StemCandidate | undefined {
  if (part.kind === "stem") {
    const { length, angle, clamp_height, bar_clamp } = part.ports;
    if (length === undefined || angle === undefined || clamp_height === undefined) return undefined;
    return {
      kind: "unthreaded",
      id: part.id,
      lengthMm: length,
      angleDeg: angle,
      clampHeightMm: clamp_height,
      ...(bar_clamp === undefined ? {} : { barClampMm: bar_clamp }),
    };
  }
  if (part.kind === "quill_stem") {
    const { length, angle, clamp_height, bar_clamp, raise } = part.ports;
    if (length === undefined || angle === undefined || clamp_height === undefined || raise === undefined)
      return undefined;
    return {
      kind: "quill",
      id: part.id,
      lengthMm: length,
      angleDeg: angle,
      clampHeightMm: clamp_height,
      raiseMm: { lowest: raise[0], highest: raise[1] },
      ...(bar_clamp === undefined ? {} : { barClampMm: bar_clamp }),
    };
  }
  return undefined;
}

function barCandidate(bar: PartOfKind<"bar">): readonly BarCandidate[] {
  const { hand, clamp } = bar.ports;
  if (hand === undefined) return [];
  return [
    {
      id: bar.id,
      handForwardMm: hand[0],
      handUpMm: hand[1],
      ...(clamp === undefined ? {} : { clampMm: clamp }),
    },
  ];
}

export function cockpitOfBuild(build: ResolvedBuild, figures: Answered<ForkSwapValue> | undefined): CockpitOfBuild {
  const missing: string[] = [];
  if (figures === undefined)
    return { otherBars: [], missing: [say("questions.cockpit-of-build.the-side-view-of-the-bicycle")] };
  const { rider, at } = build;
  const f = figures.value;
  const headset = at.headset?.kind === "headset" ? at.headset : undefined;
  const bar = at.bar?.kind === "bar" ? at.bar : undefined;
  const stems = [...new Set([build.build.chosen.stem, ...(build.build.consider?.stem ?? [])])].flatMap((id) => {
    const part = id === undefined ? undefined : build.parts.get(id);
    const candidate = part === undefined ? undefined : stemCandidate(part);
    if (part !== undefined && candidate === undefined)
      missing.push(say("questions.cockpit-of-build.length-angle-and-clamp-height-of", { part: part.id }));
    return candidate === undefined ? [] : [candidate];
  });
  const hand = bar?.ports.hand;
  if (rider.hand_xy === undefined) missing.push(say("questions.cockpit-of-build.where-the-rider-wants-the-hands"));
  if (bar === undefined) missing.push(say("questions.cockpit-of-build.a-bar"));
  else if (hand === undefined)
    missing.push(say("questions.cockpit-of-build.where-the-hand-lies-on-bar", { bar: bar.id }));
  if (stems.length === 0) missing.push(say("questions.cockpit-of-build.a-stem"));
  if (headset?.ports.upper_stack === undefined)
    missing.push(say("questions.cockpit-of-build.the-headset-s-upper-stack"));
  const pieces = [...build.parts.values()].flatMap((p) =>
    p.kind === "spacers" && p.ports.height !== undefined
      ? Array.from({ length: Math.min(p.qty, 8) }, () => p.ports.height as number)
      : [],
  );
  const sums =
    build.build.spacers_below === undefined
      ? spacerSums(pieces.slice(0, 8), MOST_SPACERS_MM)
      : [build.build.spacers_below];
  let ranked: Answer<BestCockpit> | undefined;
  let chosen: CockpitChoice | undefined;
  let otherBars: CockpitOfBuild["otherBars"] = [];
  if (
    rider.hand_xy !== undefined &&
    bar !== undefined &&
    hand !== undefined &&
    stems.length > 0 &&
    headset?.ports.upper_stack !== undefined
  ) {
    const threaded = headset.ports.threaded === true;
    const asked = {
      stackMm: f.stack_mm,
      reachMm: f.reach_mm,
      headAngleDeg: f.head_angle_deg,
      targetXMm: rider.hand_xy[0],
      targetYMm: rider.hand_xy[1],
      ...(threaded ? { locknutStackMm: headset.ports.upper_stack } : { upperStackMm: headset.ports.upper_stack }),
      spacerSumsMm: sums,
      stems,
    };
    ranked = bestCockpit({ ...asked, bars: barCandidate(bar) });
    otherBars = (build.build.consider?.bar ?? []).flatMap((id) => {
      const other = build.parts.get(id);
      if (other?.kind !== "bar" || other.id === bar.id || other.ports.hand === undefined) return [];
      const answer = bestCockpit({ ...asked, bars: barCandidate(other) });
      return answer.kind === "answered" ? [{ id: other.id, best: answer.value.best }] : [];
    });
    if (ranked.kind === "answered") chosen = ranked.value.ranked.find((c) => c.stemId === build.build.chosen.stem);
  }
  const saddlePart = at.saddle?.kind === "saddle" ? at.saddle : undefined;
  const postPart = at.post?.kind === "post" ? at.post : undefined;
  let saddleAnswer: Answer<SaddleAnswer> | undefined;
  let post: CockpitOfBuild["post"];
  const posts = [...new Set([build.build.chosen.post, ...(build.build.consider?.post ?? [])])].flatMap((id) => {
    const part = id === undefined ? undefined : build.parts.get(id);
    return part?.kind === "post" && part.ports.setback !== undefined ? [part.ports.setback] : [];
  });
  if (rider.saddle_xy === undefined) missing.push(say("questions.cockpit-of-build.where-the-rider-wants-the-saddle"));
  else if (saddlePart?.ports.height_above_clamp === undefined || saddlePart.ports.rail_range === undefined)
    missing.push(say("questions.cockpit-of-build.the-saddle-s-height-above-its"));
  else if (posts.length === 0) missing.push(say("questions.cockpit-of-build.a-seatpost-with-its-setback"));
  else {
    saddleAnswer = saddle({
      seat_angle_deg: f.seat_angle_deg,
      target_x_mm: rider.saddle_xy[0],
      target_y_mm: rider.saddle_xy[1],
      saddle_height_above_clamp_mm: saddlePart.ports.height_above_clamp,
      setbacks_mm: [...new Set(posts)],
      rail_range_plus_minus_mm: saddlePart.ports.rail_range,
    });
    const row =
      saddleAnswer.kind === "answered"
        ? saddleAnswer.value.per_setback.find((r) => r.setback_mm === postPart?.ports.setback)
        : undefined;
    if (row !== undefined && postPart !== undefined)
      post = {
        id: postPart.id,
        extensionMm: row.extension_along_seat_tube_mm,
        railShiftBackMm: row.rail_shift_back_mm,
        withinRails: row.within_rail_range,
      };
  }
  const stem = stems.find((s) => s.id === chosen?.stemId);
  const band = (key: keyof ForkSwapValue) => {
    const b = figures.bands[key];
    return b === undefined ? 0 : (b.high - b.low) / 2 / 1.96;
  };
  let points: ContactPoints | undefined;
  let handHalfWidthMm: number | undefined;
  if (chosen !== undefined && stem !== undefined && hand !== undefined && headset?.ports.upper_stack !== undefined) {
    const upAxisMm = headset.ports.upper_stack + chosen.spacersMm + stem.clampHeightMm / 2;
    handHalfWidthMm = handError({
      headAngleDeg: f.head_angle_deg,
      upAxisMm,
      stemLengthMm: stem.lengthMm,
      stemAngleDeg: chosen.stemAngleDeg,
      stackSdMm: band("stack_mm"),
      reachSdMm: band("reach_mm"),
      headAngleSdDeg: band("head_angle_deg"),
    }).radius95Mm;
    if (
      post !== undefined &&
      postPart?.ports.setback !== undefined &&
      saddlePart?.ports.height_above_clamp !== undefined
    ) {
      const crank = at.crank?.kind === "crank" ? at.crank.ports.length : undefined;
      points = contactPoints({
        stackMm: f.stack_mm,
        reachMm: f.reach_mm,
        headAngleDeg: f.head_angle_deg,
        stemLengthMm: stem.lengthMm,
        stemAngleDeg: chosen.stemAngleDeg,
        handForwardMm: hand[0],
        handUpMm: hand[1],
        upperStackMm: headset.ports.upper_stack,
        spacersMm: chosen.spacersMm,
        clampHeightMm: stem.clampHeightMm,
        seatAngleDeg: f.seat_angle_deg,
        extensionMm: post.extensionMm,
        setbackMm: postPart.ports.setback,
        railShiftBackMm: post.railShiftBackMm,
        saddleHeightAboveClampMm: saddlePart.ports.height_above_clamp,
        crankMm: crank ?? 170,
        crankAngleDeg: 0,
      });
    }
  }
  return {
    missing,
    otherBars,
    ...(chosen === undefined ? {} : { chosen }),
    ...(handHalfWidthMm === undefined ? {} : { handHalfWidthMm }),
    ...(ranked === undefined ? {} : { ranked }),
    ...(saddleAnswer === undefined ? {} : { saddle: saddleAnswer }),
    ...(post === undefined ? {} : { post }),
    ...(points === undefined ? {} : { points }),
  };
}
