import fs from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ownHosts } from "./guard-request.js";
import { BODY_LIMIT_BYTES, deeperThan, JSON_DEPTH_LIMIT } from "./json-body.js";
import { CONTENT_SECURITY_POLICY } from "./security-headers.js";
import { partsOfPath } from "./static-files.js";
import { ORIGIN, PORT, testWorkshop } from "./test-workshop.js";

let w: Awaited<ReturnType<typeof testWorkshop>>;
beforeAll(async () => {
  w = await testWorkshop();
});
afterAll(() => w.end());
const codeOf = async (response: Response) => {
  const body = (await response.json()) as { readonly refusals: readonly { readonly code: string }[] };
  return [response.status, body.refusals[0]?.code];
};
const EDIT = { path: ["measured", "chainstay"], value: 441, revision: 1 };
const EDITS = "/api/documents/donor/q1/edits";

describe("the Host header", () => {
  it.each([`127.0.0.1:${PORT}`, `localhost:${PORT}`, `LOCALHOST:${PORT}`, `[::1]:${PORT}`])(
    "lets %s in",
    async (host) => {
      expect((await w.ask("/api/health", { headers: { host } })).status).toBe(200);
    },
  );

  it.each([
    "workshop.example",
    `workshop.example:${PORT}`,
    "127.0.0.1",
    `127.0.0.1:${PORT + 1}`,
    `127.0.0.1:${PORT}.workshop.example`,
    `localhost.:${PORT}`,
    `0.0.0.0:${PORT}`,
    `127.1:${PORT}`,
    `2130706433:${PORT}`,
    `0x7f.0.0.1:${PORT}`,
    `127.0.0.2:${PORT}`,
    `[::ffff:127.0.0.1]:${PORT}`,
    `[::]:${PORT}`,
    `app.localhost:${PORT}`,
    `somebody@127.0.0.1:${PORT}`,
    `127.0.0.1:${PORT}, workshop.example`,
    `127.0.0.1:0${PORT}`,
    "",
  ])("turns %j away, from the interface, the page and the writes alike", async (host) => {
    expect(await codeOf(await w.ask("/api/documents", { headers: { host } }))).toEqual([421, "foreign-host"]);
    expect(await codeOf(await w.ask("/", { headers: { host } }))).toEqual([421, "foreign-host"]);
    expect(await codeOf(await w.post(EDITS, EDIT, { host }))).toEqual([421, "foreign-host"]);
  });

  it("may leave out the port where that is 80", () => {
    expect(ownHosts(80)).toContain("localhost");
    expect(ownHosts(8080)).not.toContain("localhost");
  });
});

