/** Does a read see each change that was kept, whichever way it came in, and never one that was not? */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { openWorkshop } from "./open-workshop.js";
import { openConnection } from "./sqlite-connection.js";
import type { Workshop } from "./workshop.js";

const RIDER = "kind: rider\nversion: 1\nid: r1\nhand_xy: [340, 672]\nsaddle_xy: [-220, 692]\n";

let folder: string;
let w: Workshop;
beforeEach(async () => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-rows-"));
  const opened = await openWorkshop(folder);
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  w = opened.workshop;
});
afterEach(async () => {
  await w.close();
  fs.rmSync(folder, { recursive: true, force: true });
});

/** What stands in the file itself, read over another connection. */
function onDisk(id: string): unknown {
  const other = openConnection(path.join(folder, "workshop.sqlite"), 1000);
  const [row] = other.rows(`SELECT text, revision FROM documents WHERE kind = 'rider' AND id = '${id}'`);
  other.close();
  return row;
}
async function same(id: string): Promise<void> {
  const read = await w.getDocument("rider", id);
  expect(read === undefined ? undefined : { text: read.text, revision: read.revision }).toEqual(onDisk(id));
  const [named] = await w.documentsNamed([{ kind: "rider", id }]);
  expect(named).toEqual(read);
}

it("after a put, edits, an undo, a restore and an import the same stands in memory as on the disk", async () => {
  await same("r1");
  const put = await w.putText(RIDER, "r.yaml");
  expect(put.kind).toBe("put");
  await same("r1");
  for (const x of [341, 342, 343]) {
    expect((await w.edit("rider", "r1", ["hand_xy", 0], x)).kind).toBe("edited");
    await same("r1");
  }
  expect((await w.restoreDocument("rider", "r1", 1)).kind).toBe("restored");
  await same("r1");
  expect((await w.putText(RIDER.replace("340", "350"), "r.yaml")).kind).toBe("put");
  await same("r1");
  const taken = await w.archive.take({ text: RIDER.replace("340", "360"), label: "r.yaml" }, { forAll: "take-theirs" });
  expect(taken.kind).not.toBe("refused");
  await same("r1");
  expect((await w.getDocument("rider", "r1"))?.text).toContain("360");
});

it("what is refused, or falls with its transaction, is never read", async () => {
  await w.putText(RIDER, "r.yaml");
  const before = await w.getDocument("rider", "r1");
  const edits = await Promise.all([
    w.edit("rider", "r1", ["hand_xy", 0], "apples"),
    w.edit("rider", "r1", ["hand_xy", 0], 345, 99),
    w.edit("rider", "r1", ["nothing_such"], 1),
  ]);
  expect(edits.map((e) => e.kind)).toEqual(["refused", "conflict", "refused"]);
  expect(await w.getDocument("rider", "r1")).toEqual(before);
  await same("r1");
});

it("a read beside edits of the same moment sees one state of all that it asked for", async () => {
  await w.putText(RIDER, "r.yaml");
  await w.putText(RIDER.replace("id: r1", "id: r2"), "r2.yaml");
  const names = ["r1", "r2"].map((id) => ({ kind: "rider", id }));
  const text = (x: number) =>
    `${RIDER.replace("340", `${x}`)}---\n${RIDER.replace("340", `${x}`).replace("id: r1", "id: r2")}`;
  for (let x = 400; x < 420; x += 1) {
    const [, read] = await Promise.all([w.putText(text(x), "both.yaml"), w.documentsNamed(names)]);
    const hands = read.map((d) => /\[(\d+),/.exec(d.text)?.[1]);
    expect(new Set(hands).size).toBe(1);
  }
  await same("r1");
  await same("r2");
});
