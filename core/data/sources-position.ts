/** Where the rules of the rider's position and of the cockpit come from. */
import type { SourceRow } from "./source-row.js";

export const positionSources: readonly SourceRow[] = [
  {
    id: "position-contact-points",
    title: "Rider contact points from the frame, plane geometry in the side view",
    kind: "our derivation",
    where: "docs/methods/cockpit.md, docs/methods/saddle.md",
    mark: "derived",
  },
  {
    id: "position-reach-step",
    title: "A spacer s moves the stem by -s cos(head angle) in reach and +s sin(head angle) in stack",
    kind: "common practice",
    where: "10 mm at 72 degrees: -3.09 and +9.51",
    mark: "common practice",
  },
  {
    id: "position-hand-error",
    title: "First-order propagation of the frame's measuring errors to the hand",
    kind: "our derivation",
    where: "docs/methods/cockpit.md",
    mark: "derived",
  },
  {
    id: "position-clamp-equal",
    title: "Bar and stem clamp diameters equal within 0.1 mm",
    kind: "common practice",
    where: "joint J6",
    mark: "common practice",
  },
  {
    id: "peveler-2005",
    title: "Peveler et al. 2005, comparing methods for setting saddle height, JEPonline 8(1):51-55",
    kind: "paper",
    where: "rules 0.883 inseam and 1.09 inseam, 19 riders",
    mark: "read",
  },
  {
    id: "position-saddle-height",
    title: "Saddle height from the inseam as a first guess",
    kind: "common practice",
    where: "method M7",
    mark: "common practice",
  },
  {
    id: "position-insertion",
    title: "Post in the tube at least to its mark, twice its diameter, and below the top tube joint",
    kind: "common practice",
    where: "joint J43",
    mark: "common practice",
  },
  {
    id: "position-steerer",
    title: "Steerer length as the sum of the parts on it, less the gap for the cap",
    kind: "common practice",
    where: "step C8, joint J8",
    mark: "common practice",
  },
];
