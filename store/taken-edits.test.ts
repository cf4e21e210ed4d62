import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import type { Commit } from "./commits.js";
import { openWorkshop } from "./open-workshop.js";
import type { Workshop } from "./workshop.js";

const QUAYSIDE = fs.readFileSync(new URL("../demo/quayside.yaml", import.meta.url), "utf8");
const AT = ["measured", "chainstay"] as const;
const ends: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

async function opened(folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-taken-"))): Promise<Workshop> {
  const result = await openWorkshop(folder);
  if (result.kind === "refused") throw new Error(JSON.stringify(result.refusals));
  ends.push(() => result.workshop.close());
  return result.workshop;
}
const withQuayside = async () => {
  const workshop = await opened();
  await workshop.putText(QUAYSIDE, "quayside.yaml");
  return workshop;
};

describe("an edit with an id", () => {
  it("is made once, however often it arrives, also after others and after closing", async () => {
    const workshop = await withQuayside();
    const first = await workshop.edit("donor", "q1", AT, 441, 1, "edit-0001");
    expect(first).toMatchObject({ kind: "edited", revision: 2 });
    await workshop.edit("donor", "q1", AT, 440, 2, "edit-0002");
    const again = await workshop.edit("donor", "q1", AT, 441, 1, "edit-0001");
    expect(again).toEqual({ ...first, repeated: true });
    await workshop.close();
    const later = await opened(workshop.folder);
    expect(await later.edit("donor", "q1", AT, 441, 1, "edit-0001")).toEqual({ ...first, repeated: true });
    expect(await later.history("donor", "q1")).toHaveLength(3);
    expect(await later.exportText("donor", "q1")).toContain("chainstay: 440");
  });

  it("that met another revision, or was refused, was not made and may come again", async () => {
    const workshop = await withQuayside();
    await workshop.edit("donor", "q1", AT, 440, 1, "edit-0001");
    expect((await workshop.edit("donor", "q1", AT, 441, 1, "edit-0002")).kind).toBe("conflict");
    expect((await workshop.edit("donor", "q1", AT, "apples", 2, "edit-0003")).kind).toBe("refused");
    expect(await workshop.edit("donor", "q1", AT, 441, 2, "edit-0002")).toMatchObject({ kind: "edited", revision: 3 });
    expect(await workshop.edit("donor", "q1", AT, 442, 3, "edit-0003")).toMatchObject({ kind: "edited", revision: 4 });
  });

  it("that changed nothing is known all the same", async () => {
    const workshop = await withQuayside();
    expect(await workshop.edit("donor", "q1", AT, 442, 1, "edit-0001")).toMatchObject({ kind: "edited", revision: 1 });
    await workshop.edit("donor", "q1", AT, 443, 1);
    expect(await workshop.edit("donor", "q1", AT, 442, 1, "edit-0001")).toMatchObject({ revision: 1, repeated: true });
    expect(await workshop.exportText("donor", "q1")).toContain("chainstay: 443");
  });

  it("cannot be the id of an edit of another document", async () => {
    const workshop = await withQuayside();
    await workshop.edit("donor", "q1", AT, 441, 1, "edit-0001");
    const other = await workshop.edit("build", "quayside", ["title"], "x", 1, "edit-0001");
    expect(other.kind === "refused" && other.refusals.map((r) => r.code)).toEqual(["edit-id-taken"]);
  });
});

describe("who listens to what is kept", () => {
  it("hears each change once, in order, and nothing of what was refused", async () => {
    const workshop = await withQuayside();
    // Who begins to listen may still hear of what was kept just before; never less.
    await new Promise((resolve) => setTimeout(resolve, 50));
    const heard: Commit[] = [];
    const deaf = workshop.hearCommits((commits) => heard.push(...commits));
    await workshop.edit("donor", "q1", AT, "apples");
    await Promise.all([441, 443, 444].map((mm) => workshop.edit("donor", "q1", AT, mm)));
    await workshop.putText("kind: route\nversion: 1\nid: r\nsections: [{km: 1, grade: 0}]\n", "r.yaml");
    await expect
      .poll(() => heard.map((c) => `${c.kind}/${c.id} ${c.revision}`))
      .toEqual(["donor/q1 2", "donor/q1 3", "donor/q1 4", "route/r 1"]);
    deaf();
    await workshop.edit("donor", "q1", AT, 445);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(heard).toHaveLength(4);
  });
});
