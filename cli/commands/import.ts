/**
 * `coldset import FILE`: what would come into the workshop, and, with --yes, take it in? FILE is an archive that
 * `coldset export` made, a document file, or (with --into) a table of parts. Without --yes nothing is changed.
 */

import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { type Refused, refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { ImportChoice, ImportChoices, ImportSource, Workshop } from "@coldset/store";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { openRecords, recordsFolder } from "../read/open-records.js";
import { readText } from "../read/read-text.js";
import { importPage } from "../said/import-page.js";
import { tellJson } from "../said/json-answer.js";
import { tellRefused } from "../said/refusals.js";
import { Page } from "../screen/page.js";

export interface ImportOptions {
  readonly data?: string;
  readonly yes?: boolean;
  readonly keepMine?: boolean;
  readonly takeTheirs?: boolean;
  readonly asNew?: string;
  readonly choose?: readonly string[];
  readonly into?: string;
  readonly json?: boolean;
}

const CHOICES: Readonly<Record<string, ImportChoice>> = {
  "keep-mine": "keep-mine",
  "take-theirs": "take-theirs",
  "as-new": "as-new",
};

export async function importFile(io: Io, file: string, options: ImportOptions): Promise<number> {
  const json = options.json === true;
  const choices = choicesOf(options);
  if ("kind" in choices) return tellRefused(io, choices, json);
  const source = await sourceOf(io, file);
  if ("kind" in source) return tellRefused(io, source, json);
  const opened = await openFor(io, options);
  if (opened.kind === "refused") return tellRefused(io, opened, json);
  const { workshop } = opened;
  try {
    const given =
      options.into === undefined
        ? await documentsSource(workshop, source)
        : await partsSource(workshop, source, options.into, choices);
    if ("kind" in given) return tellRefused(io, given, json);
    const newBin =
      options.into === undefined ? undefined : await newBinWords(workshop, options.into, options.yes === true);
    const show = (object: object, page: (page: Page) => Page) => {
      if (json) tellJson(io, object);
      else {
        const shown = new Page(io.columns, io.colour);
        if (newBin !== undefined) shown.text(newBin).blank();
        io.stdout(page(shown).toString());
      }
    };
    // The parts of a table go into a bin that is meant to change.
    const chosen: ImportChoices = options.into === undefined ? choices : { forAll: "take-theirs" };
    if (options.yes !== true) {
      const plan = await workshop.archive.preview(given, chosen);
      if (plan.kind === "refused") return tellRefused(io, plan, json);
      if (plan.refusals.length > 0) return tellRefused(io, refused(plan.refusals), json);
      show(plan, (page) => importPage(plan, page, false));
      return EXIT.answered;
    }
    const taken = await workshop.archive.take(given, chosen);
    if (taken.kind === "refused") return tellRefused(io, taken, json);
    show(taken, (page) => importPage(taken.plan, page, true));
    return EXIT.answered;
  } finally {
    await workshop.close();
    opened.after();
  }
}

/** Looking at what would come makes no workshop where there is none: it is looked at in an empty one that is thrown away. */
async function openFor(io: Io, options: ImportOptions) {
  const folder = await recordsFolder(io, options.data);
  const there = existsSync(path.join(folder, "workshop.sqlite"));
  const scratch = there || options.yes === true ? undefined : mkdtempSync(path.join(tmpdir(), "coldset-preview-"));
  const after = () => {
    if (scratch !== undefined) rmSync(scratch, { recursive: true, force: true });
  };
  const opened = await openRecords(io, scratch ?? options.data, say("cli.export.the-command-line"), { make: true });
  if (opened.kind === "refused") after();
  return { ...opened, after };
}

function choicesOf(options: ImportOptions): ImportChoices | Refused {
  const named: ImportChoice[] = [];
  if (options.keepMine === true) named.push("keep-mine");
  if (options.takeTheirs === true) named.push("take-theirs");
  if (options.asNew !== undefined) named.push("as-new");
  const bad = (given: string, allowed: string, message: string) =>
    refused([{ code: "bad-choice", at: "options", given, allowed, message }]);
  if (named.length > 1) {
    const given = named.map((n) => `--${n}`).join(" and ");
    return bad(given, say("cli.history.one-of-them"), say("cli.import.cannot-both-hold-give-one-and", { given }));
  }
  const byDocument: Record<string, ImportChoice> = {};
  for (const words of options.choose ?? []) {
    const [, kind, id, name = ""] = /^([a-z_]+)[/ ]([A-Za-z0-9_-]+)=([a-z-]+)$/.exec(words) ?? [];
    const choice = CHOICES[name];
    if (choice === undefined)
      return bad(
        words,
        say("cli.import.kind-id-keep-mine-take-theirs"),
        say("cli.import.choose-cannot-be-read-write-it", { words }),
      );
    byDocument[`${kind} ${id}`] = choice;
  }
  const suffix = options.asNew ?? "-in";
  return { forAll: named[0], byDocument, suffix };
}

/** An archive is read where it lies; a text is read here. Which of the two it is, its first bytes say. */
async function sourceOf(io: Io, file: string): Promise<ImportSource | Refused> {
  if (await isZip(io, file)) return { archive: { file: path.resolve(file) }, label: path.basename(file) };
  const read = await readText(io, file, say("cli.import.an-archive-a-document-file-or"));
  return read.kind === "refused"
    ? read
    : { text: read.text, label: file === "-" ? say("cli.read-text.standard-input") : path.basename(file) };
}

async function isZip(io: Io, file: string): Promise<boolean> {
  if (file === "" || file === "-") return false;
  try {
    const head = await io.readFile(file, 4);
    return head[0] === 0x50 && head[1] === 0x4b;
  } catch {
    // What is wrong with the file is said by whoever reads it as a text.
    return false;
  }
}

/** A table without a bin to go into would be read as YAML and answered with faults of YAML. */
async function documentsSource(workshop: Workshop, source: ImportSource): Promise<ImportSource | Refused> {
  if (!("text" in source)) return source;
  const { isTableOfParts } = await import("@coldset/core/workshop");
  const { label } = source;
  if (!/\.(csv|tsv)$/i.test(label) && !isTableOfParts(source.text)) return source;
  const here = ` ${await binsHere(workshop)}`;
  const message = say("cli.import.is-a-table-of-parts", { label, here });
  return refused([
    { code: "no-bin-named", at: "--into", given: null, allowed: say("cli.import.into-and-a-bin"), message },
  ]);
}

async function binsHere(workshop: Workshop): Promise<string> {
  const bins = (await workshop.listDocuments()).filter((d) => d.kind === "bin").map((d) => d.id);
  return bins.length === 0
    ? say("cli.import.no-bin-here-yet")
    : say("cli.import.bins-here", { bins: bins.slice(0, 20).join(", ") });
}

/** A slip in the bin's name would make a bin that nobody wanted, so that one is made is said, and which there are. */
async function newBinWords(workshop: Workshop, bin: string, taken: boolean): Promise<string | undefined> {
  if ((await workshop.getDocument("bin", bin)) !== undefined) return undefined;
  const words = taken
    ? say("cli.import.bin-of-that-name-was-made", { bin })
    : say("cli.import.bin-of-that-name-is-made", { bin });
  return `${words} ${await binsHere(workshop)}`;
}

async function partsSource(
  workshop: Workshop,
  source: ImportSource,
  bin: string,
  choices: ImportChoices,
): Promise<ImportSource | Refused> {
  if (!("text" in source)) {
    const allowed = say("cli.import.a-table-of-parts-as-text");
    const message = say("cli.import.into-takes-is-an-archive-leave", { allowed, label: source.label });
    return refused([{ code: "not-a-table", at: source.label, given: say("cli.import.an-archive"), allowed, message }]);
  }
  const { binWithParts, partsFromCsv } = await import("@coldset/core/workshop");
  const parts = partsFromCsv(source.text, source.label);
  if (parts.kind === "refused") return parts;
  const stored = await workshop.getDocument("bin", bin);
  const next = binWithParts(stored?.text, bin, parts.parts, { choice: choices.forAll, suffix: choices.suffix });
  // The answer is about the table; the bin goes on under its own file name.
  return next.kind === "refused"
    ? next
    : { text: next.text, label: source.label, documentLabel: stored?.label ?? `${bin}.yaml` };
}
