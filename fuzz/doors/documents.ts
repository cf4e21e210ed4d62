/** What comes of any text put in as a document? The figures that stand in it, every letter kept, or described refusals. */
import { reckon } from "@coldset/core/questions";
import { type AnyDoc, loadText, resolveBuild } from "@coldset/core/workshop";
import fc from "fast-check";
import { checkObject } from "../../cli/said/check-object.js";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { type Large, type LargeBin, largeBin, largeText, textOfBin, textOfLarge } from "../inputs/large-text.js";
import {
  demoOf,
  HOSTILE_KEYS,
  HOSTILE_VALUES,
  LIKELY,
  type Mangled,
  mangled,
  mangledText,
} from "../inputs/mangled-text.js";
import { anySign, oddText } from "../inputs/odd-text.js";
import { describedRefusals, notFinite } from "../inputs/refusal-faults.js";
import { firstDifference, unwrittenNumber } from "../inputs/same-figures.js";
import { DEMOS } from "../place.js";

/** A text, or how to make it. */
export type AnyText = Mangled | Large | LargeBin | string;

export interface DocumentInput {
  readonly text: AnyText;
  /** Also reckon the build with it: a hundred times dearer than reading, so not each time. */
  readonly reckon: boolean;
}

/** Text by the grammar of the language, of any shape, and text by no grammar. */
const key = fc.oneof(
  fc.constantFrom(...HOSTILE_KEYS),
  fc.constantFrom("kind", "version", "id", "parts", "measured"),
  oddText,
);
const scalar = fc.oneof(fc.constantFrom(...LIKELY), fc.constantFrom(...HOSTILE_VALUES), oddText);
const shaped = fc.letrec<{ node: string; flow: string }>((tie) => ({
  flow: fc.oneof(
    { maxDepth: 4, depthSize: "small" },
    scalar,
    fc.array(tie("flow"), { maxLength: 4 }).map((items) => `[${items.join(", ")}]`),
    fc
      .array(fc.tuple(key, tie("flow")), { maxLength: 4 })
      .map((rows) => `{${rows.map((r) => r.join(": ")).join(", ")}}`),
  ),
  node: fc
    .array(fc.tuple(key, tie("flow")), { minLength: 1, maxLength: 6 })
    .map((rows) => rows.map(([k, v]) => `${k}: ${v}`).join("\n")),
})).node;
const headed = fc
  .tuple(fc.constantFrom("donor", "rider", "intent", "shop", "bin", "prices", "route", "build"), shaped)
  .map(([kind, rest]) => `kind: ${kind}\nversion: 1\nid: x1\n${rest}`);
const noise = fc.oneof(
  fc.string({ maxLength: 300 }),
  fc.string({ unit: anySign, maxLength: 120 }),
  fc.array(oddText).map((t) => t.join("\n")),
);
const deep = fc
  .tuple(fc.constantFrom("[", "{a: ", "- ", "? ", "  ", "!x ", "&a ", "> ", "'"), fc.nat(3000))
  .map(([sign, times]) => `a: ${sign.repeat(times)}`);

/** Texts of tens of thousands of steps cost as much as hundreds of others: one in five hundred. */
export const anyText: fc.Arbitrary<AnyText> = fc.oneof<fc.WeightedArbitrary<AnyText>[]>(
  { weight: 14 * 52, arbitrary: mangled },
  { weight: 2 * 52, arbitrary: headed },
  { weight: 52, arbitrary: shaped },
  { weight: 52, arbitrary: noise },
  { weight: 52, arbitrary: deep },
  { weight: 1, arbitrary: largeText },
  { weight: 1, arbitrary: largeBin },
);

const inputs: fc.Arbitrary<DocumentInput> = fc.record({ text: anyText, reckon: fc.nat(60).map((n) => n === 0) });

export function asText(text: AnyText): string {
  if (typeof text === "string") return text;
  if ("base" in text) return mangledText(text);
  return "of" in text ? textOfLarge(text) : textOfBin(text);
}

const OTHERS: ReadonlyMap<string, readonly AnyDoc[]> = new Map(
  DEMOS.map(({ id, text }) => {
    const loaded = loadText(text, `${id}.yaml`);
    if (loaded.kind === "refused") throw new Error(`the demo ${id} cannot be read`);
    return [id, loaded.docs.map((d) => d.doc)];
  }),
);

function put(input: DocumentInput): Went {
  const text = asText(input.text);
  const loaded = loadText(text, "a.yaml");
  if (loaded.kind === "refused") {
    describedRefusals(loaded.refusals);
    return refusedAs(loaded.refusals[0]?.code ?? "");
  }
  nothingLost(
    text,
    loaded.docs.map((d) => d.text),
  );
  for (const { doc, plain, text: own } of loaded.docs) {
    const difference = firstDifference(plain, doc);
    mustHold(difference === undefined, () => `${difference}`);
    const unwritten = unwrittenNumber(own, plain);
    mustHold(unwritten === undefined, () => `${unwritten} stands nowhere in the text`);
  }
  if (!input.reckon) return accepted("read");
  const demo = typeof input.text === "object" && "base" in input.text ? demoOf(input.text.base).id : "quayside";
  return reckoned(
    demo,
    loaded.docs.map((d) => d.doc),
  );
}

/**
 * The texts of the documents are the file: what is left over may only be dividing lines and room, and comments of an empty
 * document where `comments` does not say that these count, too.
 */
export function nothingLost(text: string, parts: readonly string[], comments = false): void {
  const idle = comments ? /^(?:---|\.\.\.)[ \t\r]*$/gm : /^(?:(?:---|\.\.\.)[ \t]*)?(?:#.*)?\r?$/gm;
  const look = (left: string) => mustHold(!/\S/.test(left.replace(idle, "")), () => `lost: ${JSON.stringify(left)}`);
  let from = 0;
  for (const part of parts) {
    const at = text.indexOf(part, from);
    mustHold(at >= 0, () => `a document's text stands nowhere in the file: ${JSON.stringify(part.slice(0, 80))}`);
    look(text.slice(from, at));
    from = at + part.length;
  }
  look(text.slice(from));
}

/** The build of this demo with these documents in place of its own: every figure of the check is finite. */
function reckoned(demo: string, docs: readonly AnyDoc[]): Went {
  const others = OTHERS.get(demo) ?? [];
  const all = [...docs, ...others.filter((o) => !docs.some((d) => d.kind === o.kind))];
  const resolved = resolveBuild(all);
  if (resolved.kind === "refused") {
    describedRefusals(resolved.refusals);
    return accepted("not a whole build");
  }
  const object = checkObject(reckon(resolved.resolved));
  const bad = notFinite(object);
  mustHold(bad === undefined, () => `the check says ${bad}`);
  return accepted("reckoned");
}

export const documents: Door<DocumentInput> = {
  name: "documents",
  holds: "a text becomes documents that say what it says, with every letter kept, or described refusals",
  inputs,
  put,
};
