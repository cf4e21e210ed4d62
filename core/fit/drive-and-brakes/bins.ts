/** Which bottom bracket or ring of the bin would help, one that no place has taken? */
import type { PartOfKind } from "../../workshop/index.js";
import type { FitView } from "../view.js";

function free(view: FitView, id: string, qty: number): boolean {
  return Object.values(view.at).filter((part) => part?.id === id).length < qty;
}

/** The bottom brackets of the bin with the same thread, shell and spindle system as this one, shortest spindle first. */
export function otherBottomBrackets(view: FitView, bb: PartOfKind<"bb">): readonly PartOfKind<"bb">[] {
  const found: PartOfKind<"bb">[] = [];
  for (const part of view.resolved.parts.values()) {
    if (part.kind !== "bb" || part.id === bb.id || !free(view, part.id, part.qty)) continue;
    const { thread, shell_width, spindle, spindle_length } = part.ports;
    if (
      spindle_length !== undefined &&
      thread === bb.ports.thread &&
      shell_width === bb.ports.shell_width &&
      spindle === bb.ports.spindle
    )
      found.push(part);
  }
  return found.sort((a, b) => (a.ports.spindle_length ?? 0) - (b.ports.spindle_length ?? 0));
}

/** The rings of the bin on this bolt circle with fewer teeth, biggest first. */
export function smallerRings(
  view: FitView,
  boltCircleMm: number | undefined,
  teeth: number,
): readonly PartOfKind<"ring">[] {
  const found: PartOfKind<"ring">[] = [];
  for (const part of view.resolved.parts.values()) {
    if (part.kind !== "ring" || !free(view, part.id, part.qty)) continue;
    if (part.ports.teeth !== undefined && part.ports.teeth < teeth && part.ports.bolt_circle === boltCircleMm)
      found.push(part);
  }
  return found.sort((a, b) => (b.ports.teeth ?? 0) - (a.ports.teeth ?? 0));
}

/** What a part of the bin costs and weighs, as the offers want it. */
export function asOffered(part: {
  readonly id: string;
  readonly cost: number | undefined;
  readonly mass: number | undefined;
}) {
  return { id: part.id, cost: part.cost, mass: part.mass };
}
