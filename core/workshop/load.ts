/**
 * What do these files say? YAML or JSON text (several documents in one text are parted by `---`) is read into typed
 * documents. Everything wrong is told at once, each with file, line and column, the value given and what is allowed.
 * Bounds: 2 MB a text, 60 documents, 40 levels deep. The text itself stays the record; nothing is rewritten here.
 */

import { type Document, isNode, LineCounter, parseAllDocuments } from "yaml";
import type { z } from "zod";
import { nearestName, type Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { type AnyDoc, DOC_KINDS, DOCUMENT_SCHEMAS, type DocKind } from "./documents.js";
import { keysTwice } from "./keys-twice.js";
import { mostNesting, nestedTooDeeply } from "./nesting.js";
import { oddNumbers } from "./odd-numbers.js";
import { type Spots, spotsIn } from "./spots.js";

export const TEXT_LIMIT = 2_000_000;
const DOCUMENTS_LIMIT = 60;
/** A line that parts two documents, or ends one (YAML 1.2.2, section 9.1). The parser is slow with many, so they are counted first. */
const DIVIDER = /^(---|\.\.\.)(?=\s|$)/gm;
const DEPTH_LIMIT = 40;
/** In the bare text, before the parser recurses. */
const NESTING_LIMIT = 400;

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

const tooManyDocuments = (file: string, given: number): Refusal => ({
  code: "too-many-documents",
  at: file,
  given,
  allowed: say("workshop.load.documents-in-one-text", { documentsLimit: DOCUMENTS_LIMIT }),
  message: say("workshop.load.holds-documents-is-the-most", { file, given, documentsLimit: DOCUMENTS_LIMIT }),
});

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

/** @param spots is told for each document where its values stand, so that edits in place need not read it once more */
export function loadText(text: string, file: string, spots?: (spots: Spots) => void): Loaded | LoadRefused {
  if (text.length > TEXT_LIMIT) {
    return {
      kind: "refused",
      refusals: [
        {
          code: "file-too-large",
          at: file,
          given: `${(text.length / 1e6).toFixed(1)} MB`,
          allowed: say("workshop.load.mb-at-most", { textLimit: TEXT_LIMIT / 1e6 }),
          message: say("workshop.load.is-mb-at-most-mb-is", {
            file,
            textCount: (text.length / 1e6).toFixed(1),
            textLimit: TEXT_LIMIT / 1e6,
          }),
        },
      ],
    };
  }
  if (text.trim() === "") return nothing(file, say("workshop.load.an-empty-file"));
  if (mostNesting(text) > NESTING_LIMIT) {
    return {
      kind: "refused",
      refusals: [
        {
          code: "too-deep",
          at: file,
          given: say("workshop.load.more-than-400-levels"),
          allowed: say("workshop.load.levels", { depthLimit: DEPTH_LIMIT }),
          message: say("workshop.load.is-nested-too-deeply-to-be", { file }),
        },
      ],
    };
  }
  const dividers = text.match(DIVIDER)?.length ?? 0;
  // Each document may be begun and ended by one.
  if (dividers > 2 * DOCUMENTS_LIMIT) return { kind: "refused", refusals: [tooManyDocuments(file, dividers)] };
  const lines = new LineCounter();
  let parsed: Document[];
  try {
    const all = parseAllDocuments(text, {
      lineCounter: lines,
      prettyErrors: false,
      strict: true,
      uniqueKeys: false,
      logLevel: "error",
    });
    parsed = Array.isArray(all) ? (all as Document[]) : [];
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
    for (const error of document.errors) {
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
  if (refusals.length > 0) return { kind: "refused", refusals };
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
  if (refusals.length > 0) return { kind: "refused", refusals };
  if (docs.length === 0) return nothing(file, say("workshop.load.no-content"));
  return { kind: "loaded", docs };
}

export interface PlainRefusal {
  readonly code: string;
  readonly path: readonly PropertyKey[];
  readonly given: unknown;
  readonly allowed: string;
  readonly message: string;
}

/** Reads one document from plain data (as from JSON or an edit). */
export function readPlain(
  plain: unknown,
):
  | { readonly kind: "read"; readonly doc: AnyDoc }
  | { readonly kind: "refused"; readonly refusals: readonly PlainRefusal[] } {
  const kind = isRecord(plain) ? plain.kind : undefined;
  if (!isRecord(plain) || typeof kind !== "string" || !DOC_KINDS.includes(kind as DocKind)) {
    const near = typeof kind === "string" ? nearestName(kind, DOC_KINDS) : undefined;
    return {
      kind: "refused",
      refusals: [
        {
          code: "unknown-kind",
          path: isRecord(plain) && "kind" in plain ? ["kind"] : [],
          given: kind ?? null,
          allowed: DOC_KINDS.join(", "),
          message:
            kind === undefined
              ? say("workshop.load.no-kind-given-write-one-of", { docKinds: DOC_KINDS.join(", ") })
              : say("workshop.load.unknown-kind", {
                  kind: JSON.stringify(kind),
                  near:
                    near === undefined
                      ? say("workshop.load.known", { docKinds: DOC_KINDS.join(", ") })
                      : say("workshop.load.did-you-mean", { near }),
                }),
        },
      ],
    };
  }
  const version = plain.version;
  if (version !== 1) {
    return {
      kind: "refused",
      refusals: [
        {
          code: "unknown-version",
          path: "version" in plain ? ["version"] : [],
          given: version ?? null,
          allowed: say("workshop.load.version-1"),
          message:
            version === undefined
              ? say("workshop.load.no-version-given-write-version-1")
              : say("workshop.load.version-is-not-known-here-this", { version: JSON.stringify(version) }),
        },
      ],
    };
  }
  const result = (DOCUMENT_SCHEMAS[kind as DocKind] as z.ZodType<AnyDoc>).safeParse(plain);
  if (result.success) return { kind: "read", doc: result.data };
  const refusals: PlainRefusal[] = [];
  for (const issue of result.error.issues) for (const leaf of leaves(issue, [])) refusals.push(leaf.refusal(plain));
  return { kind: "refused", refusals };
}

/** "This is not the sign for what is not measured": the least that can be said of a wrong value. */
function isNotMeasured(issue: z.core.$ZodIssue): boolean {
  if (issue.code === "invalid_value") return issue.values.length === 1 && issue.values[0] === "?";
  return issue.code === "invalid_type" && issue.expected === "null";
}

/** What a wrong value is told with; also for tables, which have no document around them. */
export function issueRefusals(issue: z.core.$ZodIssue, plain: unknown): readonly PlainRefusal[] {
  return leaves(issue, []).map((leaf) => leaf.refusal(plain));
}

interface Leaf {
  readonly refusal: (plain: unknown) => PlainRefusal;
}

/** A union's issue is told by its most telling branch (the one with the deepest or most special message). */
function leaves(issue: z.core.$ZodIssue, prefix: readonly PropertyKey[]): Leaf[] {
  const path = [...prefix, ...issue.path];
  if (issue.code === "invalid_union" && issue.errors.length > 0) {
    const branches = issue.errors.filter((b) => b.length > 0);
    const rank = (b: readonly z.core.$ZodIssue[]) =>
      Math.max(
        ...b.map(
          (i) =>
            i.path.length * 10 +
            (i.code === "custom"
              ? 5
              : i.code === "invalid_union"
                ? 4
                : isNotMeasured(i)
                  ? -1
                  : i.code === "invalid_type" || i.code === "invalid_value"
                    ? 0
                    : 3),
        ),
      );
    const best = branches.sort((a, b) => rank(b) - rank(a))[0];
    if (best) return best.flatMap((i) => leaves(i, path));
  }
  return [
    {
      refusal: (plain) => ({
        code:
          issue.code === "unrecognized_keys"
            ? "unknown-key"
            : issue.code === "custom"
              ? String(issue.params?.code ?? "unreadable")
              : issue.code.replaceAll("_", "-"),
        path: issue.code === "unrecognized_keys" ? [...path, issue.keys[0] ?? ""] : path,
        given: valueAt(plain, issue.code === "unrecognized_keys" ? [...path, issue.keys[0] ?? ""] : path),
        allowed:
          issue.code === "custom" && typeof issue.params?.allowed === "string"
            ? issue.params.allowed
            : allowedBy(issue),
        message: LIBRARY_WORDS.test(issue.message)
          ? say("workshop.load.must-be", { issue: allowedBy(issue) })
          : issue.message,
      }),
    },
  ];
}

/** How the schema library begins where a field has no words of its own. */
const LIBRARY_WORDS = /^(Too small|Too big|Invalid input): /;

/** Nouns for the library's sorts of value, singular. */
const SORT_WORDS: Readonly<Record<string, string>> = {
  array: say("workshop.load.a-list"),
  boolean: say("workshop.load.true-or-false"),
  int: say("workshop.load.a-whole-number"),
  object: say("workshop.load.a-group-of-keys"),
  record: say("workshop.load.a-group-of-keys"),
  string: "text",
  number: say("workshop.load.a-number"),
};

/** How many of what? A number stands for itself; of lists entries are counted, of text letters. */
function bound(words: "at least" | "at most", limit: number | bigint, origin: string): string {
  if (origin === "array") return `${words} ${limit} ${limit === 1 ? "entry" : "entries"}`;
  if (origin === "string") return `${words} ${limit} ${limit === 1 ? "letter" : "letters"}`;
  return `${words} ${limit}`;
}

function allowedBy(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "too_big":
      return bound("at most", issue.maximum, issue.origin);
    case "too_small":
      return bound("at least", issue.minimum, issue.origin);
    case "invalid_type":
      return SORT_WORDS[issue.expected] ?? issue.expected;
    case "invalid_value":
      return issue.values.map(String).join(", ");
    case "unrecognized_keys":
      return say("workshop.load.a-key-that-is-known-here");
    default:
      return issue.message;
  }
}

const isRecord = (v: unknown): v is Record<string, unknown> => v !== null && typeof v === "object" && !Array.isArray(v);

function valueAt(plain: unknown, path: readonly PropertyKey[]): unknown {
  let here: unknown = plain;
  for (const step of path) {
    if (here === null || typeof here !== "object") return null;
    here = (here as Record<PropertyKey, unknown>)[step];
  }
  return here ?? null;
}
