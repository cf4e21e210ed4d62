import { describe, expect, test } from "vitest";
import { checkInput } from "./check-input.js";
import { describeSheet } from "./describe-sheet.js";
import { describeSheetText } from "./describe-sheet-text.js";
import type { Field, SheetFace } from "./sheet.js";
import { sheetFaults } from "./sheet-faults.js";
import { startInput } from "./start-input.js";
import { sampleSheet } from "./testing/sample-sheet.js";

describe("plain object", () => {
  const described = describeSheet(sampleSheet);

  test("survives JSON unchanged", () => {
    expect(JSON.parse(JSON.stringify(described))).toEqual(described);
  });

  test("every field is there, with unit, range and start", () => {
    expect(described.inputs.map((f) => f.key)).toEqual(sampleSheet.fields.map((f) => f.key));
    expect(described.inputs[0]).toEqual({
      key: "length_mm",
      label: "Length",
      kind: "number",
      optional: false,
      help: "Dropout to root.",
      unit: "mm",
      min: 100,
      max: 800,
      integer: false,
      start: 340,
    });
    expect(described.inputs.find((f) => f.key === "new")?.fields?.[0]).toMatchObject({
      key: "rake_mm",
      unit: "mm",
      max: 100,
    });
    expect(described.inputs.find((f) => f.key === "measurements")?.fields?.map((f) => f.key)).toEqual([
      "name",
      "value",
      "sd",
    ]);
    expect(described.gives).toEqual([{ key: "sum_mm", means: "length and rake, mm" }]);
  });
});

describe("start input", () => {
  test("passes the check; optional texts without a start are left out", () => {
    const start = startInput(sampleSheet);
    expect(checkInput(sampleSheet.fields, start).kind).toBe("ok");
    expect(start).toMatchObject({ length_mm: 340, angle_deg: 71, new: { rake_mm: 45 } });
    expect(Object.keys(start)).not.toContain("note");
  });

  test("leftOutAtStart leaves an optional field out", () => {
    const fields: Field[] = [
      {
        kind: "number",
        key: "a",
        label: "A",
        unit: "mm",
        min: 0,
        max: 1,
        start: 1,
        optional: true,
        leftOutAtStart: true,
      },
    ];
    expect(startInput({ fields })).toEqual({});
  });

  test("is a copy: changing it does not change the sheet", () => {
    const start = startInput(sampleSheet);
    (start.spacers_mm as number[]).push(99);
    expect((startInput(sampleSheet).spacers_mm as number[]).length).toBe(2);
  });
});

describe("text for a terminal", () => {
  const text = describeSheetText(sampleSheet);

  test("question, notes, every key, ranges with units, what it gives", () => {
    expect(text.startsWith("sample: Does every kind of field hold?\n")).toBe(true);
    expect(text).toContain("  length_mm: Length. 100 to 800 mm; starts at 340\n");
    expect(text).toContain("angle_deg (may be left out): Angle. \u221210 to 90°");
    expect(text).toContain("      rake_mm: Rake. 0 to 100 mm; starts at 45\n");
    expect(text).toContain("side: Side. one of ahead, behind; starts at behind");
    expect(text).toContain("  sum_mm: length and rake, mm\n");
    for (const field of sampleSheet.fields) expect(text).toContain(field.key);
  });

  test("no line runs past 100 signs, nor ends in a space", () => {
    for (const line of text.split("\n")) {
      expect(line.length).toBeLessThanOrEqual(100);
      expect(line).toBe(line.trimEnd());
    }
  });
});

describe("faults of a sheet", () => {
  test("the sample has none", () => {
    expect(sheetFaults(sampleSheet)).toEqual([]);
  });

  test("each fault is found", () => {
    const bad: SheetFace = {
      id: "Bad Id",
      question: "No mark",
      notes: "",
      fields: [
        { kind: "number", key: "a", label: "", unit: "mm", min: 2, max: 1, start: 1 },
        { kind: "number", key: "a", label: "A", unit: "mm", min: 0, max: 1, start: 5 },
        { kind: "numbers", key: "b", label: "B", unit: "mm", min: 0, max: 1, minItems: 3, maxItems: 1, start: [] },
      ],
      gives: [],
    };
    const faults = sheetFaults(bad).join("\n");
    for (const word of [
      "kebab-case",
      "question mark",
      "gives names no key",
      "a stands twice",
      "a has no label",
      "a has no right limits",
      "b has no right number of entries",
      "start: A (a)",
    ]) {
      expect(faults).toContain(word);
    }
  });
});
