/**
 * Is this request meant for this workshop? Another data folder may be served at an address that a page still knows. Each
 * answer names the workshop; a request that names another one is turned away, and nothing of it is done.
 */
import { say } from "@coldset/core/texts";
import type { MiddlewareHandler } from "hono";
import { problem } from "./problem.js";

export const WORKSHOP_HEADER = "Coldset-Workshop";

export function ofThisWorkshop(name: string): MiddlewareHandler {
  return async (c, next) => {
    const meant = c.req.header(WORKSHOP_HEADER);
    if (meant !== undefined && meant !== name) {
      c.header(WORKSHOP_HEADER, name);
      return problem(c, 412, {
        code: "another-workshop",
        at: WORKSHOP_HEADER,
        given: meant.slice(0, 100),
        allowed: name,
        message: say("server.of-this-workshop.this-was-meant-for-another-workshop"),
      });
    }
    await next();
    c.res.headers.set(WORKSHOP_HEADER, name);
  };
}
