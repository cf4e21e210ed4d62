/**
 * How deep does the post sit in the seat tube, and is that deep enough?
 * Inputs in mm: extensionMm (BB to clamp centre along the seat tube), seatTubeTopMm (BB to the top of the tube),
 *   postLengthMm (clamp centre to lower end), postDiameterMm; markMm (least insertion that the post's mark asks for) and
 *   topTubeJointBelowTopMm (lower edge of the top tube joint below the tube's top), each left out where not measured.
 * Answer: exposed, inserted and needed lengths in mm, how much is to spare, and a verdict; an unread mark is
 *   "measure first" where nothing else stands against the post.
 * Formula: exposed = extension - seat tube; inserted = length - exposed; needed = the most of mark, 2 x diameter and the
 *   joint's lower edge.
 * Limits: the post's own mark and sheet win. Whether the tube is bored deep enough is looked at, not calculated.
 * Source: position-insertion.
 */

import { type Answer, answered, type Caution, type JointVerdict, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";

export interface PostInsertionInput {
  readonly extensionMm: number;
  readonly seatTubeTopMm: number;
  readonly postLengthMm: number;
  readonly postDiameterMm: number;
  readonly markMm?: number;
  readonly topTubeJointBelowTopMm?: number;
}

export interface PostInsertion {
  readonly exposed_mm: number;
  readonly inserted_mm: number;
  readonly insertion_needed_mm: number;
  readonly spare_mm: number;
  readonly verdict: JointVerdict;
}

export function postInsertion(q: PostInsertionInput): Answer<PostInsertion> {
  const refusals: Refusal[] = [];
  const judge = (at: string, given: number | undefined, low: number, high: number, what: string): void => {
    if (given === undefined || (given >= low && given <= high)) return;
    const allowed = say("position.post-insertion.to-mm", { low, high });
    const message = say("position.post-insertion.is-mm-it-must-lie-in", { what, at, given, allowed });
    refusals.push({ code: "out-of-range", at, given, allowed, message });
  };
  judge("extensionMm", q.extensionMm, 1, 1500, say("position.post-insertion.the-extension"));
  judge("seatTubeTopMm", q.seatTubeTopMm, 1, 1000, say("position.post-insertion.the-seat-tube"));
  judge("postLengthMm", q.postLengthMm, 30, 800, say("position.post-insertion.the-post-s-length"));
  judge("postDiameterMm", q.postDiameterMm, 15, 45, say("position.post-insertion.the-post-s-diameter"));
  judge("markMm", q.markMm, 0, 400, say("position.post-insertion.the-least-insertion"));
  judge("topTubeJointBelowTopMm", q.topTubeJointBelowTopMm, 0, 300, say("position.post-insertion.the-top-tube-joint"));
  if (refusals.length > 0) return refused(refusals);

  const exposed = q.extensionMm - q.seatTubeTopMm;
  const inserted = q.postLengthMm - exposed;
  const needed = Math.max(q.markMm ?? 0, 2 * q.postDiameterMm, q.topTubeJointBelowTopMm ?? 0);
  const cautions: Caution[] = [];
  if (q.markMm === undefined) {
    cautions.push({
      code: "post-mark-not-read",
      at: "markMm",
      message: say("position.post-insertion.the-post-s-own-mark-has"),
    });
  }
  if (q.topTubeJointBelowTopMm === undefined) {
    cautions.push({
      code: "top-tube-joint-not-measured",
      at: "topTubeJointBelowTopMm",
      message: say("position.post-insertion.the-post-should-also-end-below"),
    });
  }
  if (exposed < 0) {
    cautions.push({
      code: "saddle-below-tube-top",
      at: "extensionMm",
      message: say("position.post-insertion.the-clamp-would-have-to-sit", { exposed: (-exposed).toFixed(1) }),
    });
  }
  if (inserted > q.seatTubeTopMm) {
    cautions.push({
      code: "post-longer-than-tube",
      at: "postLengthMm",
      message: say("position.post-insertion.the-post-is-longer-than-the"),
    });
  }
  if (inserted < needed) {
    cautions.push({
      code: "post-above-its-mark",
      at: "inserted_mm",
      message: say("position.post-insertion.only-mm-would-be-in-the", {
        inserted: inserted.toFixed(1),
        needed: needed.toFixed(1),
      }),
    });
  }
  const impossible = exposed < 0 || inserted < needed || inserted > q.seatTubeTopMm;
  const verdict = impossible ? "will not fit" : q.markMm === undefined ? "measure first" : "fits";
  return answered(
    {
      exposed_mm: exposed,
      inserted_mm: inserted,
      insertion_needed_mm: needed,
      spare_mm: inserted - needed,
      verdict,
    },
    { sources: ["position-insertion"], cautions },
  );
}
