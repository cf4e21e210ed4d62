/**
 * What documents of YAML stand in this text, found in an answer's time? Parsing costs some microseconds a token, so the
 * tokens are counted first (the counting alone is ten times cheaper), and faults are noted without a stack trace, which
 * costs several times what finding them does: a text of nothing but faults would hold a server for seconds.
 */

import { type Document, Lexer, type LineCounter, parseAllDocuments, parseDocument } from "yaml";

/** Some 2,400 parts of a bin, or 25 builds in one file. */
export const TOKEN_LIMIT = 100_000;

/** More tokens than the limit? It stops counting there. */
export function tooManyTokens(text: string, limit: number = TOKEN_LIMIT): boolean {
  // A sign is one token, or two where a value begins: short texts, which are nearly all, need no counting.
  if (2 * text.length + 4 <= limit) return false;
  let tokens = 0;
  for (const _ of new Lexer().lex(text)) {
    tokens += 1;
    if (tokens > limit) return true;
  }
  return false;
}

/**
 * All documents of the text, with their faults in them; keys that stand twice are left for `keysTwice` to find.
 * @throws what the parser throws where it cannot go on at all
 */
export function parseYaml(text: string, lineCounter: LineCounter): Document[] {
  return withoutStackTraces(() => {
    const all = parseAllDocuments(text, { ...READING, lineCounter });
    return Array.isArray(all) ? (all as Document[]) : [];
  });
}

/** The one document of the text; a second one is a fault in it. @throws as parseYaml */
export function parseOneYaml(text: string, lineCounter: LineCounter): Document {
  return withoutStackTraces(() => parseDocument(text, { ...READING, lineCounter }) as Document);
}

const READING = { prettyErrors: false, strict: true, uniqueKeys: false, logLevel: "error" } as const;

function withoutStackTraces<T>(work: () => T): T {
  const before = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return work();
  } finally {
    Error.stackTraceLimit = before;
  }
}