describe("the Origin of a write", () => {
  it.each([
    "http://workshop.example",
    `http://localhost:${PORT}`,
    `https://127.0.0.1:${PORT}`,
    `http://127.0.0.1:${PORT + 1}`,
    `http://127.0.0.1:${PORT}.workshop.example`,
    "null",
  ])("turns %s away", async (origin) => {
    const before = await w.workshop.getDocument("donor", "q1");
    expect(await codeOf(await w.post(EDITS, EDIT, { origin }))).toEqual([403, "foreign-origin"]);
    expect(await codeOf(await w.post("/api/documents", { text: "" }, { origin }))).toEqual([403, "foreign-origin"]);
    expect(await codeOf(await w.post("/api/sheets/halved", {}, { origin }))).toEqual([403, "foreign-origin"]);
    expect(await w.workshop.getDocument("donor", "q1")).toEqual(before);
  });

  it("lets in our own page, and programs that send none", async () => {
    expect((await w.post("/api/sheets/halved", { length_mm: 2 }, { origin: ORIGIN })).status).toBe(200);
    expect((await w.post("/api/sheets/halved", { length_mm: 2 })).status).toBe(200);
  });

  // Another port on this machine is the same site: its pages are foreign all the same.
  it.each(["cross-site", "same-site"])("turns away what a %s page asks of the interface, reading too", async (site) => {
    for (const mode of ["no-cors", "cors", "navigate"]) {
      const headers = { "sec-fetch-site": site, "sec-fetch-mode": mode, "sec-fetch-dest": "document" };
      expect(await codeOf(await w.ask("/api/book/quayside.pdf", { headers }))).toEqual([403, "foreign-origin"]);
      expect(await codeOf(await w.post("/api/sheets/halved", {}, headers))).toEqual([403, "foreign-origin"]);
    }
  });

  it.each(["cross-site", "same-site"])("lets a link on a %s page open ours, and nothing else of it", async (site) => {
    const from = (mode: string, dest: string) =>
      w.ask("/", { headers: { "sec-fetch-site": site, "sec-fetch-mode": mode, "sec-fetch-dest": dest } });
    expect((await from("navigate", "document")).status).toBe(200);
    for (const [mode, dest] of [
      ["navigate", "iframe"],
      ["navigate", "embed"],
      ["no-cors", "script"],
      ["no-cors", "image"],
      ["cors", "empty"],
      ["websocket", "empty"],
    ] as const)
      expect(await codeOf(await from(mode, dest))).toEqual([403, "foreign-origin"]);
  });

  it("turns away reading for a foreign page by its Origin alone, where the browser sends no Sec-Fetch-Site", async () => {
    for (const origin of ["http://workshop.example", "null", `http://127.0.0.1:${PORT + 1}`])
      expect(await codeOf(await w.ask("/api/documents", { headers: { origin } }))).toEqual([403, "foreign-origin"]);
    expect((await w.ask("/api/documents", { headers: { origin: ORIGIN } })).status).toBe(200);
  });

  it("turns away a Sec-Fetch-Site that it does not know", async () => {
    const headers = { "sec-fetch-site": "same-origin, cross-site" };
    expect(await codeOf(await w.ask("/api/documents", { headers }))).toEqual([403, "foreign-origin"]);
  });

  it("answers no question of a foreign page whether it might write", async () => {
    const asked = await w.ask(EDITS, {
      method: "OPTIONS",
      headers: {
        origin: "http://workshop.example",
        "access-control-request-method": "POST",
        "access-control-request-headers": "content-type",
      },
    });
    expect(asked.ok).toBe(false);
    for (const response of [asked, await w.ask("/api/documents"), await w.post(EDITS, {})])
      for (const [name] of response.headers) expect(name).not.toMatch(/^access-control-/);
  });
});

describe("the body of a write", () => {
  it.each([
    "text/plain",
    "application/x-www-form-urlencoded",
    "multipart/form-data; boundary=x",
    "",
    "application/jsonx",
  ])("is refused as %j", async (type) => {
    const refused = await w.post(EDITS, EDIT, { "content-type": type });
    expect(await codeOf(refused)).toEqual([415, "not-json"]);
  });

  it("may name its character set", async () => {
    const type = "application/json; charset=utf-8";
    expect((await w.post("/api/sheets/halved", { length_mm: 2 }, { "content-type": type })).status).toBe(200);
  });

  it("is refused past 2 MB, and the connection closed", async () => {
    const body = JSON.stringify({ text: "x".repeat(BODY_LIMIT_BYTES) });
    for (const headers of [{ "content-length": String(body.length) }, { "transfer-encoding": "chunked" }]) {
      const refused = await w.post("/api/documents", body, headers as Record<string, string>);
      expect(refused.headers.get("connection")).toBe("close");
      expect(await codeOf(refused)).toEqual([413, "body-too-large"]);
    }
  });

  it.each([
    ["nothing", ""],
    ["half of it", '{"a": '],
    ["deep lists", "[".repeat(500_000)],
    ["deep objects", `${'{"a":'.repeat(JSON_DEPTH_LIMIT + 1)}1${"}".repeat(JSON_DEPTH_LIMIT + 1)}`],
  ])("is refused when it is %s", async (_what, body) => {
    expect(await codeOf(await w.post("/api/sheets/halved", body))).toEqual([400, "bad-json"]);
  });

  it("is refused when it is not UTF-8", async () => {
    const refused = await w.ask("/api/sheets/halved", {
      method: "POST",
      body: new Uint8Array([0x22, 0xff, 0xfe, 0x22]),
      headers: { "content-type": "application/json" },
    });
    expect(await codeOf(refused)).toEqual([400, "bad-json"]);
  });

  it("counts levels outside strings only", () => {
    expect(deeperThan('{"a": "[[[[\\"[[[["}', 1)).toBe(false);
    expect(deeperThan('["\\\\", []]', 1)).toBe(true);
    expect(deeperThan(`[${"[],".repeat(1000)}[]]`, 2)).toBe(false);
  });
});

