/** What does the library alone cost? The same routes, answered with constant JSON as long as the answers of the workshop. */

import http from "node:http";
import { getRequestListener } from "@hono/node-server";
import { Hono } from "hono";
import { streamSSE } from "hono/streaming";

/** @type {Record<"open" | "check" | "builds" | "history" | "document", number>} */
const sizes = JSON.parse(process.argv[2] ?? "{}");
const of = (/** @type {number} */ bytes, more = {}) => {
  const empty = JSON.stringify({ ...more, text: "" }).length;
  return { ...more, text: "x".repeat(Math.max(0, bytes - empty)) };
};
const edited = of(sizes.document, { kind: "edited", revision: 1 });
const [open, check, builds, history, document] = [
  of(sizes.open),
  of(sizes.check),
  of(sizes.builds),
  of(sizes.history),
  of(sizes.document, { revision: 1 }),
];

const app = new Hono();
app.get("/api/workshop/:build", (c) => c.json(open));
app.get("/api/check/:build", (c) => c.json(check));
app.get("/api/builds", (c) => c.json(builds));
app.get("/api/history/:build", (c) => c.json(history));
app.get("/api/documents/:kind/:id", (c) => c.json(document));
app.post("/api/documents/:kind/:id/edits", async (c) => {
  await c.req.json();
  return c.json(edited);
});
app.post("/api/history/:build/undo", async (c) => {
  await c.req.json();
  return c.json(edited);
});
app.get("/api/events", (c) =>
  streamSSE(c, async (stream) => {
    await stream.writeSSE({ event: "began", data: "" });
    await new Promise((resolve) => stream.onAbort(() => resolve(undefined)));
  }),
);
const server = http.createServer(getRequestListener(app.fetch));
server.listen(0, "127.0.0.1", () => {
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  process.send?.({ what: "serving", url: `http://127.0.0.1:${address.port}/` });
});
