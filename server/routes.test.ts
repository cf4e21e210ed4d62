import { loadText, resolveBuild } from "@coldset/core/workshop";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { QUAYSIDE, testWorkshop } from "./test-workshop.js";

let w: Awaited<ReturnType<typeof testWorkshop>>;
beforeEach(async () => {
  w = await testWorkshop();
});
afterEach(() => w.end());
const json = async (response: Response | Promise<Response>) => {
  const r = await response;
  return { status: r.status, body: (await r.json()) as Record<string, unknown> & unknown[] };
};

describe("documents", () => {
  it("lists all of them without their texts", async () => {
    const { status, body } = await json(w.ask("/api/documents"));
    expect(status).toBe(200);
    expect(body).toHaveLength(8);
    expect(Object.keys(body[0] as object).sort()).toEqual(["id", "kind", "label", "revision", "updatedAt"]);
  });

  it("gives one with its text, its plain data and its revision", async () => {
    const { body } = await json(w.ask("/api/documents/donor/q1"));
    const loaded = loadText(QUAYSIDE, "q.yaml");
    if (loaded.kind === "refused") throw new Error("refused");
    const donor = loaded.docs.find((d) => d.doc.kind === "donor");
    expect(body).toMatchObject({ kind: "donor", id: "q1", revision: 1, text: donor?.text, refusals: [] });
    expect(body.plain).toEqual(donor?.plain);
  });

  it("edits one value, and the next reading shows it", async () => {
    const edited = await json(
      w.post("/api/documents/donor/q1/edits", { path: ["measured", "chainstay"], value: "44,1 cm", revision: 1 }),
    );
    expect(edited).toMatchObject({ status: 200, body: { kind: "edited", revision: 2 } });
    const { body } = await json(w.ask("/api/documents/donor/q1"));
    expect(body.text).toContain("chainstay: 44,1 cm");
    expect(body.plain).toMatchObject({ measured: { chainstay: "44,1 cm" } });
  });

  it("takes a key out where no value is given", async () => {
    const edit = { path: ["title"], revision: 1 };
    const result = await json(w.post("/api/documents/build/quayside/edits", edit));
    // A build needs its title: the core says so.
    expect(result.status).toBe(422);
    const route = { path: ["route"], revision: 1 };
    expect((await json(w.post("/api/documents/build/quayside/edits", route))).status).toBe(200);
    expect(await w.workshop.exportText("build", "quayside")).not.toContain("route: harbour-road");
  });

  it("answers 409 with how it stands where somebody was faster", async () => {
    const edit = (value: number) => ({ path: ["measured", "chainstay"], value, revision: 1 });
    await w.post("/api/documents/donor/q1/edits", edit(441));
    const late = await json(w.post("/api/documents/donor/q1/edits", edit(445)));
    expect(late).toMatchObject({ status: 409, body: { kind: "conflict", revision: 2 } });
    expect(late.body.text).toContain("chainstay: 441");
  });

  it("answers 422 with the reasons where the value cannot be read", async () => {
    const edit = { path: ["measured", "chainstay"], value: "apples", revision: 1 };
    const { status, body } = await json(w.post("/api/documents/donor/q1/edits", edit));
    expect(status).toBe(422);
    expect(body.refusals).toEqual([
      expect.objectContaining({ at: "measured.chainstay", given: "apples", message: expect.any(String) }),
    ]);
  });

  it.each([
    ["no path", { value: 1, revision: 1 }],
    ["an empty path", { path: [], value: 1, revision: 1 }],
    ["a path of 13 keys", { path: Array(13).fill("a"), value: 1, revision: 1 }],
    ["a key of 201 letters", { path: ["a".repeat(201)], value: 1, revision: 1 }],
    ["a key that is an object", { path: [{}], value: 1, revision: 1 }],
    ["a place below nought", { path: ["operations", -1], value: 1, revision: 1 }],
    ["a place far out", { path: ["operations", 1e9], value: 1, revision: 1 }],
    ["no revision", { path: ["a"], value: 1 }],
    ["half a revision", { path: ["a"], value: 1, revision: 1.5 }],
    ["a key too many", { path: ["a"], value: 1, revision: 1, force: true }],
    ["a list", [1]],
    ["nothing", null],
  ])("refuses an edit with %s", async (_what, body) => {
    expect(await json(w.post("/api/documents/donor/q1/edits", body))).toMatchObject({
      status: 400,
      body: { refusals: [{ code: "bad-body" }] },
    });
  });

  it("refuses keys that reach behind the data", async () => {
    for (const key of ["__proto__", "constructor", "prototype"]) {
      const edit = { path: [key, "polluted"], value: 1, revision: 1 };
      expect((await w.post("/api/documents/donor/q1/edits", edit)).status).toBe(422);
    }
    const text = '{"path": ["measured"], "value": {"__proto__": {"polluted": 1}}, "revision": 1}';
    expect((await w.post("/api/documents/donor/q1/edits", text)).status).toBe(422);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it("takes a text in, and gives it back as it was", async () => {
    const text = "# paced by hand\nkind: route\nversion: 1\nid: lane\nsections: [{km: 1,  grade: 2}]  # steep\n";
    const put = await json(w.post("/api/documents", { text, label: "lane.yaml" }));
    expect(put).toMatchObject({
      status: 200,
      body: { kind: "put", documents: [{ kind: "route", id: "lane", revision: 1, change: "new" }] },
    });
    const back = await w.ask("/api/documents/route/lane/export");
    expect(await back.text()).toBe(text);
    expect(back.headers.get("content-type")).toBe("text/yaml; charset=utf-8");
    expect(back.headers.get("content-disposition")).toBe('attachment; filename="route-lane.yaml"');
  });

  it("refuses a text that cannot be read, with line and column, and keeps nothing of it", async () => {
    const bad = await json(w.post("/api/documents", { text: "kind: route\nversion: 1\nid: x\nsections: 5\n" }));
    expect(bad.status).toBe(422);
    expect(JSON.stringify(bad.body)).toContain(":4:");
    expect((await json(w.post("/api/documents", { label: "x" }))).status).toBe(400);
    expect((await json(w.ask("/api/documents"))).body).toHaveLength(8);
  });

  it("answers 404 for what is not there", async () => {
    const edit = { path: ["measured", "chainstay"], value: 441, revision: 1 };
    for (const place of ["/api/documents/donor/q9", "/api/documents/x/q1", "/api/documents/donor/q9/export"])
      expect(await json(w.ask(place))).toMatchObject({ status: 404, body: { refusals: [{ code: "not-found" }] } });
    expect((await w.post("/api/documents/donor/q9/edits", edit)).status).toBe(404);
  });
});

describe("builds", () => {
  it("lists the builds with their titles", async () => {
    expect((await json(w.ask("/api/builds"))).body).toMatchObject([
      { id: "quayside", title: expect.stringContaining("all-weather commuter"), revision: 1 },
    ]);
  });

  it("gives all that one build needs in one answer, enough for the core to resolve it", async () => {
    const other = QUAYSIDE.replaceAll("id: harbour-road", "id: other-road").split("\n---\n")[6] ?? "";
    expect(other).toContain("other-road");
    await w.workshop.putText(other, "other.yaml");
    const { body } = await json(w.ask("/api/workshop/quayside"));
    expect(body).toHaveLength(8);
    const names = body.map((d) => `${(d as { kind: string }).kind} ${(d as { id: string }).id}`);
    expect(names).toContain("route harbour-road");
    expect(names).not.toContain("route other-road");
    const text = body.map((d) => JSON.stringify((d as { plain: unknown }).plain)).join("\n---\n");
    const loaded = loadText(text, "page");
    if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
    expect(resolveBuild(loaded.docs.map((d) => d.doc)).kind).toBe("resolved");
  });

  it("gives what is there where something is missing, and shows edits at once", async () => {
    await w.workshop.edit("build", "quayside", ["rider"], "nobody");
    const { status, body } = await json(w.ask("/api/workshop/quayside"));
    expect(status).toBe(200);
    expect(body.map((d) => (d as { kind: string }).kind)).not.toContain("rider");
    expect(body[0]).toMatchObject({ kind: "build", revision: 2, plain: { rider: "nobody" } });
  });

  it("asks for check and book with the build's documents", async () => {
    const check = await json(w.ask("/api/check/quayside"));
    expect(check.body).toEqual({
      buildId: "quayside",
      kinds: ["build", "donor", "rider", "intent", "shop", "bin", "prices", "route"],
    });
    const book = await w.ask("/api/book/quayside.pdf");
    expect(book.headers.get("content-type")).toBe("application/pdf");
    expect(await book.text()).toBe("%PDF-1.7 quayside 8");
  });

  it("reckons once for those who ask at the same time, and again after it failed", async () => {
    let asked = 0;
    let works = false;
    const reckoned = async <T>(value: T): Promise<T> => {
      asked += 1;
      await new Promise((resolve) => setTimeout(resolve, 20));
      if (works) return value;
      throw new Error("lamp fell over");
    };
    const other = await testWorkshop({ check: () => reckoned('{"kind":"answered"}'), standing: () => reckoned(null) });
    const statuses = async (place: string) =>
      (await Promise.all([1, 2, 3].map(() => other.ask(place)))).map((response) => response.status);
    expect(await statuses("/api/check/quayside")).toEqual([500, 500, 500]);
    expect(asked).toBe(1);
    expect(await statuses("/api/builds")).toEqual([500, 500, 500]);
    expect(other.logged.filter((line) => line.includes("lamp fell over"))).toHaveLength(6);
    asked = 0;
    works = true;
    expect(await statuses("/api/check/quayside")).toEqual([200, 200, 200]);
    expect(await statuses("/api/builds")).toEqual([200, 200, 200]);
    expect(asked).toBe(2);
    await other.end();
  });

  it("passes on why a book is not made", async () => {
    const refusal = { code: "no-title", at: "build", given: null, allowed: "a title", message: "no title" };
    const other = await testWorkshop({ book: async () => ({ kind: "refused", refusals: [refusal] }) });
    expect(await json(other.ask("/api/book/quayside.pdf"))).toEqual({
      status: 422,
      body: { kind: "refused", refusals: [refusal] },
    });
    await other.end();
  });

  it.each(["/api/workshop/none", "/api/check/none", "/api/book/none.pdf", "/api/book/quayside"])(
    "answers 404 for %s",
    async (place) => {
      expect((await json(w.ask(place))).status).toBe(404);
    },
  );
});

describe("sheets", () => {
  it("lists and describes them", async () => {
    expect((await json(w.ask("/api/sheets"))).body).toEqual([{ id: "halved", question: "How long is half of it?" }]);
    expect((await json(w.ask("/api/sheets/halved"))).body).toMatchObject({
      description: { id: "halved", inputs: [{ key: "length_mm", unit: "mm", max: 1000 }] },
      schema: { type: "object", required: ["length_mm"] },
      start: { length_mm: 100 },
    });
    expect((await w.ask("/api/sheets/doubled")).status).toBe(404);
  });

  it("answers 200, or 422 with the reasons, both of the check and of the sheet", async () => {
    expect(await json(w.post("/api/sheets/halved", { length_mm: 84 }))).toMatchObject({
      status: 200,
      body: { kind: "answered", value: { half_mm: 42 } },
    });
    for (const input of [{ length_mm: -1 }, { length_mm: 7 }, {}, [], null, { length_mm: 1, more: 2 }]) {
      expect(await json(w.post("/api/sheets/halved", input))).toMatchObject({
        status: 422,
        body: { kind: "refused", refusals: [expect.anything()] },
      });
    }
    expect((await w.post("/api/sheets/doubled", {})).status).toBe(404);
  });
});

describe("health", () => {
  it("is well", async () => {
    expect(await json(w.ask("/api/health"))).toEqual({
      status: 200,
      body: { kind: "well", workshop: w.workshop.name },
    });
  });
});
