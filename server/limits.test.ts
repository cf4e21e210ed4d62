import net from "node:net";
import { afterEach, describe, expect, it } from "vitest";
import { BODY_LIMIT_BYTES } from "./json-body.js";
import { LIMITS, type Limits } from "./limits.js";
import { startServer } from "./start-server.js";
import { testWorkshop } from "./test-workshop.js";

const ends: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

async function serving(change: Partial<Limits> = {}, options: Parameters<typeof testWorkshop>[0] = {}) {
  const w = await testWorkshop(options);
  ends.push(w.end);
  const started = await startServer({ ...w.options, limits: { ...LIMITS, ...change }, port: 0 });
  if (started.kind === "refused") throw new Error(JSON.stringify(started.refusals));
  ends.push(started.close);
  return { ...started, logged: w.logged };
}

interface Back {
  readonly text: string;
  readonly status: number;
  readonly code: string | undefined;
  readonly tookMs: number;
}

/** A connection of its own: sends, and gives all that comes back until the other side closes. */
function connect(port: number) {
  const socket = net.connect(port, "127.0.0.1");
  const began = Date.now();
  let text = "";
  socket.on("data", (chunk) => {
    text += chunk.toString("latin1");
  });
  // What counts is what came back; a connection cut while we still write is such an end.
  socket.on("error", () => {});
  const back = new Promise<Back>((resolve) => {
    socket.once("close", () => {
      const status = Number(/^HTTP\/1\.1 (\d{3})/.exec(text)?.[1] ?? Number.NaN);
      resolve({ text, status, code: /"code":"([\w-]+)"/.exec(text)?.[1], tookMs: Date.now() - began });
    });
  });
  ends.push(async () => {
    socket.destroy();
  });
  return { socket, back, soFar: () => text };
}

async function say(port: number, ...chunks: readonly string[]): Promise<Back> {
  const { socket, back } = connect(port);
  for (const chunk of chunks) socket.write(chunk);
  return back;
}

const head = (port: number, line: string, ...more: readonly string[]) =>
  `${[`${line} HTTP/1.1`, `Host: 127.0.0.1:${port}`, ...more].join("\r\n")}\r\n\r\n`;
const close = "Connection: close";
const json = "Content-Type: application/json";
const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

describe("the length of what is asked", () => {
  it.each([
    ["a long path", `/api/${"a".repeat(2_000)}`, 414, "url-too-long"],
    ["a long query", `/api/documents?${"a".repeat(2_000)}`, 414, "url-too-long"],
    ["a deep path", `/api${"/a".repeat(16)}`, 414, "path-too-deep"],
    ["a path of empty steps", `/${"/".repeat(16)}`, 414, "path-too-deep"],
  ])("refuses %s", async (_what, place, status, code) => {
    const { port } = await serving();
    expect(await say(port, head(port, `GET ${place}`, close))).toMatchObject({ status, code });
  });

  it("takes what is just as long as allowed", async () => {
    const { port } = await serving();
    expect((await say(port, head(port, `GET /api/${"a".repeat(1_995)}`, close))).status).toBe(404);
    expect((await say(port, head(port, `GET /api${"/a".repeat(15)}`, close))).status).toBe(404);
  });

  it("refuses headers past 16 kB, and more than 100 of them, with the reason", async () => {
    const { port } = await serving();
    const long = await say(port, head(port, "GET /api/health", `X-Long: ${"a".repeat(16_384)}`, close));
    expect(long).toMatchObject({ status: 431, code: "headers-too-long" });
    const many = await say(port, head(port, "GET /api/health", ...Array(99).fill("X-A: 1"), close, "X-B: 1"));
    // The platform joins headers of one name, so these count as one.
    expect(many.status).toBe(200);
    const names = Array.from({ length: 99 }, (_, i) => `X-${i}: 1`);
    expect(await say(port, head(port, "GET /api/health", ...names, close))).toMatchObject({
      status: 431,
      code: "too-many-headers",
    });
  });

  it("refuses chunks that carry more about themselves than content", async () => {
    const { port } = await serving();
    const request = head(port, "POST /api/documents", json, "Transfer-Encoding: chunked", close);
    const back = await say(port, request, `2;${"a".repeat(20_000)}\r\n`);
    expect(back).toMatchObject({ status: 413, code: "chunk-extensions-too-long" });
  });

  it("refuses a body past its limit by the length it announces, before a byte of it came in", async () => {
    const { port } = await serving();
    const length = `Content-Length: ${BODY_LIMIT_BYTES + 1}`;
    const back = await say(port, head(port, "POST /api/documents", json, length));
    expect(back).toMatchObject({ status: 413, code: "body-too-large" });
    expect(back.tookMs).toBeLessThan(LIMITS.requestMs / 2);
  });
});

