/**
 * May this request come in at all? Only from pages of this very server, and from programs on this machine.
 * Host: a name that a foreign page has pointed at this machine (DNS rebinding) is turned away. Origin and
 * Sec-Fetch-Site: a foreign page in the same browser can neither write nor read nor set long work going. A page on
 * another port of this machine is foreign, too, though browsers call it the same site.
 */
import { say } from "@coldset/core/texts";
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
        message: say("server.guard-request.this-server-answers-on-this-machine"),
      });
    }
    const origin = c.req.header("origin");
    const site = c.req.header("sec-fetch-site");
    const api = c.req.path === "/api" || c.req.path.startsWith("/api/");
    const opens = READS.has(c.req.method) && !api;
    const foreignOrigin = !opens && origin !== undefined && origin.toLowerCase() !== `http://${host}`;
    // A link elsewhere may open our page; it may not frame it, run its scripts or look at its files.
    const followed = c.req.header("sec-fetch-mode") === "navigate" && c.req.header("sec-fetch-dest") === "document";
    const foreignSite = site !== undefined && site !== "same-origin" && site !== "none" && !(opens && followed);
    if (foreignOrigin || foreignSite) {
      return problem(c, 403, {
        code: "foreign-origin",
        at: foreignOrigin ? "Origin" : "Sec-Fetch-Site",
        given: (foreignOrigin ? origin : site)?.slice(0, 100) ?? null,
        allowed: `http://${host}`,
        message: say("server.guard-request.a-page-from-elsewhere-asked-for"),
      });
    }
    return next();
  };
}
