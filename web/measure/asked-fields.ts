/** Which further values do the steps ask for, that have no field of their own on this page? */

import type { NextStep } from "@coldset/core/quantity";
import type { Reckoning } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import type { OpenDoc } from "../state/laid.js";
import { valueAt } from "../state/place.js";
import { settlesWords } from "../state/words.js";
import { FIELD_GROUPS, type FieldInfo, READINGS, stationFields } from "./donor-fields.js";
import type { EntryTarget } from "./entry-field.js";

export interface AskedField {
  readonly at: string;
  readonly info: FieldInfo;
  readonly target: EntryTarget;
  readonly settles: string;
}

export function askedFields(r: Reckoning, docs: readonly OpenDoc[]): readonly AskedField[] {
  const here = new Set(
    [...READINGS, ...FIELD_GROUPS.flatMap((g) => g.fields), ...stationFields(r.resolved.donor)].map(
      (f) => `donor.${f.path.join(".")}`,
    ),
  );
  const steps = new Map<string, { step: NextStep; settles: string[] }>();
  const add = (step: NextStep | undefined, by: readonly string[]) => {
    if (step?.at === undefined || here.has(step.at)) return;
    const row = steps.get(step.at) ?? { step, settles: [] };
    row.settles.push(...by.filter((b) => !row.settles.includes(b)));
    steps.set(step.at, row);
  };
  for (const step of r.next) add(step, step.settles);
  for (const row of r.board) add(row.next, [say("web.asked-fields.question", { number: row.n })]);
  for (const j of r.joints.joints) add(j.next, [j.id]);
  return [...steps.values()].flatMap(({ step, settles }): AskedField[] => {
    const found = docPath(step.at ?? "", docs);
    if (found === undefined) return [];
    const value = valueAt(found.doc.plain, found.path);
    if (value !== null && typeof value === "object") return [];
    return [
      {
        at: step.at ?? "",
        info: {
          path: found.path.map(String),
          title: step.what,
          sort: { as: "text" },
          ...(step.how === undefined ? {} : { how: step.how }),
        },
        target: { kind: found.doc.kind, id: found.doc.id, path: found.path, words: found.words },
        settles: say("web.asked-fields.it-settles", { settles: settlesWords(settles) }),
      },
    ];
  });
}

/** "bin.parts.q01.cost" in the documents: parts are named by their ids there, and stand in a list here. */
export function docPath(at: string, docs: readonly OpenDoc[]) {
  const [kind, ...rest] = at.split(".");
  const doc = docs.find((d) => d.kind === kind);
  if (doc === undefined || rest.length === 0) return undefined;
  if (kind !== "bin")
    return kind === "build" ? undefined : { doc, path: rest, words: rest.join(" ").replaceAll("_", " ") };
  const [list, id, ...leaf] = rest;
  if (list !== "parts" || leaf.length === 0 || doc.doc.kind !== "bin") return undefined;
  const index = doc.doc.parts.findIndex((p) => p.id === id);
  return index < 0
    ? undefined
    : { doc, path: ["parts", index, ...leaf], words: `${id} ${leaf.at(-1)?.replaceAll("_", " ")}` };
}
