/** What do the questions of the board themselves stand on, beyond the rooms they ask? */
import type { SourceRow } from "./source-row.js";

export const questionSources: readonly SourceRow[] = [
  {
    id: "wear-practice",
    title: "Looking over a used frame and fork: cracks, dents, rust, a stuck post",
    kind: "common practice",
    where: "bare and degreased, lamp, magnet, dye where in doubt; a person signs it",
    mark: "common practice",
  },
];
