/**
 * What do the joints look at for this build? The parts in their places, the loaded radii by M6, and the side view today
 * and after all changes by M4, both on level ground. Today means the donor's own fork on today's wheels (ruling J4).
 * A part that is not chosen, or whose numbers are not known, leaves today's value only where nothing changes there; an
 * unknown new number leaves the figures after unknown. Sources: fit-m4-swap.
 */
import { forkSwapValue, type NewParts, saggedRadiusMm } from "../geometry/index.js";
import { type Part, PLACES_OF_A_WHEEL, type Place, type ResolvedBuild, wheelsAgain } from "../workshop/index.js";
import type { FitView, FrameFacts } from "./view.js";

export interface ViewOptions {
  readonly frame?: FrameFacts;
  readonly frameSd?: Partial<FrameFacts>;
  readonly spacersBelowMm?: number;
  readonly postExtensionMm?: number;
  readonly ports?: Readonly<Record<string, number>>;
}

export function viewOfBuild(resolved: ResolvedBuild, options: ViewOptions = {}): FitView {
  return withFigures({
    resolved,
    at: resolved.at,
    ...(options.frame === undefined ? {} : { frame: options.frame }),
    ...(options.frameSd === undefined ? {} : { frameSd: options.frameSd }),
    ...(options.spacersBelowMm === undefined ? {} : { spacersBelowMm: options.spacersBelowMm }),
    ...(options.postExtensionMm === undefined ? {} : { postExtensionMm: options.postExtensionMm }),
    ports: options.ports ?? {},
  });
}

/** Places whose part moves axles, crown or ground. */
export const PLACES_OF_THE_SIDE_VIEW: readonly Place[] = [
  "fork",
  "headset",
  "tyre_front",
  "tyre_rear",
  "wheel_front",
  "wheel_rear",
  ...PLACES_OF_A_WHEEL,
];

/** The same view with another part in a place; the side view is worked out again where it depends on it. */
export function viewWithPart(view: FitView, place: Place, part: Part): FitView {
  const at = PLACES_OF_A_WHEEL.includes(place)
    ? wheelsAgain(view.at, place, part)
    : withItsOwnRings({ ...view.at, [place]: part }, place, part);
  const changed: FitView = { ...view, at };
  return PLACES_OF_THE_SIDE_VIEW.includes(place) ? withFigures(changed) : changed;
}

/** Another crank that comes with rings is judged as it comes: the rings chosen for the first one are not on it. */
function withItsOwnRings(at: FitView["at"], place: Place, part: Part): FitView["at"] {
  if (place !== "crank" || part.kind !== "crank") return at;
  if (part.ports.ring === undefined && part.ports.rings === undefined) return at;
  const { ring: _ring, ring_inner: _inner, ...rest } = at;
  return rest;
}

/** Radii, before and after for the parts that stand in `view.at`. */
function withFigures(view: FitView): FitView {
  const { before: _before, after: _after, frontRadiusMm: _front, rearRadiusMm: _rear, ...rest } = view;
  const front = tyreRadius(view.at, "tyre_front");
  const rear = tyreRadius(view.at, "tyre_rear");
  const radii = {
    ...(front === undefined ? {} : { frontRadiusMm: front }),
    ...(rear === undefined ? {} : { rearRadiusMm: rear }),
  };
  if (view.frame === undefined) return { ...rest, ...radii };
  const before = forkSwapValue(view.frame, {});
  const parts = newParts(view, front, rear);
  const after = parts === undefined ? undefined : forkSwapValue(view.frame, parts);
  return { ...rest, ...radii, ...(before === undefined ? {} : { before }), ...(after === undefined ? {} : { after }) };
}

/** Loaded radius of the tyre in this place, M6; undefined where none is chosen or its marking is not known. */
export function tyreRadius(at: FitView["at"], place: "tyre_front" | "tyre_rear"): number | undefined {
  const tyre = at[place];
  const size = tyre?.kind === "tyre" ? tyre.ports.size : undefined;
  return size === undefined ? undefined : saggedRadiusMm(size.bsdMm, size.widthMm);
}

/** undefined: a chosen part lacks a number that the side view needs. */
function newParts(view: FitView, front: number | undefined, rear: number | undefined): NewParts | undefined {
  const fork = view.at.fork;
  let parts: NewParts = {};
  if (fork?.kind === "fork") {
    const { axle_to_crown, rake } = fork.ports;
    if (axle_to_crown === undefined || rake === undefined) return undefined;
    parts = { axle_to_crown_mm: axle_to_crown, rake_mm: rake };
  }
  const headset = view.at.headset;
  if (headset?.kind === "headset" && headset.ports.lower_stack !== undefined)
    parts = { ...parts, lower_stack_mm: headset.ports.lower_stack };
  if (view.at.tyre_front !== undefined) {
    if (front === undefined) return undefined;
    parts = { ...parts, front_radius_mm: front };
  }
  if (view.at.tyre_rear !== undefined) {
    if (rear === undefined) return undefined;
    parts = { ...parts, rear_radius_mm: rear };
  }
  return parts;
}
