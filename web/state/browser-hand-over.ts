/** How does a window of a real browser hand its entries over? With the browser's own storage, locks and lines. */
import { loadDocument, sendEdit } from "./api.js";
import { type HandOverTools, handOver } from "./hand-over.js";
import { browserKeep, heardElsewhere } from "./kept.js";
import { forgetDocuments, keepDocument, keptDocument } from "./kept-records.js";
import { listenLive } from "./live.js";
import type { SaveQueue } from "./save-queue.js";
import { followOtherWindows, servedHere } from "./which-workshop.js";

const LOCK = "coldset.send";

export function startHandOver(tools: HandOverTools): SaveQueue {
  const queue = handOver(
    {
      keep: browserKeep,
      clock: Date.now,
      later: (run, ms) => void setTimeout(run, ms),
      letters: () => crypto.randomUUID().replaceAll("-", ""),
      alone: (run) => (navigator.locks === undefined ? run() : navigator.locks.request(LOCK, run)),
      send: (entry, revision) => sendEdit({ ...entry, revision }),
      load: loadDocument,
      keepDocument,
      keptDocument,
      forgetDocuments,
      hearEntries: (tell) => void heardElsewhere("entry.", tell),
      hearServer: listenLive,
      workshop: servedHere,
    },
    tools,
  );
  followOtherWindows();
  addEventListener("online", () => queue.start());
  return queue;
}
