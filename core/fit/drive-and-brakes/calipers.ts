/** Which caliper works at this end, and in which places do calipers stand? A single caliper wins over the pair. */
import type { PartOfKind, Place } from "../../workshop/index.js";
import type { FitView } from "../view.js";

export type End = "front" | "rear";
export const ENDS: readonly End[] = ["front", "rear"];

export interface CaliperHere {
  readonly end: End;
  readonly place: Place;
  readonly part: PartOfKind<"caliper"> | PartOfKind<"caliper_pair">;
}

export function caliperAt(view: FitView, end: End): CaliperHere | undefined {
  const place = `caliper_${end}` as const;
  const one = view.at[place];
  if (one?.kind === "caliper") return { end, place, part: one };
  const pair = view.at.caliper;
  return pair?.kind === "caliper_pair" ? { end, place: "caliper", part: pair } : undefined;
}

/** Each caliper part once; `where` says "both" for a pair that works at both ends. */
export interface CaliperSet extends CaliperHere {
  readonly where: "front" | "rear" | "both";
}

export function caliperSets(view: FitView): readonly CaliperSet[] {
  const front = caliperAt(view, "front");
  const rear = caliperAt(view, "rear");
  if (front !== undefined && rear !== undefined && front.part === rear.part) return [{ ...front, where: "both" }];
  return [front, rear].flatMap((here) => (here === undefined ? [] : [{ ...here, where: here.end }]));
}

/** By cable or by fluid? A pull says cable and a fluid says hydraulic where the word itself is not entered. */
export function actsBy(ports: {
  readonly acts?: "cable" | "hydraulic" | undefined;
  readonly pull?: number | undefined;
  readonly fluid?: string | undefined;
}): "cable" | "hydraulic" | undefined {
  if (ports.acts !== undefined) return ports.acts;
  if (ports.pull !== undefined) return "cable";
  return ports.fluid === undefined ? undefined : "hydraulic";
}
