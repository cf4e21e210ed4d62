/**
 * Question 12 with a derailleur: do rings, cassette, cage and chain go together? What the cage must take up (M24), which
 * gears it bars, how many links the chain needs largest on largest, and what the joints of ring, chain and chainline say.
 */

import { type DerailleurCapacity, derailleurCapacity, derailleurChainLinks } from "../../drive/index.js";
import { ringsHere } from "../../fit/drive-and-brakes/ring-on-crank.js";
import type { Answer, BoardVerdict, Caution, NextStep } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { Part } from "../../workshop/index.js";
import type { BoardRow, WorkingTable } from "../board.js";
import { figure, type Head, heaviest, joint, type Reckoned, row, showNumber } from "../question.js";

const HEAD: Head = { n: 12, question: say("asked.derailleur-drive.which-rings-and-cassette-for-my"), stake: "money" };

interface Set {
  readonly name: string;
  readonly rings: readonly number[];
}

export function derailleurDrive(r: Reckoned): BoardRow {
  const { at } = r.resolved;
  const joints = ["J34", "J35", "J36", "J37"].map((id) => joint(r, id));
  const worst = heaviest(joints);
  const teeth = ringsHere(r.view).map((ring) => ring.teeth);
  const rings = teeth.filter((t): t is number => t !== undefined);
  const cassette = at.sprocket?.kind === "cassette" ? at.sprocket : undefined;
  const cogs = cassette?.ports.cogs;
  const cage = at.derailleur_rear?.kind === "derailleur_rear" ? at.derailleur_rear : undefined;
  const chainstay = r.geometry.frame.kind === "answered" ? r.geometry.frame.value.frame.chainstay_mm : undefined;
  const missing = firstMissing(r, teeth, rings, cogs, cage);
  const capacity =
    cogs === undefined || rings.length === 0 ? undefined : derailleurCapacity(capacityInput(rings, cogs, cage));
  const taken = capacity?.kind === "answered" ? capacity.value : undefined;
  const links = cogs === undefined ? undefined : linksFor(rings, cogs, chainstay);
  const have = at.chain?.kind === "chain" ? at.chain.ports.links : undefined;
  const short = links !== undefined && have !== undefined && have < links;
  const set = say("asked.derailleur-drive.with", {
    rings: rings.join("/"),
    cogs:
      cogs === undefined
        ? say("asked.derailleur-drive.the-cassette")
        : say("asked.derailleur-drive.to", { smallestCog: Math.min(...cogs), largestCog: Math.max(...cogs) }),
  });
  const jointFails = worst?.verdict === "will not fit" ? worst : undefined;
  const capacityVerdict: BoardVerdict = taken?.verdict ?? "measure first";
  const open = missing !== undefined || capacityVerdict === "measure first";
  const verdict: BoardVerdict =
    jointFails !== undefined || capacityVerdict === "will not fit" || short
      ? "will not fit"
      : open
        ? "measure first"
        : worst?.verdict === "measure first"
          ? "measure first"
          : capacityVerdict === "fits with work" || worst?.verdict === "fits with work"
            ? "fits with work"
            : "fits";
  return row(HEAD, {
    answer:
      jointFails?.reason ??
      (short
        ? say("asked.derailleur-drive.the-chain-has-links-needs", { have, set, links })
        : missing !== undefined
          ? say("asked.derailleur-drive.not-known-yet", { missing: missing.words })
          : taken === undefined
            ? say("asked.derailleur-drive.not-known-yet-what-the-cage")
            : capacityWords(set, taken, cage?.ports.capacity, cage?.ports.largest_cog)),
    verdict,
    about:
      jointFails?.title ??
      (verdict === "measure first" && !open && worst !== undefined
        ? worst.title
        : say("asked.derailleur-drive.chain-and-cage")),
    figure:
      taken === undefined
        ? undefined
        : figure(say("asked.derailleur-drive.teeth-to-take-up"), taken.needed_teeth, "", 0, undefined, {
            against:
              cage?.ports.capacity === undefined
                ? say("asked.derailleur-drive.cage-not-known")
                : say("asked.derailleur-drive.cage-takes", { capacity: cage.ports.capacity }),
            ...(cage?.ports.capacity === undefined
              ? {}
              : {
                  limit: {
                    high: cage.ports.capacity,
                    words: say("asked.derailleur-drive.cage-takes", { capacity: cage.ports.capacity }),
                  },
                }),
          }),
    next: missing?.step ?? consent(taken) ?? (worst?.verdict === "measure first" ? worst.next : undefined),
    words: [
      ...(links === undefined
        ? []
        : [
            say("asked.derailleur-drive.chain-links-largest-ring-on-largest", {
              links,
              have: have === undefined ? "" : say("asked.derailleur-drive.you-have", { have }),
            }),
          ]),
      say("asked.derailleur-drive.which-set-keeps-your-cadence-on"),
    ],
    tables: sets(r, rings, cogs, cage, chainstay),
    notChecked: [
      say("asked.derailleur-drive.your-ride-share-of-time-in"),
      ...(r.resolved.build.chosen.derailleur_front === undefined
        ? []
        : [say("asked.derailleur-drive.whether-the-front-derailleur-s-cage")]),
    ],
    joints,
    sources: ["drive-capacity", "drive-chain-length"],
    cautions: cautionsOf(capacity),
  });
}

