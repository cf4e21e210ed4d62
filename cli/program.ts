/** Which commands and options are there? Each has a plain description and an example; a wrong one is answered with the nearest. */
import { Command } from "commander";
import { book } from "./commands/book.js";
import { check } from "./commands/check.js";
import { plan } from "./commands/plan.js";
import { DEFAULT_PORT, serve } from "./commands/serve.js";
import { sheet } from "./commands/sheet.js";
import type { Io } from "./io.js";
import { VERSION } from "./version.js";

const ENDS = `
How it ends (exit code):
  0  answered
  1  our own fault
  2  the input or the command was refused; the reasons stand on the error stream
  3  a safety refusal stands on a part or work that the build has chosen`;

const FILE_HELP = "the build's document (YAML or JSON); - is standard input";
const BUILD_HELP = "which build, where the file holds more than one";
const JSON_HELP = "one JSON object on standard output, for a program";

export function makeProgram(io: Io, end: (code: number) => void): Command {
  const program = new Command("coldset")
    .description(
      "Turns an old steel bicycle into a different, wanted one:\nwhat it is, what fits, what must be made, in which order.",
    )
    .version(VERSION, "-V, --version", "the version of this program")
    .helpOption("-h, --help", "this help")
    .helpCommand("help [command]", "help for a command")
    .configureHelp({ helpWidth: Math.min(100, Math.max(40, io.columns)) })
    .configureOutput({
      writeOut: (text) => io.stdout(text),
      writeErr: (text) => io.stderr(text),
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
    .showSuggestionAfterError(true)
    .exitOverride()
    .addHelpText("after", `\nExample:\n  coldset check demo/quayside.yaml\n${ENDS}`);

  const command = (words: string, description: string, example: string): Command =>
    program
      .command(words)
      .description(description)
      .helpOption("-h, --help", "this help")
      .addHelpText("after", `\nExample:\n  ${example}`)
      .showHelpAfterError("(--help shows what it takes)")
      .exitOverride();

  command(
    "check",
    "Today's answer to every question, joint, rule and limit of a build, and what to measure next.",
    "coldset check demo/quayside.yaml",
  )
    .argument("<file>", FILE_HELP)
    .option("--build <id>", BUILD_HELP)
    .option("--working", "also the numbers of joints that fit, and the words, tables and sources behind each answer")
    .option("--json", JSON_HELP)
    .action(async (file: string, options) => end(await check(io, file, options)));

  command(
    "sheet",
    "One calculation. Without an id: the list of them.",
    "coldset sheet fork-swap --describe\n  coldset sheet fork-swap --in swap.yaml --json",
  )
    .argument("[id]", "which sheet")
    .option("--in <file>", "the input (YAML or JSON); - is standard input")
    .option("--describe", "what it takes, with units, ranges and start values, and as JSON Schema")
    .option("--json", JSON_HELP)
    .action(async (id: string | undefined, options) => end(await sheet(io, id, options)));

  command(
    "plan",
    "The work in order: evenings, gates, waits, and by when to order what.",
    "coldset plan demo/quayside.yaml",
  )
    .argument("<file>", FILE_HELP)
    .option("--build <id>", BUILD_HELP)
    .option("--json", JSON_HELP)
    .action(async (file: string, options) => end(await plan(io, file, options)));

  command(
    "book",
    "The whole of a build as a PDF to print: drawing, board, joints, buy list, plan.",
    "coldset book demo/quayside.yaml -o book.pdf",
  )
    .argument("<file>", FILE_HELP)
    .option("-o, --output <pdf>", "the file that it goes into; one of that name is replaced")
    .option("--build <id>", BUILD_HELP)
    .option("--revision <words>", "shown in every title block; left out: today's date")
    .option("--json", JSON_HELP)
    .action(async (file: string, options) => end(await book(io, file, options)));

  command(
    "serve",
    "Opens your workshop and serves its page on this machine only, until Ctrl-C.",
    "coldset serve --port 8080",
  )
    .option("--data <folder>", "the folder of the records; left out: COLDSET_DATA, or your data folder")
    .option("--port <number>", `the port, 0 to have one chosen (left out: ${DEFAULT_PORT})`)
    .action(async (options) => end(await serve(io, options)));

  return program;
}
