/** What does a sheet ask for and give? As text for a terminal, at most 100 signs wide where words allow it. */
import { say } from "../texts/say.js";
import type { Field, SheetFace } from "./sheet.js";
import { rangeText } from "./sheet-unit.js";

const WIDTH = 100;

export function describeSheetText(sheet: SheetFace): string {
  const lines = [`${sheet.id}: ${sheet.question}`, ""];
  if (sheet.notes.trim() !== "") lines.push(...wrap(sheet.notes, ""), "");
  lines.push("Takes:", ...sheet.fields.flatMap((f) => fieldLines(f, "  ")), "", "Gives:");
  for (const { key, means } of sheet.gives) lines.push(...wrap(`${key}: ${means}`, "  ", "      "));
  return `${lines.join("\n")}\n`;
}

function fieldLines(field: Field, indent: string): readonly string[] {
  const optional = field.optional === true ? say("sheet.describe-sheet-text.may-be-left-out") : "";
  const head = wrap(`${field.key}${optional}: ${field.label}. ${takes(field)}`, indent, `${indent}    `);
  const help = field.help === undefined ? [] : wrap(field.help, `${indent}    `);
  const inner = innerFields(field).flatMap((f) => fieldLines(f, `${indent}    `));
  return [...head, ...help, ...inner];
}

function innerFields(field: Field): readonly Field[] {
  if (field.kind === "group") return field.fields;
  if (field.kind === "list") return field.of;
  return field.kind === "map" ? [field.of] : [];
}

function takes(field: Field): string {
  switch (field.kind) {
    case "number":
      return say("sheet.describe-sheet-text.starts-at", {
        min: rangeText(field.min, field.max, field.unit),
        field: whole(field),
        start: field.start,
      });
    case "numbers":
      return say("sheet.describe-sheet-text.each-starts-at", {
        items: items(field),
        range: rangeText(field.min, field.max, field.unit),
        kind: whole(field),
        start: field.start.join(", "),
      });
    case "text":
      return `${words(field)}${field.start === "" ? "" : say("sheet.describe-sheet-text.starts-at-2", { start: field.start })}`;
    case "texts":
      return say("sheet.describe-sheet-text.each-starts-at-2", {
        items: items(field),
        kind: words(field),
        start: field.start.join(", "),
      });
    case "boolean":
      return say("sheet.describe-sheet-text.true-or-false-starts-at", { start: field.start });
    case "group":
      return say("sheet.describe-sheet-text.a-group");
    case "list":
      return say("sheet.describe-sheet-text.each-with", { field: items(field) });
    case "map":
      return say("sheet.describe-sheet-text.under-names-of-your-own-each", { field: items(field) });
    case "table":
      return say("sheet.describe-sheet-text.each-a-row-of-starts-at", {
        field: items(field),
        columns: field.columns.map((c) => `${c.label} (${rangeText(c.min, c.max, c.unit)})`).join(", "),
        start: field.start.map((row) => `[${row.join(", ")}]`).join(" "),
      });
  }
}

function items(field: { readonly minItems: number; readonly maxItems: number }): string {
  return say("sheet.check-input.to-entries", { minItems: field.minItems, maxItems: field.maxItems });
}

function whole(field: { readonly integer?: boolean }): string {
  return field.integer === true ? say("sheet.check-value.whole-numbers") : "";
}

function words(field: { readonly oneOf?: readonly string[]; readonly maxLength: number }): string {
  return field.oneOf === undefined
    ? say("sheet.check-value.text-of-at-most-signs", { maxLength: field.maxLength })
    : say("sheet.check-value.one-of", { oneOf: field.oneOf.join(", ") });
}

function wrap(text: string, first: string, rest = first): readonly string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(/\s+/).filter((w) => w !== "")) {
    if (!empty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = rest;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line];
}