type Cage = Extract<Part, { readonly kind: "derailleur_rear" }> | undefined;

function capacityInput(rings: readonly number[], cogs: readonly number[], cage: Cage) {
  const { capacity, largest_cog } = cage?.ports ?? {};
  return {
    rings,
    cogs,
    ...(capacity === undefined ? {} : { cageCapacityTeeth: capacity }),
    ...(largest_cog === undefined ? {} : { largestCogTeeth: largest_cog }),
  };
}

function linksFor(rings: readonly number[], cogs: readonly number[], chainstay: number | undefined) {
  return chainstay === undefined || rings.length === 0
    ? undefined
    : derailleurChainLinks({
        chainstayMm: chainstay,
        largestRing: Math.max(...rings),
        largestCog: Math.max(...cogs),
      });
}

function firstMissing(
  r: Reckoned,
  teeth: readonly (number | undefined)[],
  rings: readonly number[],
  cogs: readonly number[] | undefined,
  cage: Cage,
): { readonly words: string; readonly step: NextStep } | undefined {
  const { at } = r.resolved;
  if (rings.length === 0 || rings.length < teeth.length)
    return {
      words: say("asked.derailleur-drive.the-teeth-of-the-rings"),
      step:
        at.crank === undefined
          ? {
              kind: "decide",
              what: say("asked.derailleur-drive.choose-a-crank-and-its-rings"),
              at: "build.chosen.crank",
            }
          : {
              kind: "measure",
              what: say("asked.derailleur-drive.count-the-teeth-of-the-rings"),
              at: `bin.parts.${at.crank.id}.ports.rings`,
            },
    };
  if (cogs === undefined)
    return {
      words: say("asked.derailleur-drive.the-sprockets"),
      step:
        at.sprocket?.kind === "cassette"
          ? {
              kind: "measure",
              what: say("asked.derailleur-drive.count-the-cassette-s-teeth"),
              at: `bin.parts.${at.sprocket.id}.ports.cogs`,
            }
          : { kind: "decide", what: say("asked.derailleur-drive.choose-a-cassette"), at: "build.chosen.sprocket" },
    };
  if (cage === undefined)
    return {
      words: say("asked.derailleur-drive.what-the-cage-of-the-rear"),
      step: {
        kind: "decide",
        what: say("asked.derailleur-drive.choose-a-rear-derailleur"),
        at: "build.chosen.derailleur_rear",
      },
    };
  if (cage.ports.capacity === undefined || cage.ports.largest_cog === undefined)
    return {
      words: say("asked.derailleur-drive.what-the-cage-of-takes-up", { cage: cage.id }),
      step: {
        kind: "measure",
        what: say("asked.derailleur-drive.find-out-how-many-teeth-the", { cage: cage.id }),
        at: `bin.parts.${cage.id}.ports.${cage.ports.capacity === undefined ? "capacity" : "largest_cog"}`,
      },
    };
  return undefined;
}

