/**
 * How high would published rules put the saddle, from the inseam alone?
 * Inputs: inseamMm 400..1200 (firm, standing against a wall); crankMm 80..230, left out if not known.
 * Answer: height in mm along the seat tube line from the BB to the saddle top. The first rule is the value; the band runs
 *   over the rules that can be worked out. It is a first guess for someone who has no position yet.
 * Formula: 0.883 inseam; 1.09 inseam - crank (that one is measured to the pedal axle with the crank in line).
 * Limits: the rules were compared on 19 riders and did not differ significantly; one page prints 1.07 in place of 1.09.
 *   A position that the rider likes always wins. Sources: peveler-2005, position-saddle-height.
 */

import { type Answer, answered, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";

export interface SaddleHeight {
  readonly saddle_height_mm: number;
  readonly rules: readonly { readonly rule: string; readonly height_mm: number }[];
}

export function saddleHeight(q: { readonly inseamMm: number; readonly crankMm?: number }): Answer<SaddleHeight> {
  const refusals: Refusal[] = [];
  const judge = (at: string, given: number, low: number, high: number, what: string): void => {
    if (given >= low && given <= high) return;
    refusals.push({
      code: "out-of-range",
      at,
      given,
      allowed: say("position.post-insertion.to-mm", { low, high }),
      message: say("position.saddle-height.is-mm-it-must-lie-in", { what, at, given, low, high }),
    });
  };
  judge("inseamMm", q.inseamMm, 400, 1200, say("position.saddle-height.the-inseam"));
  if (q.crankMm !== undefined) judge("crankMm", q.crankMm, 80, 230, say("position.saddle-height.the-crank"));
  if (refusals.length > 0) return refused(refusals);
  const rules = [{ rule: say("position.saddle-height.0-883-x-inseam"), height_mm: 0.883 * q.inseamMm }];
  if (q.crankMm !== undefined) {
    rules.push({ rule: say("position.saddle-height.1-09-x-inseam-crank"), height_mm: 1.09 * q.inseamMm - q.crankMm });
  }
  const heights = rules.map((rule) => rule.height_mm);
  const bands =
    rules.length > 1
      ? {
          saddle_height_mm: {
            low: Math.min(...heights),
            high: Math.max(...heights),
            means: say("position.saddle-height.lowest-and-highest-of-the-published"),
          },
        }
      : {};
  return answered(
    { saddle_height_mm: 0.883 * q.inseamMm, rules },
    {
      bands,
      sources: ["peveler-2005", "position-saddle-height"],
      cautions: [
        {
          code: "saddle-height-is-a-guess",
          at: "saddle_height_mm",
          message: say("position.saddle-height.a-rule-of-thumb-from-the"),
        },
      ],
    },
  );
}
