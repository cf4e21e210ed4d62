/** How does a test reckon a demo build, as it stands or with a few words changed, and find a row or a joint in the answer? */
import type { JointAnswer } from "../fit/index.js";
import { loadText, resolveBuild } from "../workshop/index.js";
import type { BoardRow } from "./board.js";
import { reckon } from "./reckon.js";
import type { Reckoning } from "./reckoning.js";

/** @throws where one of the changes finds nothing: a test that changes nothing proves nothing */
export function changedText(text: string, changes: readonly (readonly [string | RegExp, string])[]): string {
  return changes.reduce((before, [from, to]) => {
    const after = before.replace(from, to);
    if (after === before) throw new Error(`nothing to change: ${from}`);
    return after;
  }, text);
}

export function reckonText(text: string, file: string): Reckoning {
  const l = loadText(text, file);
  if (l.kind === "refused") throw new Error(JSON.stringify(l.refusals, null, 1));
  const r = resolveBuild(l.docs.map((d) => d.doc));
  if (r.kind === "refused") throw new Error(JSON.stringify(r.refusals, null, 1));
  return reckon(r.resolved);
}

export function rowOf(k: Reckoning, n: number): BoardRow {
  const row = k.board.find((b) => b.n === n);
  if (row === undefined) throw new Error(`no question ${n}`);
  return row;
}

export function jointOf(k: Reckoning, id: string): JointAnswer {
  const j = k.joints.joints.find((x) => x.id === id);
  if (j === undefined) throw new Error(`no joint ${id}`);
  return j;
}
