import type { AnySheet } from "@coldset/core/sheet";
import { ALL_SHEETS } from "@coldset/core/sheets";
import { validate } from "@readme/openapi-parser";
import { Hono } from "hono";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { createApp } from "./create-app.js";
import { describedApi, honoPath } from "./described-api.js";
import type { OpenApi } from "./openapi-document.js";
import { PORT, testWorkshop } from "./test-workshop.js";

let w: Awaited<ReturnType<typeof testWorkshop>>;
let app: Hono;
let document: OpenApi;
beforeAll(async () => {
  w = await testWorkshop({ sheets: new Map<string, AnySheet>(ALL_SHEETS.map((s) => [s.id, s])) });
  app = createApp(w.options, () => PORT);
  document = (await (await w.ask("/api/openapi.json")).json()) as OpenApi;
});
afterAll(() => w.end());

const METHODS = ["get", "post", "put", "delete", "patch"] as const;
/** Routes for any method: for everything, for what is no route, and for a described path with another method. */
const ANYWHERE = ["/*", "*", "/api", "/api/*"];

/** What stands in the app under /api and not in the description, and the other way round. */
function differences(of: Hono, described: OpenApi): readonly string[] {
  const paths = Object.entries(described.paths ?? {});
  const known = new Set(
    paths.flatMap(([path, item]) =>
      METHODS.filter((m) => item !== undefined && m in item).map((m) => `${m.toUpperCase()} ${honoPath(path)}`),
    ),
  );
  const anyMethod = new Set([...ANYWHERE, ...paths.map(([path]) => honoPath(path))]);
  const there = new Set(of.routes.map((r) => `${r.method} ${r.path}`));
  const undescribed = of.routes.filter((r) =>
    r.method === "ALL" ? !anyMethod.has(r.path) : !known.has(`${r.method} ${r.path}`),
  );
  return [
    ...undescribed.map((r) => `not described: ${r.method} ${r.path}`),
    ...[...known].filter((route) => !there.has(route)).map((route) => `not there: ${route}`),
  ];
}

describe("routes and their description", () => {
  it("are the same: no route without its description, none described that is not there", () => {
    expect(differences(app, document)).toEqual([]);
    expect(app.routes.filter((r) => r.method === "GET").length).toBeGreaterThan(ALL_SHEETS.length);
  });

  it("would be found to differ", () => {
    const other = createApp(w.options, () => PORT);
    other.get("/api/back-door", (c) => c.text("in"));
    other.all("/api/side-door", (c) => c.text("in"));
    const more = { ...document, paths: { ...document.paths, "/api/painted/{door}": { get: {} } } };
    expect(differences(other, more as OpenApi)).toEqual([
      "not described: GET /api/back-door",
      "not described: ALL /api/side-door",
      "not there: GET /api/painted/:door",
    ]);
  });
});

describe("the description", () => {
  // Independent reader: @readme/openapi-parser, with the schema that the OpenAPI Initiative publishes for 3.1.
  it("is valid OpenAPI 3.1, by a reader that is not ours", { timeout: 240_000 }, async () => {
    expect(document.openapi).toMatch(/^3\.1\./);
    // The reader resolves references in place, so it gets a copy.
    expect(await validate(structuredClone(document) as never)).toMatchObject({ valid: true });
    const broken = structuredClone(document) as unknown as { paths: Record<string, unknown> };
    broken.paths["/api/health"] = { get: { responses: { 200: {} } } };
    expect(await validate(broken as never)).toMatchObject({ valid: false });
  });

  // Fetch standard, section 4.10 (CORS-safelisted request header): these three need no question beforehand.
  it("takes no body of a type that a foreign page may send without asking first", () => {
    const types = Object.values(document.paths ?? {}).flatMap((item) =>
      METHODS.flatMap((m) => {
        const body = item?.[m]?.requestBody;
        return body !== undefined && "content" in body ? Object.keys(body.content) : [];
      }),
    );
    expect(types.length).toBeGreaterThan(10);
    for (const simple of ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data"])
      expect(types).not.toContain(simple);
  });

  it("gives each operation its own name", () => {
    const names = Object.values(document.paths ?? {}).flatMap((item) =>
      METHODS.flatMap((m) => (item === undefined || item[m] === undefined ? [] : [item[m].operationId])),
    );
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z]+-[\w-]+$/);
  });

  it("describes every kind of document and every sheet by the core's own schemas", () => {
    const sheet = document.paths?.["/api/sheets/side-view"]?.post;
    expect(sheet?.requestBody).toMatchObject({
      content: { "application/json": { schema: { type: "object", additionalProperties: false } } },
    });
    expect(document.components?.schemas?.routeDocument).toMatchObject({
      properties: { kind: { const: "route" }, sections: { type: "array", minItems: 1 } },
    });
  });
});

