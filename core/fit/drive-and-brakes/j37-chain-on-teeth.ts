/**
 * J37: does the chain run on ring and sprocket?
 * Inner width of the chain over the teeth of every part it runs on: 3.175 (1/8), 2.38 (6 to 8), 2.18 (9 to 12) against teeth
 * of 2.1 (3/32) or 3.0 (1/8). A wide chain runs on both, so the teeth's width decides nothing there. A cassette wants the
 * class of its own number of sprockets. Sources: drive-chain-widths, fit-tooth-widths.
 */
import { CRANK_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { chainClassForSpeeds } from "../../drive/index.js";
import { closeJoint } from "../close-joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, type Span, span } from "../span.js";
import { partAt } from "../view.js";
import { sameWord } from "./same-word.js";

const head = { id: "J37", title: "chain – sprockets", between: ["chain", "ring", "crank", "sprocket"] } as const;

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
      what: "Measure the chain between its inner plates",
      at: `bin.parts.${chain.id}.ports.class`,
      tool: "calliper",
    } as const;
    const room = (name: string, teeth: Span, at: string): Check => ({
      name,
      unit: "mm",
      value: minus(span(inner), teeth),
      limit: { low: 0, kind: "hard", words: "teeth no wider than the chain inside" },
      measure:
        inner === undefined
          ? readChain
          : {
              what: `Measure how wide the teeth are: 2.1 (3/32) or 3.0 (1/8)`,
              at,
              tool: "calliper",
              accuracy: "± 0.1 mm",
            },
      bandMeans: "3/32 or 1/8 teeth, not measured",
    });
    const ringAt = ring === undefined ? "build.chosen.ring" : `bin.parts.${ring.id}.ports.chain_class`;
    const checks: Check[] = [room("chain inside over the ring's teeth", toothSpan(ring?.ports.chain_class), ringAt)];
    if (sprocket.kind === "sprocket")
      checks.push(
        room(
          "chain inside over the sprocket's teeth",
          toothSpan(sprocket.ports.chain_class),
          `bin.parts.${sprocket.id}.ports.chain_class`,
        ),
      );
    else {
      const cogs = sprocket.ports.cogs?.length;
      checks.push(
        sameWord<ChainWord>({
          name: "chain of the cassette's class",
          a: cogs === undefined ? undefined : classOfCassette(cogs),
          b: word,
          words: "the class of the cassette",
          measureA: { what: "Count the cassette's sprockets", at: `bin.parts.${sprocket.id}.ports.cogs`, tool: "eye" },
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
            ? `A 1/8 chain, ${plain(inner ?? 0)} inside, runs on 3/32 and on 1/8 teeth.`
            : `Chain ${plain(inner ?? 0)} inside goes over the teeth.`,
        fails: cassetteFails
          ? `A ${word === "wide" ? "1/8" : `${word}-speed`} chain is not of this cassette's class.`
          : `A chain ${plain(inner ?? 0)} inside does not go over these teeth.`,
      },
      remedies:
        settled.outcome === "fails"
          ? [
              offerRemedy(CRANK_REMEDIES.suited_chain, view, {
                values: { inner: cassetteFails ? "as the cassette asks" : "3.175 (1/8)" },
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
