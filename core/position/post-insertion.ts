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
    const allowed = `${low} to ${high} mm`;
    const message = `${what} (${at}) is ${given} mm; it must lie in ${allowed}.`;
    refusals.push({ code: "out-of-range", at, given, allowed, message });
  };
  judge("extensionMm", q.extensionMm, 1, 1500, "The extension");
  judge("seatTubeTopMm", q.seatTubeTopMm, 1, 1000, "The seat tube");
  judge("postLengthMm", q.postLengthMm, 30, 800, "The post's length");
  judge("postDiameterMm", q.postDiameterMm, 15, 45, "The post's diameter");
  judge("markMm", q.markMm, 0, 400, "The least insertion");
  judge("topTubeJointBelowTopMm", q.topTubeJointBelowTopMm, 0, 300, "The top tube joint");
  if (refusals.length > 0) return refused(refusals);

  const exposed = q.extensionMm - q.seatTubeTopMm;
  const inserted = q.postLengthMm - exposed;
  const needed = Math.max(q.markMm ?? 0, 2 * q.postDiameterMm, q.topTubeJointBelowTopMm ?? 0);
  const cautions: Caution[] = [];
  if (q.markMm === undefined) {
    cautions.push({
      code: "post-mark-not-read",
      at: "markMm",
      message: "The post's own mark has not been read. It wins where it asks for more than twice the diameter.",
    });
  }
  if (q.topTubeJointBelowTopMm === undefined) {
    cautions.push({
      code: "top-tube-joint-not-measured",
      at: "topTubeJointBelowTopMm",
      message: "The post should also end below the joint of the top tube. That depth has not been measured.",
    });
  }
  if (exposed < 0) {
    cautions.push({
      code: "saddle-below-tube-top",
      at: "extensionMm",
      message: `The clamp would have to sit ${(-exposed).toFixed(1)} mm below the top of the seat tube: the frame is too tall.`,
    });
  }
  if (inserted > q.seatTubeTopMm) {
    cautions.push({
      code: "post-longer-than-tube",
      at: "postLengthMm",
      message: "The post is longer than the seat tube is deep. It would strike the BB shell.",
    });
  }
  if (inserted < needed) {
    cautions.push({
      code: "post-above-its-mark",
      at: "inserted_mm",
      message: `Only ${inserted.toFixed(1)} mm would be in the tube, ${needed.toFixed(1)} mm are needed. Do not ride it: a longer post.`,
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
