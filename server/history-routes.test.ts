import type { BuildHistory } from "@coldset/store";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { testWorkshop } from "./test-workshop.js";

let w: Awaited<ReturnType<typeof testWorkshop>>;
beforeEach(async () => {
  w = await testWorkshop();
});
afterEach(() => w.end());
const json = async (response: Response | Promise<Response>) => {
  const r = await response;
  return { status: r.status, body: (await r.json()) as Record<string, unknown> };
};
const history = async () => (await json(w.ask("/api/history/quayside"))).body as unknown as BuildHistory;
const edit = (value: unknown, revision: number, more: object = {}) =>
  json(w.post("/api/documents/donor/q1/edits", { path: ["measured", "top_tube_cc"], value, revision, ...more }));

describe("the history of a build", () => {
  it("is listed newest first, with old and new, a page at a time", async () => {
    await edit(551, 1);
    await edit(549, 2);
    const first = await json(w.ask("/api/history/quayside?limit=1"));
    expect(first).toMatchObject({
      status: 200,
      body: {
        changes: [
          {
            what: "edit",
            state: "stands",
            documents: [
              {
                kind: "donor",
                id: "q1",
                difference: { values: [{ place: "measured.top_tube_cc", was: "551", now: "549" }] },
              },
            ],
          },
        ],
      },
    });
    const older = await json(w.ask(`/api/history/quayside?limit=1&before=${String(first.body.older)}`));
    expect(older.body).toMatchObject({
      changes: [{ documents: [{ difference: { values: [{ was: "537", now: "551" }] } }] }],
    });
    expect((await w.ask("/api/history/none")).status).toBe(404);
    for (const bad of ["limit=0", "limit=101", "before=x", "limit=1.5"])
      expect((await w.ask(`/api/history/quayside?${bad}`)).status).toBe(400);
  });

  it("is taken back and put back, and says where there is nothing left", async () => {
    await edit(551, 1);
    const undone = await json(w.post("/api/history/quayside/undo", {}));
    expect(undone).toMatchObject({
      status: 200,
      body: { kind: "turned", what: "undo", documents: [{ id: "q1", revision: 3 }] },
    });
    expect(await w.workshop.exportText("donor", "q1")).toContain("top_tube_cc: 537");
    expect((await json(w.post("/api/history/quayside/undo", {}))).body).toMatchObject({
      kind: "refused",
      refusals: [{ code: "nothing-to-take-back" }],
    });
    expect((await json(w.post("/api/history/quayside/redo", {}))).status).toBe(200);
    expect(await w.workshop.exportText("donor", "q1")).toContain("top_tube_cc: 551");
    expect((await json(w.post("/api/history/quayside/redo", {}))).status).toBe(422);
    expect((await json(w.post("/api/history/none/undo", {}))).status).toBe(404);
    expect((await w.post("/api/history/quayside/undo", { change: "x" })).status).toBe(400);
    expect((await w.post("/api/history/quayside/undo", { more: 1 })).status).toBe(400);
  });

  it("answers 409 where another change came after the one that was seen", async () => {
    const { newest } = await history();
    await edit(551, 1);
    const late = await json(w.post("/api/history/quayside/undo", { seen: newest }));
    expect(late).toEqual({ status: 409, body: { kind: "moved-on", newest: newest + 1 } });
  });

  it("keeps an edit that puts the old value back as an undo", async () => {
    await edit(551, 1);
    expect((await edit(537, 2, { takesBack: true })).status).toBe(200);
    expect((await history()).changes.map((c) => c.what)).toEqual(["undo", "edit", "put"]);
  });
});

describe("versions", () => {
  it("are named, listed, compared and restored", async () => {
    expect((await json(w.post("/api/versions/quayside", { name: "before welding" }))).status).toBe(200);
    expect((await json(w.post("/api/versions/quayside", { name: "Before Welding" }))).body).toMatchObject({
      refusals: [{ code: "version-name-taken" }],
    });
    await edit(551, 1);
    expect((await json(w.ask("/api/versions/quayside"))).body).toMatchObject({
      versions: [{ name: "before welding" }],
    });
    const difference = await json(w.ask("/api/versions/quayside/difference?from=before%20welding&to=now"));
    expect(difference.body).toMatchObject({
      documents: [{ kind: "donor", id: "q1", difference: { values: [{ was: "537", now: "551" }] } }],
    });
    const { newest } = difference.body as { newest: number };
    expect((await w.post("/api/versions/quayside/restore", { name: "before welding", seen: newest - 1 })).status).toBe(
      409,
    );
    const restored = await json(w.post("/api/versions/quayside/restore", { name: "before welding", seen: newest }));
    expect(restored).toMatchObject({
      status: 200,
      body: { kind: "restored", documents: [{ kind: "donor", id: "q1" }] },
    });
    expect(await w.workshop.exportText("donor", "q1")).toContain("top_tube_cc: 537");
    expect((await json(w.post("/api/versions/quayside/restore", { name: "none" }))).status).toBe(422);
    expect((await json(w.ask("/api/versions/quayside/difference?from=none&to=now"))).status).toBe(422);
    expect((await json(w.ask("/api/versions/quayside/difference?from=now"))).status).toBe(400);
  });

  it("restore one document to a revision", async () => {
    await edit(551, 1);
    const place = "/api/documents/donor/q1/restore";
    expect((await json(w.post(place, { revision: 1, expectedRevision: 1 }))).status).toBe(409);
    expect((await json(w.post(place, { revision: 1, expectedRevision: 2 }))).status).toBe(200);
    expect((await json(w.post(place, { revision: 9 }))).status).toBe(422);
    expect((await json(w.post("/api/documents/donor/q9/restore", { revision: 1 }))).status).toBe(404);
  });
});
