/**
 * Which workshop is this? A name made by chance when its records are made, or brought to this form: by it a page knows
 * that another data folder answers at the same address. A copy of the whole folder keeps it, an import does not bring it.
 */
export const workshopName = {
  version: 5,
  sql: `
    CREATE TABLE this_workshop (
      one INTEGER PRIMARY KEY CHECK (one = 1),
      name TEXT NOT NULL CHECK (length(name) = 32)
    ) STRICT;
    INSERT INTO this_workshop (one, name) VALUES (1, lower(hex(randomblob(16))));
  `,
} as const;
