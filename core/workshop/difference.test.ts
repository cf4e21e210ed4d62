import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Parser } from "yaml";
import { changeWords } from "./change-words.js";
import { differenceOfTexts, saySame } from "./difference.js";
import { differenceWords } from "./difference-words.js";

const words = (before: string | null, after: string | null, most?: number) =>
  differenceWords(differenceOfTexts(before, after, most));

describe("the difference between two texts, in words", () => {
  it("names each value with old and new, as written", () => {
    const before = "kind: donor\nid: q1\nmeasured:\n  top_tube_cc: 537\n  chainstay: 44,2 cm\n  wheelbase: 1052\n";
    const after = "kind: donor\nid: q1\nmeasured:\n  top_tube_cc: 551\n  chainstay: 44,2 cm\n  bb_height: '?'\n";
    expect(words(before, after)).toEqual([
      "measured.top_tube_cc: 537 → 551",
      "measured.wheelbase: taken out, was 1052",
      "measured.bb_height: added, ?",
    ]);
  });

  it("matches entries of a list by their id, wherever they stand", () => {
    const before = "parts:\n  - { id: q1, cost: 5 }\n  - { id: q2, cost: 6, ports: { od: 27.2 } }\n";
    const after =
      "parts:\n  - { id: q3, cost: 1 }\n  - { id: q1, cost: 5 }\n  - { id: q2, cost: 7, ports: { od: 26.8 } }\n";
    expect(words(before, after)).toEqual([
      "parts q2, cost: 6 → 7",
      "parts q2, ports.od: 27.2 → 26.8",
      "parts q3: added, { id: q3, cost: 1 }",
    ]);
    expect(words(after, before)).toContain("parts q3: taken out, was { id: q3, cost: 1 }");
    expect(words("a:\n  - id: x\n  - id: y\n", "a:\n  - id: y\n  - id: x\n")).toEqual([
      "a: the same entries in another order",
    ]);
  });

  it("matches entries without a name by their place, and tells plain lists whole", () => {
    const before = "sections:\n  - { km: 1, grade: 0 }\n  - { km: 2, grade: 3 }\ncadence_window: [55, 85]\n";
    const after = "sections:\n  - { km: 1, grade: 0 }\n  - { km: 2, grade: 4 }\ncadence_window: [50, 85]\n";
    expect(words(before, after)).toEqual(["sections, entry 2, grade: 3 → 4", "cadence_window: [55, 85] → [50, 85]"]);
  });

  it("says where only comments, only the layout, or nothing differs", () => {
    expect(words("a: 1 # tape\nb: 2\n", "a: 1 # calliper\nb: 2\n")).toEqual([
      "Only comments differ.",
      "comment taken out: tape",
      "comment added: calliper",
    ]);
    expect(words("a: 1\nb: 2\n", "{ a: 1, b: 2 }\n")).toEqual(["Only the layout of the text differs."]);
    expect(words("a: 1\n", "a: 1\n")).toEqual(["No difference."]);
    expect(words(null, "a: 1\n")).toEqual(["The document was put in."]);
    expect(words("a: 1\n", null)).toEqual(["The document is not there."]);
    expect(words("a: [1\n", "a: 1\n")).toEqual([
      "One of the two texts cannot be read, so the values are not compared.",
    ]);
  });

  it("takes a # inside a text for what it is", () => {
    expect(words('a: "x # y"\nb: |\n  # not one\n', 'a: "x # z"\nb: |\n  # neither\n')).toEqual([
      "a: x # y → x # z",
      "b: # not one → # neither",
    ]);
  });

  it("stays within its bounds and counts the rest", () => {
    const text = (n: number) => Array.from({ length: 100 }, (_, i) => `k${i}: ${i + n}\n`).join("");
    const lines = words(text(0), text(1), 5);
    expect(lines).toHaveLength(6);
    expect(lines.at(-1)).toBe("and 95 more values");
    const [long] = words("a: 1\n", `a: ${"x".repeat(5000)}\n`);
    expect(long?.length).toBeLessThan(110);
    expect(long).toMatch(/…$/);
  });

  it("keys that reach behind the data are data like others", () => {
    expect(words("a: 1\n", "a: 1\n__proto__: { polluted: 1 }\n")).toEqual(["__proto__: added, { polluted: 1 }"]);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it("says of two texts whether they say the same", () => {
    expect(saySame("a: 1 # x\nb: 2\n", "{ b: 2, a: 1 }")).toBe(true);
    expect(saySame("a: 1\n", "a: '1'\n")).toBe(false);
  });
});

describe("a change in one line", () => {
  const told = { change: 7, words: null, of: null, documents: [{ kind: "donor", id: "q1" }] } as const;
  it("says what was done and to which documents", () => {
    expect(changeWords({ ...told, what: "edit" })).toBe("Changed: donor q1");
    expect(changeWords({ ...told, what: "put", words: "donor.yaml" })).toBe("Put in: donor q1, from donor.yaml");
    expect(changeWords({ ...told, what: "import", words: "all.zip" })).toBe("Taken in: donor q1, from all.zip");
    expect(changeWords({ ...told, what: "undo", of: 4 })).toBe("Taken back: change 4, donor q1");
    expect(changeWords({ ...told, what: "redo", of: 4 })).toBe("Put back: change 4, donor q1");
    expect(changeWords({ ...told, what: "restore", words: "dry fit" })).toBe("Restored to dry fit: donor q1");
    const many = Array.from({ length: 8 }, (_, i) => ({ kind: "route", id: `r${i}` }));
    expect(changeWords({ ...told, what: "put", documents: many })).toBe("Put in: 8 documents");
  });
});

describe("comments, where only one line differs", () => {
  /** What the library's own parser takes for comments: its tokens of that type, wherever they stand (the outside of this check). */
  function commentsIn(text: string): string[] {
    const found: string[] = [];
    const look = (token: unknown): void => {
      if (Array.isArray(token)) for (const one of token) look(one);
      else if (token !== null && typeof token === "object") {
        const { type, source } = token as { type?: unknown; source?: unknown };
        if (type === "comment" && typeof source === "string") found.push(source.slice(1).trim().slice(0, 120));
        for (const inner of Object.values(token)) look(inner);
      }
    };
    for (const token of new Parser().parse(text)) look(token);
    return found.sort();
  }

  it("are those that the parser finds, whichever letter is put in, taken out or changed", () => {
    const demo = readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8");
    const text = demo.split(/^---$/m).find((part) => part.includes("kind: donor")) ?? "";
    const letters = fc.constantFrom("#", " ", '"', "'", "|", ">", "-", ":", "5", "x", "\n", "[", "}", "&", "\t");
    let compared = 0;
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.nat(2), letters, (at, cut, letter) => {
        const changed = text.slice(0, at) + (cut === 2 ? "" : letter) + text.slice(at + (cut === 0 ? 0 : 1));
        const difference = differenceOfTexts(text, changed, 1000);
        if (difference.kind === "unreadable" || difference.kind === "same") return;
        compared += 1;
        const [was, now] = [commentsIn(text), commentsIn(changed)];
        for (const comment of difference.commentsIn) was.push(comment);
        for (const comment of difference.commentsOut) was.splice(was.indexOf(comment), 1);
        expect(was.sort()).toEqual(now);
      }),
      { numRuns: 400, seed: 29 },
    );
    expect(compared).toBeGreaterThan(100);
  });
});
