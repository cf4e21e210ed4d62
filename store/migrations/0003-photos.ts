/**
 * Which photographs belong to which document, and where are their bytes? The same bytes are kept once. A photo that is
 * taken away keeps its row and its bytes, with the day, so that it can be put back.
 */
export const photos = {
  version: 3,
  sql: `
    CREATE TABLE pictures (
      sha256 TEXT PRIMARY KEY,
      media_type TEXT NOT NULL CHECK (media_type IN ('image/jpeg', 'image/png', 'image/webp')),
      width_px INTEGER NOT NULL CHECK (width_px >= 1),
      height_px INTEGER NOT NULL CHECK (height_px >= 1),
      size_bytes INTEGER NOT NULL CHECK (size_bytes = length(bytes)),
      bytes BLOB NOT NULL
    ) STRICT;

    CREATE TRIGGER pictures_are_not_changed BEFORE UPDATE ON pictures
    BEGIN SELECT RAISE(ABORT, 'pictures are only added to'); END;

    CREATE TABLE photos (
      photo TEXT PRIMARY KEY,
      kind TEXT NOT NULL,
      id TEXT NOT NULL,
      place TEXT,
      caption TEXT NOT NULL,
      sha256 TEXT NOT NULL REFERENCES pictures (sha256),
      at TEXT NOT NULL,
      taken_away_at TEXT,
      FOREIGN KEY (kind, id) REFERENCES documents (kind, id)
    ) STRICT;

    CREATE INDEX photos_of_document ON photos (kind, id);
  `,
} as const;
