/**
 * Which words belong to this key, with these things filled in? The texts that a person reads stand in the table of this
 * folder (what stays outside: docs/decisions/0007); the code names one by its key. `{name}` in a text is filled in from
 * the values; `{{` and `}}` are braces.
 * A key that is not in the table, a value that is missing and one too many do not compile.
 */
import { ALL_TEXTS } from "./all-texts.js";

type Texts = typeof ALL_TEXTS;
export type TextKey = keyof Texts;

/** The names that stand in braces in a text. */
type NamesIn<T extends string> = T extends `${infer Before}{{${infer After}`
  ? NamesIn<Before> | NamesIn<After>
  : T extends `${string}{${infer Name}}${infer Rest}`
    ? Name | NamesIn<Rest>
    : never;

type Filling<K extends TextKey> = [NamesIn<Texts[K]>] extends [never]
  ? []
  : [values: { readonly [Name in NamesIn<Texts[K]>]: string | number | bigint | boolean | null | undefined }];

export function say<K extends TextKey>(key: K, ...[values]: Filling<K>): string {
  return fill(ALL_TEXTS[key], values ?? {});
}

/** Even places are words, odd ones the names to fill in; kept, for the same texts are said at every edit. */
const parted = new Map<string, readonly string[]>();

export function fill(text: string, values: Readonly<Record<string, unknown>>): string {
  let parts = parted.get(text);
  if (parts === undefined) {
    parts = partsOf(text);
    parted.set(text, parts);
  }
  let filled = parts[0] ?? "";
  for (let i = 1; i < parts.length; i += 2) filled += `${values[parts[i] ?? ""]}${parts[i + 1]}`;
  return filled;
}

function partsOf(text: string): readonly string[] {
  const parts = [""];
  for (const piece of text.split(/(\{\{|\}\}|\{[A-Za-z0-9]+\})/)) {
    if (piece === "{{") parts[parts.length - 1] += "{";
    else if (piece === "}}") parts[parts.length - 1] += "}";
    else if (piece.startsWith("{") && piece.endsWith("}")) parts.push(piece.slice(1, -1), "");
    else parts[parts.length - 1] += piece;
  }
  return parts;
}
