/** Which rings and which sprocket drive this build? Chosen rings take the place of those on the crank, the big one first. */
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import type { Measure } from "../settle.js";
import { type FitView, partAt } from "../view.js";

export interface RingHere {
  readonly teeth: number | undefined;
  /** Left out where nobody has measured the teeth's width: the ring that came on the crank. */
  readonly width: "3/32" | "1/8" | undefined;
  readonly ownOfCrank: boolean;
  readonly readTeeth: Measure;
  readonly part?: PartOfKind<"ring">;
}

const WIDTH = { narrow: "3/32", wide: "1/8" } as const;

export function ringHere(view: FitView): RingHere | undefined {
  return ringsHere(view)[0];
}

/** Big ring first. Where a small ring is chosen, the big one is the chosen one or the crank's own. */
export function ringsHere(view: FitView): readonly RingHere[] {
  const outer = partAt(view, "ring", "ring");
  const inner = partAt(view, "ring_inner", "ring");
  const crank = partAt(view, "crank", "crank");
  const chosen = [outer, inner].flatMap((ring) => (ring === undefined ? [] : [chosenRing(ring)]));
  if (outer !== undefined || crank === undefined) return chosen;
  const own = crank.ports.rings ?? (crank.ports.ring === undefined ? riveted(crank) : [crank.ports.ring]);
  const onCrank = own.map(
    (teeth): RingHere => ({
      teeth,
      width: undefined,
      ownOfCrank: true,
      readTeeth: {
        what: say("fit-drive.ring-on-crank.count-the-teeth-of-the-ring"),
        at: `bin.parts.${crank.id}.ports.ring`,
        tool: "eye",
      },
    }),
  );
  return inner === undefined ? onCrank : [...onCrank.slice(0, 1), ...chosen];
}

/** A crank that tells where each of its rings stands, and names none that could be changed, has them riveted on. */
function riveted(crank: PartOfKind<"crank">): readonly (number | undefined)[] {
  const teeth = (crank.ports.ring_chainlines ?? []).map(([t]) => t).sort((a, b) => b - a);
  return teeth.length === 0 ? [undefined] : teeth;
}

function chosenRing(ring: PartOfKind<"ring">): RingHere {
  const wide = ring.ports.chain_class;
  return {
    teeth: ring.ports.teeth,
    width: wide === undefined ? undefined : WIDTH[wide],
    ownOfCrank: false,
    readTeeth: {
      what: say("fit-drive.ring-on-crank.count-the-ring-s-teeth"),
      at: `bin.parts.${ring.id}.ports.teeth`,
      tool: "eye",
    },
    part: ring,
  };
}

export function sprocketHere(view: FitView): PartOfKind<"sprocket"> | undefined {
  return partAt(view, "sprocket", "sprocket");
}

/** Where one ring of the crank stands on the crank's design spindle, mm from the centre plane. */
export function statedRingLine(
  crank: PartOfKind<"crank">,
  rings: readonly RingHere[],
  teeth: number | undefined,
): number | undefined {
  const row = crank.ports.ring_chainlines?.find(([t]) => t === teeth);
  // A single ring stands at the crank's own chainline; of several each has its own.
  return row?.[1] ?? (rings.length === 1 ? crank.ports.chainline : undefined);
}

/**
 * The chainline of all rings together: their middle (M27). The crank's own holds for the rings that came on it; where
 * several are bolted on one by one, each one's must be known.
 */
export function statedChainline(crank: PartOfKind<"crank">, rings: readonly RingHere[]): number | undefined {
  const lines = rings.map((ring) => statedRingLine(crank, rings, ring.teeth));
  const known = lines.filter((line): line is number => line !== undefined);
  if (known.length < lines.length || known.length === 0)
    return rings.length > 1 && rings.some((ring) => !ring.ownOfCrank) ? undefined : crank.ports.chainline;
  return known.reduce((sum, line) => sum + line, 0) / known.length;
}

/** How much longer is the spindle than the one on which the crank's figures hold? 0 where the spindle is the crank's own. */
export function spindleLonger(crank: PartOfKind<"crank">, bb: PartOfKind<"bb"> | undefined): number | undefined {
  const own = crank.ports.spindle === "24" || crank.ports.spindle === "30";
  if (own && crank.ports.design_spindle === undefined) return 0;
  const { design_spindle } = crank.ports;
  const length = bb?.ports.spindle_length;
  return design_spindle === undefined || length === undefined ? undefined : length - design_spindle;
}
