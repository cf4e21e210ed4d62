import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { testWorkshop } from "./test-workshop.js";

let w: Awaited<ReturnType<typeof testWorkshop>>;
beforeEach(async () => {
  w = await testWorkshop();
});
afterEach(() => w.end());
const EDITS = "/api/documents/donor/q1/edits";
const EDIT = { path: ["measured", "chainstay"], value: 441, revision: 1, editId: "edit-0001" };
const chainstay = async () => /chainstay: (\S+)/.exec((await w.workshop.exportText("donor", "q1")) ?? "")?.[1];

describe("a request that is meant for another workshop", () => {
  it.each([
    ["an edit", EDITS, EDIT],
    ["an undo", "/api/history/quayside/undo", {}],
    ["a text put in", "/api/documents", { text: "kind: route\nversion: 1\nid: r\nsections: [{km: 1, grade: 0}]\n" }],
  ])("is turned away and does nothing: %s", async (_what, place, body) => {
    const before = await w.workshop.allDocuments();
    const answer = await w.post(place, body, { "coldset-workshop": "another" });
    expect(answer.status).toBe(412);
    expect(answer.headers.get("coldset-workshop")).toBe(w.workshop.name);
    expect(await answer.json()).toMatchObject({ kind: "refused", refusals: [{ code: "another-workshop" }] });
    expect(await w.workshop.allDocuments()).toEqual(before);
  });
});

it("a request that is meant for this one, or for whichever it is, is answered, and each answer names the workshop", async () => {
  const { name } = w.workshop;
  const answer = await w.post(EDITS, EDIT, { "coldset-workshop": name });
  expect(answer.status).toBe(200);
  expect(await chainstay()).toBe("441");
  for (const place of ["/api/builds", "/api/workshop/quayside", "/api/health", "/api/none"])
    expect((await w.ask(place)).headers.get("coldset-workshop"), place).toBe(name);
  expect(await (await w.ask("/api/health")).json()).toEqual({ kind: "well", workshop: name });
});

it("an undo with an id is done once over the wire, too", async () => {
  for (const mm of [441, 440]) await w.workshop.edit("donor", "q1", ["measured", "chainstay"], mm);
  const undo = () => w.post("/api/history/quayside/undo", { turnId: "turn-0001" });
  const first = await (await undo()).json();
  expect(await (await undo()).json()).toEqual({ ...first, repeated: true });
  expect(await chainstay()).toBe("441");
});
