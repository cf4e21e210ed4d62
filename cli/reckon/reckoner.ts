/** Who reckons for the server? The thread beside it. */
import { existsSync } from "node:fs";
import { reckonHere } from "@coldset/server/reckon";
import { checkObject } from "../said/check-object.js";
import { type Reckoner, reckonInWorker } from "./in-worker.js";

export function reckoner(): Reckoner {
  const file = new URL("./worker.js", import.meta.url);
  if (existsSync(file)) return reckonInWorker(file);
  // Run from the sources, as tests do, there is no built file that a thread could be started on: then it is reckoned in
  // this thread, by the same function. spawn.test.ts starts the built command, and so the thread.
  return { ...reckonHere(checkObject), close: async () => {} };
}