describe("what every answer carries", () => {
  it.each(["/", "/api/health", "/api/none", "/none.js"])("stands on %s", async (place) => {
    const { headers } = await w.ask(place);
    expect(headers.get("content-security-policy")).toBe(CONTENT_SECURITY_POLICY);
    expect(headers.get("x-content-type-options")).toBe("nosniff");
    expect(headers.get("referrer-policy")).toBe("no-referrer");
    expect(headers.get("cross-origin-opener-policy")).toBe("same-origin");
    expect(headers.get("cross-origin-resource-policy")).toBe("same-origin");
    expect(headers.get("x-frame-options")).toBe("DENY");
    expect(headers.get("permissions-policy")).toContain("camera=()");
  });

  it("stands on refusals and failures too", async () => {
    for (const response of [
      await w.ask("/", { headers: { host: "workshop.example" } }),
      await w.post("/api/sheets/halved", { length_mm: 13 }),
    ])
      expect(response.headers.get("content-security-policy")).toBe(CONTENT_SECURITY_POLICY);
  });

  it("allows nothing inline, nothing from elsewhere, and no frame", () => {
    expect(CONTENT_SECURITY_POLICY).toContain("default-src 'none'");
    expect(CONTENT_SECURITY_POLICY).toContain("base-uri 'none'");
    expect(CONTENT_SECURITY_POLICY).toContain("form-action 'none'");
    expect(CONTENT_SECURITY_POLICY).toContain("require-trusted-types-for 'script'");
    expect(CONTENT_SECURITY_POLICY).toContain("frame-ancestors 'none'");
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe|http|data:|\*/);
    expect(CONTENT_SECURITY_POLICY).toMatch(/script-src 'self'(;|$)/);
    expect(CONTENT_SECURITY_POLICY).toMatch(/style-src 'self'(;|$)/);
  });

  it("says nothing of what we run on, and gives an answer of the interface as a file", async () => {
    for (const place of ["/", "/api/health", "/api/none"])
      for (const [name] of (await w.ask(place)).headers) expect(name).not.toMatch(/^(server|x-powered-by|via)$/);
    for (const place of ["/api/health", "/api/none"])
      expect((await w.ask(place)).headers.get("content-disposition")).toBe('attachment; filename="api.json"');
    expect((await w.ask("/")).headers.get("content-disposition")).toBeNull();
  });

  it("is not kept, where it is an answer of the interface", async () => {
    expect((await w.ask("/api/documents")).headers.get("cache-control")).toBe("no-store");
  });
});

describe("routes and methods that are not there", () => {
  it.each(["/api", "/api/", "/api/none", "/api/documents/donor/q1/none", "/api/sheets/halved/none", "/api//documents"])(
    "%s is a 404 in JSON",
    async (place) => {
      expect(await codeOf(await w.ask(place))).toEqual([404, "not-found"]);
    },
  );

  it.each([
    ["DELETE", "/api/documents", "GET, POST"],
    ["PUT", "/api/documents/donor/q1", "GET"],
    ["GET", EDITS, "POST"],
    ["DELETE", "/api/sheets/halved", "GET, POST"],
    ["DELETE", "/api/health", "GET"],
    ["PUT", "/api/book/quayside.pdf", "GET"],
    ["POST", "/", "GET"],
  ])("%s %s is a 405 that names %s", async (method, place, allow) => {
    const response = await w.ask(place, { method, headers: { "content-type": "application/json" } });
    expect(response.headers.get("allow")).toBe(allow);
    expect(await codeOf(response)).toEqual([405, "method-not-allowed"]);
  });
});

