/**
 * Can the workshop be served on this port? On this machine only (127.0.0.1). Port 0 lets the system choose one.
 * A port that is taken, or that may not be used, is a refusal with what to do.
 */

import type { AddressInfo } from "node:net";
import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { type AppOptions, createApp } from "./create-app.js";
import { httpServer } from "./http-server.js";
import { LIMITS } from "./limits.js";

const LOOPBACK = "127.0.0.1";
/** After this long, requests that are still open are cut off, ms. */
const CLOSING_MS = 2_000;

export interface ServerOptions extends AppOptions {
  /** 0 to 65535; 0 lets the system choose. */
  readonly port: number;
}

export type StartedServer =
  | {
      readonly kind: "serving";
      readonly url: string;
      readonly port: number;
      /** Takes no more requests and waits for those under way, 2 s at most. The workshop stays open. */
      readonly close: () => Promise<void>;
    }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] };

export async function startServer(options: ServerOptions): Promise<StartedServer> {
  const wanted = options.port;
  if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65_535) return refusedPort(wanted, "bad-port");
  let port = wanted;
  const closingStreams = new AbortController();
  const app = createApp({ ...options, closing: closingStreams.signal }, () => port);
  const server = httpServer(app, options.limits ?? LIMITS);
  try {
    await new Promise<void>((resolve, reject) => {
      server.once("error", reject);
      server.listen(wanted, LOOPBACK, () => {
        server.off("error", reject);
        resolve();
      });
    });
  } catch (cause) {
    const code = (cause as NodeJS.ErrnoException).code;
    if (code === "EADDRINUSE") return refusedPort(wanted, "port-in-use");
    if (code === "EACCES") return refusedPort(wanted, "port-not-allowed");
    throw cause;
  }
  port = (server.address() as AddressInfo).port;
  let closing: Promise<void> | undefined;
  const close = () =>
    new Promise<void>((resolve) => {
      closingStreams.abort();
      const cut = setTimeout(() => {
        server.closeAllConnections();
      }, CLOSING_MS);
      server.close(() => {
        clearTimeout(cut);
        resolve();
      });
      server.closeIdleConnections();
    });
  return {
    kind: "serving",
    url: `http://${LOOPBACK}:${port}/`,
    port,
    close: () => {
      closing ??= close();
      return closing;
    },
  };
}

function refusedPort(port: number, code: "bad-port" | "port-in-use" | "port-not-allowed"): StartedServer {
  const reason = {
    "bad-port": say("server.start-server.is-no-port", { port }),
    "port-in-use": say("server.start-server.port-is-taken-by-another-program", { port }),
    "port-not-allowed": say("server.start-server.port-may-not-be-used-by", { port }),
  }[code];
  return {
    kind: "refused",
    refusals: [
      {
        code,
        at: "port",
        given: port,
        allowed: say("server.start-server.a-free-port-from-1024-to"),
        message: say("server.start-server.name-another-one", { reason }),
      },
    ],
  };
}
