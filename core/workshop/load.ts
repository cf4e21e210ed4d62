/**
 * What do these files say? YAML or JSON text (several documents in one text are parted by `---`) is read into typed
 * documents. Everything wrong is told at once, each with file, line and column, the value given and what is allowed.
 * Bounds: 2 MB a text, 100,000 tokens, 60 documents, 40 levels deep. The text itself stays the record; nothing is rewritten here.
 */

import { type Document, isNode, LineCounter } from "yaml";
import type { Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { type AnyDoc, DOC_KINDS } from "./documents.js";
import { keysTwice } from "./keys-twice.js";
import { nestedTooDeeply } from "./nesting.js";
import { oddNumbers } from "./odd-numbers.js";
import { parseYaml } from "./parse-yaml.js";
import { readPlain } from "./read-plain.js";
import { type Spots, spotsIn } from "./spots.js";
import { beyondBounds, DEPTH_LIMIT, DOCUMENTS_LIMIT, tooManyDocuments } from "./text-bounds.js";

export interface LoadedDoc {
  readonly doc: AnyDoc;
  /** The plain data as written, before reading; edits start from it. */
  readonly plain: unknown;
  /** Name of the file it came from. */
  readonly file: string;
  /**
   * The text of this one document as it was written: from the end of the document before it to its own end, with the
   * dividing line and all comments. One after the other these are the whole file, byte for byte (empty documents left out).
   */
  readonly text: string;
}

export interface Loaded {
  readonly kind: "loaded";
  readonly docs: readonly LoadedDoc[];
}
export interface LoadRefused {
  readonly kind: "refused";
  readonly refusals: readonly Refusal[];
}

const pathText = (path: readonly PropertyKey[]) =>
  path.map((p, i) => (typeof p === "number" ? `[${p}]` : i === 0 ? String(p) : `.${String(p)}`)).join("");

/** The text cut at the end of each document; what stands after the last one belongs to it. */
function slicesOf(text: string, documents: readonly Document[]): string[] {
  let from = 0;
  return documents.map((document, index) => {
    const end = index === documents.length - 1 ? text.length : (document.range?.[2] ?? text.length);
    const slice = text.slice(from, end);
    from = end;
    return slice;
  });
}

const nothing = (file: string, given: string): LoadRefused => ({
  kind: "refused",
  refusals: [
    {
      code: "empty-file",
      at: file,
      given,
      allowed: say("workshop.load.one-or-more-documents-each-with", { docKinds: DOC_KINDS.join(", ") }),
      message: say("workshop.load.holds-no-document-write-kind-version", { file }),
    },
  ],
});

/** A torn text stumbles the parser at every step; beyond so many nobody reads them, and they would fill an answer with megabytes. */
const MOST_TOLD = 1000;

function mostOf(refusals: readonly Refusal[], file: string): readonly Refusal[] {
  if (refusals.length <= MOST_TOLD) return refusals;
  const more = refusals.length - MOST_TOLD;
  const message = say("workshop.load.has-more-faults-that-are-not", { file, mostTold: MOST_TOLD });
  const allowed = say("workshop.load.put-the-first-ones-right");
  return [...refusals.slice(0, MOST_TOLD), { code: "more-faults", at: file, given: more, allowed, message }];
}

/** @param spots is told for each document where its values stand, so that edits in place need not read it once more */
export function loadText(text: string, file: string, spots?: (spots: Spots) => void): Loaded | LoadRefused {
  if (text.trim() === "") return nothing(file, say("workshop.load.an-empty-file"));
  const beyond = beyondBounds(text, file);
  if (beyond !== undefined) return { kind: "refused", refusals: [beyond] };
  const lines = new LineCounter();
  let parsed: Document[];
  try {
    parsed = parseYaml(text, lines);
  } catch (cause) {
    return {
      kind: "refused",
      refusals: [
        {
          code: "yaml",
          at: file,
          given: "",
          allowed: say("workshop.load.yaml-or-json"),
          message: say("workshop.load.cannot-be-read-as-yaml", {
            file,
            cause: cause instanceof Error ? cause.message : say("workshop.load.unknown-reason"),
          }),
        },
      ],
    };
  }
  const where = (offset: number | undefined) => {
    if (offset === undefined) return file;
    const { line, col } = lines.linePos(offset);
    return `${file}:${line}:${col}`;
  };
  const refusals: Refusal[] = [];
  for (const document of parsed) {
    for (const error of document.errors.slice(0, MOST_TOLD)) {
      refusals.push({
        code: "yaml",
        at: where(error.pos[0]),
        given: text.slice(error.pos[0], Math.min(error.pos[1], error.pos[0] + 40)),
        allowed: say("workshop.load.well-formed-yaml-or-json"),
        message: `${where(error.pos[0])}: ${error.message}`,
      });
    }
    if (document.errors.length === 0) refusals.push(...keysTwice(document, where), ...oddNumbers(document, where));
  }
  if (refusals.length > 0) return { kind: "refused", refusals: mostOf(refusals, file) };
  if (parsed.length > DOCUMENTS_LIMIT) {
    return { kind: "refused", refusals: [tooManyDocuments(file, parsed.length)] };
  }
  const docs: LoadedDoc[] = [];
  const seen = new Map<string, string>();
  const slices = slicesOf(text, parsed);
  for (const [index, document] of parsed.entries()) {
    if (document.contents === null) continue;
    const start = isNode(document.contents) ? document.contents.range?.[0] : undefined;
    let plain: unknown;
    try {
      plain = document.toJS({ maxAliasCount: 50 });
    } catch (cause) {
      refusals.push({
        code: "yaml",
        at: where(start),
        given: "",
        allowed: say("workshop.load.at-most-50-uses-of-an"),
        message: `${where(start)}: ${cause instanceof Error ? cause.message : say("workshop.load.cannot-be-expanded")}`,
      });
      continue;
    }
    if (nestedTooDeeply(plain, DEPTH_LIMIT)) {
      refusals.push({
        code: "too-deep",
        at: where(start),
        given: say("workshop.load.more-than-levels", { depthLimit: DEPTH_LIMIT }),
        allowed: say("workshop.load.levels", { depthLimit: DEPTH_LIMIT }),
        message: say("workshop.load.nested-too-deeply", { start: where(start) }),
      });
      continue;
    }
    const offsetAt = (path: readonly PropertyKey[]) => {
      for (let n = path.length; n >= 0; n--) {
        const node = document.getIn(path.slice(0, n), true) as unknown;
        if (isNode(node) && node.range) return node.range[0];
      }
      return start;
    };
    const read = readPlain(plain);
    if (read.kind === "refused") {
      for (const r of read.refusals) {
        const offset = offsetAt(r.path);
        refusals.push({
          code: r.code,
          at: `${where(offset)}${r.path.length > 0 ? ` ${pathText(r.path)}` : ""}`,
          given: r.given,
          allowed: r.allowed,
          message: `${where(offset)} ${pathText(r.path)}: ${r.message}`,
        });
      }
      continue;
    }
    const key = `${read.doc.kind} ${read.doc.id}`;
    const before = seen.get(key);
    if (before !== undefined) {
      refusals.push({
        code: "twice",
        at: where(start),
        given: key,
        allowed: say("workshop.load.one-document-of-a-kind-and"),
        message: say("workshop.load.stands-twice-first-at", { start: where(start), key, before }),
      });
      continue;
    }
    seen.set(key, where(start));
    docs.push({ doc: read.doc, plain, file, text: slices[index] ?? "" });
    spots?.(spotsIn(document, text));
  }
  if (refusals.length > 0) return { kind: "refused", refusals: mostOf(refusals, file) };
  if (docs.length === 0) return nothing(file, say("workshop.load.no-content"));
  return { kind: "loaded", docs };
}
