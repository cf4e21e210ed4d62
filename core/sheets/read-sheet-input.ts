/**
 * What input object does this text hold? One document of YAML or JSON (JSON is a part of YAML), nothing checked against a
 * sheet yet. A refusal names file, line and column. Bounds: 2 MB of text, 60 levels deep, 50 uses of an alias.
 * Answer: the plain data, and a way from a place in it ("measurements[2].value") to its line and column.
 */

import { isNode, LineCounter } from "yaml";
import { type Refused, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
import {
  keysTwice,
  mostNesting,
  nestedTooDeeply,
  oddNumbers,
  parseOneYaml,
  TEXT_LIMIT,
  tooManyTokens,
  tooMuch,
} from "../workshop/index.js";

const MOST_LEVELS = 60;
/** Counted in the bare text, before anything recurses. */
const MOST_BRACKETS = 400;
const MOST_TOLD = 20;

export interface SheetText {
  readonly kind: "read";
  readonly value: unknown;
  /** "file:line:column" of a place such as "new.rake_mm", or the nearest thing around it that is there. */
  readonly placeOf: (at: string) => string;
}

export function readSheetInput(text: string, file: string): SheetText | Refused {
  const no = (code: string, at: string, given: unknown, allowed: string, message: string) =>
    refused([{ code, at, given, allowed, message }]);
  if (text.length > TEXT_LIMIT) {
    const size = `${(text.length / 1e6).toFixed(1)} MB`;
    const allowed = say("sheets.read-sheet-input.mb-at-most", { textLimit: TEXT_LIMIT / 1e6 });
    return no(
      "file-too-large",
      file,
      size,
      allowed,
      say("sheets.read-sheet-input.holds-a-sheet-s-input-is", { file, size, allowed }),
    );
  }
  const example = say("sheets.read-sheet-input.one-object-of-named-values-as");
  if (text.trim() === "")
    return no("empty-file", file, "nothing", example, say("sheets.read-sheet-input.is-empty-give", { file, example }));
  const tooDeep = no(
    "too-deep",
    file,
    say("sheets.read-sheet-input.more-levels"),
    say("sheets.read-sheet-input.levels", { mostLevels: MOST_LEVELS }),
    say("sheets.read-sheet-input.is-nested-too-deeply", { file }),
  );
  if (mostNesting(text) > MOST_BRACKETS) return tooDeep;
  if (tooManyTokens(text)) return refused([tooMuch(file)]);
  const lines = new LineCounter();
  const where = (offset: number | undefined) => {
    if (offset === undefined) return file;
    const { line, col } = lines.linePos(offset);
    return `${file}:${line}:${col}`;
  };
  try {
    const document = parseOneYaml(text, lines);
    if (document.errors.length > 0) {
      return refused(
        document.errors.slice(0, MOST_TOLD).map((error) => ({
          code: "yaml",
          at: where(error.pos[0]),
          given: text.slice(error.pos[0], Math.min(error.pos[1], error.pos[0] + 40)),
          allowed: say("workshop.load.well-formed-yaml-or-json"),
          message: `${where(error.pos[0])}: ${error.message}`,
        })),
      );
    }
    const wrong = [...keysTwice(document, where, MOST_TOLD), ...oddNumbers(document, where, MOST_TOLD)];
    if (wrong.length > 0) return refused(wrong);
    const value: unknown = document.toJS({ maxAliasCount: 50 });
    if (nestedTooDeeply(value, MOST_LEVELS)) return tooDeep;
    const placeOf = (at: string) => {
      const path = [...at.matchAll(/[^.[\]]+/g)].map(([step]) => (/^\d+$/.test(step) ? Number(step) : step));
      for (let n = path.length; n > 0; n--) {
        const node: unknown = document.getIn(path.slice(0, n), true);
        if (isNode(node) && node.range) return where(node.range[0]);
      }
      return where(isNode(document.contents) ? document.contents.range?.[0] : undefined);
    };
    return { kind: "read", value, placeOf };
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : say("sheets.read-sheet-input.unknown-reason");
    return no(
      "yaml",
      file,
      "",
      say("workshop.load.well-formed-yaml-or-json"),
      say("sheets.read-sheet-input.cannot-be-read-as-yaml-or", { file, why }),
    );
  }
}
