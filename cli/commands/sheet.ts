/** `coldset sheet [ID]`: which calculations are there, what does one take, and what does it say to this input? */

import { nearestName, type Refused, refused } from "@coldset/core/quantity";
import {
  type AnySheet,
  describeSheet,
  describeSheetText,
  runSheet,
  sheetJsonSchema,
  startInput,
} from "@coldset/core/sheet";
import { ALL_SHEETS, readSheetInput, sheetById } from "@coldset/core/sheets";
import { say } from "@coldset/core/texts";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { readText } from "../read/read-text.js";
import { answerPage } from "../said/answer-page.js";
import { tellJson } from "../said/json-answer.js";
import { tellRefused } from "../said/refusals.js";
import { jsonText } from "../screen/letters.js";
import { Page } from "../screen/page.js";

export interface SheetOptions {
  readonly in?: string;
  readonly json?: boolean;
  readonly describe?: boolean;
}

export async function sheet(io: Io, id: string | undefined, options: SheetOptions): Promise<number> {
  const json = options.json === true;
  if (id === undefined) return listSheets(io, json);
  const found = sheetById(id);
  if (found === undefined) return tellRefused(io, unknownSheet(id), json);
  if (options.describe === true) return describe(io, found, json);
  if (options.in === undefined) return tellRefused(io, noInput(found), json);
  const text = await readText(io, options.in);
  if (text.kind === "refused") return tellRefused(io, text, json);
  const input = readSheetInput(text.text, text.file);
  if (input.kind === "refused") return tellRefused(io, input, json);
  const answer = runSheet(found, input.value);
  if (answer.kind === "refused") return tellRefused(io, answer, json, input.placeOf);
  const { kind, value, bands, sources, cautions } = answer;
  if (json) tellJson(io, { kind, value, bands, sources, cautions });
  else io.stdout(answerPage(found, answer, new Page(io.columns, io.colour)).toString());
  return EXIT.answered;
}

function listSheets(io: Io, json: boolean): number {
  if (json) {
    tellJson(io, { sheets: ALL_SHEETS.map(({ id, question }) => ({ id, question })) });
    return EXIT.answered;
  }
  const page = new Page(io.columns, io.colour);
  page.table(ALL_SHEETS.map(({ id, question }) => [["strong", id], question]));
  page.blank().text(say("cli.sheet.coldset-sheet-id-describe-shows-what"), 2, 2);
  io.stdout(page.toString());
  return EXIT.answered;
}

function describe(io: Io, found: AnySheet, json: boolean): number {
  const schema = sheetJsonSchema(found, { writtenNumbers: true });
  const example = startInput(found);
  if (json) tellJson(io, { ...describeSheet(found), example, schema });
  else {
    io.stdout(describeSheetText(found));
    io.stdout(say("cli.sheet.an-input-to-start-from-json", { example: jsonText(example), schema: jsonText(schema) }));
  }
  return EXIT.answered;
}

function unknownSheet(id: string): Refused {
  const ids = ALL_SHEETS.map((s) => s.id);
  const near = nearestName(id, ids);
  const hint =
    near === undefined ? say("cli.sheet.known-are", { ids: ids.join(", ") }) : say("cli.sheet.did-you-mean", { near });
  return refused([
    {
      code: "unknown-sheet",
      at: "ID",
      given: id,
      allowed: ids.join(", "),
      message: say("cli.sheet.there-is-no-sheet", { id, hint }),
    },
  ]);
}

function noInput({ id }: AnySheet): Refused {
  const message = say("cli.sheet.no-input-is-given-coldset-sheet", { id });
  return refused([
    { code: "no-input", at: "--in", given: null, allowed: say("cli.sheet.in-file-or-in-for-standard"), message },
  ]);
}
