/**
 * Does a key stand twice in one object, and which of the two was meant? The parser's own search compares each key with
 * all before it, which takes seconds in a long object; this one meets each key once. At most `most` are told.
 */

import { type Document, isScalar, visit } from "yaml";
import type { Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";

export function keysTwice(document: Document, where: (offset: number | undefined) => string, most = 20): Refusal[] {
  const refusals: Refusal[] = [];
  visit(document, {
    Map: (_, map) => {
      const seen = new Set<unknown>();
      for (const { key } of map.items) {
        if (!isScalar(key)) continue;
        if (seen.has(key.value) && refusals.length < most) {
          const at = where(key.range?.[0]);
          const given = String(key.value).slice(0, 80);
          const message = say("workshop.keys-twice.the-key-stands-twice-in-one", { at, given });
          refusals.push({
            code: "key-twice",
            at,
            given,
            allowed: say("workshop.keys-twice.each-key-once-in-an-object"),
            message,
          });
        }
        seen.add(key.value);
      }
    },
  });
  return refusals;
}
