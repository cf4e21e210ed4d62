/**
 * How does a bin's text read with these parts in it? Parts that are there word for word stay; one that is there and
 * differs needs a choice; the rest is put at the end. Comments and everything else stay as written.
 */

import { isMap, isSeq, parseDocument, stringify } from "yaml";
import type { Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { differenceOfPlain } from "./difference.js";
import { valueWords } from "./difference-words.js";
import type { WrittenPart } from "./parts-from-csv.js";
import { readPlain } from "./read-plain.js";

export interface PartsChoice {
  /** For parts that are in the bin and differ. */
  readonly choice: "keep-mine" | "take-theirs" | "as-new" | undefined;
  readonly suffix: string | undefined;
}

export type BinWithParts =
  | { readonly kind: "bin"; readonly text: string }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] };

/** @param text undefined where there is no such bin yet: a new one is written */
export function binWithParts(
  text: string | undefined,
  id: string,
  parts: readonly WrittenPart[],
  { choice, suffix }: PartsChoice,
): BinWithParts {
  const start = text ?? stringify({ kind: "bin", version: 1, id, parts: [] }, { lineWidth: 0 });
  const document = parseDocument(start, { strict: true, logLevel: "error" });
  const list = document.get("parts", true);
  if (document.errors.length > 0 || !isSeq(list)) {
    const message = say("workshop.bin-with-parts.bin-cannot-be-read-as-it", { id });
    return refused([
      {
        code: "yaml",
        at: say("workshop.bin-with-parts.bin", { id }),
        given: null,
        allowed: say("workshop.bin-with-parts.a-bin-with-a-list-of"),
        message,
      },
    ]);
  }
  const places = new Map<string, number>();
  for (const [i, item] of list.items.entries()) if (isMap(item)) places.set(String(item.get("id")), i);
  const refusals: Refusal[] = [];
  const node = (part: object) => document.createNode(part, { flow: true });
  list.flow = false;
  for (const part of parts) {
    const place = places.get(part.id);
    if (place === undefined) {
      list.add(node(part));
      continue;
    }
    const item = list.items[place];
    const there: unknown = isMap(item) ? item.toJS(document) : null;
    const differences = differenceOfPlain({ qty: 1, ...(there as object) }, { qty: 1, ...part });
    if (differences.length === 0 || choice === "keep-mine") continue;
    if (choice === "take-theirs") list.set(place, node(part));
    else if (choice === "as-new" && !places.has(`${part.id}${suffix ?? ""}`)) {
      list.add(node({ ...part, id: `${part.id}${suffix ?? ""}` }));
    } else refusals.push(differs(id, part.id, differences.map(valueWords)));
  }
  if (refusals.length > 0) return refused(refusals);
  const out = document.toString({ lineWidth: 0, flowCollectionPadding: true });
  const read = readPlain(parseDocument(out).toJS());
  if (read.kind === "read") return { kind: "bin", text: out };
  return refused(
    read.refusals.map(({ code, path, given, allowed, message }) => ({
      code,
      at: say("workshop.bin-with-parts.bin-2", { id, path: path.map(String).join(".") }),
      given,
      allowed,
      message: say("workshop.bin-with-parts.bin-3", { id, path: path.map(String).join("."), message }),
    })),
  );
}

const refused = (refusals: readonly Refusal[]): BinWithParts => ({ kind: "refused", refusals });

function differs(bin: string, part: string, lines: readonly string[]): Refusal {
  return {
    code: "import-differs",
    at: say("workshop.bin-with-parts.bin-4", { bin, part }),
    given: lines.length,
    allowed: say("workshop.bin-with-parts.keep-mine-take-theirs-or-as"),
    message: say("workshop.bin-with-parts.is-in-bin-and-differs-here", {
      part,
      bin,
      lines: lines.slice(0, 6).join("; "),
    }),
  };
}
