/**
 * While a refusal stands the board must not tell anybody how to do what is refused. Rules S1 (aluminium is never set or heated) and S5
 * (no disc on a fork that was not made for it): common practice, no source.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { aboutWords, ruleGroups, ruleSentence } from "./about-words.js";
import { changedText, reckonText, rowOf } from "./test-demo.js";

const QUAYSIDE = readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8");

const changed = (from: string | RegExp, to: string) => reckonText(changedText(QUAYSIDE, [[from, to]]), "quayside.yaml");

describe("an aluminium donor", () => {
  const r = changed("class: plain_chromoly", "class: aluminium");

  test("is not told how to push, nor where to weld", () => {
    expect(rowOf(r, 7).verdict).toBe("refuse");
    expect(rowOf(r, 7).working.words.join(" ")).not.toMatch(/Creep up/);
    expect(rowOf(r, 9).answer).toMatch(/^Nowhere: the frame is aluminium/);
    expect(rowOf(r, 9).working.words.join(" ")).not.toMatch(/Hole distances/);
    expect(rowOf(r, 9).next?.what).not.toMatch(/welder/);
  });

  test("has the refusal settled before any gate is signed or any evening planned", () => {
    for (const n of [15, 20]) expect(rowOf(r, n).next?.what).toMatch(/^Settle the refusal first \(S1\)/);
    expect(rowOf(r, 15).answer).toMatch(/^No plan while a refusal stands \(S1\)\./);
  });

  test("is told once why, with every place by its name", () => {
    const groups = ruleGroups(r.rules.filter((f) => f.rule === "S1" && f.onChosen));
    expect(groups).toHaveLength(1);
    const names = groups[0]?.fired.map((f) => aboutWords(r, f.about)) ?? [];
    expect(names).toContain("J9, hub – frame rear");
    expect(names).toContain("t10, tack check weld tab and brace");
  });
});

test("a fork that was not made for a disc is named with its kind, and its reason stands in the answer", () => {
  const r = changed("fork: FA", "fork: FC");
  expect(aboutWords(r, "FC")).toBe("FC, fork");
  expect(rowOf(r, 5).answer).toMatch(/^Not made for a disc\./);
});

test("a rule's sentence begins with a capital and has one stop; what is unknown keeps its id", () => {
  const r = changed("title: Old", "title: An old");
  for (const f of r.rules) expect(ruleSentence(f)).toMatch(/^[A-Z].*[^.]\.$/);
  expect(aboutWords(r, "nothing-of-this-name")).toBe("nothing-of-this-name");
});

test("with nothing measured the next step is short and in words", () => {
  const r = changed(/^measured:\n(?: {2}.*\n)+/m, "measured: {}\n");
  expect(rowOf(r, 13).next?.what).toMatch(/^Measure the [a-z]/);
  for (const b of r.board) {
    expect(b.next?.what ?? "").not.toMatch(/_mm|_deg/);
    expect(b.working.words.join(" ")).not.toMatch(/_mm|_deg/);
    expect(b.answer).not.toMatch(/Not known yet: Measure|\.;|;\./);
  }
});
