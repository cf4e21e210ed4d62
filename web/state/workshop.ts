/** Which store does this window have? One for all its pages, with this browser behind it. */
import { loadWorkshop } from "./api.js";
import { startHandOver } from "./browser-hand-over.js";
import { reachedServer } from "./health.js";
import { browserKeep } from "./kept.js";
import { keepBuild, keptBuild } from "./kept-records.js";
import { makeWorkshop } from "./make-workshop.js";
import { reckonDocs } from "./reckon-docs.js";
import { servedHere } from "./which-workshop.js";

export const useWorkshop = makeWorkshop({
  load: loadWorkshop,
  keepBuild,
  keptBuild,
  keep: browserKeep,
  reckon: reckonDocs,
  handOver: startHandOver,
  reached: reachedServer,
  workshop: servedHere.now,
});
