/** Is a new build made whole or not at all, and does the list of builds say where each stands? */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { testWorkshop } from "./test-workshop.js";

let t: Awaited<ReturnType<typeof testWorkshop>>;
beforeEach(async () => {
  t = await testWorkshop();
});
afterEach(() => t.end());

const make = (entries: Readonly<Record<string, string>>, lent?: Readonly<Record<string, string>>) =>
  t.post("/api/builds", { entries, ...(lent === undefined ? {} : { lent }) });

describe("a new build", () => {
  it("comes with all seven documents, each of them new", async () => {
    const answer = await make({ name: "Old blue", chainstay: "44,2 cm", budget: "300" });
    expect(answer.status).toBe(201);
    const body = await answer.json();
    expect(body.id).toBe("old-blue");
    expect(body.documents.map((d: { kind: string }) => d.kind).sort()).toEqual([
      "bin",
      "build",
      "donor",
      "intent",
      "prices",
      "rider",
      "shop",
    ]);
    expect(body.documents.every((d: { change: string }) => d.change === "new")).toBe(true);
    const donor = await (await t.ask("/api/documents/donor/old-blue")).json();
    expect(donor.plain.measured.chainstay).toBe("44,2 cm");
    expect(donor.plain.measured.wheelbase).toBe("?");
  });

  it("is refused with a free name where the name is taken, and changes nothing", async () => {
    expect((await make({ name: "Quayside" })).status).toBe(422);
    const before = await t.workshop.listDocuments();
    const answer = await make({ name: "Quayside", chainstay: "440" });
    expect((await answer.json()).refusals).toMatchObject([{ code: "name-taken", at: "name", allowed: "quayside-2" }]);
    expect(await t.workshop.listDocuments()).toEqual(before);
  });

  it("lets only one of two at the same moment have the name", async () => {
    const both = await Promise.all([
      make({ name: "Twin", chainstay: "440" }),
      make({ name: "Twin", chainstay: "441" }),
    ]);
    expect(both.map((a) => a.status).sort()).toEqual([201, 422]);
  });

  it("takes over a rider and a shop of the workshop, and refuses one that is not there", async () => {
    const answer = await make({ name: "Lent" }, { rider: "r1", shop: "harbour" });
    expect((await answer.json()).documents.map((d: { kind: string }) => d.kind).sort()).toEqual([
      "bin",
      "build",
      "donor",
      "intent",
      "prices",
    ]);
    const check = await (await t.ask("/api/workshop/lent")).json();
    expect(check.find((d: { kind: string }) => d.kind === "rider").id).toBe("r1");
    const missing = await make({ name: "Lent too" }, { rider: "nobody" });
    expect((await missing.json()).refusals).toMatchObject([{ code: "not-found", at: "rider" }]);
  });

  it.each([
    [{}, 422, "no-name"],
    [{ name: "   " }, 422, "no-name"],
    [{ name: "!!" }, 422, "unreadable"],
    [{ name: "Blue", chainstay: "two feet and a bit" }, 422, "unreadable"],
    [{ name: "Blue", chainstay: "3000" }, 422, "unreadable"],
  ])("%j is refused", async (entries, status, code) => {
    const answer = await make(entries as Record<string, string>);
    expect(answer.status).toBe(status);
    expect((await answer.json()).refusals.map((r: { code: string }) => r.code)).toContain(code);
  });

  it("an entry that nobody asked for is refused before anything is made", async () => {
    expect((await make({ name: "Blue", chainstey: "440" })).status).toBe(400);
    expect(await t.workshop.getDocument("build", "blue")).toBeUndefined();
  });
});

describe("the list of builds", () => {
  it("says what each becomes and where its twenty questions stand", async () => {
    await make({ name: "Old blue", becomes: "two bags and a hill" });
    const lines = await (await t.ask("/api/builds")).json();
    expect(lines.map((l: { id: string }) => l.id)).toEqual(["old-blue", "quayside"]);
    for (const { standing } of lines) expect(standing.open + standing.settled + standing.notChecked).toBe(20);
    expect(lines[0].standing.becomes).toBe("two bags and a hill");
    expect(lines[0].putAway).toBe(false);
  });

  it("follows an edit of the donor, also in the day of the last change", async () => {
    const before = (await (await t.ask("/api/builds")).json())[0];
    const { revision } = await (await t.ask("/api/documents/donor/q1")).json();
    await new Promise((resolve) => setTimeout(resolve, 5));
    const edit = { path: ["condition", "cracks"], value: "found", revision };
    expect((await t.post("/api/documents/donor/q1/edits", edit)).status).toBe(200);
    const after = (await (await t.ask("/api/builds")).json())[0];
    // S7: a crack in frame or fork is refused.
    expect(before.standing.refused).toEqual([]);
    expect(after.standing.refused.join(" ")).toMatch(/^S7/);
    expect(after.updatedAt > before.updatedAt).toBe(true);
  });

  it("keeps a build that is put away, and says so", async () => {
    const { revision } = await (await t.ask("/api/documents/build/quayside")).json();
    await t.post("/api/documents/build/quayside/edits", { path: ["put_away"], value: true, revision });
    expect((await (await t.ask("/api/builds")).json())[0]).toMatchObject({ id: "quayside", putAway: true });
  });
});
