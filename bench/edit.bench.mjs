/**
 * How long does one edit take until all twenty questions are answered anew, without any page: the edit on the plain data,
 * reading the document, resolving the build and reckoning it upon the state before? The yardstick is copying the same
 * build's documents once through JSON. Edits of readings, of an interface, of a part, of the rider and of a choice take
 * turns; a reading far off, which bends the whole survey so that every other one is left out in turn, is a case of its own.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { reckon } from "@coldset/core/questions";
import { editPlain, loadText, resolveBuild } from "@coldset/core/workshop";
import { ROOT } from "../scripts/setup.mjs";

export const question = "How much longer than a JSON copy of the documents does an edit take until all is answered?";

const EDITS = 100;
/** @type {readonly (readonly [kind: string, path: (string | number)[], value: (i: number) => unknown])[]} */
const PLACES = [
  ["donor", ["measured", "top_tube_cc"], (i) => 537 + (i % 17)],
  ["donor", ["measured", "front_centre"], (i) => 613 + (i % 5)],
  ["donor", ["measured", "head_angle"], (i) => 70.8 + (i % 7) / 10],
  ["donor", ["measured", "bb_height"], (i) => 287 + (i % 6)],
  ["donor", ["measured", "chainstay"], (i) => 440 + (i % 5)],
  ["rider", ["total_mass"], (i) => 100 + (i % 9)],
  ["build", ["chosen", "fork"], (i) => (i % 2 === 0 ? "FB" : "FA")],
];
/** @type {readonly (readonly [kind: string, path: (string | number)[], value: (i: number) => unknown])[]} */
const FAR_OFF = [["donor", ["measured", "wheelbase"], (i) => [842, 952, 1152][i % 3]]];

/** A build at hand, edited again and again. @param {typeof PLACES} places */
function workshop(places) {
  const loaded = loadText(readFileSync(join(ROOT, "demo", "quayside.yaml"), "utf8"), "quayside.yaml");
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  /** @type {{ doc: import("@coldset/core/workshop").AnyDoc, plain: unknown }[]} */
  let docs = loaded.docs.map(({ doc, plain }) => ({ doc, plain }));
  /** @type {import("@coldset/core/questions").Reckoning | undefined} */
  let before;
  let count = 0;
  return {
    docs,
    edit() {
      const place = places[count % places.length];
      if (place === undefined) throw new Error("no place");
      const [kind, path, value] = place;
      const at = docs.findIndex((d) => d.doc.kind === kind);
      const read = editPlain(docs[at]?.plain, path, value(Math.floor(count / places.length)));
      if (read.kind === "refused") throw new Error(JSON.stringify(read.refusals));
      docs = docs.map((d, i) => (i === at ? read : d));
      const r = resolveBuild(docs.map((d) => d.doc));
      if (r.kind === "refused") throw new Error(JSON.stringify(r.refusals));
      before = reckon(r.resolved, before);
      count += 1;
      return before;
    },
  };
}

/** @param {string} name @param {() => unknown} run */
function tell(name, run) {
  for (let i = 0; i < EDITS; i += 1) run();
  const times = Array.from({ length: EDITS }, () => {
    const from = performance.now();
    run();
    return performance.now() - from;
  }).sort((a, b) => a - b);
  const at = (/** @type {number} */ share) => (times[Math.floor(share * EDITS)] ?? Number.NaN).toFixed(2);
  process.stdout.write(`${EDITS} ${name}: median ${at(0.5)} ms, 95th of 100 ${at(0.95)} ms, quickest ${at(0)} ms.\n`);
}

export function cases() {
  for (const places of [PLACES, FAR_OFF]) {
    const { edit } = workshop(places);
    for (let i = 0; i < EDITS; i += 1) {
      const k = edit();
      if (!isDeepStrictEqual(k, reckon(k.resolved))) throw new Error(`edit ${i}: not what is reckoned anew`);
    }
  }
  const usual = workshop(PLACES);
  const far = workshop(FAR_OFF);
  const plain = usual.docs.map((d) => d.plain);
  tell("edits", usual.edit);
  tell("edits far off", far.edit);
  return [
    { name: "copy through JSON", run: () => JSON.parse(JSON.stringify(plain)) },
    { name: "an edit, answered", run: usual.edit },
    { name: "an edit far off, answered", run: far.edit },
  ];
}
