/**
 * Is this text larger than can be read in an answer's time? Asked before any parsing: bytes, nesting, dividing lines and
 * tokens, each in one pass over the text.
 */

import type { Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { mostNesting } from "./nesting.js";
import { TOKEN_LIMIT, tooManyTokens } from "./parse-yaml.js";

export const TEXT_LIMIT = 2_000_000;
export const DOCUMENTS_LIMIT = 60;
export const DEPTH_LIMIT = 40;
/** A line that parts two documents, or ends one (YAML 1.2.2, section 9.1). The parser is slow with many, so they are counted first. */
const DIVIDER = /^(---|\.\.\.)(?=\s|$)/gm;
/** In the bare text, before the parser recurses. */
const NESTING_LIMIT = 400;

export function beyondBounds(text: string, file: string): Refusal | undefined {
  if (text.length > TEXT_LIMIT) return tooLarge(text, file);
  if (mostNesting(text) > NESTING_LIMIT) return tooDeep(file);
  const dividers = text.match(DIVIDER)?.length ?? 0;
  // Each document may be begun and ended by one.
  if (dividers > 2 * DOCUMENTS_LIMIT) return tooManyDocuments(file, dividers);
  return tooManyTokens(text) ? tooMuch(file) : undefined;
}

function tooLarge(text: string, file: string): Refusal {
  return {
    code: "file-too-large",
    at: file,
    given: `${(text.length / 1e6).toFixed(1)} MB`,
    allowed: say("workshop.load.mb-at-most", { textLimit: TEXT_LIMIT / 1e6 }),
    message: say("workshop.load.is-mb-at-most-mb-is", {
      file,
      textCount: (text.length / 1e6).toFixed(1),
      textLimit: TEXT_LIMIT / 1e6,
    }),
  };
}

function tooDeep(file: string): Refusal {
  return {
    code: "too-deep",
    at: file,
    given: say("workshop.load.more-than-400-levels"),
    allowed: say("workshop.load.levels", { depthLimit: DEPTH_LIMIT }),
    message: say("workshop.load.is-nested-too-deeply-to-be", { file }),
  };
}

/** Also of a sheet's input. */
export function tooMuch(file: string): Refusal {
  return {
    code: "text-too-long",
    at: file,
    given: say("workshop.load.more-names-values-and-signs", { tokenLimit: TOKEN_LIMIT }),
    allowed: say("workshop.load.names-values-and-signs-at-most", { tokenLimit: TOKEN_LIMIT }),
    message: say("workshop.load.holds-more-names-values-and-signs", { file, tokenLimit: TOKEN_LIMIT }),
  };
}

export const tooManyDocuments = (file: string, given: number): Refusal => ({
  code: "too-many-documents",
  at: file,
  given,
  allowed: say("workshop.load.documents-in-one-text", { documentsLimit: DOCUMENTS_LIMIT }),
  message: say("workshop.load.holds-documents-is-the-most", { file, given, documentsLimit: DOCUMENTS_LIMIT }),
});
