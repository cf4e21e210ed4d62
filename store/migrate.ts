/**
 * How does a database come to the newest form? Step by step, each step and its number in one transaction: it is done
 * whole or not at all. A file that is not ours, or comes from a newer program, is refused and left as it is.
 */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { APPLICATION_ID, type DatabaseHeader } from "./database-header.js";
import { ALL_MIGRATIONS, type Migration, NEWEST_VERSION } from "./migrations/all-migrations.js";
import type { SqliteConnection } from "./sqlite-connection.js";

/** The reason to leave this file alone, or undefined where it may be opened. */
export function headerRefusal(header: DatabaseHeader, file: string, newest = NEWEST_VERSION): Refusal | undefined {
  if (header.kind === "none") return undefined;
  if (header.kind === "no-database" || header.applicationId !== APPLICATION_ID) {
    return {
      code: "store-foreign",
      at: file,
      given:
        header.kind === "no-database"
          ? say("store.migrate.a-file-that-is-no-database")
          : say("store.migrate.a-database-of-another-program"),
      allowed: say("store.migrate.a-database-that-coldset-made"),
      message: say("store.migrate.was-not-made-by-coldset-it", { file }),
    };
  }
  if (header.userVersion > newest) {
    return {
      code: "store-newer",
      at: file,
      given: header.userVersion,
      allowed: say("store.migrate.version-or-older", { newest }),
      message: say("store.migrate.was-written-by-a-newer-coldset", { file, userVersion: header.userVersion, newest }),
    };
  }
  return undefined;
}

/** Runs what is still to do. Called while the folder is locked. */
export function migrate(connection: SqliteConnection, file: string, steps = ALL_MIGRATIONS): Refusal | undefined {
  // The header on disk may be behind the log; what the database itself says now is the truth.
  const applicationId = connection.pragmaNumber("application_id");
  const userVersion = connection.pragmaNumber("user_version");
  const empty = connection.rows("SELECT name FROM sqlite_master").length === 0;
  const fresh = applicationId === 0 && userVersion === 0 && empty;
  if (!fresh) {
    const refusal = headerRefusal({ kind: "database", applicationId, userVersion }, file, steps.length);
    if (refusal !== undefined) return refusal;
  }
  for (const step of steps.slice(userVersion)) runStep(connection, step);
  connection.exec("PRAGMA journal_mode = WAL");
  // So that the header on disk carries what was just done.
  connection.rows("PRAGMA wal_checkpoint(TRUNCATE)");
  return undefined;
}

function runStep(connection: SqliteConnection, step: Migration): void {
  connection.exec("BEGIN EXCLUSIVE");
  try {
    connection.exec(step.sql);
    connection.exec(`PRAGMA application_id = ${APPLICATION_ID}`);
    connection.exec(`PRAGMA user_version = ${step.version}`);
    connection.exec("COMMIT");
  } catch (cause) {
    // SQLite has rolled back by itself where the disk was full.
    if (connection.inTransaction()) connection.exec("ROLLBACK");
    throw cause;
  }
}
