/**
 * J37: does the chain run on ring and sprocket?
 * Inner width of the chain over the teeth of every part it runs on: 3.175 (1/8), 2.38 (6 to 8), 2.18 (9 to 12) against teeth
 * of 2.1 (3/32) or 3.0 (1/8). A wide chain runs on both, so the teeth's width decides nothing there. A cassette wants the
 * class of its own number of sprockets. Sources: drive-chain-widths, fit-tooth-widths.
 */

import { CRANK_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { chainClassForSpeeds } from "../../drive/index.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, type Span, span } from "../span.js";
import { partAt } from "../view.js";
import { sameWord } from "./same-word.js";

const head = {
  id: "J37",
  title: "chain – sprockets",
  between: ["chain", "ring", "ring_inner", "crank", "sprocket"],
} as const;

/** Speeds that stand for each class in the table of chains. */
const CLASS_SPEEDS = { wide: 1, "6-8": 8, "9": 9, "10": 10, "11": 11, "12": 12 } as const;
type ChainWord = keyof typeof CLASS_SPEEDS;
export const TOOTH_MM = { narrow: 2.1, wide: 3 } as const;

export const j37ChainOnTeeth: JointDefinition = {
  ...head,
  attributes: ["chain.ports.class", "ring.ports.chain_class", "sprocket.ports.chain_class", "sprocket.ports.cogs"],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const chain = partAt(view, "chain", "chain");
    if (chain === undefined) return notChosen(head, "chain");
    const sprocket = view.at.sprocket;
    const ring = partAt(view, "ring", "ring");
    const crank = partAt(view, "crank", "crank");
    if (sprocket?.kind !== "sprocket" && sprocket?.kind !== "cassette") return notChosen(head, "sprocket");
    if (ring === undefined && crank === undefined) return notChosen(head, "ring");
    const word = chain.ports.class;
    const inner = word === undefined ? undefined : chainClassForSpeeds(CLASS_SPEEDS[word])?.innerMm;
    const readChain = {
      what: say("fit-drive.j37-chain-on-teeth.measure-the-chain-between-its-inner"),
      at: `bin.parts.${chain.id}.ports.class`,
      tool: "calliper",
    } as const;
    const room = (name: string, teeth: Span, at: string): Check => ({
      name,
      unit: "mm",
      value: minus(span(inner), teeth),
      limit: { low: 0, kind: "hard", words: say("fit-drive.j37-chain-on-teeth.teeth-no-wider-than-the-chain") },
      measure:
        inner === undefined
          ? readChain
          : {
              what: say("fit-drive.j37-chain-on-teeth.measure-how-wide-the-teeth-are"),
              at,
              tool: "calliper",
              accuracy: "± 0.1 mm",
            },
      bandMeans: say("fit-drive.j37-chain-on-teeth.3-32-or-1-8-teeth"),
    });
    const ringAt = ring === undefined ? "build.chosen.ring" : `bin.parts.${ring.id}.ports.chain_class`;
    const checks: Check[] = [
      room(
        say("fit-drive.j37-chain-on-teeth.chain-inside-over-the-ring-s"),
        toothSpan(ring?.ports.chain_class),
        ringAt,
      ),
    ];
    const smallRing = partAt(view, "ring_inner", "ring");
    if (smallRing !== undefined)
      checks.push(
        room(
          say("fit-drive.j37-chain-on-teeth.chain-inside-over-the-small-ring"),
          toothSpan(smallRing.ports.chain_class),
          `bin.parts.${smallRing.id}.ports.chain_class`,
        ),
      );
    if (sprocket.kind === "sprocket")
      checks.push(
        room(
          say("fit-drive.j37-chain-on-teeth.chain-inside-over-the-sprocket-s"),
          toothSpan(sprocket.ports.chain_class),
          `bin.parts.${sprocket.id}.ports.chain_class`,
        ),
      );
    else {
      const cogs = sprocket.ports.cogs?.length;
      checks.push(
        sameWord<ChainWord>({
          name: say("fit-drive.j37-chain-on-teeth.chain-of-the-cassette-s-class"),
          a: cogs === undefined ? undefined : classOfCassette(cogs),
          b: word,
          words: say("fit-drive.j37-chain-on-teeth.the-class-of-the-cassette"),
          measureA: {
            what: say("fit-drive.j37-chain-on-teeth.count-the-cassette-s-sprockets"),
            at: `bin.parts.${sprocket.id}.ports.cogs`,
            tool: "eye",
          },
          measureB: readChain,
        }),
      );
    }
    const settled = settle(checks);
    const first = settled.failed[0];
    const cassetteFails = first?.unit === "count";
    return closeJoint(head, {
      settled,
      words: {
        fits:
          word === "wide"
            ? say("fit-drive.j37-chain-on-teeth.a-1-8-chain-inside-runs", { inner: plain(inner ?? 0) })
            : say("fit-drive.j37-chain-on-teeth.chain-inside-goes-over-the-teeth", { inner: plain(inner ?? 0) }),
        fails: cassetteFails
          ? say("fit-drive.j37-chain-on-teeth.a-chain-is-not-of-this", {
              word: word === "wide" ? "1/8" : `${word}-speed`,
            })
          : say("fit-drive.j37-chain-on-teeth.a-chain-inside-does-not-go", { inner: plain(inner ?? 0) }),
        ...(settled.open[0]?.unit === "mm" && inner !== undefined
          ? {
              open: say("fit-drive.j37-chain-on-teeth.not-known-yet-how-wide-the", { inner: plain(inner) }),
            }
          : {}),
      },
      remedies:
        settled.outcome === "fails"
          ? [
              offerRemedy(CRANK_REMEDIES.suited_chain, view, {
                values: {
                  inner: cassetteFails ? say("fit-drive.j37-chain-on-teeth.as-the-cassette-asks") : "3.175 (1/8)",
                },
              }),
              ...(cassetteFails
                ? []
                : [offerRemedy(CRANK_REMEDIES.suited_teeth, view, { values: { inner: inner ?? 0 } })]),
            ]
          : [],
      sources: ["drive-chain-widths", "fit-tooth-widths"],
    });
  },
};

function toothSpan(width: keyof typeof TOOTH_MM | undefined): Span {
  if (width !== undefined) return span(TOOTH_MM[width]);
  return span((TOOTH_MM.narrow + TOOTH_MM.wide) / 2, (TOOTH_MM.wide - TOOTH_MM.narrow) / 2);
}

function classOfCassette(cogs: number): ChainWord | undefined {
  if (cogs === 1) return "wide";
  if (cogs <= 8) return "6-8";
  return cogs === 9 || cogs === 10 || cogs === 11 || cogs === 12 ? (`${cogs}` as ChainWord) : undefined;
}
