/**
 * What does a stored text say? Each is read once, as long as it stands: the page that opens a build, the edit and the undo
 * share it. An edit in place knows what its new text says without reading that anew. Kept by the text itself, so that
 * nothing here can be out of date; the longest unused ones go first.
 */
import {
  type EditPath,
  type EditResult,
  editInPlace,
  editText,
  type LoadedDoc,
  type LoadRefused,
  loadText,
  type Spots,
} from "@coldset/core/workshop";
import type { StoredDocument } from "./workshop.js";

const MOST_LETTERS = 16_000_000;

export type ReadText = { readonly kind: "loaded"; readonly loaded: LoadedDoc } | LoadRefused;

export interface ReadTexts {
  readonly read: (stored: StoredDocument) => ReadText;
  /** As `editText`; nothing is kept by it. */
  readonly edit: (stored: StoredDocument, path: EditPath, value: unknown) => EditResult;
  /** How often a whole text was read; for tests. */
  readonly readings: () => number;
}

interface Known {
  readonly text: string;
  readonly label: string;
  readonly result: ReadText;
  readonly spots: Spots;
}

export function readTexts(mostLetters = MOST_LETTERS): ReadTexts {
  const known = new Map<string, Known>();
  let letters = 0;
  let readings = 0;
  const keep = (key: string, fresh: Known): Known => {
    letters += fresh.text.length - (known.get(key)?.text.length ?? 0);
    known.delete(key);
    known.set(key, fresh);
    for (const [oldest, { text }] of known) {
      if (letters <= mostLetters || oldest === key) break;
      known.delete(oldest);
      letters -= text.length;
    }
    return fresh;
  };
  const knownOf = (stored: StoredDocument): Known => {
    const key = `${stored.kind} ${stored.id}`;
    const hit = known.get(key);
    if (hit !== undefined && hit.text === stored.text && hit.label === stored.label) return hit;
    readings += 1;
    return keep(key, { text: stored.text, label: stored.label, ...readOne(stored) });
  };
  return {
    read: (stored) => knownOf(stored).result,
    edit: (stored, path, value) => {
      const before = knownOf(stored);
      const { result, text, label } = before;
      if (result.kind === "loaded") {
        const edited = editInPlace(text, result.loaded.plain, before.spots, path, value);
        if (edited?.kind === "edited") {
          const { doc, plain } = edited;
          const same = doc.kind === stored.kind && doc.id === stored.id;
          const loaded = { doc, plain, text: edited.text, file: label };
          if (same)
            keep(`${doc.kind} ${doc.id}`, {
              text: edited.text,
              label,
              result: { kind: "loaded", loaded },
              spots: edited.spots,
            });
        }
        if (edited !== undefined) return edited;
      }
      readings += 2;
      return editText(text, path, value);
    },
    readings: () => readings,
  };
}

function readOne(stored: StoredDocument): Pick<Known, "result" | "spots"> {
  let spots: Spots = new Map();
  const loaded = loadText(stored.text, stored.label, (found) => {
    spots = found;
  });
  if (loaded.kind === "refused") return { result: loaded, spots };
  const [only] = loaded.docs;
  if (only === undefined || loaded.docs.length > 1) throw new Error(`${stored.kind} ${stored.id} is not one document`);
  return { result: { kind: "loaded", loaded: only }, spots };
}
