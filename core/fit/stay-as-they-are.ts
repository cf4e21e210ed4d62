/**
 * Do these parts stay where they are today? Between the donor's own parts in their old places nothing changes, so nothing
 * has to be measured to know that they go together; how worn they are is looked at when the bicycle is stripped.
 */
import type { SourceId } from "../quantity/index.js";
import type { Part } from "../workshop/index.js";
import { closeJoint } from "./close-joint.js";
import type { JointAnswer } from "./joint.js";
import type { JointHead } from "./joint-definition.js";
import { settle } from "./settle.js";

/** The joint's answer where all of these are the donor's own; undefined where one is not, and the joint judges. */
export function asTheyAre(
  head: JointHead,
  parts: readonly Part[],
  words: { readonly stays: string; readonly look: string },
  sources: readonly SourceId[],
): JointAnswer | undefined {
  if (!parts.every((part) => part.own === true)) return undefined;
  return closeJoint(head, {
    settled: settle([]),
    words: { fits: words.stays, fails: "" },
    sources,
    cautions: [{ code: "worn-not-measured", message: words.look }],
  });
}
