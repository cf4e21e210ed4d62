/**
 * What did somebody write into one step of a new build, and as what was it read? Any unit, read by the same schema as
 * the document it goes into. What cannot be read is refused with the ways to write it, and stays as typed.
 */

import { saggedRadiusMm } from "../geometry/index.js";
import { type NumberDimension, readQuantity, writeQuantity } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { editPlain, scalarOf } from "./edit.js";
import type { NewBuildEntry } from "./new-build-entries.js";
import { emptyPlain } from "./new-build-plain.js";
import { WEEKDAY_NAMES } from "./shop.js";

export type NewBuildEntries = Readonly<Record<string, string>>;

export type EntryReading =
  | { readonly kind: "skipped" }
  | {
      readonly kind: "read";
      /** As it stands in the document. */
      readonly value: unknown;
      /** What was read, with its unit: "read 491 mm". */
      readonly words: string;
    }
  | { readonly kind: "refused"; readonly messages: readonly string[] };

const isNothing = (written: string | undefined): written is undefined => {
  const t = (written ?? "").trim();
  return t === "" || t === "?";
};

export function readEntry(entry: NewBuildEntry, entries: NewBuildEntries): EntryReading {
  const given = entries[entry.key];
  if (isNothing(given)) return { kind: "skipped" };
  const written = given.normalize("NFC").replace(/\s+/g, " ").trim();
  const made = madeOf(entry, written, entries);
  if ("messages" in made) return { kind: "refused", messages: made.messages };
  // The document's own schema has the last word: what it takes here it takes in the file.
  const read = editPlain(emptyPlain(entry.kind), entry.path, made.value);
  if (read.kind === "refused") return { kind: "refused", messages: read.refusals.map((r) => r.message) };
  return { kind: "read", value: made.value, words: made.words };
}

type Made = { readonly value: unknown; readonly words: string } | { readonly messages: readonly string[] };

function madeOf(entry: NewBuildEntry, written: string, entries: NewBuildEntries): Made {
  const { sort } = entry;
  switch (sort.as) {
    case "words":
      if (!/[\p{L}\p{N}]/u.test(written))
        return { messages: [say("workshop.read-entry.write-it-in-words-one-letter")] };
      if (written.length > sort.most)
        return { messages: [say("workshop.read-entry.keep-it-under-letters", { most: sort.most })] };
      return { value: written, words: "" };
    case "choice": {
      const hit = sort.choices.find(([value]) => value === written);
      return hit === undefined
        ? {
            messages: [
              say("workshop.read-entry.choose-one-of", { choices: sort.choices.map(([value]) => value).join(", ") }),
            ],
          }
        : { value: hit[0], words: hit[1] };
    }
    case "length": {
      const read = figure(written, "length");
      if ("messages" in read) return read;
      if (!entry.key.startsWith("gap_")) return { value: scalarOf(written), words: read.words };
      const from = widestFromAxleMm(entries);
      return from === undefined
        ? { messages: [say("workshop.read-entry.enter-the-wanted-tyre-first-it")] }
        : { value: { [String(from)]: scalarOf(written) }, words: read.words };
    }
    case "two lengths": {
      const parts = written.replaceAll("−", "-").split(/\s*[;/]\s*|,\s+/);
      if (parts.length !== 2) return { messages: [say("workshop.read-entry.write-two-lengths-with-a-semicolon")] };
      const both = parts.map((p) => figure(p, "length"));
      const bad = both.flatMap((b) => ("messages" in b ? b.messages : []));
      return bad.length > 0
        ? { messages: bad }
        : {
            value: parts.map(scalarOf),
            words: both.map((b, i) => ("messages" in b ? "" : `${b.words} ${i === 0 ? "forward" : "up"}`)).join(", "),
          };
    }
    case "sum": {
      const read = readQuantity(written, "money");
      return read.kind === "read"
        ? { value: read.value, words: String(read.value) }
        : {
            messages: [
              say("workshop.fields.write-it-as", {
                reason: read.reason,
                ways: read.ways.join(say("workshop.fields.or")),
              }),
            ],
          };
    }
    case "hours": {
      const read = figure(written, "time");
      return "messages" in read ? read : { value: read.value, words: read.words };
    }
    case "tyre":
      return { value: written, words: written };
    case "days": {
      const days = [...new Set(written.toLowerCase().split(/[\s,;]+/))].filter((d) => d !== "" && d !== "and");
      const wrong = days.filter(
        (d) => WEEKDAY_NAMES[d.slice(0, 3)]?.toLowerCase().startsWith(d.replace(/s$/, "")) !== true,
      );
      if (wrong.length > 0 || days.length === 0)
        return {
          messages: [say("workshop.read-entry.is-no-day-write-days-such", { wrong: wrong.join(", ") || "This" })],
        };
      const short = [...new Set(days.map((d) => d.slice(0, 3)))];
      return { value: short, words: short.map((d) => WEEKDAY_NAMES[d] ?? d).join(", ") };
    }
  }
}

function figure(
  written: string,
  dimension: NumberDimension,
): { readonly value: number; readonly words: string } | { readonly messages: readonly string[] } {
  const read = readQuantity(written, dimension);
  if (read.kind !== "read")
    return {
      messages: [
        say("workshop.fields.write-it-as", { reason: read.reason, ways: read.ways.join(say("workshop.fields.or")) }),
      ],
    };
  const tidy = (value: number) =>
    writeQuantity(value, dimension, "metric", value % 1 === 0 ? {} : { decimals: 2 })
      .replace(/(\.\d*?)0+(?=\s|$)/, "$1")
      .replace(/\.(?=\s|$)/, "");
  const spread = read.plusMinus === undefined ? "" : ` ± ${tidy(read.plusMinus)}`;
  return { value: read.value, words: `${tidy(read.value)}${spread}`.replace("-", "−") };
}

/** How far from the axle the wanted tyre is widest: there the gap between the stays counts. */
export function widestFromAxleMm(entries: NewBuildEntries): number | undefined {
  const written = entries.tyre_wanted;
  if (isNothing(written)) return undefined;
  const read = editPlain(emptyPlain("bin"), ["parts", 0, "ports", "size"], written.trim());
  const part = read.kind === "read" && read.doc.kind === "bin" ? read.doc.parts[0] : undefined;
  const size = part?.kind === "tyre" ? part.ports.size : undefined;
  return size === undefined ? undefined : saggedRadiusMm(size.bsdMm, size.widthMm) - size.widthMm / 2;
}
