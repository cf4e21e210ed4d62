/** Which doors are there? All that something from outside comes in by. */
import type { AnyDoor } from "./door.js";
import { api } from "./doors/api.js";
import { archives } from "./doors/archives.js";
import { cli } from "./doors/cli.js";
import { csv } from "./doors/csv.js";
import { documents } from "./doors/documents.js";
import { edits } from "./doors/edits.js";
import { kept } from "./doors/kept.js";
import { photos } from "./doors/photos.js";
import { quantities } from "./doors/quantities.js";
import { sheets } from "./doors/sheets.js";
import { store } from "./doors/store.js";
import { threads } from "./doors/threads.js";
import { urls } from "./doors/urls.js";

export const DOORS: readonly AnyDoor[] = [
  quantities,
  threads,
  documents,
  csv,
  edits,
  sheets,
  store,
  kept,
  photos,
  archives,
  urls,
  api,
  cli,
];
