/**
 * A second process for the tests of the store. Usage: node store/test-child.mjs hold|write FOLDER
 * Says "open" once it holds the workshop. `write` then edits without end and says each revision that was kept.
 */
import fs from "node:fs";
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const [task, folder] = process.argv.slice(2);
const say = (line) => fs.writeSync(1, `${line}\n`);
const source = fileURLToPath(new URL("./open-workshop.ts", import.meta.url));
const { module } = await runnerImport(source, {
  configFile: false,
  logLevel: "error",
  resolve: { conditions: ["source", "module", "import", "default"] },
  ssr: { resolve: { conditions: ["source", "module", "import", "default"] } },
});
const opened = await module.openWorkshop(folder);
if (opened.kind === "refused") {
  say(JSON.stringify(opened.refusals));
  process.exit(1);
}
say("open");
if (task === "hold") setInterval(() => {}, 1_000);
for (let n = 0; task === "write"; n += 1) {
  const edited = await opened.workshop.edit("donor", "q1", ["measured", "chainstay"], 430 + (n % 20));
  if (edited.kind !== "edited") throw new Error(JSON.stringify(edited));
  say(`${edited.revision} ${430 + (n % 20)}`);
}
