/** Does the page of the sheets name every sheet, every input and every figure it gives? Outside readers rely on these names. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Field } from "../sheet/index.js";
import { ALL_SHEETS } from "./index.js";

const PAGE = readFileSync(new URL("../../docs/methods/sheets.md", import.meta.url), "utf8");

function keys(fields: readonly Field[], prefix = ""): string[] {
  return fields.flatMap((f) => {
    if (f.kind === "group") return keys(f.fields, `${prefix}${f.key}.`);
    if (f.kind === "list") return keys(f.of, `${prefix}${f.key}[].`);
    return [`${prefix}${f.key}`];
  });
}

describe("docs/methods/sheets.md", () => {
  it.each(ALL_SHEETS.map((s) => [s.id, s] as const))("%s", (id, sheet) => {
    const part = PAGE.split("\n## ").find((p) => p.startsWith(`${id}\n`));
    if (part === undefined) throw new Error(`${id} is not on the page`);
    expect(part).toContain(sheet.question);
    for (const key of [...keys(sheet.fields), ...sheet.gives.map((g) => g.key)]) expect(part).toContain(`\`${key}\``);
  });
});
