/**
 * How much room does the tyre have at each station of frame and fork?
 * Side gap at chainstays, seat stays and blades by M9, radial gap at bridges and crown; each held against 4 (hard) and 6
 * (wanted), the radial ones again beside a guard. Spreading the rear gives no credit, narrowing it takes its share.
 * Sources: fit-m9-gaps, fit-iso-4210-2.
 */

import { GAP_LEAST_MM, GAP_WANTED_MM, gapAtRadiusMm, saggedRadiusMm, tyreWidthOnRimMm } from "../../geometry/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { portValue } from "../port.js";
import { type Check, type Measure, rounded } from "../settle.js";
import { span, UNKNOWN } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { ROOT_WITHOUT_BRIDGE_MM } from "./j9-hub-in-frame.js";

/** Side gap: half of ± 0.2 on the inner gap and of ± 0.8 on the tyre's width (common practice, no source). */
const SIDE_HALF_MM = 0.5;
/** Radial gap: ± 3 on the estimated radius (M6). */
const RADIAL_HALF_MM = 3;
/** A guard takes 10 to 14 of the radial gap (M9). */
const GUARD_MID_MM = 12;
const GUARD_HALF_MM = 2;

type End = "front" | "rear";
type Profile = readonly (readonly [number, number])[] | undefined;

/** The tyre at one end, with its width and radius. */
export interface WheelInSpace {
  readonly end: End;
  readonly tyre: PartOfKind<"tyre">;
  readonly bsd: number;
  readonly widthMm: number;
  readonly radiusMm: number;
  readonly widestMm: number;
}

/** undefined: no tyre with a size is chosen at this end. */
export function wheelInSpace(view: FitView, end: End): WheelInSpace | undefined {
  const tyre = partAt(view, `tyre_${end}`, "tyre");
  const size = tyre?.ports.size;
  if (tyre === undefined || size === undefined) return undefined;
  const wheel = end === "front" ? partAt(view, "wheel_front", "wheel_front") : partAt(view, "wheel_rear", "wheel_rear");
  // A rim of another bead seat says nothing about this tyre's width.
  const rim = wheel?.ports.bsd === size.bsdMm ? wheel.ports.rim_inner : undefined;
  const widthMm = Math.max(size.widthMm, rim === undefined ? 0 : tyreWidthOnRimMm(size.widthMm, rim));
  const radiusMm =
    (end === "front" ? view.frontRadiusMm : view.rearRadiusMm) ?? saggedRadiusMm(size.bsdMm, size.widthMm);
  return { end, tyre, bsd: size.bsdMm, widthMm, radiusMm, widestMm: radiusMm - widthMm / 2 };
}

function side(
  name: string,
  wheel: WheelInSpace,
  profile: Profile,
  measure: Omit<Measure, "tool" | "what">,
  kind: "hard" | "wanted",
): Check {
  const stations = (profile ?? []).map(([radius_mm, inner_gap_mm]) => ({ radius_mm, inner_gap_mm }));
  const inner = gapAtRadiusMm(stations, wheel.widestMm);
  return {
    name,
    unit: "mm",
    value: inner === undefined ? UNKNOWN : span((inner - wheel.widthMm) / 2, SIDE_HALF_MM),
    ...gapLimits(inner === undefined ? kind : "hard"),
    measure: {
      what: say("fit-front.tyre-room.measure-the-inner-gap-at-the", {
        name: stationOf(name),
        widestMm: rounded(wheel.widestMm),
      }),
      tool: "long_calliper",
      ...measure,
    },
  };
}

function radial(
  name: string,
  wheel: WheelInSpace,
  from: number | undefined,
  at: string,
  kind: "hard" | "wanted",
): Check {
  return {
    name,
    unit: "mm",
    value: from === undefined ? UNKNOWN : span(from - wheel.radiusMm, RADIAL_HALF_MM),
    ...gapLimits(from === undefined ? kind : "hard"),
    measure: {
      what: say("fit-front.tyre-room.measure-from-the-axle-to-the", { name: stationOf(name) }),
      at,
      tool: "tape",
    },
    bandMeans: say("fit-front.tyre-room.3-on-the-radius-estimated-from"),
  };
}

/** "chainstays" of "side gap at the chainstays". */
export function stationOf(name: string): string {
  return name.replace(/^(side|radial) gap at the /, "");
}

function gapLimits(kind: "hard" | "wanted"): Pick<Check, "limit" | "wanted"> {
  return kind === "hard"
    ? {
        limit: { low: GAP_LEAST_MM, kind: "hard", words: say("fit-front.tyre-room.4-the-least") },
        wanted: { low: GAP_WANTED_MM, words: say("fit-front.tyre-room.6-or-more") },
      }
    : { limit: { low: GAP_WANTED_MM, kind: "wanted", words: say("fit-front.tyre-room.6-or-more") } };
}

