/** In which form does the server say no? The same one as the core: a list of refusals, each with its reason in words. */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { Context } from "hono";

const MOST_TOLD = 100;

export type ProblemStatus = 400 | 403 | 404 | 405 | 409 | 412 | 413 | 414 | 415 | 421 | 422 | 431 | 503;

export function problem(c: Context, status: ProblemStatus, ...refusals: readonly Refusal[]): Response {
  return c.json({ kind: "refused", refusals: told(refusals) }, status);
}

/** A text can be wrong in a hundred thousand places; nobody reads so many reasons, and the answer must not be the larger one. */
function told(refusals: readonly Refusal[]): readonly Refusal[] {
  const more = refusals.length - MOST_TOLD;
  if (more <= 0) return refusals;
  const message = say("server.problem.and-more-like-these-mend-the", { more });
  return [...refusals.slice(0, MOST_TOLD), { code: "and-more", at: "", given: more, allowed: "none", message }];
}

/** The status that fits refusals which come from the store or the core. */
export function refusedBy(c: Context, refusals: readonly Refusal[]): Response {
  const codes = refusals.map((r) => r.code);
  if (codes.some((code) => code.startsWith("store-"))) return problem(c, 503, ...refusals);
  return problem(c, codes.length === 1 && codes[0] === "not-found" ? 404 : 422, ...refusals);
}

export function notFound(c: Context, what: string, allowed: string): Response {
  return problem(c, 404, {
    code: "not-found",
    at: what,
    given: what,
    allowed,
    message: say("server.problem.there-is-no-here", { what }),
  });
}

export function methodNotAllowed(c: Context, allowed: string): Response {
  c.header("Allow", allowed);
  const given = c.req.method;
  const message = say("server.problem.cannot-be-done-here-can", { given, allowed });
  return problem(c, 405, { code: "method-not-allowed", at: c.req.path, given, allowed, message });
}
