import http from "node:http";
import net from "node:net";
import { afterEach, describe, expect, it } from "vitest";
import { startServer } from "./start-server.js";
import { testWorkshop } from "./test-workshop.js";

const ends: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});
const serve = async (change: Parameters<typeof testWorkshop>[0] = {}, port = 0) => {
  const w = await testWorkshop(change);
  ends.push(w.end);
  const started = await startServer({ ...w.options, port });
  if (started.kind === "serving") ends.push(started.close);
  return { w, started };
};
const serving = async (change: Parameters<typeof testWorkshop>[0] = {}) => {
  const { w, started } = await serve(change);
  if (started.kind === "refused") throw new Error(JSON.stringify(started.refusals));
  return { w, ...started };
};
/** Sends these bytes and gives all that comes back until the other side closes. */
const raw = (port: number, ...chunks: readonly string[]) =>
  new Promise<string>((resolve, reject) => {
    const socket = net.connect(port, "127.0.0.1");
    let back = "";
    socket.on("data", (chunk) => {
      back += chunk.toString("latin1");
    });
    socket.on("close", () => resolve(back));
    socket.on("error", (cause) => (back === "" ? reject(cause) : resolve(back)));
    for (const chunk of chunks) socket.write(chunk);
  });

describe("the server on a real port", () => {
  it("serves page, reading and writing on loopback only", async () => {
    const { url, port } = await serving();
    expect(url).toBe(`http://127.0.0.1:${port}/`);
    expect(port).toBeGreaterThan(0);
    expect(await (await fetch(url)).text()).toContain("<title>Coldset</title>");
    const edit = { path: ["measured", "chainstay"], value: 441, revision: 1 };
    const edited = await fetch(`${url}api/documents/donor/q1/edits`, {
      method: "POST",
      headers: { "content-type": "application/json", origin: url.slice(0, -1) },
      body: JSON.stringify(edit),
    });
    expect(edited.status).toBe(200);
    const text = await (await fetch(`${url}api/documents/donor/q1/export`)).text();
    expect(text).toContain("chainstay: 441");
    const head = await fetch(`${url}api/health`, { method: "HEAD" });
    expect([head.status, await head.text()]).toEqual([200, ""]);
    // RFC 9110, 9.3.2: the same header fields as in the answer to GET; those of the connection are as each asked for it.
    for (const place of ["", "api/health", "api/documents/donor/q1", "api/none"]) {
      const [asked, gave] = [await fetch(url + place, { method: "HEAD" }), await fetch(url + place)];
      const named = (r: Response) =>
        [...r.headers].filter(([name]) => !/^(date|content-length|connection|keep-alive)$/.test(name));
      expect(named(asked), place).toEqual(named(gave));
    }
  });

  it("turns away another Host, and paths that lead out of the page's folder", async () => {
    const { port } = await serving();
    const ask = (line: string, host: string) => raw(port, `${line}\r\nHost: ${host}\r\nConnection: close\r\n\r\n`);
    expect(await ask("GET /api/documents HTTP/1.1", "workshop.example")).toMatch(/^HTTP\/1\.1 421 /);
    expect(await ask("GET http://workshop.example/api/documents HTTP/1.1", "workshop.example")).toMatch(/ 421 /);
    for (const place of ["/../outside.txt", "/..%2foutside.txt", "/assets/../../outside.txt", "/%2e%2e/outside.txt"])
      expect(await ask(`GET ${place} HTTP/1.1`, `127.0.0.1:${port}`)).not.toContain("not for the page");
  });

  it("cuts off a body that never ends, at 2 MB", async () => {
    const { port } = await serving();
    const chunk = `${(100_000).toString(16)}\r\n${"x".repeat(100_000)}\r\n`;
    const head = `POST /api/documents HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n`;
    const back = await raw(port, head, ...Array<string>(21).fill(chunk));
    expect(back).toMatch(/^HTTP\/1\.1 413 /);
    expect(back.toLowerCase()).toContain("connection: close");
  });

  it("refuses a port that is taken, and says which and what to do", async () => {
    const { port } = await serving();
    const { started } = await serve({}, port);
    if (started.kind !== "refused") throw new Error("served twice");
    expect(started.refusals[0]?.code).toBe("port-in-use");
    expect(started.refusals[0]?.message).toContain(`Port ${port}`);
    expect(started.refusals[0]?.message).toContain("--port");
  });

  it.each([-1, 65_536, 1.5, Number.NaN])("refuses port %s", async (port) => {
    const { started } = await serve({}, port);
    expect(started.kind === "refused" && started.refusals[0]?.code).toBe("bad-port");
  });

  it("finishes what is under way before it closes, cuts off what is idle, and frees the port", async () => {
    let finish = () => {};
    const asked = new Promise<void>((resolve) => {
      finish = resolve;
    });
    const running = await serving({
      book: async () => {
        finish();
        await new Promise((resolve) => setTimeout(resolve, 150));
        return new TextEncoder().encode("%PDF late");
      },
    });
    const agent = new http.Agent({ keepAlive: true });
    await new Promise<void>((resolve, reject) => {
      http.get(`${running.url}api/health`, { agent }, (r) => r.resume().on("end", resolve)).on("error", reject);
    });
    const book = fetch(`${running.url}api/book/quayside.pdf`);
    await asked;
    const closed = running.close();
    expect(await (await book).text()).toBe("%PDF late");
    await closed;
    agent.destroy();
    await expect(fetch(`${running.url}api/health`)).rejects.toThrow();
    const again = await startServer({ ...running.w.options, port: running.port });
    expect(again.kind).toBe("serving");
    if (again.kind === "serving") await again.close();
  });
});
