/** How are archives made, looked at and taken in, on one open workshop? */
import type { Kysely } from "kysely";
import type { Author } from "../begin-change.js";
import type { Tables } from "../tables.js";
import type { ImportSource, StoreRefused, WorkshopArchive } from "../workshop.js";
import { type Incoming, incomingText } from "./incoming.js";
import { planImport } from "./plan-import.js";
import { readArchive } from "./read-archive.js";
import { takeImport } from "./take-import.js";
import { makeArchive } from "./write-archive.js";

interface Around {
  readonly author: () => Author;
  readonly orRefused: <T>(work: Promise<T>) => Promise<T | StoreRefused>;
}

export function workshopArchive(db: Kysely<Tables>, { author, orRefused }: Around): WorkshopArchive {
  const read = async (source: ImportSource): Promise<Incoming | StoreRefused> =>
    "text" in source ? incomingText(source, author().at) : readArchive(source.archive, source.label);
  const using = async <T>(
    source: ImportSource,
    work: (incoming: Incoming) => Promise<T>,
  ): Promise<T | StoreRefused> => {
    const incoming = await read(source);
    if (incoming.kind === "refused") return incoming;
    try {
      return await orRefused(work(incoming));
    } finally {
      incoming.close();
    }
  };
  return {
    make: (build) => orRefused(makeArchive(db, build, author().at)),
    preview: (source, choices = {}) =>
      using(
        source,
        async (incoming) => (await db.transaction().execute((trx) => planImport(trx, incoming, choices))).plan,
      ),
    take: (source, choices = {}) => using(source, (incoming) => takeImport(db, incoming, choices, author())),
  };
}
