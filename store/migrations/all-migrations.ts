/** Which steps lead from an empty database to the newest form? In order, each once, never changed after a release. */
import { documentsAndHistory } from "./0001-documents-and-history.js";
import { undoAndVersions } from "./0002-undo-and-versions.js";
import { photos } from "./0003-photos.js";
import { takenEdits } from "./0004-taken-edits.js";
import { workshopName } from "./0005-workshop-name.js";
import { takenTurns } from "./0006-taken-turns.js";

export interface Migration {
  /** 1, 2, 3 … without a gap; the database keeps the last one done as its user_version. */
  readonly version: number;
  readonly sql: string;
}

export const ALL_MIGRATIONS: readonly Migration[] = [
  documentsAndHistory,
  undoAndVersions,
  photos,
  takenEdits,
  workshopName,
  takenTurns,
];

export const NEWEST_VERSION = ALL_MIGRATIONS.length;
