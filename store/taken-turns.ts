/** Has this wish to take back or put back arrived before? Asked and noted inside the transaction that fulfils it. */
import { say } from "@coldset/core/texts";
import { differenceOfTexts } from "@coldset/core/workshop";
import type { Transaction } from "kysely";
import type { Turned } from "./history-types.js";
import { refusedAs } from "./refused-as.js";
import type { Tables } from "./tables.js";
import type { Turn } from "./turn-change.js";

/** What became of it then; the documents may have moved on since. */
export async function turnedBefore(trx: Transaction<Tables>, turn: Turn): Promise<Turned | undefined> {
  const { turnId, build, what } = turn;
  if (turnId === undefined) return undefined;
  const taken = await trx.selectFrom("taken_turns").selectAll().where("turn_id", "=", turnId).executeTakeFirst();
  if (taken === undefined) return undefined;
  if (taken.build !== build || taken.what !== what) {
    return refusedAs({
      code: "turn-id-taken",
      at: "turnId",
      given: turnId,
      allowed: say("store.taken-turns.an-id-of-its-own"),
      message: say("store.taken-turns.another-wish-has-this-id-already", { what: taken.what, build: taken.build }),
    });
  }
  const rows = await trx
    .selectFrom("history")
    .select(["kind", "id", "revision", "before", "after"])
    .where("change", "=", taken.change)
    .orderBy("seq")
    .execute();
  const documents = rows.map(({ kind, id, revision, before, after }) => ({
    kind,
    id,
    revision,
    difference: differenceOfTexts(before, after),
  }));
  return { kind: "turned", what, change: taken.change, of: taken.of, documents, repeated: true };
}

export async function noteTurned(
  trx: Transaction<Tables>,
  { turnId, build, what }: Turn,
  made: { readonly change: number; readonly of: number; readonly at: string },
): Promise<void> {
  if (turnId === undefined) return;
  await trx
    .insertInto("taken_turns")
    .values({ turn_id: turnId, build, what, ...made })
    .execute();
}
