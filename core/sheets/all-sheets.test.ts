import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ALL_SOURCES, sourceById, sourceWords } from "../data/index.js";
import { describeSheet, runSheet, sheetFaults, sheetJsonSchema, startInput } from "../sheet/index.js";
import { ALL_SHEETS, readSheetInput, sheetById } from "./index.js";

const core = new URL("../", import.meta.url);

/** Every name that a file of core exports with this pattern, so that a new one cannot be forgotten in the registry. */
function exportedNames(pattern: RegExp): string[] {
  return readdirSync(core, { recursive: true, encoding: "utf8" })
    .map((file) => file.replaceAll("\\", "/"))
    .filter((file) => file.endsWith(".ts") && !/(^|\/)(dist|testing|sheet)\//.test(file) && !/\.test/.test(file))
    .flatMap((file) => [...readFileSync(new URL(file, core), "utf8").matchAll(pattern)].map((m) => m[1] ?? ""));
}

describe("the registry of sheets", () => {
  test("holds every sheet that core exports", () => {
    const exported = exportedNames(/export const (\w+): Sheet</g);
    const registry = readFileSync(new URL("sheets/all-sheets.ts", core), "utf8");
    expect(exported.length).toBeGreaterThan(10);
    expect(exported.filter((name) => !new RegExp(`\\n {2}${name},`).test(registry))).toEqual([]);
    expect(ALL_SHEETS).toHaveLength(exported.length);
  });

  test("ids are their own and found again; a stranger is not", () => {
    expect(new Set(ALL_SHEETS.map((s) => s.id)).size).toBe(ALL_SHEETS.length);
    for (const sheet of ALL_SHEETS) expect(sheetById(sheet.id)).toBe(sheet);
    expect(sheetById("__proto__")).toBeUndefined();
  });

  // The eight that other programs were promised first; their names stand in docs/methods/sheets.md.
  test.each(["side-view", "fork-swap", "survey", "cockpit", "saddle", "steerer", "chainline", "schedule"])(
    "%s is in",
    (id) => expect(sheetById(id)).toBeDefined(),
  );

  test.each(ALL_SHEETS.map((s) => [s.id, s] as const))("%s: worked example answers, cites known sources", (_id, s) => {
    expect(sheetFaults(s)).toEqual([]);
    const answer = runSheet(s, startInput(s));
    if (answer.kind === "refused") throw new Error(answer.refusals.map((r) => r.message).join("\n"));
    expect(answer.sources.length).toBeGreaterThan(0);
    for (const id of answer.sources) expect(sourceById(id), id).toBeDefined();
    expect(describeSheet(s).inputs.length).toBeGreaterThan(0);
    expect(sheetJsonSchema(s)).toMatchObject({ type: "object" });
  });
});

describe("the table of sources", () => {
  test("has every room's rows and no id twice", () => {
    const rooms = exportedNames(/export const (\w+Sources): readonly SourceRow/g);
    const table = readFileSync(new URL("data/all-sources.ts", core), "utf8");
    expect(rooms.filter((name) => !table.includes(`...${name},`))).toEqual([]);
    const ids = ALL_SOURCES.map((row) => row.id);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });

  test("a value from memory says so", () => {
    const row = ALL_SOURCES.find((r) => r.mark === "memory");
    expect(sourceWords(row?.id ?? "")).toMatch(/\(from memory, not re-read\)$/);
  });
});

describe("reading an input", () => {
  const value = (text: string) => {
    const read = readSheetInput(text, "in.yaml");
    if (read.kind === "refused") throw new Error(JSON.stringify(read.refusals));
    return read;
  };
  const refusal = (text: string) => {
    const read = readSheetInput(text, "in.yaml");
    return read.kind === "refused" ? read.refusals[0] : undefined;
  };

  test("JSON and YAML give the same", () => {
    expect(value('{"a": [1, {"b": 2}]}').value).toEqual({ a: [1, { b: 2 }] });
    expect(value("a:\n  - 1\n  - b: 2\n").value).toEqual({ a: [1, { b: 2 }] });
  });

  test("a place is found again by line and column", () => {
    const read = value("frame:\n  x_mm: 1\nnew:\n  rake_mm: 45\nlist:\n  - v: 1\n  - v: -2\n");
    expect(read.placeOf("new.rake_mm")).toBe("in.yaml:4:12");
    expect(read.placeOf("list[1].v")).toBe("in.yaml:7:8");
    expect(read.placeOf("new.missing_mm")).toBe("in.yaml:4:3");
    expect(read.placeOf("")).toBe("in.yaml:1:1");
  });

  test.each([
    ["", "empty-file"],
    ["  \n", "empty-file"],
    ["a: [1, 2", "yaml"],
    ["a: 1\na: 2\n", "key-twice"],
    ['{"a": {"b": 1, "b": 1}}', "key-twice"],
    ["[".repeat(5000), "too-deep"],
    [Array.from({ length: 80 }, (_, i) => `${"  ".repeat(i)}a:`).join("\n"), "too-deep"],
    ["a: &x [*x]", "too-deep"],
    ["x".repeat(2_000_001), "file-too-large"],
  ])("%#: refused as %s", (text, code) => expect(refusal(text)?.code).toBe(code));

  test("many aliases are not blown up", () => {
    const bomb = `${Array.from(
      { length: 10 },
      (_, i) =>
        `a${i}: &a${i} [${
          i === 0
            ? "x"
            : Array(10)
                .fill(`*a${i - 1}`)
                .join(",")
        }]`,
    ).join("\n")}\n`;
    expect(refusal(bomb)?.code).toBe("yaml");
  });

  test("twelve thousand keys are read, and sixty thousand are refused before anything is parsed", () => {
    const keys = (n: number) => `{${Array.from({ length: n }, (_, i) => `"key${i}": ${i}`).join(",")}}`;
    expect(Object.keys(value(keys(12_000)).value as object)).toHaveLength(12_000);
    expect(refusal(keys(60_000))?.code).toBe("text-too-long");
  });

  test("a broken line is named", () => {
    expect(refusal("a: 1\nb: [2\nc: 3\n")?.at).toMatch(/^in\.yaml:[34]:/);
  });
});