describe("a fault of ours", () => {
  it("is a 500 with a reference that the log has too, and tells nothing of the inside", async () => {
    const response = await w.post("/api/sheets/halved", { length_mm: 13 });
    expect(response.status).toBe(500);
    const text = await response.text();
    expect(text).not.toMatch(/secret|somebody|\.ts|Error/);
    const { reference } = JSON.parse(text) as { reference: string };
    expect(reference).toMatch(/^[a-z]+-\d{4}$/);
    const line = w.logged.find((l) => l.startsWith(reference));
    expect(line).toContain("secret at");
  });

  it("cannot be made to write an entry of its own into the log, or to steer the terminal that shows it", async () => {
    const cause = new Error("quoted: \u001b[2J\u009b31m\u202ered\r\nanvil-1234 GET /: all is well\u2028brass-1 POST /");
    const bad = await testWorkshop({
      check: () => {
        throw cause;
      },
    });
    expect((await bad.ask("/api/check/quayside")).status).toBe(500);
    const [entry = ""] = bad.logged;
    expect(entry).toContain("quoted: ");
    expect(entry).not.toMatch(/[^\n\P{Cc}]|[\p{Cf}\p{Zl}\p{Zp}]/u);
    for (const line of entry.split("\n").slice(1)) expect(line).toMatch(/^ {4}/);
    await bad.end();
  });
});

describe("the files of the page", () => {
  it("gives the page, not kept without asking, and says when it did not change", async () => {
    const first = await w.ask("/");
    expect(first.headers.get("content-type")).toBe("text/html; charset=utf-8");
    expect(first.headers.get("cache-control")).toBe("no-cache");
    const tag = first.headers.get("etag") ?? "";
    expect(tag).toMatch(/^"[\w-]{27}"$/);
    expect((await w.ask("/", { headers: { "if-none-match": `"x", W/${tag}` } })).status).toBe(304);
    expect((await w.ask("/", { headers: { "if-none-match": '"other"' } })).status).toBe(200);
  });

  it("gives another tag when the file has changed", async () => {
    const file = path.join(w.webRoot, "notes.txt");
    fs.writeFileSync(file, "one\n");
    const first = (await w.ask("/notes.txt")).headers.get("etag");
    fs.writeFileSync(file, "another\n");
    const second = await w.ask("/notes.txt");
    expect(second.headers.get("etag")).not.toBe(first);
    expect(await second.text()).toBe("another\n");
  });

  it("lets files with a hash in their name be kept for good, others not", async () => {
    const hashed = await w.ask("/assets/main-Ab3dE_9-.js");
    expect(hashed.headers.get("cache-control")).toBe("public, max-age=31536000, immutable");
    expect(hashed.headers.get("content-type")).toBe("text/javascript; charset=utf-8");
    expect((await w.ask("/assets/plain.css")).headers.get("cache-control")).toBe("no-cache");
  });

  it("gives the page for its places, and a 404 for a file that is not there", async () => {
    for (const place of ["/measure", "/build/quayside/fit", "/assets"])
      expect(await (await w.ask(place)).text()).toContain("<title>Coldset</title>");
    for (const place of ["/none.js", "/assets/none-Ab3dE_9-.js", "/favicon.ico"])
      expect((await w.ask(place)).status).toBe(404);
  });

  it.each([
    "/../outside.txt",
    "/..%2foutside.txt",
    "/%2e%2e%2foutside.txt",
    "/assets/..%2f..%2foutside.txt",
    "/..%5coutside.txt",
    "/%2e%2e/outside.txt",
    "/assets/%00.js",
    "/.env",
    "/%2eenv",
    "/C:%5coutside.txt",
    "/%ff.txt",
    "/..%252foutside.txt",
    "/link.txt",
  ])("gives nothing from outside or hidden for %s", async (place) => {
    const link = path.join(w.webRoot, "link.txt");
    if (!fs.existsSync(link)) fs.symlinkSync(path.join(w.folder, "outside.txt"), link);
    const response = await w.ask(place);
    expect(response.status).toBe(404);
    expect(await response.text()).not.toMatch(/not for the page|hidden/);
  });

  it("takes a path apart only where each part is a plain name", () => {
    expect(partsOfPath("/assets//a%20b.js")).toEqual(["assets", "a b.js"]);
    for (const bad of ["/a/../b", "/%2e%2e", "/a%2fb", "/a%5cb", "/a%00", "/a:b", "/%E0%A4%A"])
      expect(partsOfPath(bad)).toBeUndefined();
  });

  it("says what to do where the page is not built", async () => {
    const bare = await testWorkshop({ webRoot: path.join(w.folder, "no such page") });
    const response = await bare.ask("/");
    expect(response.status).toBe(404);
    expect(await response.text()).toContain("npm start");
    await bare.end();
  });
});
