/** Why does this request not pass the schema of its route? All reasons at once, each with its place. */
import type { Refusal } from "@coldset/core/quantity";
import { showable } from "@coldset/core/quantity";
import type { z } from "zod";

const MOST_TOLD = 20;
const SHOWN_LETTERS = 100;

export function refusalsBySchema(
  where: "body" | "query",
  error: z.ZodError,
  value: unknown,
  allowed: string,
): readonly Refusal[] {
  return error.issues.slice(0, MOST_TOLD).map((issue) => {
    const at = [where, ...issue.path.map(String)].join(".").slice(0, SHOWN_LETTERS);
    const given = shown(valueAt(value, issue.path));
    return { code: `bad-${where}`, at, given, allowed, message: `${at}: ${issue.message}`.slice(0, 300) };
  });
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let here = value;
  for (const step of path) {
    if (here === null || typeof here !== "object" || !Object.hasOwn(here, step)) return undefined;
    here = (here as Readonly<Record<PropertyKey, unknown>>)[step];
  }
  return here;
}

/** Only what is short and plain is said back; a list or an object would make the refusal as long as the request. */
function shown(value: unknown): unknown {
  if (typeof value === "string") return showable(value).slice(0, SHOWN_LETTERS);
  return typeof value === "number" || typeof value === "boolean" ? value : null;
}
