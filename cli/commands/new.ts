/** `coldset new NAME`: a file to start a build from. The same core function as behind the page's steps writes it. */

import { refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { NEW_BUILD_ENTRIES, newBuild } from "@coldset/core/workshop";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { tellJson } from "../said/json-answer.js";
import { tellNotWritten } from "../said/not-written.js";
import { tellRefused } from "../said/refusals.js";
import { Page } from "../screen/page.js";

export interface NewOptions {
  readonly set?: readonly string[];
  readonly output?: string;
  readonly json?: boolean;
}

export async function newFile(io: Io, name: string, options: NewOptions): Promise<number> {
  const json = options.json === true;
  const entries: Record<string, string> = { name };
  for (const given of options.set ?? []) {
    const at = given.indexOf("=");
    const key = given.slice(0, at).trim();
    if (at < 1 || key === "name" || entries[key] !== undefined) {
      const message =
        at < 1
          ? say("cli.new.is-no-entry-write-it-as", { given: JSON.stringify(given) })
          : say("cli.new.is-given-twice-give-each-entry", {
              key,
              nameHint: key === "name" ? say("cli.new.the-name-as-name") : "",
            });
      return tellRefused(
        io,
        refused([{ code: "bad-set", at: "--set", given, allowed: say("cli.new.key-value-each-key-once"), message }]),
        json,
      );
    }
    entries[key] = given.slice(at + 1);
  }
  const made = newBuild({ entries });
  if (made.kind === "refused") return tellRefused(io, made, json);
  const out = options.output;
  if (out === undefined || out === "-") {
    if (json) tellJson(io, answeredWith({ id: made.id, text: made.text }));
    else io.stdout(made.text);
    return EXIT.answered;
  }
  const there = await io.facts(out).then(
    () => true,
    () => false,
  );
  if (there) {
    const message = say("cli.new.is-there-already-and-nothing-is", { out });
    return tellRefused(
      io,
      refused([{ code: "file-there", at: "-o", given: out, allowed: say("cli.new.a-new-file"), message }]),
      json,
    );
  }
  try {
    await io.replaceFile(out, new TextEncoder().encode(made.text));
  } catch (cause) {
    return tellNotWritten(io, out, cause, json);
  }
  if (json) tellJson(io, answeredWith({ id: made.id, file: out }));
  else
    io.stdout(
      new Page(io.columns, io.colour)
        .text(
          say("cli.new.build-of-entries-what-is-not", {
            out,
            made: made.id,
            entered: made.entered,
            nEWBUILDENTRIESCount: NEW_BUILD_ENTRIES.length,
          }),
        )
        .text(say("cli.new.next-coldset-check", { out }))
        .toString(),
    );
  return EXIT.answered;
}

const answeredWith = (value: Readonly<Record<string, unknown>>) => ({
  kind: "answered" as const,
  value,
  bands: {},
  sources: [],
  cautions: [],
});

/** The keys that --set takes, for the help. */
export function setKeys(): string {
  return NEW_BUILD_ENTRIES.filter((e) => e.key !== "name")
    .map((e) => `  ${e.key.padEnd(30)} ${e.title}`)
    .join("\n");
}
