/** Would chance or the clock in core be noticed? */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { checkPurity } from "./purity.mjs";

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function core(text: string): string {
  const root = mkdtempSync(join(tmpdir(), "purity-"));
  made.push(root);
  mkdirSync(join(root, "core", "plan"), { recursive: true });
  writeFileSync(join(root, "core", "plan", "x.ts"), text);
  return root;
}

describe("purity", () => {
  it.each(["const a = Math.random();", "const a = Date.now();", "const a = new Date();"])("finds %s", (text) => {
    expect(checkPurity({ root: core(`// a line before\n${text}\n`) }).problems).toEqual([
      `purity: core/plan/x.ts:2: core may not ask chance or the clock: ${text}`,
    ]);
  });

  it("lets comments and a given date alone", () => {
    const text = "/* not Math.random() */\n// nor Date.now()\nexport const at = (ms: number) => new Date(ms);\n";
    expect(checkPurity({ root: core(text) })).toEqual({ files: 1, problems: [] });
  });
});
