/**
 * Which wishes to take back, or to put back, have arrived already? One whose answer was lost on the way comes again in the
 * same words, and must not take back one change more.
 */
export const takenTurns = {
  version: 6,
  sql: `
    CREATE TABLE taken_turns (
      turn_id TEXT PRIMARY KEY,
      build TEXT NOT NULL,
      what TEXT NOT NULL CHECK (what IN ('undo', 'redo')),
      change INTEGER NOT NULL REFERENCES changes (change),
      of INTEGER NOT NULL REFERENCES changes (change),
      at TEXT NOT NULL
    ) STRICT;
  `,
} as const;
