/**
 * What does the command `coldset` do with its arguments? Answers with the exit code: 0 answered, 1 our own fault,
 * 2 input or command refused, 3 a safety refusal stands on something that the build has chosen.
 */
import { say } from "@coldset/core/texts";
import { CommanderError } from "commander";
import { EXIT } from "./exit-code.js";
import { type Io, processIo } from "./io.js";
import { makeProgram } from "./program.js";
import { jsonText, plain } from "./screen/letters.js";

export async function main(argv: string[], io: Io = processIo()): Promise<number> {
  let code: number = EXIT.answered;
  const program = makeProgram(io, (end) => {
    code = end;
  });
  try {
    if (argv.length === 0) program.outputHelp();
    else await program.parseAsync(argv, { from: "user" });
    return code;
  } catch (cause) {
    if (cause instanceof CommanderError) return cause.exitCode === 0 ? EXIT.answered : usageRefused(io, argv, cause);
    const message = cause instanceof Error ? cause.message : String(cause);
    io.stderr(say("cli.main.coldset-this-is-our-fault-not", { message: plain(message) }));
    if ((io.env.COLDSET_DEBUG ?? "") === "") io.stderr(say("cli.main.with-coldset-debug-1-it-shows"));
    else io.stderr(`${cause instanceof Error ? cause.stack : ""}\n`);
    return EXIT.ourFault;
  }
}

/** The words are on the error stream already; a program gets the object too. */
function usageRefused(io: Io, argv: readonly string[], { code, message }: CommanderError): number {
  if (argv.includes("--json")) {
    const refusal = {
      code: code.replace(/^commander\./, "usage-"),
      at: "",
      given: argv.join(" "),
      allowed: say("cli.main.coldset-help"),
      message,
    };
    io.stdout(`${jsonText({ kind: "refused", refusals: [refusal] })}\n`);
  }
  return EXIT.refused;
}