/** Chainstays, seat stays and both bridges. */
export function rearGaps(view: FitView, wheel: WheelInSpace): readonly Check[] {
  const { gaps_rear: gaps, interfaces } = view.resolved.donor;
  const checks: Check[] = [
    side(
      say("fit-front.tyre-room.side-gap-at-the-chainstays"),
      wheel,
      narrowed(view, gaps.chainstay_inner_at_radius),
      { at: "donor.gaps_rear.chainstay_inner_at_radius" },
      "hard",
    ),
    side(
      say("fit-front.tyre-room.side-gap-at-the-seat-stays"),
      wheel,
      gaps.seatstay_inner_at_radius,
      { at: "donor.gaps_rear.seatstay_inner_at_radius" },
      "wanted",
    ),
    radial(
      say("fit-front.tyre-room.radial-gap-at-the-brake-bridge"),
      wheel,
      gaps.brake_bridge_from_axle,
      "donor.gaps_rear.brake_bridge_from_axle",
      "hard",
    ),
    radial(
      say("fit-front.tyre-room.radial-gap-at-the-chainstay-bridge"),
      wheel,
      gaps.chainstay_bridge_from_axle,
      "donor.gaps_rear.chainstay_bridge_from_axle",
      "wanted",
    ),
  ];
  const spread = (portValue(view, "frame.rear_spacing", interfaces.rear_spacing) ?? 0) - (interfaces.rear_spacing ?? 0);
  const root = gaps.chainstay_bridge_from_axle ?? ROOT_WITHOUT_BRIDGE_MM;
  if (interfaces.rear_spacing !== undefined && spread > 0 && wheel.widestMm < root) {
    checks.push({
      name: say("fit-front.tyre-room.more-at-the-chainstays-each-side"),
      unit: "mm",
      value: span(((spread / 2) * (root - wheel.widestMm)) / root),
    });
  }
  return [...checks, ...withGuard(view, checks), ...radiusChange(view, wheel)];
}

/** Stays that are set together lose gap; stays that are spread get no credit. */
function narrowed(view: FitView, profile: Profile): Profile {
  const { gaps_rear: gaps, interfaces } = view.resolved.donor;
  const now = interfaces.rear_spacing;
  const to = portValue(view, "frame.rear_spacing", now);
  if (profile === undefined || now === undefined || to === undefined || to >= now) return profile;
  const root = gaps.chainstay_bridge_from_axle ?? ROOT_WITHOUT_BRIDGE_MM;
  return profile.map(([radius, gap]) => [radius, gap + ((to - now) * Math.max(0, root - radius)) / root] as const);
}

/** Fork blades and crown; nothing without a fork. */
export function frontGaps(view: FitView, wheel: WheelInSpace): readonly Check[] {
  const fork = partAt(view, "fork", "fork");
  if (fork === undefined) return [];
  const at = `bin.parts.${fork.id}.ports`;
  const checks = [
    side(
      say("fit-front.tyre-room.side-gap-at-the-fork-blades"),
      wheel,
      fork.ports.blade_inner_at_radius,
      { at: `${at}.blade_inner_at_radius` },
      "hard",
    ),
    radial(
      say("fit-front.tyre-room.radial-gap-at-the-crown"),
      wheel,
      fork.ports.crown_underside_from_axle,
      `${at}.crown_underside_from_axle`,
      "hard",
    ),
  ];
  return [...checks, ...withGuard(view, checks), ...radiusChange(view, wheel)];
}

/** What is left of the radial gaps beside a guard. Wanted only: J47 judges the guard itself. */
function withGuard(view: FitView, checks: readonly Check[]): readonly Check[] {
  if (view.at.guards === undefined && !view.resolved.intent.guards) return [];
  return checks.flatMap((check): readonly Check[] => {
    if (!check.name.startsWith("radial") || check.value.kind === "unknown") return [];
    const value = span(check.value.mid - GUARD_MID_MM, GUARD_HALF_MM);
    return [
      {
        name: say("fit-front.tyre-room.beside-a-guard", { check: check.name }),
        unit: "mm",
        value,
        limit: { low: GAP_WANTED_MM, kind: "wanted", words: say("fit-front.tyre-room.6-or-more-after-the-10") },
        bandMeans: say("fit-front.tyre-room.a-guard-takes-10-to-14"),
        flag: say("fit-front.tyre-room.a-guard-hardly-goes-in-at", {
          check: stationOf(check.name),
          mid: rounded(check.value.mid),
        }),
      },
    ];
  });
}

function radiusChange(view: FitView, wheel: WheelInSpace): readonly Check[] {
  const today = view.resolved.donor.wheels_now.radius;
  if (today === undefined) return [];
  return [
    {
      name: say("fit-front.tyre-room.radius-against-today", { end: wheel.end }),
      unit: "mm",
      value: span(wheel.radiusMm - today),
    },
  ];
}
