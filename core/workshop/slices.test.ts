import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { loadText } from "./load.js";

const QUAYSIDE = readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8");
const slices = (text: string) => {
  const l = loadText(text, "f.yaml");
  if (l.kind === "refused") throw new Error(JSON.stringify(l.refusals));
  return l.docs.map((d) => d.text);
};
const route = (id: string) => `kind: route\nversion: 1\nid: ${id}\nsections: [{km: 1,   grade: 0}]   # as paced\n`;

describe("the text of one document", () => {
  it("is what was written: put together again, the demo is the file, byte for byte", () => {
    expect(slices(QUAYSIDE).join("")).toBe(QUAYSIDE);
  });

  it.each([
    [
      "comments around the dividing line",
      `# top\n${route("a")}# end of a\n---  # b begins\n# before b\n${route("b")}\n\n`,
    ],
    ["an end mark and a comment between", `${route("a")}...\n# between\n---\n${route("b")}...\n# last word\n`],
    ["carriage returns and a byte order mark", `\uFEFF${route("a")}---\n${route("b")}`.replaceAll("\n", "\r\n")],
    ["no last line end", `${route("a")}---\n${route("b")}`.trimEnd()],
    ["JSON", '{"kind": "route",\t"version": 1, "id": "a", "sections": [{"km": 1, "grade": 0}]}'],
  ])("keeps %s", (_what, text) => {
    expect(slices(text).join("")).toBe(text);
  });

  it("can be read alone and says the same", () => {
    const whole = loadText(QUAYSIDE, "q.yaml");
    if (whole.kind === "refused") throw new Error("refused");
    for (const one of whole.docs) {
      const alone = loadText(one.text, "one.yaml");
      expect(alone.kind === "loaded" ? alone.docs.map((d) => d.plain) : alone.refusals).toEqual([one.plain]);
    }
  });
});
