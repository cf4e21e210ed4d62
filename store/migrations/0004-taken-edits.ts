/**
 * Which edits have arrived already? An edit whose answer was lost on the way is sent again in the same words, and must not
 * be made twice. Its row stays as long as the records do: a page may come back after any time.
 */
export const takenEdits = {
  version: 4,
  sql: `
    CREATE TABLE taken_edits (
      edit_id TEXT PRIMARY KEY,
      kind TEXT NOT NULL,
      id TEXT NOT NULL,
      revision INTEGER NOT NULL CHECK (revision >= 1),
      at TEXT NOT NULL,
      FOREIGN KEY (kind, id) REFERENCES documents (kind, id)
    ) STRICT;
  `,
} as const;
