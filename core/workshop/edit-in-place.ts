/**
 * Can one value be changed without reading the whole text anew? Yes where it is a plain figure or word on one line, in a
 * text without anchors: then only its own letters change, and everything else still says what it said. What would have to
 * be read anew to be sure gives undefined; `editText` does that. Both give the same text (edit-in-place.property.test.ts).
 */
import { isMap, isScalar, isSeq, parseDocument, Document as YamlDocument } from "yaml";
import type { AnyDoc } from "./documents.js";
import { type EditPath, withValue } from "./edit.js";
import { type PlainRefusal, readPlain } from "./read-plain.js";
import type { Spot, Spots } from "./spots.js";

export type EditedInPlace =
  | {
      readonly kind: "edited";
      readonly text: string;
      readonly doc: AnyDoc;
      readonly plain: unknown;
      readonly spots: Spots;
    }
  | { readonly kind: "refused"; readonly refusals: readonly PlainRefusal[] }
  | undefined;

/** Figures that every reader of YAML takes for the same number, with one way to write them. */
const FIGURE = /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/;

/** @param plain,spots what `text` says, and where */
export function editInPlace(text: string, plain: unknown, spots: Spots, path: EditPath, value: unknown): EditedInPlace {
  const spot = spots.get(JSON.stringify(path));
  const written = spot === undefined ? undefined : writtenInPlace(value);
  if (spot === undefined || written === undefined) return undefined;
  const changed = withValue(plain, path, value);
  const read = readPlain(changed);
  if (read.kind === "refused") return read;
  const out = text.slice(0, spot.from) + written + text.slice(spot.to);
  const moved = written.length - (spot.to - spot.from);
  const after = new Map<string, Spot>();
  for (const [key, { from, to }] of spots) {
    if (from < spot.from) after.set(key, { from, to });
    else if (from === spot.from) after.set(key, { from, to: to + moved });
    else after.set(key, { from: from + moved, to: to + moved });
  }
  return { kind: "edited", text: out, doc: read.doc, plain: changed, spots: after };
}

/** As `editText` writes it; undefined where that depends on what stands around it. */
function writtenInPlace(value: unknown): string | undefined {
  if (typeof value === "number") {
    const figure = String(value);
    return FIGURE.test(figure) && !Object.is(value, -0) ? figure : undefined;
  }
  if (typeof value === "boolean") return String(value);
  if (typeof value !== "string") return undefined;
  const written = new YamlDocument(value, { flow: true }).toString({ lineWidth: 0 }).trimEnd();
  if (written === "" || written.includes("\n") || /^(?:---|\.\.\.)/.test(written)) return undefined;
  // The same wherever a value can stand: after a key or a dash, in a list or an object on one line.
  return AROUND.every(([before, after]) => saysInside(before, written, after, value)) ? written : undefined;
}

const AROUND = [
  ["x: ", "\n"],
  ["- ", "\n"],
  ["[", ", 1]\n"],
  ["{x: ", ", y: 1}\n"],
] as const;

function saysInside(before: string, written: string, after: string, value: string): boolean {
  const document = parseDocument(before + written + after, { strict: true, logLevel: "error" });
  if (document.errors.length > 0) return false;
  const contents = document.contents;
  const first = isMap(contents) ? contents.items[0]?.value : isSeq(contents) ? contents.items[0] : undefined;
  const count = isMap(contents) || isSeq(contents) ? contents.items.length : 0;
  if (!isScalar(first) || first.value !== value || !first.range) return false;
  return (
    count === (after === "\n" ? 1 : 2) &&
    first.range[0] === before.length &&
    first.range[1] === before.length + written.length
  );
}