describe("the time of a request", () => {
  it("cuts off headers that dribble in, with the reason", async () => {
    const { port } = await serving({ headersMs: 400, requestMs: 30_000 });
    const { socket, back } = connect(port);
    socket.write(`GET /api/health HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n`);
    const drip = setInterval(() => socket.write("X-A: 1\r\n"), 50);
    const { status, code, tookMs } = await back;
    clearInterval(drip);
    expect({ status, code }).toEqual({ status: 408, code: "request-too-slow" });
    expect(tookMs).toBeLessThan(LIMITS.headersMs);
  });

  it("cuts off a body that dribbles in, and calls it no fault of the program", async () => {
    const { port, logged } = await serving({ headersMs: 400, requestMs: 600 });
    const { socket, back } = connect(port);
    socket.write(head(port, "POST /api/documents", json, "Content-Length: 1000"));
    const drip = setInterval(() => socket.write(" "), 50);
    const { status, code, tookMs } = await back;
    clearInterval(drip);
    expect({ status, code }).toEqual({ status: 408, code: "request-too-slow" });
    expect(tookMs).toBeLessThan(LIMITS.requestMs / 2);
    await wait(100);
    expect(logged).toEqual([]);
  });

  it("takes it as no fault where whoever asked goes away in the middle", async () => {
    const { port, logged } = await serving();
    const { socket } = connect(port);
    socket.write(head(port, "POST /api/documents", json, "Content-Length: 1000"));
    await wait(200);
    socket.destroy();
    await wait(300);
    expect(logged).toEqual([]);
  });

  it("closes a connection on which nobody asks again", async () => {
    const { port } = await serving({ keepAliveMs: 300 });
    const { socket, back } = connect(port);
    socket.write(head(port, "GET /api/health"));
    const { status, tookMs } = await back;
    expect(status).toBe(200);
    expect(tookMs).toBeLessThan(LIMITS.keepAliveMs);
  });

  it("closes a connection on which nothing was ever asked", async () => {
    const { port } = await serving({ headersMs: 300, idleMs: 600 });
    expect((await connect(port).back).tookMs).toBeLessThan(LIMITS.headersMs);
  });

  it("gives up an answer that takes too long, with the reason", async () => {
    let finish = () => {};
    const never = new Promise<void>((resolve) => {
      finish = resolve;
    });
    ends.push(async () => finish());
    const late = async () => {
      await never;
      return new TextEncoder().encode("%PDF late");
    };
    const { port, logged } = await serving({ answerMs: 300 }, { book: late });
    const back = await say(port, head(port, "GET /api/book/quayside.pdf"));
    expect(back).toMatchObject({ status: 503, code: "too-slow" });
    expect(back.tookMs).toBeLessThan(LIMITS.answerMs / 3);
    expect(back.text).toContain("content-security-policy");
    expect(logged).toEqual([]);
  });
});

describe("how many at once", () => {
  it("tells a connection too many that it is, and goes on serving the others", async () => {
    const { port } = await serving({ connections: 3 });
    const others = [connect(port), connect(port), connect(port)];
    for (const { socket } of others) socket.write(head(port, "GET /api/health"));
    while (!others.every((o) => o.soFar().includes("well"))) await wait(10);
    expect(await say(port, head(port, "GET /api/health"))).toMatchObject({ status: 503, code: "too-busy" });
    // One that says nothing is not kept either.
    expect((await connect(port).back).tookMs).toBeLessThan(LIMITS.headersMs);
    const [first] = others;
    first?.socket.write(head(port, "GET /api/health", close));
    expect((await first?.back)?.text.match(/"well"/g)).toHaveLength(2);
    // Its place is free again.
    await wait(50);
    expect((await say(port, head(port, "GET /api/health", close))).status).toBe(200);
  });

  it("does not even greet twice as many", async () => {
    const { port } = await serving({ connections: 2 });
    const all = Array.from({ length: 8 }, () => connect(port));
    await Promise.race(all.map((one) => one.back));
    const shut = await Promise.all(all.slice(4).map((one) => one.back));
    expect(shut.map((one) => one.text)).toEqual(["", "", "", ""]);
  });

  it("answers so many at once and refuses the next, until one is done", async () => {
    let finish = () => {};
    const held = new Promise<void>((resolve) => {
      finish = resolve;
    });
    const book = async () => {
      await held;
      return new TextEncoder().encode("%PDF");
    };
    const { port } = await serving({ atOnce: 2, waiting: 0 }, { book });
    const two = [1, 2].map(() => say(port, head(port, "GET /api/book/quayside.pdf", close)));
    await wait(200);
    expect(await say(port, head(port, "GET /api/health", close))).toMatchObject({ status: 503, code: "too-busy" });
    finish();
    expect((await Promise.all(two)).map((b) => b.status)).toEqual([200, 200]);
    expect((await say(port, head(port, "GET /api/health", close))).status).toBe(200);
  });
});

