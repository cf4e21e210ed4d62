/** Which steps lead from an empty database to the newest form? In order, each once, never changed after a release. */
import { documentsAndHistory } from "./0001-documents-and-history.js";

export interface Migration {
  /** 1, 2, 3 … without a gap; the database keeps the last one done as its user_version. */
  readonly version: number;
  readonly sql: string;
}

export const ALL_MIGRATIONS: readonly Migration[] = [documentsAndHistory];

export const NEWEST_VERSION = ALL_MIGRATIONS.length;
