/**
 * May this request come in at all? Only from pages of this very server, and from programs on this machine.
 * Host: a name that a foreign page has pointed at this machine (DNS rebinding) is turned away. Origin and
 * Sec-Fetch-Site: a foreign page in the same browser can neither write nor set long work going.
 */
import type { MiddlewareHandler } from "hono";
import { problem } from "./problem.js";

const READS = new Set(["GET", "HEAD"]);
const NAMES = ["127.0.0.1", "localhost", "[::1]"];

/** The values of the Host header that mean this server. */
export function ownHosts(port: number): readonly string[] {
  // Browsers leave the port out where it is the protocol's own.
  return NAMES.flatMap((name) => (port === 80 ? [name, `${name}:80`] : [`${name}:${port}`]));
}

/** @param port the port that the server listens on, known once it listens */
export function guardRequest(port: () => number): MiddlewareHandler {
  return async (c, next) => {
    const host = (c.req.header("host") ?? "").toLowerCase();
    const hosts = ownHosts(port());
    if (!hosts.includes(host)) {
      return problem(c, 421, {
        code: "foreign-host",
        at: "Host",
        given: host.slice(0, 100),
        allowed: hosts.join(", "),
        message: "This server answers on this machine only, under its own address.",
      });
    }
    const origin = c.req.header("origin");
    const site = c.req.header("sec-fetch-site");
    const api = c.req.path === "/api" || c.req.path.startsWith("/api/");
    const write = !READS.has(c.req.method);
    const foreignOrigin = write && origin !== undefined && origin.toLowerCase() !== `http://${host}`;
    const foreignSite = (api || write) && site !== undefined && site !== "same-origin" && site !== "none";
    if (foreignOrigin || foreignSite) {
      return problem(c, 403, {
        code: "foreign-origin",
        at: foreignOrigin ? "Origin" : "Sec-Fetch-Site",
        given: (foreignOrigin ? origin : site)?.slice(0, 100) ?? null,
        allowed: `http://${host}`,
        message: "A page from elsewhere asked for this. Only the workshop's own pages may.",
      });
    }
    return next();
  };
}
