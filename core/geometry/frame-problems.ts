/**
 * Can these measures belong to any bicycle at all? All reasons why not, at once; none where they can.
 * A length given as a frame measure that cannot close its triangle is an impossible figure, not a doubtful reading.
 */

import type { Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { MEASURE_FIELDS, type NewParts, type SideViewInput, type SideViewKey } from "./frame-measures.js";

/** What of these numbers lies outside what the method covers? `prefix` is the path before the key, e.g. "new.". */
export function rangeProblems(input: SideViewInput, prefix = ""): Refusal[] {
  const refusals: Refusal[] = [];
  for (const { key, label, min, max, unit } of MEASURE_FIELDS) {
    const given = input[key];
    if (given === undefined || (Number.isFinite(given) && given >= min && given <= max)) continue;
    const allowed = say("geometry.frame-problems.to", { min, max, unit });
    refusals.push({
      code: "out-of-range",
      at: prefix + key,
      given,
      allowed,
      message: say("geometry.frame-problems.is-allowed-is", { label, prefix, key, given, allowed }),
    });
  }
  return refusals;
}

const cannotClose = (at: string, given: number, allowed: string, message: string): Refusal => ({
  code: "cannot-close",
  at,
  given,
  allowed,
  message,
});

/** Which of these lengths cannot form a triangle? */
export function closureProblems(input: SideViewInput, prefix = ""): Refusal[] {
  const refusals: Refusal[] = [];
  const { axle_to_crown_mm: ac, rake_mm: rake, chainstay_mm: stay, front_centre_mm: fc } = input;
  const { rear_radius_mm: rear, front_radius_mm: front, bb_height_mm: height } = input;
  if (ac !== undefined && rake !== undefined && ac <= Math.abs(rake)) {
    refusals.push(
      cannotClose(
        `${prefix}axle_to_crown_mm`,
        ac,
        say("geometry.frame-problems.more-than-the-rake-mm", { rake: Math.abs(rake) }),
        say("geometry.frame-problems.axle-to-crown-mm-is-not", { axleToCrownMm: ac, rakeMm: rake }),
      ),
    );
  }
  const drop = input.bb_drop_mm ?? (rear !== undefined && height !== undefined ? rear - height : undefined);
  const where =
    input.bb_drop_mm === undefined
      ? say("geometry.frame-problems.by-bb-height-and-rear-radius")
      : say("geometry.frame-problems.as-given");
  if (stay !== undefined && drop !== undefined && stay <= Math.abs(drop)) {
    refusals.push(
      cannotClose(
        `${prefix}chainstay_mm`,
        stay,
        say("geometry.frame-problems.more-than-the-bb-drop-mm", { drop: Math.abs(drop) }),
        say("geometry.frame-problems.chainstay-mm-is-not-longer-than", { stay, drop, where }),
      ),
    );
  }
  if (fc !== undefined && drop !== undefined && rear !== undefined && front !== undefined) {
    const rise = Math.abs(drop + front - rear);
    if (fc <= rise) {
      refusals.push(
        cannotClose(
          `${prefix}front_centre_mm`,
          fc,
          say("geometry.frame-problems.more-than-mm-the-front-axle", { rise }),
          say("geometry.frame-problems.front-centre-mm-is-not-longer", { frontCentreMm: fc, riseMm: rise }),
        ),
      );
    }
  }
  return refusals;
}

/** What stands against these measures, with ranges and triangles together? */
export function frameProblems(input: SideViewInput, prefix = ""): Refusal[] {
  const outside = rangeProblems(input, prefix);
  const wrong = new Set(outside.map((r) => r.at.slice(prefix.length)));
  const rest: Partial<Record<SideViewKey, number>> = {};
  for (const { key } of MEASURE_FIELDS) {
    const given = input[key];
    if (given !== undefined && !wrong.has(key)) rest[key] = given;
  }
  return [...outside, ...closureProblems(rest, prefix)];
}

/** What stands against these new parts on this frame? */
export function newPartProblems(frame: SideViewInput, parts: NewParts): Refusal[] {
  const outside = rangeProblems(parts, "new.");
  if (outside.length > 0) return outside;
  const ac = parts.axle_to_crown_mm ?? frame.axle_to_crown_mm;
  const rake = parts.rake_mm ?? frame.rake_mm;
  const touched = parts.axle_to_crown_mm !== undefined || parts.rake_mm !== undefined;
  if (!touched || ac === undefined || rake === undefined) return [];
  return closureProblems({ axle_to_crown_mm: ac, rake_mm: rake }, "new.");
}
