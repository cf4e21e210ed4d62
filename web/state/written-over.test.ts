/** An entry arrived, its answer was lost, and somebody wrote over it since: does the page show what the records have? */
import { readFileSync } from "node:fs";
import { loadText } from "@coldset/core/workshop";
import { expect, it } from "vitest";
import { chance } from "../../scripts/chance.mjs";
import { PretendedDevice, PretendedTime, PretendedWire } from "./test-pages.js";
import { PretendedServer } from "./test-windows.js";

const PATH = ["measured", "head_tube"];

it("once the entry is known to have arrived, the other value is shown, and nothing is sent anew", async () => {
  const loaded = loadText(readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8"), "quayside.yaml");
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  const docs = loaded.docs.map(({ doc, plain }) => ({ kind: doc.kind, id: doc.id, revision: 1, plain }));
  const time = new PretendedTime(chance(1));
  const server = new PretendedServer(docs);
  const page = await new PretendedDevice(new PretendedWire(time, server, "one"), "quayside").page();
  server.line = "loses answers";
  page.store.getState().edit({ kind: "donor", id: "q1", path: PATH, value: 146, words: "head tube" });
  await time.pass(2000);
  expect(server.at("donor/q1", PATH)).toBe(146);
  server.write("donor/q1", PATH, 148);
  await time.pass(1000);
  server.line = "well";
  await time.pass(10_000);
  expect(page.store.getState().queue.waiting).toEqual([]);
  expect(page.shows("donor", "q1", PATH)).toBe(148);
  expect(server.applied).toHaveLength(1);
});
