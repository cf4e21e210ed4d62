/**
 * What was done, in which order, and which names have people given? A change is what one person did at once: one edit, a
 * text put in with all its documents, a restore. Each row of the history belongs to one. Older rows were all edits of
 * one value or texts put in; rows that came in at the same moment came in with one text.
 */
export const undoAndVersions = {
  version: 2,
  sql: `
    CREATE TABLE changes (
      change INTEGER PRIMARY KEY AUTOINCREMENT,
      what TEXT NOT NULL CHECK (what IN ('edit', 'put', 'import', 'undo', 'redo', 'restore')),
      takes_back INTEGER UNIQUE REFERENCES changes (change),
      words TEXT,
      who TEXT,
      at TEXT NOT NULL,
      CHECK ((what IN ('undo', 'redo')) = (takes_back IS NOT NULL))
    ) STRICT;

    INSERT INTO changes (change, what, at)
      SELECT MIN(seq), 'put', at FROM history WHERE path IS NULL GROUP BY at
      UNION ALL SELECT seq, 'edit', at FROM history WHERE path IS NOT NULL;

    ALTER TABLE history ADD COLUMN change INTEGER REFERENCES changes (change);
    DROP TRIGGER history_is_not_changed;
    UPDATE history SET change = seq WHERE path IS NOT NULL;
    UPDATE history SET change = first.seq
      FROM (SELECT MIN(seq) AS seq, at FROM history WHERE path IS NULL GROUP BY at) AS first
      WHERE history.path IS NULL AND history.at = first.at;
    CREATE TRIGGER history_is_not_changed BEFORE UPDATE ON history
    BEGIN SELECT RAISE(ABORT, 'history is only added to'); END;
    CREATE TRIGGER history_belongs_to_a_change BEFORE INSERT ON history WHEN NEW.change IS NULL
    BEGIN SELECT RAISE(ABORT, 'a row of the history belongs to a change'); END;
    CREATE INDEX history_of_change ON history (change);
    -- The numbers of all changes of a document, without going through its texts.
    CREATE INDEX changes_of_document ON history (kind, id, change, revision);

    CREATE TRIGGER changes_are_not_changed BEFORE UPDATE ON changes
    BEGIN SELECT RAISE(ABORT, 'changes are only added to'); END;
    CREATE TRIGGER changes_are_not_deleted BEFORE DELETE ON changes
    BEGIN SELECT RAISE(ABORT, 'changes are only added to'); END;

    CREATE TABLE versions (
      version INTEGER PRIMARY KEY AUTOINCREMENT,
      build TEXT NOT NULL,
      name TEXT NOT NULL,
      name_key TEXT NOT NULL,
      who TEXT,
      at TEXT NOT NULL,
      UNIQUE (build, name_key)
    ) STRICT;

    CREATE TABLE version_documents (
      version INTEGER NOT NULL REFERENCES versions (version),
      kind TEXT NOT NULL,
      id TEXT NOT NULL,
      revision INTEGER NOT NULL,
      PRIMARY KEY (version, kind, id),
      FOREIGN KEY (kind, id, revision) REFERENCES history (kind, id, revision)
    ) STRICT;
  `,
} as const;
