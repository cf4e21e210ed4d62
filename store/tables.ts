/** Which columns do the tables have? Made by the files in migrations/. */
import type { Generated } from "kysely";

export interface Tables {
  documents: {
    kind: string;
    id: string;
    /** Name of the file it came in. */
    label: string;
    /** The text as written; what is reckoned with is read from it each time. */
    text: string;
    /** 1 at first, one more with each change. */
    revision: number;
    /** ISO 8601, UTC. */
    updated_at: string;
  };
  /** One row for each change; rows are only ever added. */
  history: {
    seq: Generated<number>;
    kind: string;
    id: string;
    /** The revision that this change made. */
    revision: number;
    /** JSON list of keys; null where the whole text was put in. */
    path: string | null;
    /** null where the document was new. */
    before: string | null;
    after: string;
    at: string;
  };
}
