/** What do the two threads say to each other? Questions in order, each with a number, and the answers in the same order. */
import { deserialize, serialize } from "node:v8";
import type { BuildStanding, Reckoning } from "@coldset/core/questions";
import type { AnyDoc } from "@coldset/core/workshop";
import { type ReckonsHere, reckonHere } from "@coldset/server/reckon";
import { keptDocuments } from "./kept-documents.js";

export interface Asked {
  readonly number: number;
  readonly asks: "check" | "standing";
  readonly docs: readonly AnyDoc[];
  readonly buildId: string;
}

export interface Question extends Omit<Asked, "docs"> {
  /** `bytes`, a structured clone, only where the other side does not have this state of the document. */
  readonly documents: readonly { readonly key: string; readonly bytes?: Uint8Array }[];
}

export type Answer =
  | { readonly kind: "answered"; readonly number: number; readonly value: string | BuildStanding | null }
  | { readonly kind: "failed"; readonly number: number; readonly message: string; readonly trace: string };

const keyOf = (doc: AnyDoc) => `${doc.kind} ${doc.id}`;

/**
 * For the side that asks: only what the other one does not have goes along. A document is never changed in place, so the
 * object itself is its state.
 */
export function asker(mostBytes?: number): (asked: Asked) => Question {
  const sent = keptDocuments<AnyDoc>(mostBytes);
  return ({ docs, ...asked }) => {
    const documents = docs.map((doc) => {
      const key = keyOf(doc);
      if (sent.get(key) === doc) return { key };
      const bytes = serialize(doc);
      sent.put(key, doc, bytes.length);
      return { key, bytes };
    });
    sent.forget();
    return { ...asked, documents };
  };
}

/** For the side that reckons. What goes wrong in the reckoning of one build is its answer, and the memory is begun anew. */
export function answerer(
  checkOf: (reckoning: Reckoning) => unknown,
  mostBytes?: number,
): (question: Question) => Answer {
  const given = keptDocuments<AnyDoc>(mostBytes);
  let reckons: ReckonsHere = reckonHere(checkOf);
  return ({ number, asks, buildId, documents }) => {
    const docs = documents.map(({ key, bytes }) => {
      const kept = given.get(key);
      if (bytes !== undefined) {
        const doc = deserialize(bytes) as AnyDoc;
        given.put(key, doc, bytes.length);
        return doc;
      }
      if (kept === undefined) throw new Error(`${key} was never given`);
      return kept;
    });
    given.forget();
    try {
      return { kind: "answered", number, value: reckons[asks](docs, buildId) };
    } catch (cause) {
      reckons = reckonHere(checkOf);
      const error = cause instanceof Error ? cause : new Error(String(cause));
      return { kind: "failed", number, message: error.message, trace: error.stack ?? error.message };
    }
  };
}
