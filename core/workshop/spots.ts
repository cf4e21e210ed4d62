/**
 * Where in a text do the values stand that can be changed in place? Plain figures and words on one line; none where the
 * text leans on anchors, because there one place may be written in another.
 */
import { type Document, isMap, isScalar, isSeq, parseDocument, visit } from "yaml";

export interface Spot {
  readonly from: number;
  readonly to: number;
}

/** Where the values of a text stand that can be changed in place, by their path; empty where none can. */
export type Spots = ReadonlyMap<string, Spot>;

/** Keys that no edit may name. */
const NEVER = new Set(["__proto__", "constructor", "prototype"]);
const MOST_STEPS = 12;

export function spotsOf(text: string): Spots {
  const document = parseDocument(text, { strict: true, uniqueKeys: true, logLevel: "error" });
  return spotsIn(document, text);
}

/** @param document as read from `text` */
export function spotsIn(document: Document, text: string): Spots {
  const spots = new Map<string, Spot>();
  if (document.errors.length > 0 || leansOnAnchors(document)) return spots;
  const walk = (node: unknown, path: readonly (string | number)[]): void => {
    if (isMap(node)) {
      for (const { key, value } of node.items) {
        const name = isScalar(key) ? key.value : undefined;
        if (typeof name === "string" && !NEVER.has(name)) walk(value, [...path, name]);
      }
    } else if (isSeq(node)) for (const [i, item] of node.items.entries()) walk(item, [...path, i]);
    else if (isScalar(node) && node.range && node.tag === undefined) {
      const [from, to] = node.range;
      const written = text.slice(from, to);
      if (path.length > 0 && path.length <= MOST_STEPS && written !== "" && !written.includes("\n"))
        spots.set(JSON.stringify(path), { from, to });
    }
  };
  walk(document.contents, []);
  return spots;
}

function leansOnAnchors(document: Document): boolean {
  let leans = false;
  visit(document, {
    Alias: () => {
      leans = true;
    },
    Node: (_, node) => {
      if ("anchor" in node && node.anchor !== undefined) leans = true;
    },
  });
  return leans;
}
