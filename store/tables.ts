/** Which columns do the tables have? Made by the files in migrations/. */
import type { ColumnType, Generated } from "kysely";

export interface Tables {
  /** Edits that came with an id of their own. */
  taken_edits: {
    edit_id: string;
    kind: string;
    id: string;
    /** The revision that the document had after it. */
    revision: number;
    at: string;
  };
  /** Wishes to take back or put back that came with an id of their own. */
  taken_turns: {
    turn_id: string;
    build: string;
    what: "undo" | "redo";
    /** The change that it made, and the one that it was about. */
    change: number;
    of: number;
    at: string;
  };
  /** One row. */
  this_workshop: {
    one: number;
    /** Made by chance with the records. */
    name: string;
  };
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
    /** The change that it is a part of. */
    change: number;
  };
  /** What one person did at once; rows are only ever added. */
  changes: {
    change: Generated<number>;
    what: "edit" | "put" | "import" | "undo" | "redo" | "restore";
    /** undo and redo only: the change whose rows they turn round; each is turned round at most once. */
    takes_back: number | null;
    words: string | null;
    who: string | null;
    at: string;
  };
  /** Names that people gave to how a build stood. */
  versions: {
    version: Generated<number>;
    build: string;
    name: string;
    /** The name as it is compared: two names that differ only in capitals are one. */
    name_key: string;
    who: string | null;
    at: string;
  };
  version_documents: {
    version: number;
    kind: string;
    id: string;
    revision: number;
  };
  /** The bytes of photographs, each once. */
  pictures: {
    sha256: string;
    media_type: "image/jpeg" | "image/png" | "image/webp";
    width_px: number;
    height_px: number;
    size_bytes: number;
    bytes: ColumnType<ArrayBuffer, Buffer, never>;
  };
  photos: {
    photo: string;
    kind: string;
    id: string;
    place: string | null;
    caption: string;
    sha256: string;
    at: string;
    taken_away_at: string | null;
  };
}
