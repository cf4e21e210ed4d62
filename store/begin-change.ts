/** What is one change? What a person did at once, with all rows of the history that came of it. */
import type { Transaction } from "kysely";
import type { WhatChange } from "./history-types.js";
import type { Tables } from "./tables.js";

export interface NewChange {
  readonly what: WhatChange;
  /** undo and redo only: the change whose rows are turned round. */
  readonly takesBack?: number;
  /** What the person called it: the name of a file or of a version. */
  readonly words?: string;
}

/** By whom or through which door, and when: the same for all that one call does. */
export interface Author {
  readonly who: string | null;
  /** ISO 8601, UTC. */
  readonly at: string;
}

/** Gives its number; later changes have higher ones. */
export async function beginChange(trx: Transaction<Tables>, change: NewChange, author: Author): Promise<number> {
  const row = await trx
    .insertInto("changes")
    .values({
      what: change.what,
      takes_back: change.takesBack ?? null,
      words: change.words ?? null,
      who: author.who,
      at: author.at,
    })
    .returning("change")
    .executeTakeFirstOrThrow();
  return row.change;
}
