/**
 * What does a stored text say? Each is read once, as long as it stands: the page that opens a build, the edit and the undo
 * share it. An edit in place knows what its new text says without reading that anew. Kept by the text itself, so that
 * nothing here can be out of date; the longest unused ones go first. What earlier texts said is kept for a while too: the
 * history compares each text with the one before it, and successive texts share most of their data.
 */
import {
  type EditPath,
  type EditResult,
  editInPlace,
  editText,
  type KnownPlain,
  type LoadedDoc,
  type LoadRefused,
  loadText,
  type Spots,
} from "@coldset/core/workshop";
import type { StoredDocument } from "./workshop.js";

const MOST_LETTERS = 16_000_000;
const MOST_TEXTS = 800;
/** Of earlier texts, only their plain data. */
const MOST_EARLIER = 4_000;
const MOST_EARLIER_LETTERS = 24_000_000;

export type ReadText = { readonly kind: "loaded"; readonly loaded: LoadedDoc } | LoadRefused;

export interface ReadTexts {
  readonly read: (stored: StoredDocument) => ReadText;
  /** As `editText`; nothing is kept by it. */
  readonly edit: (stored: StoredDocument, path: EditPath, value: unknown) => EditResult;
  /** What a text is known to say, whichever document it is of. */
  readonly known: KnownPlain;
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
  /** By the text itself, which also says of which document it is; so what an undo brings back is mostly there. */
  const known = new Map<string, Known>();
  let letters = 0;
  let readings = 0;
  const earlier = new Map<string, { readonly plain: unknown }>();
  let earlierLetters = 0;
  const remember = (text: string, plain: unknown) => {
    if (earlier.has(text)) return;
    earlier.set(text, { plain });
    earlierLetters += text.length;
    for (const [oldest] of earlier) {
      if (earlier.size <= MOST_EARLIER && earlierLetters <= MOST_EARLIER_LETTERS) break;
      earlier.delete(oldest);
      earlierLetters -= oldest.length;
    }
  };
  const keep = (fresh: Known): Known => {
    const { text, result } = fresh;
    if (result.kind === "loaded") remember(text, result.loaded.plain);
    if (known.delete(text)) letters -= text.length;
    known.set(text, fresh);
    letters += text.length;
    for (const oldest of known.keys()) {
      if ((letters <= mostLetters && known.size <= MOST_TEXTS) || oldest === text) break;
      known.delete(oldest);
      letters -= oldest.length;
    }
    return fresh;
  };
  const knownOf = (stored: StoredDocument): Known => {
    const hit = known.get(stored.text);
    // Unreadable text is told with the name of its file.
    if (hit !== undefined && hit.label === stored.label) return keep(hit);
    readings += 1;
    return keep({ text: stored.text, label: stored.label, ...readOne(stored) });
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
          if (same) {
            const fresh: ReadText = { kind: "loaded", loaded };
            keep({ text: edited.text, label, result: fresh, spots: edited.spots });
          }
        }
        if (edited !== undefined) return edited;
      }
      readings += 2;
      return editText(text, path, value);
    },
    known: (text) => earlier.get(text),
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
