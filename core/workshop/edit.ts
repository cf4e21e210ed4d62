/**
 * How is one value of a document changed so that its comments and everything else stay as written? The edit is made on
 * the text; the typed document is read anew from the result, and an edit that cannot be read changes nothing.
 */

import { type Document, isCollection, isNode, isScalar, parseDocument, Document as YamlDocument } from "yaml";
import { say } from "../texts/say.js";
import type { AnyDoc } from "./documents.js";
import { type PlainRefusal, readPlain } from "./read-plain.js";

export type EditPath = readonly (string | number)[];

export type EditResult =
  | { readonly kind: "edited"; readonly text: string; readonly doc: AnyDoc; readonly plain: unknown }
  | { readonly kind: "refused"; readonly refusals: readonly PlainRefusal[] };

/** What a person typed into a field, as the scalar that belongs into the text: plain numbers stay numbers. */
export function scalarOf(written: string | number | boolean | null): string | number | boolean | null {
  if (typeof written !== "string") return written;
  const t = written.trim();
  return /^[-+]?\d+(\.\d+)?$/.test(t) && t.length < 16 ? Number(t) : t;
}

/** A copy of the plain data with one value set (or taken out with undefined). Nothing else is touched. */
export function withValue(plain: unknown, path: EditPath, value: unknown): unknown {
  const [head, ...rest] = path;
  if (head === undefined) return value;
  if (Array.isArray(plain)) {
    const copy = plain.slice();
    const i = Number(head);
    if (rest.length === 0 && value === undefined) copy.splice(i, 1);
    else copy[i] = withValue(copy[i], rest, value);
    return copy;
  }
  const copy: Record<string, unknown> = { ...((plain as Record<string, unknown> | null | undefined) ?? {}) };
  const key = String(head);
  if (key === "__proto__" || key === "constructor" || key === "prototype") return copy;
  if (rest.length === 0 && value === undefined) delete copy[key];
  else copy[key] = withValue(copy[key], rest, value);
  return copy;
}

/** The edit on plain data only: what the page does at every keystroke. */
export function editPlain(
  plain: unknown,
  path: EditPath,
  value: unknown,
):
  | { readonly kind: "read"; readonly doc: AnyDoc; readonly plain: unknown }
  | { readonly kind: "refused"; readonly refusals: readonly PlainRefusal[] } {
  const changed = withValue(plain, path, value);
  const read = readPlain(changed);
  return read.kind === "read" ? { ...read, plain: changed } : read;
}

/** The edit on the text: what the store keeps. `undefined` takes the key out. */
export function editText(text: string, path: EditPath, value: unknown): EditResult {
  const document = parseDocument(text, { strict: true, uniqueKeys: true, logLevel: "error" });
  if (document.errors.length > 0) {
    return {
      kind: "refused",
      refusals: [
        {
          code: "yaml",
          path: [],
          given: null,
          allowed: say("workshop.edit.well-formed-yaml"),
          message: document.errors[0]?.message ?? say("workshop.edit.cannot-be-read"),
        },
      ],
    };
  }
  if (
    path.some((p) => p === "__proto__" || p === "constructor" || p === "prototype") ||
    path.length === 0 ||
    path.length > 12
  ) {
    return {
      kind: "refused",
      refusals: [
        {
          code: "bad-path",
          path,
          given: path.join("."),
          allowed: say("workshop.edit.a-path-of-1-to-12"),
          message: say("workshop.edit.this-place-cannot-be-edited"),
        },
      ],
    };
  }
  const spot = spotOf(document, path);
  if (value === undefined) document.deleteIn(path);
  else {
    const old = document.getIn(path, true);
    const fresh = document.createNode(value);
    // A comment that stood beside the old value stays beside the new one.
    if (old !== null && typeof old === "object" && "comment" in old && old.comment)
      Object.assign(fresh, { comment: old.comment });
    document.setIn(path, fresh);
  }
  const plain: unknown = document.toJS({ maxAliasCount: 50 });
  const read = readPlain(plain);
  if (read.kind === "refused") return read;
  const spliced = value === undefined || spot === undefined ? undefined : splicedText(text, spot, value, plain);
  if (spliced !== undefined) return { kind: "edited", text: spliced, doc: read.doc, plain };
  const out = document.toString({ lineWidth: 0, flowCollectionPadding: true });
  const again: unknown = parseDocument(out).toJS();
  if (JSON.stringify(again) !== JSON.stringify(plain))
    throw new Error("an edit did not survive being written and read again");
  return { kind: "edited", text: out, doc: read.doc, plain };
}

interface Spot {
  readonly from: number;
  readonly to: number;
}

/** Where the value of this place stands in the text, if it can be replaced there and nothing hangs on it. */
function spotOf(document: Document, path: EditPath): Spot | undefined {
  const node = document.getIn(path, true) as unknown;
  if (!isNode(node) || !node.range) return undefined;
  const plainScalar = isScalar(node) && node.anchor === undefined && node.tag === undefined;
  const oneLine = isCollection(node) && node.flow === true && node.anchor === undefined;
  return plainScalar || oneLine ? { from: node.range[0], to: node.range[1] } : undefined;
}

/** The text with only this one value replaced, or undefined where that would not say what is meant. */
function splicedText(text: string, spot: Spot, value: unknown, plain: unknown): string | undefined {
  const old = text.slice(spot.from, spot.to);
  if (old === "" || old.includes("\n")) return undefined;
  const padded = /^[[{] /.test(old);
  const fresh = new YamlDocument(value, { flow: true }).toString({ lineWidth: 0, flowCollectionPadding: padded });
  const wanted = JSON.stringify(plain);
  for (const written of [fresh.trimEnd(), JSON.stringify(value)]) {
    if (written === "" || written.includes("\n")) continue;
    const out = text.slice(0, spot.from) + written + text.slice(spot.to);
    const again = parseDocument(out, { strict: true, uniqueKeys: true, logLevel: "error" });
    if (again.errors.length === 0 && JSON.stringify(again.toJS({ maxAliasCount: 50 })) === wanted) return out;
  }
  return undefined;
}
