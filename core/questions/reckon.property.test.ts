/**
 * Is what stands after an edit the same as what is reckoned anew? Any chain of valid edits of donor, build, bin and rider,
 * each reckoned upon the state before it, against the same documents reckoned with nothing before. And a joint's answer
 * taken from an earlier one against the joint asked directly. Both sides come from our own code: what is checked is that
 * the short way changes nothing; the figures themselves are checked against the outside elsewhere.
 */
import { readFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ALL_JOINTS, type JointDefinition, judgedOnce, viewWithPart } from "../fit/index.js";
import { type EditPath, editPlain, loadText, type Place, type ResolvedBuild, resolveBuild } from "../workshop/index.js";
import { type Reckoning, reckon } from "./index.js";

const SEED = 20240719;
const LOADED = loadText(readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8"), "quayside.yaml");
if (LOADED.kind === "refused") throw new Error(JSON.stringify(LOADED.refusals));
const DOCS = LOADED.docs;

type Docs = readonly { readonly doc: (typeof DOCS)[number]["doc"]; readonly plain: unknown }[];

function resolvedOf(docs: Docs): ResolvedBuild | undefined {
  const r = resolveBuild(docs.map((d) => d.doc));
  return r.kind === "resolved" ? r.resolved : undefined;
}

interface Leaf {
  readonly kind: string;
  readonly path: EditPath;
  readonly value: unknown;
}

function leavesOf(kind: string, value: unknown, path: EditPath = []): Leaf[] {
  if (Array.isArray(value)) return value.flatMap((v, i) => leavesOf(kind, v, [...path, i]));
  if (value !== null && typeof value === "object")
    return Object.entries(value).flatMap(([key, v]) => leavesOf(kind, v, [...path, key]));
  return typeof value === "number" || typeof value === "boolean" ? [{ kind, path, value }] : [];
}

const EDITED = ["donor", "build", "bin", "rider"];
const LEAVES = DOCS.filter((d) => EDITED.includes(d.doc.kind)).flatMap((d) => leavesOf(d.doc.kind, d.plain));
/** Another part of the same kind for a place: every one that the build considers. */
const SWAPS = DOCS.flatMap((d) =>
  d.doc.kind === "build"
    ? Object.entries(d.doc.consider ?? {}).flatMap(([place, ids]) => ids.map((id) => ({ place: place as Place, id })))
    : [],
);
const READINGS = LEAVES.filter((leaf) => leaf.kind === "donor" && leaf.path[0] === "measured");

const nudge = fc.constantFrom(-20, -3, -1, -0.4, 0.3, 1, 2.5, 15);
const edit = fc.oneof(
  { weight: 3, arbitrary: fc.record({ leaf: fc.constantFrom(...READINGS), by: nudge, gone: fc.constant(false) }) },
  {
    weight: 4,
    arbitrary: fc.record({
      leaf: fc.constantFrom(...LEAVES),
      by: nudge,
      gone: fc.oneof({ weight: 5, arbitrary: fc.constant(false) }, { weight: 1, arbitrary: fc.constant(true) }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(...SWAPS).map(({ place, id }) => ({
      leaf: { kind: "build", path: ["chosen", place], value: id } as Leaf,
      by: 0,
      gone: false,
    })),
  },
);
type Edit = { readonly leaf: Leaf; readonly by: number; readonly gone: boolean };

/** The documents after the edit, or undefined where it is not a valid one. */
function edited(docs: Docs, { leaf, by, gone }: Edit): Docs | undefined {
  const { value } = leaf;
  const fresh = gone
    ? undefined
    : typeof value === "number"
      ? Math.round((value + by) * 100) / 100
      : typeof value === "boolean"
        ? !value
        : value;
  const at = docs.findIndex((d) => d.doc.kind === leaf.kind);
  const read = editPlain(docs[at]?.plain, leaf.path, fresh);
  if (read.kind === "refused") return undefined;
  return docs.map((d, i) => (i === at ? { doc: read.doc, plain: read.plain } : d));
}

describe("a build reckoned upon the state before an edit", () => {
  it("is the same as reckoned anew, edit after edit", () => {
    let done = 0;
    const touched = new Set<string>();
    fc.assert(
      fc.property(fc.array(edit, { minLength: 3, maxLength: 6 }), (edits) => {
        let docs: Docs = DOCS;
        let before: Reckoning | undefined;
        for (const one of edits) {
          const changed = edited(docs, one);
          const resolved = changed === undefined ? undefined : resolvedOf(changed);
          if (changed === undefined || resolved === undefined) continue;
          docs = changed;
          const short = reckon(resolved, before);
          const anew = reckon(resolved);
          // The quick way first; the slow one only to show what differs.
          if (!isDeepStrictEqual(short, anew)) expect(short).toStrictEqual(anew);
          before = short;
          done += 1;
          touched.add(one.leaf.kind);
        }
      }),
      { seed: SEED, numRuns: 30 },
    );
    expect(done).toBeGreaterThan(60);
    expect([...touched].sort()).toEqual([...EDITED].sort());
  });

  it("keeps no hand on what it was made of: an answer can be sent away as plain data", () => {
    const resolved = resolvedOf(DOCS);
    if (resolved === undefined) throw new Error("not resolved");
    const first = reckon(resolved);
    const again = reckon({ ...resolved }, first);
    for (const k of [first, again]) {
      const plain = { joints: k.joints.joints, toe: k.toe, forks: k.forks.map((f) => [f.toe, f.answer.joints]) };
      expect(structuredClone(plain)).toEqual(plain);
    }
  });

  it("a joint's answer taken from an earlier one is what the joint says when it is asked", () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 2, maxLength: 4 }), fc.constantFrom(...SWAPS), (edits, swap) => {
        let docs: Docs = DOCS;
        let judged = judgedOnce();
        for (const one of edits) {
          const changed = edited(docs, one) ?? docs;
          const resolved = resolvedOf(changed);
          if (resolved === undefined) continue;
          docs = changed;
          const { view } = reckon(resolved);
          const part = resolved.parts.get(swap.id);
          if (part === undefined) continue;
          judged = judgedOnce(judged);
          // Without a frame the joints turn to the readings themselves.
          const { frame: _frame, before: _before, after: _after, ...bare } = view;
          const moved = { ...view, ports: { "frame.rear_spacing": 135 } };
          for (const v of [view, moved, bare, viewWithPart(view, swap.place, part)]) {
            for (const joint of ALL_JOINTS) {
              const taken = judged.once(joint.evaluate, v);
              const asked = joint.evaluate(v);
              if (!isDeepStrictEqual(taken, asked)) expect(taken).toStrictEqual(asked);
            }
          }
          judged.close();
        }
      }),
      { seed: SEED, numRuns: 20 },
    );
  });
});

