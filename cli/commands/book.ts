/** `coldset book FILE -o book.pdf`: the whole of a build, to print. */

import path from "node:path";
import { refused } from "@coldset/core/quantity";
import { reckon } from "@coldset/core/questions";
import { standingRefusals } from "@coldset/core/safety";
import { say } from "@coldset/core/texts";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { readBuild } from "../read/read-build.js";
import { tellJson } from "../said/json-answer.js";
import { tellNotWritten } from "../said/not-written.js";
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
    const message = say("cli.book.name-the-file-that-the-book");
    return tellRefused(
      io,
      refused([{ code: "no-output", at: "-o", given: out ?? null, allowed: say("cli.book.a-file-name"), message }]),
      json,
    );
  }
  const read = await readBuild(io, file, options.build);
  if (read.kind === "refused") return tellRefused(io, read, json);
  if (path.resolve(out) === path.resolve(file)) {
    const message = say("cli.book.the-book-would-be-written-over", { file });
    return tellRefused(
      io,
      refused([{ code: "same-file", at: "-o", given: out, allowed: say("cli.book.another-file"), message }]),
      json,
    );
  }
  const r = reckon(read.resolved);
  io.stderr(say("cli.book.setting-the-book"));
  const [{ bookOfBuild }, { printBook }] = await Promise.all([
    import("@coldset/drawing/build"),
    import("@coldset/drawing/book"),
  ]);
  const printed = printBook(bookOfBuild(r, { revision: options.revision ?? io.today() }));
  try {
    await io.replaceFile(out, printed.pdf);
  } catch (cause) {
    return tellNotWritten(io, out, cause, json);
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
    const page = new Page(io.columns, io.colour).text(say("cli.book.sheets-of-a4", { out, sheets: printed.sheets }));
    if (standing.length > 0)
      page.text([
        [
          "bad",
          say("cli.book.it-carries-a-refusal-no-drawing", {
            rules: [...new Set(standing.map((f) => f.rule))].join(", "),
          }),
        ],
      ]);
    io.stdout(page.toString());
  }
  return standing.length > 0 ? EXIT.safetyRefusal : EXIT.answered;
}
