/** Is a text that would take seconds to read refused before it is parsed, and one of ordinary size read? */

import { describe, expect, it } from "vitest";
import { Lexer } from "yaml";
import { readSheetInput } from "../sheets/read-sheet-input.js";
import { loadText } from "./load.js";
import { TOKEN_LIMIT, tooManyTokens } from "./parse-yaml.js";

const SIGNS = [
  "a: b\n",
  "! ",
  "]",
  "] ",
  '"" ',
  "&a ",
  "- a\n",
  "- \n",
  "? a\n",
  "%a\n",
  "# x\n",
  ",",
  ": ",
  "\n",
  "[1,",
];

/** What the library's own lexer counts (the outside of this check). */
const tokensOf = (text: string) => [...new Lexer().lex(text)].length;

describe("the number of tokens", () => {
  it.each(SIGNS)("is counted as the library counts it: %j", (sign) => {
    const text = `a: ${sign.repeat(300)}`;
    const tokens = tokensOf(text);
    expect(tooManyTokens(text, tokens)).toBe(false);
    expect(tooManyTokens(text, tokens - 1)).toBe(true);
  });

  it.each(SIGNS)("bounds the faults that are looked for: %j", (sign) => {
    const read = loadText(sign.repeat(TOKEN_LIMIT + 10), "a.yaml");
    expect(read.kind).toBe("refused");
    if (read.kind === "refused") expect(read.refusals.length).toBeLessThanOrEqual(1001);
    expect(readSheetInput(sign.repeat(TOKEN_LIMIT + 10), "a.yaml").kind).toBe("refused");
  });

  it("is told with what is allowed and what to do", () => {
    const read = loadText(`kind: bin\nversion: 1\nid: b\nparts:\n${"- a\n".repeat(40_000)}`, "a.yaml");
    expect(read).toMatchObject({ kind: "refused", refusals: [{ code: "text-too-long", at: "a.yaml" }] });
    if (read.kind === "refused") expect(read.refusals[0]?.message).toContain("Part it into several files");
  });

  it("lets a bin of two thousand parts in", () => {
    const part = (i: number) =>
      `  - id: p${i}\n    kind: tyre\n    condition: A\n    ports: {size: 37-584}\n    cost: ${i % 50}\n`;
    const text = `kind: bin\nversion: 1\nid: b\nparts:\n${Array.from({ length: 2000 }, (_, i) => part(i)).join("")}`;
    const read = loadText(text, "bin.yaml");
    expect(read.kind === "loaded" ? read.docs.length : read.refusals.slice(0, 2)).toBe(1);
  });
});

describe("many faults", () => {
  it("are told up to a thousand, and that there are more", () => {
    const read = loadText("a: ".concat("! ".repeat(5000)), "a.yaml");
    if (read.kind !== "refused") throw new Error("read");
    expect(read.refusals.length).toBeLessThanOrEqual(1001);
    const rows = Array.from({ length: 1500 }, (_, i) => `  - {id: p${i}, kind: tyre}\n`).join("");
    const bin = loadText(`kind: bin\nversion: 1\nid: b\nparts:\n${rows}`, "a.yaml");
    if (bin.kind !== "refused") throw new Error("read");
    expect(bin.refusals.at(-1)).toMatchObject({ code: "more-faults", given: expect.any(Number) });
    expect(bin.refusals).toHaveLength(1001);
  });

  it("leave the depth of stack traces as it was", () => {
    const before = Error.stackTraceLimit;
    loadText("a: ! ! b", "a.yaml");
    expect(Error.stackTraceLimit).toBe(before);
    expect(new Error("x").stack).toContain("text-bounds.test");
  });
});