describe("judgedOnce", () => {
  const resolved = resolvedOf(DOCS);
  if (resolved === undefined) throw new Error("not resolved");
  const { view } = reckon(resolved);

  it("asks again only where something that was read differs", () => {
    let asked = 0;
    const judge: JointDefinition["evaluate"] = (v) => {
      asked += 1;
      const answer = ALL_JOINTS[0]?.evaluate(v);
      if (answer === undefined) throw new Error("no joint");
      return { ...answer, reason: `${v.at.fork?.id} ${Object.keys(v.ports).length} ${v.frame?.rake_mm}` };
    };
    const judged = judgedOnce();
    const first = judged.once(judge, view);
    expect(judged.once(judge, { ...view, spacersBelowMm: 33 })).toBe(first);
    expect(asked).toBe(1);
    expect(judged.once(judge, { ...view, ports: { "frame.rear_spacing": 135 } }).reason).not.toBe(first.reason);
    expect(asked).toBe(2);
    const { frame } = view;
    if (frame === undefined) throw new Error("no frame");
    expect(judged.once(judge, { ...view, frame: { ...frame, rake_mm: 44 } }).reason).toMatch(/ 44$/);
    expect(asked).toBe(3);
    const later = judgedOnce(judged);
    expect(later.once(judge, { ...view, frame: { ...frame } })).toBe(first);
    expect(asked).toBe(3);
  });

  it("a judge that throws leaves nothing behind", () => {
    const judged = judgedOnce();
    const fails = (): never => {
      throw new Error("cannot");
    };
    expect(() => judged.once(fails, view)).toThrow("cannot");
    expect(judged.once((v) => v.at.fork?.id, view)).toBe(view.at.fork?.id);
  });
});
