/**
 * A server in a process of its own, for tests that kill it. Usage: node e2e/serve-child.mjs SITE FOLDER PORT [N]
 * Says its address once it listens. With N it is killed right after the Nth edit is on the disk, before it is answered.
 */
import fs from "node:fs";
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const [site = "", folder = "", port = "0", dieAfter] = process.argv.slice(2);
const say = (/** @type {string} */ line) => fs.writeSync(1, `${line}\n`);
const conditions = ["source", "module", "import", "default"];
/** @param {string} place */
const load = async (place) => {
  const source = fileURLToPath(new URL(place, import.meta.url));
  const options = { configFile: /** @type {false} */ (false), logLevel: /** @type {"error"} */ ("error") };
  const { module } = await runnerImport(source, {
    ...options,
    resolve: { conditions },
    ssr: { resolve: { conditions } },
  });
  return /** @type {any} */ (module);
};
const [store, server] = await Promise.all([load("../store/index.ts"), load("../server/index.ts")]);
const opened = await store.openWorkshop(folder);
if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
let edits = 0;
const workshop =
  dieAfter === undefined
    ? opened.workshop
    : {
        ...opened.workshop,
        edit: async (/** @type {unknown[]} */ ...args) => {
          const made = await opened.workshop.edit(...args);
          edits += 1;
          if (edits === Number(dieAfter)) process.kill(process.pid, "SIGKILL");
          return made;
        },
      };
const started = await server.startServer({
  port: Number(port),
  workshop,
  webRoot: site,
  sheets: new Map(),
  ...server.reckonHere(() => ({})),
  book: async () => ({ kind: "refused", refusals: [] }),
});
if (started.kind === "refused") throw new Error(JSON.stringify(started.refusals));
say(started.url);
process.on("SIGTERM", () => {
  void started
    .close()
    .then(() => opened.workshop.close())
    .then(() => process.exit(0));
});
