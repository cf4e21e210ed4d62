/** How is a value of a document shown in a sentence? Short; a list or a row by what it says. */
import { say } from "@coldset/core/texts";

const MOST = 160;

export function shown(value: unknown): string {
  const text = said(value);
  return text.length > MOST ? `${text.slice(0, MOST)}…` : text;
}

function said(value: unknown): string {
  if (value === undefined || value === null || value === "?") return say("web.entry-field.not-measured-2");
  if (Array.isArray(value)) return value.length === 0 ? say("web.shown.no-entry") : value.map(said).join("; ");
  if (typeof value === "object")
    return Object.entries(value)
      .map(([key, v]) => `${key.replaceAll("_", " ")} ${said(v)}`)
      .join(", ");
  if (typeof value === "boolean") return value ? say("web.entry-field.yes") : say("web.entry-field.no");
  return String(value);
}
