/** What does a sheet ask for and give? As text for a terminal, at most 100 signs wide where words allow it. */
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
  const optional = field.optional === true ? " (may be left out)" : "";
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
      return `${rangeText(field.min, field.max, field.unit)}${whole(field)}; starts at ${field.start}`;
    case "numbers":
      return `${items(field)}, each ${rangeText(field.min, field.max, field.unit)}${whole(field)}; starts at ${field.start.join(", ")}`;
    case "text":
      return `${words(field)}${field.start === "" ? "" : `; starts at ${field.start}`}`;
    case "texts":
      return `${items(field)}, each ${words(field)}; starts at ${field.start.join(", ")}`;
    case "boolean":
      return `true or false; starts at ${field.start}`;
    case "group":
      return "A group:";
    case "list":
      return `${items(field)}, each with:`;
    case "map":
      return `${items(field)} under names of your own, each:`;
    case "table":
      return `${items(field)}, each a row of ${field.columns
        .map((c) => `${c.label} (${rangeText(c.min, c.max, c.unit)})`)
        .join(", ")}; starts at ${field.start.map((row) => `[${row.join(", ")}]`).join(" ")}`;
  }
}

function items(field: { readonly minItems: number; readonly maxItems: number }): string {
  return `${field.minItems} to ${field.maxItems} entries`;
}

function whole(field: { readonly integer?: boolean }): string {
  return field.integer === true ? ", whole numbers" : "";
}

function words(field: { readonly oneOf?: readonly string[]; readonly maxLength: number }): string {
  return field.oneOf === undefined ? `text of at most ${field.maxLength} signs` : `one of ${field.oneOf.join(", ")}`;
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
