/** Which ring and which sprocket drive this build? A chosen ring takes the place of the one on the crank. */
import type { PartOfKind } from "../../workshop/index.js";
import type { Measure } from "../settle.js";
import { type FitView, partAt } from "../view.js";

export interface RingHere {
  readonly teeth: number | undefined;
  /** Left out where nobody has measured the teeth's width: the ring that came on the crank. */
  readonly width: "3/32" | "1/8" | undefined;
  readonly ownOfCrank: boolean;
  readonly readTeeth: Measure;
}

const WIDTH = { narrow: "3/32", wide: "1/8" } as const;

export function ringHere(view: FitView): RingHere | undefined {
  const ring = partAt(view, "ring", "ring");
  if (ring !== undefined) {
    const wide = ring.ports.chain_class;
    return {
      teeth: ring.ports.teeth,
      width: wide === undefined ? undefined : WIDTH[wide],
      ownOfCrank: false,
      readTeeth: { what: "Count the ring's teeth", at: `bin.parts.${ring.id}.ports.teeth`, tool: "eye" },
    };
  }
  const crank = partAt(view, "crank", "crank");
  if (crank === undefined) return undefined;
  return {
    teeth: crank.ports.ring,
    width: undefined,
    ownOfCrank: true,
    readTeeth: {
      what: "Count the teeth of the ring on the crank",
      at: `bin.parts.${crank.id}.ports.ring`,
      tool: "eye",
    },
  };
}

export function sprocketHere(view: FitView): PartOfKind<"sprocket"> | undefined {
  return partAt(view, "sprocket", "sprocket");
}
