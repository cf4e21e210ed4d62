/**
 * How is one change taken out of a text again? Where the text still stands as the change left it, the text from before
 * comes back to the letter. Where the text has moved on since, only the values that the change made are put back, each
 * at its own place, so that later changes and all comments stay. A value that was written over since, and a place that is
 * gone, are refused: nothing is guessed.
 */

import { parseDocument } from "yaml";
import { say } from "../texts/say.js";
import type { KnownPlain } from "./difference.js";
import { type EditPath, editText } from "./edit.js";
import { entryName, isPlainRecord, ownValue, sameValue } from "./same-value.js";
import { placeWords, writtenValue } from "./written-value.js";

export interface ChangedPlace {
  readonly path: EditPath;
  /** undefined: it was not there. */
  readonly was: unknown;
  /** undefined: it is not there any more. */
  readonly now: unknown;
}

export type TakenOut =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "blocked"; readonly reasons: readonly BlockedPlace[] };

export interface BlockedPlace {
  readonly code: "changed-since" | "place-gone" | "only-comments" | "not-readable";
  /** In words: "parts q24, cost". */
  readonly place: string;
  readonly message: string;
}

/** @param current as it stands now @param before,after what the change made of what */
export function takenOut(current: string, before: string, after: string, known?: KnownPlain): TakenOut {
  if (current === after || current === before) return { kind: "text", text: before };
  const plainOf = (text: string) => (known?.(text) ?? { plain: readPlainOf(text) }).plain;
  const plain = plainOf(current);
  const places = changedPlaces(plainOf(before), plainOf(after));
  if (places.length === 0) {
    return blocked({
      code: "only-comments",
      place: "",
      message: say("workshop.take-back.that-change-touched-only-comments-or"),
    });
  }
  const reasons = places.flatMap(({ path, now }): readonly BlockedPlace[] => {
    const place = placeWords(path, plain);
    if (!parentIsThere(plain, path))
      return [{ code: "place-gone", place, message: say("workshop.take-back.is-not-there-any-more-it", { place }) }];
    const here = valueAtPath(plain, path);
    if (sameValue(here, now)) return [];
    const message = say("workshop.take-back.was-written-over-since-it-is", {
      place,
      here: writtenValue(here),
      now: writtenValue(now),
    });
    return [{ code: "changed-since", place, message }];
  });
  if (reasons.length > 0) return { kind: "blocked", reasons };
  let text = current;
  for (const { path, was } of places) {
    const edited = putBack(text, path, was);
    if (typeof edited !== "string") return blocked({ ...edited, place: placeWords(path, plain) });
    text = edited;
  }
  return { kind: "text", text };
}

const blocked = (reason: BlockedPlace): TakenOut => ({ kind: "blocked", reasons: [reason] });

function putBack(text: string, path: EditPath, was: unknown): string | Pick<BlockedPlace, "code" | "message"> {
  try {
    const result = editText(text, path, was);
    if (result.kind === "edited") return result.text;
    return { code: "not-readable", message: result.refusals.map((r) => r.message).join("; ") };
  } catch (cause) {
    // The text library throws where the place is written through an alias.
    if (!(cause instanceof Error)) throw cause;
    return {
      code: "place-gone",
      message: say("workshop.take-back.it-cannot-be-changed-where-it", { cause: cause.message }),
    };
  }
}

function readPlainOf(text: string): unknown {
  return parseDocument(text, { logLevel: "error" }).toJS({ maxAliasCount: 50 });
}

/** The smallest places at which two pieces of plain data differ. A list that grew, shrank or was re-ordered is one place. */
export function changedPlaces(before: unknown, after: unknown, path: EditPath = []): readonly ChangedPlace[] {
  if (sameValue(before, after)) return [];
  if (isPlainRecord(before) && isPlainRecord(after)) {
    const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return keys.flatMap((key) => changedPlaces(ownValue(before, key), ownValue(after, key), [...path, key]));
  }
  if (Array.isArray(before) && Array.isArray(after) && sameEntries(before, after))
    return before.flatMap((item: unknown, i) => changedPlaces(item, after[i], [...path, i]));
  return [{ path, was: before, now: after }];
}

function sameEntries(before: readonly unknown[], after: readonly unknown[]): boolean {
  return (
    before.length === after.length &&
    before.every((item, i) => isPlainRecord(item) && isPlainRecord(after[i]) && entryName(item) === entryName(after[i]))
  );
}

function valueAtPath(plain: unknown, path: EditPath): unknown {
  let here = plain;
  for (const step of path) {
    if (Array.isArray(here)) here = here[Number(step)];
    else if (isPlainRecord(here)) here = ownValue(here, String(step));
    else return undefined;
  }
  return here;
}

function parentIsThere(plain: unknown, path: EditPath): boolean {
  const parent = valueAtPath(plain, path.slice(0, -1));
  return parent !== null && typeof parent === "object";
}
