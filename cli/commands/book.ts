/** `coldset book FILE -o book.pdf`: the whole of a build, to print. */
import path from "node:path";
import { refused } from "@coldset/core/quantity";
import { reckon } from "@coldset/core/questions";
import { standingRefusals } from "@coldset/core/safety";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { readBuild } from "../read/read-build.js";
import { tellJson } from "../said/json-answer.js";
import { tellRefused } from "../said/refusals.js";
import { Page } from "../screen/page.js";
import type { BuildOptions } from "./check.js";

export interface BookCommandOptions extends BuildOptions {
  readonly output?: string;
  readonly revision?: string;
}

export async function book(io: Io, file: string, options: BookCommandOptions): Promise<number> {
  const json = options.json === true;
  const out = options.output;
  if (out === undefined || out === "" || out === "-") {
    const message = "Name the file that the book goes into: -o book.pdf";
    return tellRefused(
      io,
      refused([{ code: "no-output", at: "-o", given: out ?? null, allowed: "a file name", message }]),
      json,
    );
  }
  const read = await readBuild(io, file, options.build);
  if (read.kind === "refused") return tellRefused(io, read, json);
  if (path.resolve(out) === path.resolve(file)) {
    const message = `The book would be written over the build itself (${file}). Name another file.`;
    return tellRefused(
      io,
      refused([{ code: "same-file", at: "-o", given: out, allowed: "another file", message }]),
      json,
    );
  }
  const r = reckon(read.resolved);
  io.stderr("Setting the book …\n");
  const [{ bookOfBuild }, { printBook }] = await Promise.all([
    import("@coldset/drawing/build"),
    import("@coldset/drawing/book"),
  ]);
  const printed = printBook(bookOfBuild(r, { revision: options.revision ?? io.today() }));
  try {
    await io.replaceFile(out, printed.pdf);
  } catch (cause) {
    const why = whyNotWritten(cause);
    if (why === undefined) throw cause;
    const message = `${out} cannot be written: ${why}.`;
    return tellRefused(
      io,
      refused([
        { code: "not-written", at: "-o", given: out, allowed: "a file in a folder that you may write to", message },
      ]),
      json,
    );
  }
  const standing = standingRefusals(r.rules);
  if (json)
    tellJson(io, {
      kind: "answered",
      value: { file: out, sheets: printed.sheets },
      bands: {},
      sources: [],
      cautions: [],
    });
  else {
    const page = new Page(io.columns, io.colour).text(`${out}: ${printed.sheets} sheets of A4.`);
    if (standing.length > 0)
      page.text([
        [
          "bad",
          `It carries a refusal (${[...new Set(standing.map((f) => f.rule))].join(", ")}): no drawing, no buy list and no plan are in it.`,
        ],
      ]);
    io.stdout(page.toString());
  }
  return standing.length > 0 ? EXIT.safetyRefusal : EXIT.answered;
}

function whyNotWritten(cause: unknown): string | undefined {
  const code = typeof cause === "object" && cause !== null && "code" in cause ? String(cause.code) : "";
  const WHY: Readonly<Record<string, string>> = {
    ENOENT: "there is no such folder",
    ENOTDIR: "a part of its path is no folder",
    EISDIR: "it is a folder",
    EACCES: "you may not write there",
    EPERM: "you may not write there",
    EROFS: "that disk can only be read",
    ENOSPC: "the disk is full",
    EEXIST: "another book is being written there, or one was broken off: remove the file ending in .part",
    ENOTEMPTY: "it is a folder",
    ENAMETOOLONG: "the name is too long",
  };
  return WHY[code];
}
