/**
 * Who may stay connected, and for how long? What Node's HTTP server has to know before a request reaches the app: time
 * for headers and body, idle connections, their number. Whoever is turned away here is told why, too.
 */

import http from "node:http";
import type { Duplex } from "node:stream";
import { say } from "@coldset/core/texts";
import { getRequestListener, type HttpBindings } from "@hono/node-server";
import type { Hono, MiddlewareHandler } from "hono";
import { tooBusy } from "./limit-request.js";
import type { Limits } from "./limits.js";
import { HEADERS } from "./security-headers.js";

/** How often Node looks for connections whose time is up. */
const LOOK_MS = 500;
/** A connection too many that does not even ask is closed after this. */
const TURNED_AWAY_MS = 1_000;

const tooMany = new WeakSet<object>();

/** To be asked by the app: a connection too many is answered once, with the reason, and closed. */
export function limitConnections(limits: Limits): MiddlewareHandler {
  return async (c, next) => {
    const socket = (c.env as Partial<HttpBindings> | undefined)?.incoming?.socket;
    if (socket !== undefined && tooMany.has(socket))
      return tooBusy(c, say("server.http-server.connections-at-once", { connections: limits.connections }));
    return next();
  };
}

export function httpServer(app: Hono, limits: Limits): http.Server {
  const server = http.createServer(
    {
      maxHeaderSize: limits.headerBytes,
      headersTimeout: Math.min(limits.headersMs, limits.requestMs),
      requestTimeout: limits.requestMs,
      keepAliveTimeout: limits.keepAliveMs,
      connectionsCheckingInterval: LOOK_MS,
      // Without a Host no address can be made of it; then `unreadable` says so, where Node would only hang up.
      requireHostHeader: false,
    },
    getRequestListener(app.fetch, { errorHandler: unreadable }),
  );
  // Node would leave further headers out without a word; the app counts them and says so.
  server.maxHeadersCount = 0;
  server.timeout = limits.idleMs;
  server.maxConnections = 2 * limits.connections;
  let open = 0;
  server.on("connection", (socket) => {
    open += 1;
    socket.once("close", () => {
      open -= 1;
    });
    if (open <= limits.connections) return;
    tooMany.add(socket);
    setTimeout(() => socket.destroy(), TURNED_AWAY_MS).unref();
  });
  server.on("clientError", (cause: NodeJS.ErrnoException, socket) => turnAway(cause, socket, limits));
  return server;
}

/** A request of which not even an address can be made. */
function unreadable(): Response {
  const headers = { ...HEADERS, "Content-Type": "application/json", "Cache-Control": "no-store", Connection: "close" };
  return new Response(bodyOf(400, "not-http", say("server.http-server.a-request-of-http-1-1")), {
    status: 400,
    headers,
  });
}

function turnAway(cause: NodeJS.ErrnoException, socket: Duplex, limits: Limits): void {
  // Something was answered already, or nobody is there any more.
  if (!socket.writable || ("bytesWritten" in socket && Number(socket.bytesWritten) > 0)) {
    socket.destroy();
    return;
  }
  const [status, code, allowed] = reasonOf(cause.code, limits);
  const body = bodyOf(status, code, allowed);
  const head = [
    `HTTP/1.1 ${status} ${http.STATUS_CODES[status] ?? "Refused"}`,
    "Content-Type: application/json",
    `Content-Length: ${Buffer.byteLength(body)}`,
    "Cache-Control: no-store",
    "Connection: close",
    ...Object.entries(HEADERS).map(([name, value]) => `${name}: ${value}`),
  ];
  socket.end(`${head.join("\r\n")}\r\n\r\n${body}`);
}

function reasonOf(code: string | undefined, limits: Limits): readonly [number, string, string] {
  switch (code) {
    case "HPE_HEADER_OVERFLOW":
      return [
        431,
        "headers-too-long",
        say("server.http-server.bytes-of-headers-at-most", { headerBytes: limits.headerBytes }),
      ];
    case "HPE_CHUNK_EXTENSIONS_OVERFLOW":
      return [413, "chunk-extensions-too-long", say("server.http-server.chunks-without-long-extensions")];
    case "ERR_HTTP_REQUEST_TIMEOUT": {
      const [headers, all] = [limits.headersMs / 1000, limits.requestMs / 1000];
      return [408, "request-too-slow", say("server.http-server.headers-within-s-the-whole-request", { headers, all })];
    }
    default:
      return [400, "not-http", say("server.http-server.a-request-of-http-1-1-2")];
  }
}

function bodyOf(status: number, code: string, allowed: string): string {
  const message = say("server.http-server.refused-with-allowed-is", { status, allowed });
  return JSON.stringify({ kind: "refused", refusals: [{ code, at: "", given: null, allowed, message }] });
}