const gears = (taken: DerailleurCapacity) => taken.bars.map((b) => `${b.ring}/${b.cog}`).join(" and ");

function capacityWords(
  set: string,
  taken: DerailleurCapacity,
  capacity: number | undefined,
  largest: number | undefined,
): string {
  const over = taken.over_teeth ?? 0;
  const cogOver = taken.largest_cog_over_teeth ?? 0;
  if (over === 0 && cogOver === 0)
    return say("asked.derailleur-drive.teeth-to-take-up-the-cage", {
      set,
      neededTeeth: taken.needed_teeth,
      capacity: capacity ?? "?",
    });
  if (over > 0)
    return say("asked.derailleur-drive.teeth-to-take-up-the-cage-2", {
      set,
      neededTeeth: taken.needed_teeth,
      capacity: capacity ?? "?",
      verdict:
        taken.verdict === "will not fit"
          ? say("asked.derailleur-drive.too-many")
          : say("asked.derailleur-drive.only-if-are-never-used", { taken: gears(taken) }),
    });
  return say("asked.derailleur-drive.the-largest-sprocket-is-teeth-over", { set, cogOver, largest: largest ?? "?" });
}

/** Over what the cage takes up by four teeth or fewer: the rider agrees in writing, or takes another set. */
function consent(taken: DerailleurCapacity | undefined): NextStep | undefined {
  if (taken?.verdict !== "fits with work" || (taken.over_teeth ?? 0) === 0) return undefined;
  return {
    kind: "decide",
    what: say("asked.derailleur-drive.size-the-chain-largest-on-largest", { taken: gears(taken) }),
    at: "build.chosen.derailleur_rear",
  };
}

function cautionsOf(capacity: Answer<DerailleurCapacity> | undefined): readonly Caution[] {
  return capacity?.kind === "answered" ? capacity.cautions : [];
}

/** The chosen rings, and what the other cranks of the comparison carry, each with the chosen cassette and cage. */
function sets(
  r: Reckoned,
  rings: readonly number[],
  cogs: readonly number[] | undefined,
  cage: Cage,
  chainstay: number | undefined,
): readonly WorkingTable[] {
  if (cogs === undefined) return [];
  const others = (r.resolved.build.consider?.crank ?? []).flatMap((id): readonly Set[] => {
    const part = r.resolved.parts.get(id);
    if (part?.kind !== "crank" || id === r.resolved.build.chosen.crank) return [];
    const own = part.ports.rings ?? (part.ports.ring === undefined ? [] : [part.ports.ring]);
    return own.length === 0 ? [] : [{ name: id, rings: own }];
  });
  const one =
    rings.length > 1 ? [{ name: say("asked.derailleur-drive.big-ring-alone"), rings: rings.slice(0, 1) }] : [];
  const rows = [{ name: "chosen", rings }, ...one, ...others].flatMap((set) => {
    const answer = derailleurCapacity(capacityInput(set.rings, cogs, cage));
    if (answer.kind === "refused") return [];
    const { needed_teeth: needed, over_teeth: over, bars, verdict } = answer.value;
    const links = linksFor(set.rings, cogs, chainstay);
    return [
      [
        `${set.rings.join("/")} (${set.name})`,
        `${needed}`,
        over === null ? "?" : showNumber(over, 0),
        bars.map((b) => `${b.ring}/${b.cog}`).join(", "),
        links === undefined ? "?" : `${links}`,
        verdict,
      ],
    ];
  });
  return [
    {
      title: say("asked.derailleur-drive.rings-with-the-to-cassette", {
        smallestCog: Math.min(...cogs),
        largestCog: Math.max(...cogs),
      }),
      columns: [
        "Rings",
        say("asked.derailleur-drive.teeth-to-take-up-2"),
        say("asked.derailleur-drive.over-the-cage"),
        say("asked.derailleur-drive.never-use"),
        "Links",
        "Cage",
      ],
      rows,
    },
  ];
}
