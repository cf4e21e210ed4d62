/** Does undo lead back to where it was, redo forward again, and is no row ever lost, whatever is done in which order? */
import fc from "fast-check";
import { expect, it } from "vitest";
import { historyWorkshop, textsOf } from "./test-history.js";

const B = "quayside";
const SEED = { seed: 20261130, numRuns: 20 };

type Step =
  | { readonly do: "edit"; readonly place: number; readonly value: number }
  | { readonly do: "put"; readonly value: number }
  | { readonly do: "undo" | "redo" | "reopen" | "name" }
  | { readonly do: "restore"; readonly which: number };

const PLACES = [
  ["donor", "q1", ["measured", "chainstay"]],
  ["donor", "q1", ["measured", "top_tube_cc"]],
  ["rider", "r1", ["inseam"]],
  ["intent", "commute", ["budget"]],
  ["route", "harbour-road", ["sections", 2, "grade"]],
] as const;

const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({ do: fc.constant("edit" as const), place: fc.nat(4), value: fc.integer({ min: 0, max: 3 }) }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant("put" as const), value: fc.nat(9) }) },
  { weight: 5, arbitrary: fc.record({ do: fc.constantFrom("undo" as const, "undo" as const, "redo" as const) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constantFrom("reopen" as const, "name" as const) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant("restore" as const), which: fc.nat(3) }) },
);

/** The plain other way: whole pictures of all texts on two piles. */
interface Model {
  now: Readonly<Record<string, string>>;
  back: Readonly<Record<string, string>>[];
  on: Readonly<Record<string, string>>[];
  readonly versions: Readonly<Record<string, string>>[];
}

it("agrees with whole pictures laid on two piles", { timeout: 300_000 }, async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 3, maxLength: 16 }), async (steps) => {
      const w = await historyWorkshop();
      try {
        const m: Model = { now: await textsOf(w.now()), back: [], on: [], versions: [] };
        let rows = await allRows(w);
        for (const s of steps) {
          await take(s, w, m);
          expect(await textsOf(w.now())).toEqual(m.now);
          const after = await allRows(w);
          expect(after.slice(0, rows.length)).toEqual(rows);
          rows = after;
        }
        // All the way back, over a restart, and all the way on again.
        await w.reopen();
        const end = m.now;
        let undone = 0;
        while ((await w.now().undo(B)).kind === "turned") {
          undone += 1;
          expect(await textsOf(w.now())).toEqual(m.back.at(-undone));
        }
        expect(undone).toBe(m.back.length);
        for (let n = 0; n < undone; n += 1) expect((await w.now().redo(B)).kind).toBe("turned");
        expect(await textsOf(w.now())).toEqual(end);
      } finally {
        await w.end();
      }
    }),
    SEED,
  );
});

type Shelf = Awaited<ReturnType<typeof historyWorkshop>>;

/** Every row of every document, in order of what was written. */
async function allRows(w: Shelf) {
  const lists = [];
  for (const { kind, id } of await w.now().listDocuments())
    lists.push(...(await w.now().history(kind, id)).map((row) => ({ kind, id, ...row })));
  return lists.sort((a, b) => a.at.localeCompare(b.at) || `${a.kind}${a.id}`.localeCompare(`${b.kind}${b.id}`));
}

async function take(s: Step, w: Shelf, m: Model): Promise<void> {
  const moved = async () => {
    const now = await textsOf(w.now());
    if (JSON.stringify(now) === JSON.stringify(m.now)) return;
    m.back.push(m.now);
    m.on = [];
    m.now = now;
  };
  switch (s.do) {
    case "edit": {
      const [kind, id, path] = PLACES[s.place] ?? PLACES[0];
      const base = { inseam: 800, budget: 500, grade: 4 }[String(path.at(-1))] ?? 440;
      const edited = await w.now().edit(kind, id, path, base + s.value);
      expect(edited.kind).toBe("edited");
      await moved();
      return;
    }
    case "put": {
      const text = (await w.now().exportText("donor", "q1")) ?? "";
      const put = text.replace(/wheelbase: .*/, `wheelbase: ${1050 + s.value} # measured ${s.value} times`);
      expect((await w.now().putText(put, "donor.yaml")).kind).toBe("put");
      await moved();
      return;
    }
    case "undo":
    case "redo": {
      const [from, to] = s.do === "undo" ? [m.back, m.on] : [m.on, m.back];
      const turned = await w.now()[s.do](B);
      const next = from.pop();
      expect(turned.kind).toBe(next === undefined ? "refused" : "turned");
      if (next === undefined) return;
      to.push(m.now);
      m.now = next;
      return;
    }
    case "reopen":
      return w.reopen();
    case "name":
      expect((await w.now().nameVersion(B, `version ${m.versions.length}`)).kind).toBe("named");
      m.versions.push(m.now);
      return;
    case "restore": {
      const texts = m.versions[s.which];
      const restored = await w.now().restoreVersion(B, `version ${s.which}`);
      expect(restored.kind).toBe(texts === undefined ? "refused" : "restored");
      if (texts === undefined) return;
      const before = m.now;
      await moved();
      expect(m.now).toEqual(texts);
      if (restored.kind === "restored" && restored.change === null) expect(m.now).toBe(before);
      return;
    }
  }
}
