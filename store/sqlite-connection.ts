/**
 * How is an SQLite file opened? The one place that names the driver (docs/decisions/0002-sqlite-driver.md).
 * Transactions of ours always write, so each begins as a writer: it waits at its start, never in its middle.
 */
import { SqliteDialect, SqliteDriver } from "kysely";
import Database from "libsql";

export interface SqliteConnection {
  /** Runs statements that give no rows; not for values from outside. */
  readonly exec: (sql: string) => void;
  /** The one number that a pragma gives. */
  readonly pragmaNumber: (name: string) => number;
  readonly rows: (sql: string) => readonly unknown[];
  /** A whole copy of the database as it stands now, in a new file. */
  readonly copyInto: (file: string) => void;
  readonly inTransaction: () => boolean;
  /** Called after each transaction of the dialect that was kept. */
  readonly onCommit: (told: () => void) => void;
  readonly close: () => void;
  readonly dialect: () => SqliteDialect;
}

/** @param waitMs how long a writer waits for another one, ms */
export function openConnection(file: string, waitMs: number): SqliteConnection {
  const database = new Database(file, { timeout: waitMs });
  // A change is on the disk before it is said to be kept, even if the power fails.
  database.exec("PRAGMA synchronous = FULL");
  database.exec("PRAGMA foreign_keys = ON");
  let told = () => {};
  return {
    exec: (sql) => {
      database.exec(sql);
    },
    pragmaNumber: (name) => {
      const [row] = database.prepare(`PRAGMA ${name}`).all();
      const value: unknown = row === null || typeof row !== "object" ? undefined : Object.values(row)[0];
      if (typeof value !== "number") throw new Error(`PRAGMA ${name} gave no number`);
      return value;
    },
    rows: (sql) => database.prepare(sql).all(),
    copyInto: (file) => {
      database.prepare("VACUUM INTO ?").run([file]);
    },
    inTransaction: () => database.inTransaction,
    onCommit: (listener) => {
      told = listener;
    },
    close: () => {
      if (database.open) database.close();
    },
    dialect: () => new WritersDialect(database, () => told()),
  };
}

class WritersDialect extends SqliteDialect {
  readonly #database: Database.Database;
  readonly #committed: () => void;
  constructor(database: Database.Database, committed: () => void) {
    super({ database });
    this.#database = database;
    this.#committed = committed;
  }
  override createDriver() {
    return new WritersDriver(this.#database, this.#committed);
  }
}

/**
 * Begin, commit and rollback run without a prepared statement: the driver does not reset one that failed, and one that
 * met another writer would go on blocking this connection.
 */
class WritersDriver extends SqliteDriver {
  readonly #database: Database.Database;
  readonly #committed: () => void;
  constructor(database: Database.Database, committed: () => void) {
    super({ database });
    this.#database = database;
    this.#committed = committed;
  }
  override async beginTransaction(): Promise<void> {
    this.#database.exec("BEGIN IMMEDIATE");
  }
  override async commitTransaction(): Promise<void> {
    this.#database.exec("COMMIT");
    this.#committed();
  }
  /** A full disk makes SQLite roll back by itself; a second time would hide the first error behind another. */
  override async rollbackTransaction(): Promise<void> {
    if (this.#database.inTransaction) this.#database.exec("ROLLBACK");
  }
}
