/** Another data folder is served on the same port while entries wait: do they stay out of it, and arrive in their own? */
import { readFileSync } from "node:fs";
import { loadText } from "@coldset/core/workshop";
import { expect, it } from "vitest";
import { chance } from "../../scripts/chance.mjs";
import type { StoredPlain } from "./api.js";
import { PretendedDevice, PretendedTime, PretendedWire } from "./test-pages.js";
import { PretendedServer } from "./test-windows.js";

function documents(): readonly StoredPlain[] {
  const loaded = loadText(readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8"), "quayside.yaml");
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  return loaded.docs.map(({ doc, plain }) => ({ kind: doc.kind, id: doc.id, revision: 1, plain }));
}
const enter = (page: Awaited<ReturnType<PretendedDevice["page"]>>, name: string, value: number) => {
  const { edit } = page.store.getState();
  edit({ kind: "donor", id: "q1", path: ["measured", name], value, words: name });
};

it("entries wait for their own workshop, are told, and go into no other one", async () => {
  const time = new PretendedTime(chance(1));
  // Two workshops that both have the demo, so that every place of one is there in the other.
  const [first, second] = [new PretendedServer(documents()), new PretendedServer(documents())];
  const wire = new PretendedWire(time, first, "first");
  const device = new PretendedDevice(wire, "quayside");
  const [page, other] = [await device.page(), await device.page()];
  wire.turn(false);
  await time.pass(1000);
  enter(page, "chainstay", 441);
  await time.pass(1000);
  enter(other, "wheelbase", 1051);
  await time.pass(1000);

  wire.serve(second, "second");
  await time.pass(20_000);
  expect(second.applied).toEqual([]);
  expect(second.came).toEqual([]);
  for (const p of [page, other]) {
    const { queue, status } = p.store.getState();
    expect(queue.apart.map((e) => [e.words, e.value])).toEqual([
      ["chainstay", 441],
      ["wheelbase", 1051],
    ]);
    expect(queue.waiting).toEqual([]);
    // What is shown is the second workshop's.
    expect(status).toBe("ready");
    expect(p.shows("donor", "q1", ["measured", "chainstay"])).toBe(442);
  }
  enter(page, "head_tube", 147);
  await time.pass(3000);
  expect(second.applied.map((a) => [a.path.at(-1), a.value])).toEqual([["head_tube", 147]]);

  wire.serve(first, "first");
  await time.pass(20_000);
  expect(first.applied.map((a) => [a.path.at(-1), a.value])).toEqual([
    ["chainstay", 441],
    ["wheelbase", 1051],
  ]);
  expect(page.shows("donor", "q1", ["measured", "head_tube"])).toBe(145);
  expect(device.keep.names("entry.")).toEqual([]);
});

it("an entry that was on its way when the other workshop came is turned away there and kept", async () => {
  const time = new PretendedTime(chance(2));
  const [first, second] = [new PretendedServer(documents()), new PretendedServer(documents())];
  const wire = new PretendedWire(time, first, "first");
  const device = new PretendedDevice(wire, "quayside");
  const page = await device.page();
  enter(page, "chainstay", 441);
  // Without a word: as when the line is there again before the page has heard that it broke.
  wire.server = second;
  wire.workshop = "second";
  await time.pass(5000);
  expect(second.applied).toEqual([]);
  expect(page.store.getState().queue.apart.map((e) => e.value)).toEqual([441]);
  wire.serve(first, "first");
  await time.pass(10_000);
  expect(first.applied.map((a) => a.value)).toEqual([441]);
});
