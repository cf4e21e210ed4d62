/**
 * What does the builder see where the program itself has failed? A sentence and a reference word that also stands in the
 * log beside the whole error; never the error itself.
 */

import { randomInt } from "node:crypto";
import { say } from "@coldset/core/texts";
import type { ErrorHandler } from "hono";
import { HTTPException } from "hono/http-exception";
import { problem } from "./problem.js";

/** A log entry is cut off after this. */
const ENTRY_LETTERS = 8_000;

const WORDS = [
  "anvil",
  "axle",
  "brass",
  "cone",
  "dropout",
  "ferrule",
  "gusset",
  "lug",
  "mandrel",
  "spoke",
  "tang",
  "vise",
];

function referenceWord(): string {
  return `${WORDS[randomInt(WORDS.length)]}-${randomInt(1_000, 10_000)}`;
}

/** Whoever asked went away, or was cut off, while the body was still coming in. */
const isGone = (cause: Error) => "code" in cause && cause.code === "ECONNRESET";

/**
 * An error can quote what somebody wrote. In the log it can neither steer the terminal nor begin a line that looks like
 * an entry of its own.
 */
function oneEntry(text: string): string {
  return text
    .replace(/\r?\n/g, "\n    ")
    .replace(/(?!\n)[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, "\uFFFD")
    .slice(0, ENTRY_LETTERS);
}

export function onFailure(log: (line: string) => void): ErrorHandler {
  return (cause, c) => {
    // Not a failure but a refusal that had to be thrown: the answer was not there in time.
    if (cause instanceof HTTPException) return cause.getResponse();
    if (isGone(cause)) {
      const message = say("server.failure.the-request-ended-before-all-of");
      return problem(c, 400, {
        code: "cut-off",
        at: "body",
        given: null,
        allowed: say("server.failure.a-whole-request"),
        message,
      });
    }
    const reference = referenceWord();
    log(oneEntry(`${reference} ${c.req.method} ${c.req.path}: ${cause.stack ?? cause.message}`));
    return c.json(
      {
        kind: "failed",
        reference,
        message: say("server.failure.that-is-a-fault-in-this", { reference }),
      },
      500,
    );
  };
}
