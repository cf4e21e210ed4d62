/** How is told that a file could not be written, and why? What only we can cause is thrown on. */
import { refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { Io } from "../io.js";
import { tellRefused } from "./refusals.js";

/** Tells it and gives the exit code. @param words what is said of the file and the reason */
export function tellNotWritten(
  io: Io,
  out: string,
  cause: unknown,
  json: boolean,
  words: "cli.book.cannot-be-written" | "cli.export.cannot-be-written-what-was-there" = "cli.book.cannot-be-written",
): number {
  const why = whyNotWritten(cause);
  if (why === undefined) throw cause;
  const allowed = say("cli.book.a-file-in-a-folder-that");
  return tellRefused(
    io,
    refused([{ code: "not-written", at: "-o", given: out, allowed, message: say(words, { out, why }) }]),
    json,
  );
}

function whyNotWritten(cause: unknown): string | undefined {
  const code = typeof cause === "object" && cause !== null && "code" in cause ? String(cause.code) : "";
  const WHY: Readonly<Record<string, string>> = {
    ENOENT: say("cli.book.there-is-no-such-folder"),
    ENOTDIR: say("cli.book.a-part-of-its-path-is"),
    EISDIR: say("cli.book.it-is-a-folder"),
    EACCES: say("cli.book.you-may-not-write-there"),
    EPERM: say("cli.book.you-may-not-write-there"),
    EROFS: say("cli.book.that-disk-can-only-be-read"),
    ENOSPC: say("cli.book.the-disk-is-full"),
    EEXIST: say("cli.book.another-one-is-being-written-there"),
    ENOTEMPTY: say("cli.book.it-is-a-folder"),
    ENAMETOOLONG: say("cli.book.the-name-is-too-long"),
  };
  return WHY[code];
}
