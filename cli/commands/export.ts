/** `coldset export -o FILE`: everything of a workshop, or one build, as one archive of plain documents and photos. */

import path from "node:path";
import { refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { chosenBuild, openRecords } from "../read/open-records.js";
import { tellJson } from "../said/json-answer.js";
import { tellNotWritten } from "../said/not-written.js";
import { tellRefused } from "../said/refusals.js";
import { Page } from "../screen/page.js";

export interface ExportOptions {
  readonly output?: string;
  readonly build?: string;
  readonly data?: string;
  readonly json?: boolean;
}

export async function exportArchive(io: Io, options: ExportOptions): Promise<number> {
  const json = options.json === true;
  const out = options.output;
  const no = (code: string, given: unknown, allowed: string, message: string) =>
    tellRefused(io, refused([{ code, at: "-o", given, allowed, message }]), json);
  if (out === undefined || out === "" || out === "-")
    return no("no-output", out ?? null, say("cli.book.a-file-name"), say("cli.export.name-the-file-that-the-archive"));
  const opened = await openRecords(io, options.data, say("cli.export.the-command-line"));
  if (opened.kind === "refused") return tellRefused(io, opened, json);
  const { workshop } = opened;
  try {
    // An archive among the records would be taken for one of them some day, or be lost with them.
    if (path.dirname(path.resolve(out)) === path.resolve(workshop.folder))
      return no(
        "in-the-records",
        out,
        say("cli.export.a-file-elsewhere"),
        say("cli.export.lies-in-the-folder-of-the", { out }),
      );
    const build = options.build === undefined ? undefined : await chosenBuild(workshop, options.build);
    if (typeof build === "object") return tellRefused(io, build, json);
    const made = await workshop.archive.make(build);
    if (made.kind === "refused") return tellRefused(io, made, json);
    let bytes: number;
    try {
      bytes = await io.replaceFileFrom(out, made.stream);
    } catch (cause) {
      return tellNotWritten(io, out, cause, json, "cli.export.cannot-be-written-what-was-there");
    }
    const { documents, photos, versions } = made;
    if (json) tellJson(io, { kind: "answered", value: { file: out, bytes, documents, photos, versions } });
    else
      io.stdout(
        new Page(io.columns, io.colour).text(exportWords(out, { bytes, documents, photos, versions })).toString(),
      );
    return EXIT.answered;
  } finally {
    await workshop.close();
  }
}

function exportWords(
  out: string,
  n: { readonly bytes: number; readonly documents: number; readonly photos: number; readonly versions: number },
): string {
  const of = (count: number, one: string) => `${count} ${one}${count === 1 ? "" : "s"}`;
  const size = n.bytes < 1e6 ? `${Math.ceil(n.bytes / 1e3)} kB` : `${(n.bytes / 1e6).toFixed(1)} MB`;
  return say("cli.export.with-their-history-coldset-import-brings", {
    out,
    documents: of(n.documents, say("cli.export.document")),
    photos: of(n.photos, say("cli.export.photo")),
    versions: of(n.versions, say("cli.export.named-version")),
    size,
  });
}
