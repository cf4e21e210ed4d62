/**
 * What does this plain data say as a document, or what is wrong in it? Each refusal has the path to its value, what was
 * given and what is allowed; all at once. Also used for tables, which have no document around their rows.
 */

import type { z } from "zod";
import { nearestName } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { type AnyDoc, DOC_KINDS, DOCUMENT_SCHEMAS, type DocKind } from "./documents.js";

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