describe("a described route", () => {
  const made = new Hono();
  const api = describedApi(made);
  api.route(
    {
      method: "post",
      path: "/api/things/{id}",
      summary: "For this test only.",
      params: z.object({ id: z.string().regex(/^\w+$/) }),
      query: z.object({ often: z.coerce.number().int().max(3).default(1) }),
      body: {
        json: z.strictObject({ a: z.int(), b: z.string().optional() }).meta({ description: "a, and perhaps b" }),
      },
      answers: { 200: { means: "What came in.", json: z.unknown() } },
    },
    (c, { params, query, body }) => c.json({ id: params.id, often: query.often, a: body.a }),
  );
  api.route(
    {
      method: "put",
      path: "/api/pictures/{id}",
      summary: "For this test only.",
      params: z.object({ id: z.string() }),
      body: { file: ["image/png"], limitBytes: 4 },
      answers: { 200: { means: "How many bytes came in.", json: z.number() } },
    },
    (c, { body }) => c.json(body.byteLength),
  );
  api.finish();
  const ask = async (method: string, place: string, body?: BodyInit, type = "application/json") => {
    const response = await made.request(place, { method, body: body ?? null, headers: { "content-type": type } });
    return { status: response.status, body: (await response.json()) as { readonly refusals: readonly object[] } };
  };

  it("gets path, query and body as its schemas read them", async () => {
    expect(await ask("POST", "/api/things/x?often=3", '{"a": 1}')).toEqual({
      status: 200,
      body: { id: "x", often: 3, a: 1 },
    });
    expect((await ask("POST", "/api/things/x", '{"a": 1}')).body).toEqual({ id: "x", often: 1, a: 1 });
  });

  it("refuses with all reasons and their places, before the handler", async () => {
    const { status, body } = await ask("POST", "/api/things/x", '{"a": "\\u001b[31mred", "b": 2, "c": 3}');
    expect(status).toBe(400);
    expect(body.refusals).toMatchObject([
      { code: "bad-body", at: "body.a", given: "\uFFFD[31mred", allowed: "a, and perhaps b" },
      { code: "bad-body", at: "body.b", given: 2 },
      { code: "bad-body", at: "body" },
    ]);
    expect((await ask("POST", "/api/things/-", '{"a": 1}')).status).toBe(404);
    expect((await ask("POST", "/api/things/x?often=4", '{"a": 1}')).body.refusals).toMatchObject([
      { code: "bad-query", at: "query.often" },
    ]);
  });

  it("refuses a key that the query gives twice", async () => {
    const { status, body } = await ask("POST", "/api/things/x?often=1&often=2", '{"a": 1}');
    expect([status, body.refusals]).toMatchObject([400, [{ code: "bad-query", at: "query.often" }]]);
  });

  it("takes a file of its types and size only", async () => {
    expect((await ask("PUT", "/api/pictures/x", "abcd", "image/png")).body).toBe(4);
    expect((await ask("PUT", "/api/pictures/x", "abcde", "image/png")).status).toBe(413);
    expect((await ask("PUT", "/api/pictures/x", "abcd", "image/svg+xml")).status).toBe(415);
    expect((await ask("PUT", "/api/pictures/x", "abcd")).status).toBe(415);
  });

  it("takes two large files at once and no more, for each is held in memory while it comes in", async () => {
    const large = new Hono();
    let finish = () => {};
    const held = new Promise<void>((resolve) => {
      finish = resolve;
    });
    const few = describedApi(large);
    few.route(
      {
        method: "post",
        path: "/api/large",
        summary: "For this test only.",
        body: { file: ["application/zip"], limitBytes: 300_000_000 },
        answers: { 200: { means: "Taken.", json: z.number() } },
      },
      async (c, { body }) => {
        await held;
        return c.json(body.byteLength);
      },
    );
    const headers = { "content-type": "application/zip" };
    const send = () => large.request("/api/large", { method: "POST", body: "PK", headers });
    const two = [send(), send()];
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect((await send()).status).toBe(503);
    finish();
    expect((await Promise.all(two)).map((r) => r.status)).toEqual([200, 200]);
    expect((await send()).status).toBe(200);
  });

  it("says which methods its path has", async () => {
    const response = await made.request("/api/things/x", { method: "DELETE" });
    expect([response.status, response.headers.get("allow")]).toEqual([405, "POST"]);
  });
});
