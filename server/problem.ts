/** In which form does the server say no? The same one as the core: a list of refusals, each with its reason in words. */
import type { Refusal } from "@coldset/core/quantity";
import type { Context } from "hono";

export type ProblemStatus = 400 | 403 | 404 | 405 | 413 | 415 | 421 | 422 | 503;

export function problem(c: Context, status: ProblemStatus, ...refusals: readonly Refusal[]): Response {
  return c.json({ kind: "refused", refusals }, status);
}

/** The status that fits refusals which come from the store or the core. */
export function refusedBy(c: Context, refusals: readonly Refusal[]): Response {
  const codes = refusals.map((r) => r.code);
  if (codes.some((code) => code.startsWith("store-"))) return problem(c, 503, ...refusals);
  return problem(c, codes.length === 1 && codes[0] === "not-found" ? 404 : 422, ...refusals);
}

export function notFound(c: Context, what: string, allowed: string): Response {
  return problem(c, 404, { code: "not-found", at: what, given: what, allowed, message: `There is no ${what} here.` });
}

export function methodNotAllowed(c: Context, allowed: string): Response {
  c.header("Allow", allowed);
  const given = c.req.method;
  const message = `${given} cannot be done here; ${allowed} can.`;
  return problem(c, 405, { code: "method-not-allowed", at: c.req.path, given, allowed, message });
}
