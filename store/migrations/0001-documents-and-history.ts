/** The first tables: documents as texts, and every change of them. */
export const documentsAndHistory = {
  version: 1,
  sql: `
    CREATE TABLE documents (
      kind TEXT NOT NULL,
      id TEXT NOT NULL,
      label TEXT NOT NULL,
      text TEXT NOT NULL,
      revision INTEGER NOT NULL CHECK (revision >= 1),
      updated_at TEXT NOT NULL,
      PRIMARY KEY (kind, id)
    ) STRICT;

    CREATE TABLE history (
      seq INTEGER PRIMARY KEY AUTOINCREMENT,
      kind TEXT NOT NULL,
      id TEXT NOT NULL,
      revision INTEGER NOT NULL CHECK (revision >= 1),
      path TEXT,
      before TEXT,
      after TEXT NOT NULL,
      at TEXT NOT NULL,
      FOREIGN KEY (kind, id) REFERENCES documents (kind, id),
      UNIQUE (kind, id, revision)
    ) STRICT;

    CREATE TRIGGER history_is_not_changed BEFORE UPDATE ON history
    BEGIN SELECT RAISE(ABORT, 'history is only added to'); END;

    CREATE TRIGGER history_is_not_deleted BEFORE DELETE ON history
    BEGIN SELECT RAISE(ABORT, 'history is only added to'); END;
  `,
} as const;
