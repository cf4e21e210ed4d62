/** Which commands and options are there? Each has a plain description and an example; a wrong one is answered with the nearest. */
import { say } from "@coldset/core/texts";
import { Command } from "commander";
import { book } from "./commands/book.js";
import { check } from "./commands/check.js";
import { exportArchive } from "./commands/export.js";
import { history } from "./commands/history.js";
import { importFile } from "./commands/import.js";
import { newFile, setKeys } from "./commands/new.js";
import { plan } from "./commands/plan.js";
import { DEFAULT_PORT, serve } from "./commands/serve.js";
import { sheet } from "./commands/sheet.js";
import type { Io } from "./io.js";
import { plain } from "./screen/letters.js";
import { VERSION } from "./version.js";

const ENDS = say("cli.program.how-it-ends-exit-code-0");

const FILE_HELP = say("cli.program.the-build-s-document-yaml-or");
const BUILD_HELP = say("cli.program.which-build-where-the-file-holds");
const JSON_HELP = say("cli.program.one-json-object-on-standard-output");

export function makeProgram(io: Io, end: (code: number) => void): Command {
  const program = new Command("coldset")
    .description(say("cli.program.turns-an-old-steel-bicycle-into"))
    .version(VERSION, "-V, --version", say("cli.program.the-version-of-this-program"))
    .helpOption("-h, --help", say("cli.program.this-help"))
    .helpCommand(say("cli.program.help-command"), say("cli.program.help-for-a-command"))
    .configureHelp({ helpWidth: Math.min(100, Math.max(40, io.columns)) })
    .configureOutput({
      writeOut: (text) => io.stdout(text),
      // It may repeat what was typed: nothing in that may move the cursor of a terminal.
      writeErr: (text) => io.stderr(text.split("\n").map(plain).join("\n")),
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
    .showSuggestionAfterError(true)
    .exitOverride()
    .addHelpText("after", say("cli.program.example-coldset-check-demo-quayside-yaml", { ends: ENDS }));

  const command = (words: string, description: string, example: string): Command =>
    program
      .command(words)
      .description(description)
      .helpOption("-h, --help", say("cli.program.this-help"))
      .addHelpText("after", say("cli.program.example", { example }))
      .showHelpAfterError(say("cli.program.help-shows-what-it-takes"))
      .exitOverride();

  command(
    "check",
    say("cli.program.today-s-answer-to-every-question"),
    say("cli.program.coldset-check-demo-quayside-yaml"),
  )
    .argument("<file>", FILE_HELP)
    .option("--build <id>", BUILD_HELP)
    .option("--working", say("cli.program.also-the-numbers-of-joints-that"))
    .option("--json", JSON_HELP)
    .action(async (file: string, options) => end(await check(io, file, options)));

  command(
    "new",
    say("cli.program.a-file-to-start-a-build"),
    say("cli.program.coldset-new-old-blue-set-chainstay", { setKeys: setKeys() }),
  )
    .argument("<name>", say("cli.program.what-you-call-the-build"))
    .option(
      "--set <key=value>",
      say("cli.program.one-entry-as-you-would-write"),
      (one: string, all: string[]) => [...all, one],
      [],
    )
    .option("-o, --output <file>", say("cli.program.the-file-to-write-which-must"))
    .option("--json", JSON_HELP)
    .action(async (name: string, options) => end(await newFile(io, name, options)));

  command(
    "sheet",
    say("cli.program.one-calculation-without-an-id-the"),
    say("cli.program.coldset-sheet-fork-swap-describe-coldset"),
  )
    .argument("[id]", say("cli.program.which-sheet"))
    .option("--in <file>", say("cli.program.the-input-yaml-or-json-is"))
    .option("--describe", say("cli.program.what-it-takes-with-units-ranges"))
    .option("--json", JSON_HELP)
    .action(async (id: string | undefined, options) => end(await sheet(io, id, options)));

  command(
    "plan",
    say("cli.program.the-work-in-order-evenings-gates"),
    say("cli.program.coldset-plan-demo-quayside-yaml"),
  )
    .argument("<file>", FILE_HELP)
    .option("--build <id>", BUILD_HELP)
    .option("--json", JSON_HELP)
    .action(async (file: string, options) => end(await plan(io, file, options)));

  command("book", say("cli.program.the-whole-of-a-build-as"), say("cli.program.coldset-book-demo-quayside-yaml-o"))
    .argument("<file>", FILE_HELP)
    .option("-o, --output <pdf>", say("cli.program.the-file-that-it-goes-into"))
    .option("--build <id>", BUILD_HELP)
    .option("--revision <words>", say("cli.program.shown-in-every-title-block-left"))
    .option("--json", JSON_HELP)
    .action(async (file: string, options) => end(await book(io, file, options)));

  command("serve", say("cli.program.opens-your-workshop-and-serves-its"), say("cli.program.coldset-serve-port-8080"))
    .option("--data <folder>", say("cli.program.the-folder-of-the-records-left"))
    .option("--port <number>", say("cli.program.the-port-0-to-have-one", { defaultPort: DEFAULT_PORT }))
    .action(async (options) => end(await serve(io, options)));

  command(
    "history",
    say("cli.program.what-was-changed-in-a-build"),
    say("cli.program.coldset-history-quayside-coldset-history-quayside"),
  )
    .argument("[build]", say("cli.program.which-build-left-out-the-only"))
    .option("--data <folder>", say("cli.program.the-folder-of-the-records-left"))
    .option("--undo [change]", say("cli.program.takes-back-the-newest-change-or"))
    .option("--redo", say("cli.program.puts-back-what-was-taken-back"))
    .option("--name <name>", say("cli.program.gives-a-name-to-how-the"))
    .option("--restore <name>", say("cli.program.brings-a-named-version-back-as"))
    .option("--difference <names...>", say("cli.program.what-differs-between-two-versions-one"))
    .option("--before <change>", say("cli.program.only-changes-older-than-this-one"))
    .option("--json", JSON_HELP)
    .action(async (build: string | undefined, options) => end(await history(io, build, options)));

  command(
    "export",
    say("cli.program.everything-in-your-workshop-as-one"),
    say("cli.program.coldset-export-o-workshop-zip-coldset"),
  )
    .option("-o, --output <zip>", say("cli.program.the-file-that-it-goes-into"))
    .option("--build <id>", say("cli.program.only-this-build-and-what-it"))
    .option("--data <folder>", say("cli.program.the-folder-of-the-records-left"))
    .option("--json", JSON_HELP)
    .action(async (options) => end(await exportArchive(io, options)));

  command(
    "import",
    say("cli.program.what-an-archive-a-document-or"),
    say("cli.program.coldset-import-workshop-zip-coldset-import"),
  )
    .argument("<file>", say("cli.program.an-archive-a-document-yaml-or"))
    .option("--yes", say("cli.program.takes-it-in-all-of-it"))
    .option("--keep-mine", say("cli.program.keeps-yours-where-a-document-differs"))
    .option("--take-theirs", say("cli.program.takes-theirs-where-a-document-differs"))
    .option("--as-new <suffix>", say("cli.program.takes-theirs-in-beside-yours-its"))
    .option("--choose <choice...>", say("cli.program.for-one-document-donor-q1-keep"))
    .option("--into <bin>", say("cli.program.the-bin-that-a-table-of"))
    .option("--data <folder>", say("cli.program.the-folder-of-the-records-left"))
    .option("--json", JSON_HELP)
    .action(async (file: string, options) => end(await importFile(io, file, options)));

  return program;
}