describe("more at once than are answered", () => {
  function heldBook() {
    let finish = () => {};
    const held = new Promise<void>((resolve) => {
      finish = resolve;
    });
    ends.push(async () => finish());
    const book = async () => {
      await held;
      return new TextEncoder().encode("%PDF");
    };
    return { book, finish: () => finish() };
  }
  const asksBook = (port: number) => say(port, head(port, "GET /api/book/quayside.pdf", close));

  it("wait for their turn, and only what comes on top of them is refused", async () => {
    const { book, finish } = heldBook();
    const { port } = await serving({ atOnce: 1, waiting: 2 }, { book });
    const first = asksBook(port);
    await wait(200);
    const waiting = [1, 2].map(() => say(port, head(port, "GET /api/health", close)));
    await wait(200);
    expect(await say(port, head(port, "GET /api/health", close))).toMatchObject({ status: 503, code: "too-busy" });
    finish();
    expect([await first, ...(await Promise.all(waiting))].map((b) => b.status)).toEqual([200, 200, 200]);
    // All places are free again.
    const after = await Promise.all([1, 2, 3].map(() => say(port, head(port, "GET /api/health", close))));
    expect(after.map((b) => b.status)).toEqual([200, 200, 200]);
  });

  it("are told so where their turn does not come in time", async () => {
    const { book, finish } = heldBook();
    const { port } = await serving({ atOnce: 1, waiting: 2, waitingMs: 200 }, { book });
    const first = asksBook(port);
    await wait(200);
    expect(await say(port, head(port, "GET /api/health", close))).toMatchObject({ status: 503, code: "too-busy" });
    finish();
    expect((await first).status).toBe(200);
    expect((await say(port, head(port, "GET /api/health", close))).status).toBe(200);
  });
});

describe("what is no HTTP at all", () => {
  it.each([
    ["another protocol", "SSH-2.0-x\r\n\r\n", 400, "not-http"],
    ["a TLS greeting", "\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03", 400, "not-http"],
    ["no Host", "GET / HTTP/1.1\r\n\r\n", 400, "not-http"],
    ["two lengths", "POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n", 400, "not-http"],
    [
      "a length and chunks, by which requests are smuggled (RFC 9112, section 6.1)",
      "POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nTransfer-Encoding: chunked\r\n\r\n",
      400,
      "not-http",
    ],
    ["a header with a line end of its own", "GET / HTTP/1.1\r\nHost: x\r\nX-A: a\nb\r\n\r\n", 400, "not-http"],
  ])("is refused: %s", async (_what, bytes, status, code) => {
    const { port, logged } = await serving();
    const back = await say(port, bytes);
    expect([back.status, back.code]).toEqual([status, code]);
    expect(logged).toEqual([]);
  });

  it("is refused with a reason where the address cannot be read", async () => {
    const { port } = await serving();
    for (const line of ["GET /a\\b", "GET http://[", "GET *"])
      expect(await say(port, head(port, line, close))).toMatchObject({ status: 400, code: "not-http" });
    const hostless = await say(port, "GET / HTTP/1.0\r\n\r\n");
    expect(hostless).toMatchObject({ status: 400, code: "not-http" });
    expect(hostless.text.toLowerCase()).toContain("x-content-type-options: nosniff");
  });

  it("gives no tunnel and no other protocol", async () => {
    const { port } = await serving();
    const upgrade = head(port, "GET /api/health", "Connection: Upgrade", "Upgrade: websocket");
    const { socket, soFar } = connect(port);
    socket.write(upgrade);
    while (soFar() === "") await wait(10);
    expect(soFar()).not.toMatch(/^HTTP\/1\.1 101/);
    const tunnel = await say(port, `CONNECT 127.0.0.1:22 HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n`);
    expect(tunnel.text).not.toMatch(/ 200 /);
    expect((await say(port, head(port, "TRACE /api/health", "X-Secret: heard", close))).text).not.toContain("heard");
  });
});
