/** Do both threads keep the same documents, and is what is answered over there what would be answered here? */
import { readdirSync, readFileSync } from "node:fs";
import type { AnyDoc } from "@coldset/core/workshop";
import { loadText, namedByBuild } from "@coldset/core/workshop";
import { reckonHere } from "@coldset/server/reckon";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkObject } from "../said/check-object.js";
import { answerer, asker } from "./question.js";

const DEMO = new URL("../../demo/", import.meta.url);
const docsIn = (name: string): readonly AnyDoc[] => {
  const loaded = loadText(readFileSync(new URL(name, DEMO), "utf8"), name);
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  return loaded.docs.map((d) => d.doc);
};
const all = readdirSync(DEMO)
  .filter((name) => name.endsWith(".yaml"))
  .flatMap(docsIn);
const builds = all.flatMap((doc) => {
  if (doc.kind !== "build") return [];
  const docs = namedByBuild(doc).flatMap(({ kind, id }) => all.find((d) => d.kind === kind && d.id === id) ?? []);
  return [{ id: doc.id, docs }];
});
const [first] = builds;
if (first === undefined) throw new Error("no demo");
const retitled = (docs: readonly AnyDoc[], title: string) =>
  docs.map((doc) => (doc.kind === "build" ? { ...doc, title } : doc));

describe("a question", () => {
  it("is answered as here, for every demo build, and its documents are sent once", () => {
    const ask = asker();
    const answer = answerer(checkObject);
    const here = reckonHere(checkObject);
    expect(builds.length).toBeGreaterThan(1);
    for (const { id, docs } of builds) {
      const check = ask({ number: 1, asks: "check", docs, buildId: id });
      expect(answer(check)).toEqual({ kind: "answered", number: 1, value: here.check(docs, id) });
      const standing = ask({ number: 2, asks: "standing", docs, buildId: id });
      expect(standing.documents.filter((d) => d.bytes !== undefined)).toEqual([]);
      expect(answer(standing)).toEqual({ kind: "answered", number: 2, value: here.standing(docs, id) });
    }
  });

  it("sends the one document that changed, and answers for the state that it was asked with", () => {
    const ask = asker();
    const answer = answerer((r) => r.resolved.build.title);
    const states = ["one", "two"].map((title) => retitled(first.docs, title));
    const questions = [0, 1, 0].map((n) => ask({ number: n, asks: "check", docs: states[n] ?? [], buildId: first.id }));
    expect(questions.map((q) => q.documents.filter((d) => d.bytes !== undefined).length)).toEqual([
      first.docs.length,
      1,
      1,
    ]);
    expect(questions.map((q) => answer(q)).map((a) => a.kind === "answered" && a.value)).toEqual([
      '"one"',
      '"two"',
      '"one"',
    ]);
  });

  it("is answered right however much both sides have to forget", () => {
    const step = fc.record({ build: fc.nat(builds.length - 1), title: fc.constantFrom("a", "b") });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), fc.integer({ min: 0, max: 40_000 }), (steps, mostBytes) => {
        const ask = asker(mostBytes);
        // What was understood over there stands in the answer: that every document came across, in its state.
        const answer = answerer((r) => [r.resolved.build, r.resolved.donor, r.resolved.bin], mostBytes);
        const states = builds.map(({ id, docs }) => ({ id, a: retitled(docs, "a"), b: retitled(docs, "b") }));
        for (const [number, { build, title }] of steps.entries()) {
          const { id, a, b } = states[build] ?? { id: "", a: [], b: [] };
          const docs = title === "a" ? a : b;
          const of = (kind: string) => docs.find((d) => d.kind === kind);
          const told = answer(ask({ number, asks: "check", docs, buildId: id }));
          expect(told).toEqual({
            kind: "answered",
            number,
            value: JSON.stringify([of("build"), of("donor"), of("bin")]),
          });
        }
      }),
      { seed: 20_261_129, numRuns: 20 },
    );
  });

  it("that cannot be reckoned fails alone; one about a document that was never given is no question", () => {
    let broken = true;
    const answer = answerer(() => {
      if (broken) throw new Error("lamp fell over");
      return "lit";
    });
    const ask = asker();
    const question = (number: number) => ask({ number, asks: "check" as const, docs: first.docs, buildId: first.id });
    expect(answer(question(1))).toMatchObject({ kind: "failed", number: 1, message: "lamp fell over" });
    broken = false;
    expect(answer(question(2))).toEqual({ kind: "answered", number: 2, value: '"lit"' });
    expect(() => answerer(checkObject)(question(3))).toThrow("was never given");
  });
});
