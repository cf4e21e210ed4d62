/**
 * What will the bicycle weigh, and how surely?
 * Inputs: lines with quantity, mass of one in g, and how it is known: weighed (± 5 g) or the mean of its class
 *   (± 20 %); null = not known. Removed parts are subtracted. Maybe a limit in g, hard or wanted.
 * Answer: mass in g with its 95 % band, by group. Half-widths are added by root-sum-square over the lines; pieces of
 *   one line share their error, so a line of two counts twice its half-width, not √2 times.
 * Limits: the band covers the scales and the class means only. Source: mass-bands-practice (common practice).
 */

import { type Answer, answered, type LimitVerdict, type NextStep, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";

export const WEIGHED_HALF_WIDTH_G = 5;
export const CLASS_MEAN_HALF_WIDTH_REL = 0.2;

export interface MassLine {
  readonly id: string;
  readonly what: string;
  /** "frame", "wheels", "drive", "brakes", "load gear" or what suits. */
  readonly group: string;
  readonly qty: number;
  /** Mass of one in g; null where it is not known. */
  readonly massG: number | null;
  readonly known: "weighed" | "class mean";
  /** True: taken off the bicycle, so subtracted. */
  readonly removed?: boolean;
}

export interface MassInput {
  readonly lines: readonly MassLine[];
  readonly limitG?: number;
  /** A hard limit (rack, tyre, wheel class) or one the rider wants. */
  readonly limitIs?: "hard" | "wanted";
}

export interface MassValue {
  readonly massG: number;
  readonly halfWidthG: number;
  readonly byGroupG: Readonly<Record<string, number>>;
  readonly massNotKnown: readonly string[];
  readonly limitG: number | undefined;
  readonly verdict: LimitVerdict | undefined;
  readonly next: readonly NextStep[];
}

export function massLedger(input: MassInput): Answer<MassValue> {
  const refusals: Refusal[] = input.lines.flatMap((line, i) =>
    [["qty", line.qty] as const, ["massG", line.massG ?? 0] as const].flatMap(([key, given]) =>
      Number.isFinite(given) && given >= 0
        ? []
        : [
            {
              code: "bad-amount",
              at: `lines[${i}].${key}`,
              given,
              allowed: say("plan.mass-ledger.0-or-more-null-for-a"),
              message: say("plan.mass-ledger.of-is-give-0-or-more", { key, line: line.id, given }),
            },
          ],
    ),
  );
  if (refusals.length > 0) return refused(refusals);

  let massG = 0;
  let squares = 0;
  let widest: { readonly line: MassLine; readonly halfG: number } | undefined;
  const byGroupG: Record<string, number> = {};
  for (const line of input.lines) {
    if (line.massG === null) continue;
    const sign = line.removed === true ? -1 : 1;
    const halfG = line.qty * (line.known === "weighed" ? WEIGHED_HALF_WIDTH_G : CLASS_MEAN_HALF_WIDTH_REL * line.massG);
    massG += sign * line.qty * line.massG;
    byGroupG[line.group] = (byGroupG[line.group] ?? 0) + sign * line.qty * line.massG;
    squares += halfG ** 2;
    if (widest === undefined || halfG > widest.halfG) widest = { line, halfG };
  }
  const halfWidthG = Math.sqrt(squares);
  const unknown = input.lines.filter((l) => l.massG === null && l.qty > 0);
  const { limitG } = input;
  const verdict = limitG === undefined ? undefined : judge(massG, halfWidthG, limitG, unknown, input.limitIs);
  const next: NextStep[] = unknown.map((l) => ({
    kind: "measure",
    what: say("plan.mass-ledger.weigh", { what: l.what, id: l.id }),
    tool: "scales",
  }));
  if (
    verdict === "measure first" &&
    unknown.length === 0 &&
    widest !== undefined &&
    widest.line.known === "class mean"
  ) {
    next.push({
      kind: "measure",
      what: say("plan.mass-ledger.weigh-2", { what: widest.line.what, line: widest.line.id }),
      tool: "scales",
      accuracy: "± 5 g",
    });
  }
  const cautions = [];
  if (unknown.length > 0) {
    cautions.push({
      code: "mass-not-known",
      at: "lines",
      message: say("plan.mass-ledger.mass-not-known-the-sum-leaves", {
        lines: unknown.map((l) => `${l.what} (${l.id})`).join(", "),
      }),
    });
  }
  if (limitG !== undefined && input.limitIs === "wanted" && Math.abs(massG - limitG) < halfWidthG) {
    cautions.push({
      code: "band-across-the-limit",
      at: "limitG",
      message: say("plan.mass-ledger.g-lies-across-the-wanted-g", {
        massG: massG.toFixed(0),
        halfWidthG: halfWidthG.toFixed(0),
        limitG,
      }),
    });
  }
  return answered<MassValue>(
    { massG, halfWidthG, byGroupG, massNotKnown: unknown.map((l) => l.id), limitG, verdict, next },
    {
      bands: { massG: { low: massG - halfWidthG, high: massG + halfWidthG, means: "95 %" } },
      sources: ["mass-bands-practice"],
      cautions,
    },
  );
}

/** A band across a hard limit is measure first; across a wanted one the middle decides. */
function judge(
  massG: number,
  halfWidthG: number,
  limitG: number,
  unknown: readonly MassLine[],
  limitIs: "hard" | "wanted" = "hard",
): LimitVerdict {
  const half = limitIs === "hard" ? halfWidthG : 0;
  // an unknown part that comes off could still bring the sum down, one that goes on could bring it up
  if (massG - half > limitG && !unknown.some((l) => l.removed === true)) return "over";
  return unknown.length > 0 || massG + half > limitG ? "measure first" : "within";
}

/** How many grams does a swap save for one unit of money? Undefined where it costs nothing more: then it is free. */
export function gramsPerMoney(swap: {
  readonly massOutG: number;
  readonly massInG: number;
  readonly priceOut: number;
  readonly priceIn: number;
}): number | undefined {
  const dearer = swap.priceIn - swap.priceOut;
  return dearer > 0 ? (swap.massOutG - swap.massInG) / dearer : undefined;
}
