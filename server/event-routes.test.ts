import http from "node:http";
import { afterEach, describe, expect, it } from "vitest";
import { LIMITS } from "./limits.js";
import { startServer } from "./start-server.js";
import { testWorkshop } from "./test-workshop.js";

const ends: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

async function serving(streams = LIMITS.streams) {
  const w = await testWorkshop();
  ends.push(w.end);
  const started = await startServer({ ...w.options, limits: { ...LIMITS, streams }, port: 0 });
  if (started.kind === "refused") throw new Error(JSON.stringify(started.refusals));
  ends.push(started.close);
  return { w, ...started };
}

/** Listens as a page does, and gives what came: "event: data". */
function listen(url: string) {
  const heard: string[] = [];
  let status = 0;
  let ended = false;
  const request = http.get(`${url}api/events`, (response) => {
    status = response.statusCode ?? 0;
    let text = "";
    response.on("data", (chunk: Buffer) => {
      text += chunk.toString("utf8");
      const parts = text.split("\n\n");
      text = parts.pop() ?? "";
      for (const part of parts) {
        const field = (name: string) => part.match(new RegExp(`^${name}: ?(.*)$`, "m"))?.[1] ?? "";
        heard.push(`${field("event")}: ${field("data")}`);
      }
    });
    response.on("close", () => {
      ended = true;
    });
  });
  request.on("error", () => {
    ended = true;
  });
  return { heard, status: () => status, ended: () => ended, stop: () => request.destroy() };
}

describe("the stream of changes", () => {
  it("tells of an edit, of a text put in, and of nothing that was refused or left as it was", async () => {
    const { w, url } = await serving();
    const page = listen(url);
    await expect.poll(() => page.heard).toEqual([`began: ${w.workshop.name}`]);
    await w.workshop.edit("donor", "q1", ["measured", "chainstay"], "no length", 1);
    expect((await w.workshop.edit("donor", "q1", ["measured", "chainstay"], 441, 1)).kind).toBe("edited");
    await expect.poll(() => page.heard.slice(1)).toEqual(['kept: ["donor/q1"]']);
    await w.workshop.edit("donor", "q1", ["measured", "chainstay"], 441, 2);
    await w.workshop.putText("kind: route\nversion: 1\nid: r\nsections: [{km: 1, grade: 0}]\n", "r.yaml");
    await expect.poll(() => page.heard.slice(2)).toEqual(['kept: ["route/r"]']);
    page.stop();
  });

  it("lets so many windows listen and no more, and takes another one when one has gone", async () => {
    const most = 32;
    const { url } = await serving(most);
    const pages = Array.from({ length: most }, () => listen(url));
    await expect.poll(() => pages.every((p) => p.heard.length === 1), { timeout: 10_000 }).toBe(true);
    const one = listen(url);
    await expect.poll(one.status).toBe(503);
    pages[0]?.stop();
    await expect
      .poll(
        async () => {
          const next = listen(url);
          await new Promise((resolve) => setTimeout(resolve, 100));
          const status = next.status();
          next.stop();
          return status;
        },
        { timeout: 5_000 },
      )
      .toBe(200);
    for (const p of pages) p.stop();
  });

  it("ends at once when the server closes, and leaves nothing open after a question about the head", async () => {
    const { url, close } = await serving();
    const head = await fetch(`${url}api/events`, { method: "HEAD" });
    expect([head.status, head.headers.get("content-type")]).toEqual([200, "text/event-stream"]);
    const page = listen(url);
    await expect.poll(() => page.heard.length).toBe(1);
    const from = Date.now();
    await close();
    // Cut off only at 2 s: sooner means that the stream ended by itself.
    expect(Date.now() - from).toBeLessThan(1_500);
    await expect.poll(page.ended).toBe(true);
  });
});
