/**
 * What does the builder see where the program itself has failed? A sentence and a reference word that also stands in the
 * log beside the whole error; never the error itself.
 */
import { randomInt } from "node:crypto";
import type { ErrorHandler } from "hono";

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

export function onFailure(log: (line: string) => void): ErrorHandler {
  return (cause, c) => {
    const reference = referenceWord();
    log(`${reference} ${c.req.method} ${c.req.path}: ${cause.stack ?? cause.message}`);
    return c.json(
      {
        kind: "failed",
        reference,
        message: `That is a fault in this program, not in what you entered. Nothing was changed by it. Reference: ${reference}.`,
      },
      500,
    );
  };
}
