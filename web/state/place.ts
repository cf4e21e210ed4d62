/**
 * Where in a document is the place that was edited, now that others may have put rows in or taken them out? A number in
 * a path counts rows of a list; the row itself is found again by what it says.
 */
import type { EditPath } from "@coldset/core/workshop";
import { rowName } from "./three-way.js";

export function valueAt(plain: unknown, path: EditPath): unknown {
  let here: unknown = plain;
  for (const step of path) {
    if (here === null || typeof here !== "object") return undefined;
    here = (here as Record<string | number, unknown>)[step];
  }
  return here;
}

/** For each number in the path, the name of the row that it meant when the edit was made; null: there was none yet. */
export function rowsOf(plain: unknown, path: EditPath): readonly (string | null)[] {
  return path.flatMap((step, i) => {
    if (typeof step !== "number") return [];
    const row = valueAt(plain, path.slice(0, i + 1));
    return [row === undefined ? null : rowName(row)];
  });
}

/**
 * The same place in the document as it is now, or undefined where its row is not there any more. A row without a name of
 * its own is known by all that it says; where somebody changed it, it counts as gone, and a person is asked.
 */
export function samePlace(plain: unknown, path: EditPath, rows: readonly unknown[] | undefined): EditPath | undefined {
  if (rows === undefined) return path;
  const out: (string | number)[] = [];
  let nth = 0;
  for (const step of path) {
    const name = typeof step === "number" ? rows[nth++] : undefined;
    if (typeof step !== "number" || typeof name !== "string") {
      out.push(step);
      continue;
    }
    const list = valueAt(plain, out);
    if (!Array.isArray(list)) return undefined;
    if (list[step] !== undefined && rowName(list[step]) === name) {
      out.push(step);
      continue;
    }
    const found = list.flatMap((row, i) => (rowName(row) === name ? [i] : []));
    const [only] = found;
    if (only === undefined || found.length > 1) return undefined;
    out.push(only);
  }
  return out;
}
